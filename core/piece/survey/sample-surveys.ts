/** Shapes and their readings for tests and the drawing shown before anything is measured. */
import type { RandomStream } from '#core/numeric/random.ts';
import type { Point } from '#core/piece/piece.ts';
import { cornerName, type DistanceReading, type Reading, type Survey } from './survey.ts';
import { readingSigma_m, type Tape } from './tape.ts';

export const SAMPLE_TAPE: Tape = { tapeClass: 'II', fromHook: true, readTo_m: 0.0015875 };

/** A counter between crooked walls: a rectangle whose corners stray by some centimetres. Corners counter-clockwise. */
export function quadrilateral(stream: RandomStream): Point[] {
  const length = 0.6 + 2 * stream.uniform();
  const width = 0.4 + 0.6 * stream.uniform();
  return strayed(
    [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ],
    stream,
    0.06,
  );
}

/** An L between crooked walls: outer corners A, B, C, E, F, and D the wall corner it wraps round. */
export function ell(stream: RandomStream): Point[] {
  const length = 1.6 + stream.uniform();
  const reach = 1.4 + stream.uniform();
  const depth = 0.55 + 0.15 * stream.uniform();
  return strayed(
    [
      [0, 0],
      [length, 0],
      [length, depth],
      [depth, depth],
      [depth, reach],
      [0, reach],
    ],
    stream,
    0.05,
  );
}

function strayed(
  points: readonly (readonly [number, number])[],
  stream: RandomStream,
  most: number,
): Point[] {
  return points.map(([x, y]) => ({
    x_m: x + most * (stream.uniform() - 0.5),
    y_m: y + most * (stream.uniform() - 0.5),
  }));
}

/** The same shape with its first corner at 0, 0 and its second on +x. */
export function onBase(points: readonly Point[]): Point[] {
  const [a, b] = points as [Point, Point];
  const span = Math.hypot(b.x_m - a.x_m, b.y_m - a.y_m);
  const ux = (b.x_m - a.x_m) / span;
  const uy = (b.y_m - a.y_m) / span;
  return points.map(({ x_m, y_m }) => ({
    x_m: (x_m - a.x_m) * ux + (y_m - a.y_m) * uy,
    y_m: (y_m - a.y_m) * ux - (x_m - a.x_m) * uy,
  }));
}

/** True distances of pairs of letters ("AB"), of all pairs when none are named, with the spread of the tape. */
export function distancesOf(points: readonly Point[], pairs?: readonly string[]): DistanceReading[] {
  const all = points.flatMap((_, i) =>
    points.slice(i + 1).map((_, k) => cornerName(i) + cornerName(i + 1 + k)),
  );
  return (pairs ?? all).map((pair) => {
    const from = pair.charCodeAt(0) - 65;
    const to = pair.charCodeAt(1) - 65;
    const value_m = Math.hypot(points[from]!.x_m - points[to]!.x_m, points[from]!.y_m - points[to]!.y_m);
    return { kind: 'distance', from, to, value_m, sigma_m: readingSigma_m(value_m, SAMPLE_TAPE), path: pair };
  });
}

/** @param turns one letter a corner: o turns out, i wraps round a wall corner. */
export function surveyOf(points: readonly Point[], turns: string, readings: readonly Reading[]): Survey {
  return {
    turns: [...turns].map((turn) => (turn === 'i' ? 'in' : 'out')).slice(0, points.length) as Survey['turns'],
    clockwise: false,
    tape: SAMPLE_TAPE,
    readings,
    bows: [],
  };
}
