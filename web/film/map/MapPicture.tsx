/** The map on the piece: tones and contour lines on a canvas, the outline with true arcs over it, the thinnest place marked, a place to read. */
import { type KeyboardEvent, type PointerEvent, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { FilmMapResult } from '#core/film/map-result.ts';
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { bounds } from '#core/piece/path.ts';
import type { Piece, Point } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { type Box, covered, placeBeside, textWidth } from '#web/charts/label-places.ts';
import { useWidth } from '#web/charts/use-width.ts';
import { type Frame, type Pixel, pathOf, toPixel } from '#web/drawing/frame.ts';
import { speaker } from '#web/units/speak.ts';
import { contourLabels, grown } from './contour-labels.ts';
import { contourLines, filmAt_m } from './contours.ts';
import { spreadHandles } from './handle-places.ts';
import { MapLegend } from './MapLegend.tsx';
import { describeMap, sayPlace } from './map-words.ts';
import { PuddleHandles } from './PuddleHandles.tsx';
import { paintMap } from './paint-map.ts';
import type { CupPuddle } from './puddle-layout.ts';
import { scaleOf } from './ramp.ts';

interface Props {
  readonly piece: Piece;
  readonly system: System;
  readonly map: FilmMapResult | null;
  /** Puddles that may be moved; empty for an even film. */
  readonly puddles: readonly CupPuddle[];
  readonly onMove: (key: string, to: Point) => void;
}

const PAD = 16;
const READ_STEP_m = 0.01;
const SIZE = 13;
/** Half a puddle's handle, px. */
const HANDLE = 14;

function around(at: Pixel, by: number): Box {
  return { left: at.x - by, right: at.x + by, top: at.y - by, bottom: at.y + by };
}

/** Whether a handle stands beside its puddle, so that a line must lead there. */
function isApart(at: Pixel, place: Pixel): boolean {
  return Math.hypot(place.x - at.x, place.y - at.y) >= 3;
}

export function MapPicture({ piece, system, map, puddles, onMove }: Props) {
  const { box, width, printing } = useWidth<HTMLDivElement>(760);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [cursor, setCursor] = useState<Point | null>(null);
  const { thickness } = speaker(system);
  const paths = useMemo(
    () => [outlinePath(piece.outline), ...piece.cutOuts.map(cutOutPath)],
    [piece.outline, piece.cutOuts],
  );
  const extent = useMemo(() => bounds(paths[0]!), [paths]);
  const across_m = extent.maxX_m - extent.minX_m;
  const deep_m = extent.maxY_m - extent.minY_m;
  const highest = printing ? 420 : Math.min(680, Math.max(320, width * 0.9));
  const pxPerMetre = Math.min((width - 2 * PAD) / across_m, (highest - 2 * PAD) / deep_m);
  const wide = Math.round(across_m * pxPerMetre + 2 * PAD);
  const high = Math.round(deep_m * pxPerMetre + 2 * PAD);
  const frame = useMemo<Frame>(
    () => ({ left: PAD, top: PAD, pxPerMetre, bounds: extent }),
    [pxPerMetre, extent],
  );
  const top = useMemo(() => paths.map((path) => pathOf(frame, path, true)).join(''), [frame, paths]);
  const scale = useMemo(
    () => (map === null ? null : scaleOf(map.thinnest.thickness_m, map.thickest.thickness_m, system)),
    [map, system],
  );
  const contours = useMemo(
    () => (map === null || scale === null ? [] : scale.levels_m.map((level_m) => contourLines(map, level_m))),
    [map, scale],
  );
  const ratio = printing ? 2 : Math.min(3, typeof devicePixelRatio === 'number' ? devicePixelRatio : 1);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a canvas that changes its size is empty again
  useLayoutEffect(() => {
    if (canvas.current !== null && map !== null && scale !== null)
      paintMap(canvas.current, { map, scale, contours, frame, top }, ratio);
  }, [map, scale, contours, frame, top, ratio, wide, high]);

  const thinnest = map === null ? null : toPixel(frame, map.thinnest);
  // A narrow map has no room for the word; the scale and the text have it.
  const words = map === null ? '' : `${width < 520 ? '' : 'thinnest '}${thickness(map.thinnest.thickness_m)}`;
  // Nor for the unit beside every figure: the scale below says it.
  const figure = (level_m: number): string =>
    width < 520 ? thickness(level_m).replace(/ .*$/, '') : thickness(level_m);
  const room = { left: PAD + 4, top: PAD + 4, right: wide - PAD - 4, bottom: high - PAD - 4 };
  const poured = puddles.map((puddle) => toPixel(frame, puddle));
  const places = spreadHandles(poured, { width: wide, height: high });
  const moved = poured.filter((at, i) => isApart(at, places[i]!));
  const held = [...places.map((place) => around(place, HANDLE)), ...moved.map((at) => around(at, 4))];
  const sign = thinnest === null ? [] : [around(thinnest, 9)];
  // Where puddles leave it no room the mark stands alone: the scale below has its figure.
  const beside =
    thinnest === null
      ? null
      : placeBeside(thinnest, textWidth(words, SIZE), SIZE * 1.3, room, [
          ...held.map((box) => grown(box, 3)),
          ...sign,
        ]);
  const mark = beside !== null && covered(beside, held) > 0 ? null : beside;
  const labels =
    map === null || scale === null
      ? []
      : contourLabels(contours, scale.levels_m.map(figure), frame, SIZE, room, [
          ...held,
          ...sign,
          ...(mark === null ? [] : [mark]),
        ]);

  const read = (event: PointerEvent<HTMLDivElement>): void => {
    const edge = event.currentTarget.getBoundingClientRect();
    setCursor({
      x_m: extent.minX_m + (event.clientX - edge.left - PAD) / pxPerMetre,
      y_m: extent.maxY_m - (event.clientY - edge.top - PAD) / pxPerMetre,
    });
  };
  const step = (event: KeyboardEvent): void => {
    const by: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, 1],
      ArrowDown: [0, -1],
    };
    const arrow = by[event.key];
    if (arrow === undefined || map === null) return;
    event.preventDefault();
    const from = cursor ?? map.thinnest;
    const far = READ_STEP_m * (event.shiftKey ? 5 : 1);
    setCursor({
      x_m: Math.min(extent.maxX_m, Math.max(extent.minX_m, from.x_m + arrow[0] * far)),
      y_m: Math.min(extent.maxY_m, Math.max(extent.minY_m, from.y_m + arrow[1] * far)),
    });
  };
  const film_m = map === null || cursor === null ? undefined : filmAt_m(map, cursor);
  const at = cursor === null ? null : toPixel(frame, cursor);
  return (
    <div className="film-map-picture" ref={box}>
      <div
        className="film-map-stage"
        style={{ width: wide, height: high }}
        onPointerMove={read}
        onPointerDown={read}
      >
        <canvas
          ref={canvas}
          width={Math.round(wide * ratio)}
          height={Math.round(high * ratio)}
          style={{ width: wide, height: high }}
          role="img"
          aria-label={map === null ? 'The top, not yet worked out' : describeMap(map, extent, system)}
        />
        <PuddleHandles
          puddles={puddles}
          places={places}
          frame={frame}
          box={extent}
          system={system}
          onMove={onMove}
        />
        <svg aria-hidden="true" width={wide} height={high} viewBox={`0 0 ${wide} ${high}`}>
          <path className="film-map-outline" d={top} />
          {places.map((place, i) => {
            const at = poured[i]!;
            if (!isApart(at, place)) return null;
            return (
              <g key={puddles[i]!.key}>
                <path className="film-map-leader" d={`M${place.x} ${place.y}L${at.x} ${at.y}`} />
                <circle className="film-map-spot" cx={at.x} cy={at.y} r={3} />
              </g>
            );
          })}
          {labels.map((label) => (
            <text
              key={`${label.text} ${label.x} ${label.y}`}
              className="film-map-label"
              x={label.x}
              y={label.y + SIZE * 0.35}
              fontSize={SIZE}
              textAnchor="middle"
            >
              {label.text}
            </text>
          ))}
          {thinnest !== null && (
            <>
              {mark !== null && (
                <text
                  className="film-map-label film-map-least"
                  x={mark.left}
                  y={mark.bottom - 4}
                  fontSize={SIZE}
                >
                  {words}
                </text>
              )}
              <path
                className="film-map-thinnest"
                d={`M${thinnest.x} ${thinnest.y - 8}L${thinnest.x + 7} ${thinnest.y + 5}H${thinnest.x - 7}Z`}
              />
            </>
          )}
          {at !== null && map !== null && (
            <path
              className="film-map-cursor"
              d={`M${at.x - 12} ${at.y}h8M${at.x + 4} ${at.y}h8M${at.x} ${at.y - 12}v8M${at.x} ${at.y + 4}v8`}
            />
          )}
        </svg>
      </div>
      {map !== null && scale !== null && (
        <>
          <MapLegend scale={scale} map={map} system={system} width={width} />
          <div className="film-map-read">
            <button type="button" onKeyDown={step} onClick={() => setCursor(map.thinnest)}>
              Read a place with the arrow keys
            </button>
            <output>
              {cursor === null
                ? 'Point at the top to read its film.'
                : `${film_m === undefined ? 'Beside the top' : thickness(film_m)}, ${sayPlace(cursor, extent, system)}`}
            </output>
          </div>
        </>
      )}
    </div>
  );
}
