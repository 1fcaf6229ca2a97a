/**
 * A picture made ready to render: everything as plain numbers, so that it can be sent to a worker or a graphics card. What
 * depends on the outline (cover, fog) is worked out here once; turning the pour itself is left to `render` and the shader.
 */
import type { Fog, Look } from '../look.ts';
import { fogShare, patternOf } from '../look.ts';
import type { Place } from '../move.ts';
import { moveFigures } from '../moves/carry.ts';
import { cellsOf } from './cells.ts';
import { eachCovered, toOwn } from './cover.ts';
import type { Drawing } from './drawing.ts';
import { streakLight } from './gloss.ts';
import type { Sheet, Window } from './grid.ts';
import { spotOf } from './sparkle.ts';

/** Figures of a colour: its light; share, light, spot and strength of its flakes. All colours on tops, then all on faces. */
export const COLOUR_FIGURES = 9;
/** Figures of a panel: u of pixel (0, 0), of a column more, of a row more; left end; width of a cell; first cell; cells; 1 for a face. */
export const PANEL_FIGURES = 8;
/** Figures of a cell: x of pixel (0, 0), of a column more, of a row more; the same of y. */
export const CELL_FIGURES = 6;

export interface Scene {
  readonly window: Window;
  readonly figures: Float64Array;
  readonly waves: Float64Array;
  readonly ground: number;
  readonly colours: Float64Array;
  readonly panels: Float64Array;
  readonly cells: Float64Array;
  /** Per pixel: sixteenths covered, and the panel that covers it. */
  readonly cover: Uint8Array;
  readonly panelOf: Uint8Array;
  /** Per pixel: light of the fog, and what it leaves of the film's; null without fog. */
  readonly fog: Float32Array | null;
  readonly seed: number;
  /** Light added in the middle of the mirrored streak; the grid's columns across the drawing, and pixel of its front left. */
  readonly streak: {
    readonly light: number;
    readonly left: number;
    readonly front: number;
    readonly wide: number;
  };
}

export interface SceneWishes {
  readonly look: Look;
  readonly drawing: Drawing;
  readonly sheet: Sheet;
  /** 0 without the mirrored streak (as colours are agreed) to 1. */
  readonly gloss?: number;
}

/** What a drawing alone decides, worked out once while the pour on it changes. */
export interface Frame extends Pick<Scene, 'window' | 'panels' | 'cells' | 'cover' | 'panelOf'> {
  readonly pixel_m: number;
  readonly streak: Omit<Scene['streak'], 'light'>;
}

/** Throws RangeError for a look that cannot be painted (`moveFigures`), and where `frameOf` does. */
export function sceneOf({ look, drawing, sheet, gloss = 0 }: SceneWishes): Scene {
  const frame = frameOf(drawing, sheet);
  return sceneIn(frame, look, veilOf(look.fogs, frame), gloss);
}

/** RangeError for more than 255 panels. */
export function frameOf(drawing: Drawing, sheet: Sheet): Frame {
  const { grid, window } = sheet;
  if (drawing.panels.length > 255) throw new RangeError('a drawing holds up to 255 panels');
  const panels = new Float64Array(drawing.panels.length * PANEL_FIGURES);
  const cells: number[] = [];
  const cover = new Uint8Array(window.columns * window.rows);
  const panelOf = new Uint8Array(window.columns * window.rows);
  drawing.panels.forEach((placed, at) => {
    const m = toOwn(placed, grid);
    const { left_m } = placed.panel;
    const { width_m, count, maps } = cellsOf(placed.panel);
    const face = placed.panel.kind === 'face' ? 1 : 0;
    panels.set(
      [m[0], m[1], m[2], left_m, width_m, cells.length / CELL_FIGURES, count, face],
      at * PANEL_FIGURES,
    );
    for (let i = 0; i < maps.length; i += 3) {
      const [a, b, c] = [maps[i]!, maps[i + 1]!, maps[i + 2]!];
      cells.push(a + b * m[0] + c * m[3], b * m[1] + c * m[4], b * m[2] + c * m[5]);
    }
    eachCovered(placed, sheet, (index, sixteenths) => {
      if (sixteenths <= cover[index]!) return;
      cover[index] = sixteenths;
      panelOf[index] = at;
    });
  });
  return {
    window,
    panels,
    cells: Float64Array.from(cells),
    cover,
    panelOf,
    pixel_m: grid.pixel_m,
    streak: {
      left: (drawing.left_m - grid.left_m) / grid.pixel_m,
      front: (grid.back_m - drawing.front_m) / grid.pixel_m,
      wide: drawing.width_m / grid.pixel_m,
    },
  };
}

/** @param veil the fogs of the look in this frame (`veilOf`). */
export function sceneIn(frame: Frame, look: Look, veil: Scene['fog'], gloss: number): Scene {
  const { window, panels, cells, cover, panelOf, streak } = frame;
  const count = look.colours.length;
  const colours = new Float64Array(2 * count * COLOUR_FIGURES);
  look.colours.forEach(({ light, faceLight = light, flake }, at) => {
    const spot = flake === null ? null : spotOf(flake.size_m, frame.pixel_m);
    const flakes =
      flake === null || spot === null
        ? [0, 0, 0, 0, 1, 0]
        : [flake.cover, ...flake.gleam, spot.side_m, spot.strength];
    colours.set([...light, ...flakes], at * COLOUR_FIGURES);
    colours.set([...faceLight, ...flakes], (count + at) * COLOUR_FIGURES);
  });
  const { figures, waves } = moveFigures(patternOf(look).moves);
  return {
    ...{ window, panels, cells, cover, panelOf, figures, waves, colours },
    ground: look.ground,
    fog: veil,
    seed: look.seed | 0,
    streak: { ...streak, light: streakLight(gloss) },
  };
}

/** What fogs add to and leave of the light of each pixel, at its middle: a fog is never finer than one. Null without a fog. */
export function veilOf(fogs: readonly Fog[], frame: Frame): Scene['fog'] {
  if (fogs.length === 0) return null;
  const { window, panels, cells, cover, panelOf } = frame;
  const out = new Float32Array(4 * cover.length);
  for (let row = 0; row < window.rows; row++)
    for (let column = 0; column < window.columns; column++) {
      const index = row * window.columns + column;
      const to = 4 * index;
      out[to + 3] = 1;
      if (cover[index] === 0) continue;
      const [p, q] = [window.column + column + 0.5, window.row + row + 0.5];
      const at = cellAt(panels, panelOf[index]!, p, q) * CELL_FIGURES;
      const place: Place = [
        cells[at]! + cells[at + 1]! * p + cells[at + 2]! * q,
        cells[at + 3]! + cells[at + 4]! * p + cells[at + 5]! * q,
      ];
      for (const fog of fogs) {
        const share = fogShare(fog, place);
        if (share === 0) continue;
        for (let k = 0; k < 3; k++) out[to + k] = out[to + k]! * (1 - share) + share * fog.light[k]!;
        out[to + 3] = out[to + 3]! * (1 - share);
      }
    }
  return out;
}

/** The cell that shows pixel middle (column, row) of a panel. */
export function cellAt(panels: Float64Array, panel: number, column: number, row: number): number {
  const at = panel * PANEL_FIGURES;
  const count = panels[at + 6]!;
  const first = panels[at + 5]!;
  if (count === 1) return first;
  const u = panels[at]! + panels[at + 1]! * column + panels[at + 2]! * row;
  const cell = Math.floor((u - panels[at + 3]!) / panels[at + 4]!);
  return first + Math.min(count - 1, Math.max(0, cell));
}
