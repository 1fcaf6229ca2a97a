/** Paints a finished map onto a canvas: tones per cell, smoothed and cut along the true outline, then the contour lines. */
import type { FilmMapResult } from '#core/film/map-result.ts';
import type { Point } from '#core/piece/piece.ts';
import { type Frame, toPixel } from '#web/drawing/frame.ts';
import { rampColour, type Scale, shareOf } from './ramp.ts';

export interface Picture {
  readonly map: FilmMapResult;
  readonly scale: Scale;
  readonly contours: readonly (readonly (readonly Point[])[])[];
  readonly frame: Frame;
  /** SVG path data of the top, outline and cut-outs, in px. */
  readonly top: string;
}

/** Steps of the ramp kept ready: more than eight bits of tone can tell apart. */
const TONES = 256;

/** Colours of the cells; a cell beside the top takes the film of a neighbour on it, so that smoothing draws no pale rim. */
export function tonesOf({ map, scale }: Pick<Picture, 'map' | 'scale'>): Uint8ClampedArray<ArrayBuffer> {
  const { columns, rows, thickness_m, inside } = map;
  const ready = Array.from({ length: TONES }, (_, i) => rampColour(i / (TONES - 1)));
  const data = new Uint8ClampedArray(4 * columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      let from = at;
      if (inside[at] !== 1) {
        for (let near = 0; near < 9; near++) {
          const c = column + (near % 3) - 1;
          const r = row + Math.floor(near / 3) - 1;
          if (c >= 0 && r >= 0 && c < columns && r < rows && inside[r * columns + c] === 1)
            from = r * columns + c;
        }
        if (from === at) continue;
      }
      const tone = ready[Math.round(shareOf(scale, thickness_m[from]!) * (TONES - 1))]!;
      // The picture's rows run from the back to the front.
      const pixel = 4 * ((rows - 1 - row) * columns + column);
      data[pixel] = tone[0];
      data[pixel + 1] = tone[1];
      data[pixel + 2] = tone[2];
      data[pixel + 3] = 255;
    }
  return data;
}

/** Does nothing where the browser gives no canvas to draw on. */
export function paintMap(canvas: HTMLCanvasElement, picture: Picture, ratio: number): void {
  const { map, scale, contours, frame, top } = picture;
  const context = canvas.getContext('2d');
  const cells = document.createElement('canvas');
  cells.width = map.columns;
  cells.height = map.rows;
  const inner = cells.getContext('2d');
  if (context === null || inner === null) return;
  inner.putImageData(new ImageData(tonesOf(picture), map.columns, map.rows), 0, 0);
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, canvas.width, canvas.height);
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.save();
  context.clip(new Path2D(top), 'evenodd');
  const width = map.columns * map.cellX_m * frame.pxPerMetre;
  const height = map.rows * map.cellY_m * frame.pxPerMetre;
  const corner = toPixel(frame, { x_m: map.originX_m, y_m: map.originY_m + map.rows * map.cellY_m });
  context.imageSmoothingQuality = 'high';
  context.drawImage(cells, corner.x, corner.y, width, height);
  context.lineWidth = 1.1;
  for (const [i, lines] of contours.entries()) {
    // A line must be seen on the tone it lies on.
    context.strokeStyle = shareOf(scale, scale.levels_m[i] ?? 0) > 0.55 ? '#fbf6ea' : '#22303c';
    context.beginPath();
    for (const line of lines)
      for (const [n, point] of line.entries()) {
        const at = toPixel(frame, point);
        if (n === 0) context.moveTo(at.x, at.y);
        else context.lineTo(at.x, at.y);
      }
    context.stroke();
  }
  context.restore();
}
