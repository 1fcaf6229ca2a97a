import type { Point } from '#core/piece/piece.ts';
import { type ErrorEllipse, errorEllipse } from './error-ellipse.ts';
import { adjustNetwork, type Network } from './network.ts';
import { type NextReading, nextReadings } from './next-reading.ts';
import { crossesItself, wrongTurns } from './polygon.ts';
import { farthest_m, mirrored, onAxis, skewness, startingShapes } from './start.ts';
import type { Reading, Survey } from './survey.ts';
import {
  type ChiSquareTest,
  checkReadings,
  chiSquareTest,
  judge,
  type ReadingCheck,
  type Verdict,
} from './verdict.ts';

export interface AdjustedCorner extends Point {
  /** Covariance of x and y, m2, with the first corner held and the second on its axis. */
  readonly covariance_m2: readonly [xx: number, xy: number, yy: number];
  readonly ellipse: ErrorEllipse;
  /** No reading holds it: it is drawn where square walls would have it. */
  readonly loose: boolean;
}

export interface AdjustedOutline {
  /** A at 0, 0 and B on +x; the others to the left of the way round, or to the right when named clockwise. */
  readonly corners: readonly AdjustedCorner[];
  /** In the order of survey.readings. */
  readonly checks: readonly ReadingCheck[];
  /** 2 n - 3 coordinates to find, and how many the readings find. */
  readonly unknowns: number;
  readonly rank: number;
  readonly dof: number;
  readonly s0: number | null;
  readonly test: ChiSquareTest | null;
  readonly verdict: Verdict;
  /** The most useful distance first. */
  readonly next: readonly NextReading[];
  /** Corners that turn the other way than they were said to. */
  readonly wrongTurns: readonly number[];
  readonly crosses: boolean;
  /** A second shape fits the readings as well; this distance differs most between the two. */
  readonly otherShape: { readonly from: number; readonly to: number; readonly difference_m: number } | null;
  readonly converged: boolean;
}

/**
 * The outline that fits the readings best: least squares with the spread of the tape, from triangulated starts, the way round
 * and the turns of the corners fixed. Of several shapes that fit, the one whose corners turn as said, then the better fit, then
 * the squarer one. Too few readings are no error: loose corners are told.
 *
 * Worked: sides 25, 39, 60, 52 with diagonals 56 and 63 (Brahmagupta's quadrilateral) give an area of 1764.
 *
 * @param survey three to 26 corners; lengths in m, as `readSurvey` makes it.
 * @throws RangeError on fewer than three corners, or a reading of a corner that is not there.
 */
export function adjustOutline(survey: Survey): AdjustedOutline {
  const n = survey.turns.length;
  if (n < 3) throw new RangeError(`${n} corners; three at least`);
  for (const reading of survey.readings)
    for (const corner of [
      reading.from,
      reading.to,
      reading.kind === 'distance' ? reading.to : reading.corner,
    ])
      if (!(Number.isInteger(corner) && corner >= 0 && corner < n))
        throw new RangeError(`no corner ${corner}`);
  // Named clockwise, everything is worked out in the mirror and turned back at the end.
  const readings = survey.clockwise ? survey.readings.map(flipped) : survey.readings;
  const free = Array.from({ length: 2 * n }, (_, i) => i !== 0 && i !== 1 && i !== 3);
  const fits = startingShapes({ readings, turns: survey.turns }).map((start) => {
    const network = adjustNetwork(readings, start, free);
    // B may have run through A onto the negative axis.
    const places = network.places[2]! < 0 ? onAxis(network.places) : network.places;
    const wrong = wrongTurns(places, survey.turns);
    const crosses = crossesItself(places);
    return {
      network,
      places,
      wrong,
      crosses,
      strange: wrong.length > 0 || crosses ? 1 : 0,
      skew: skewness(places),
    };
  });
  fits.sort(
    (a, b) =>
      a.strange - b.strange ||
      (Math.abs(a.network.weightedSquares - b.network.weightedSquares) > ALIKE
        ? a.network.weightedSquares - b.network.weightedSquares
        : a.skew - b.skew),
  );
  const { network, places, wrong, crosses } = fits[0]!;
  const rival = fits.find(
    (fit) =>
      fit !== fits[0] &&
      fit.strange === fits[0]!.strange &&
      Math.abs(fit.network.weightedSquares - network.weightedSquares) <= ALIKE &&
      network.loose.length === 0 &&
      farthest_m(fit.places, places) > 0.005,
  );
  const sigmas = readings.map(({ sigma_m }) => sigma_m);
  const checks = checkReadings(network, sigmas).map((check, i) =>
    survey.clockwise && readings[i]!.kind === 'offset' ? flippedCheck(check) : check,
  );
  const test = chiSquareTest(network);
  const measured = new Set(readings.flatMap((r) => (r.kind === 'distance' ? [pairKey(r.from, r.to)] : [])));
  return {
    corners: cornersOf(network, places, survey.clockwise),
    checks,
    unknowns: network.unknowns,
    rank: network.rank,
    dof: network.dof,
    s0: network.s0,
    test,
    verdict: judge(test, checks),
    next: nextReadings(network, survey.tape, (from, to) => measured.has(pairKey(from, to))),
    wrongTurns: wrong,
    crosses,
    otherShape: rival === undefined ? null : mostDifferent(places, rival.places),
    converged: network.converged,
  };
}

/** Weighted squares closer than this do not tell two shapes apart (95 % of chi-square, one degree). */
const ALIKE = 3.841;

function pairKey(from: number, to: number): string {
  return `${Math.min(from, to)} ${Math.max(from, to)}`;
}

function flipped(reading: Reading): Reading {
  return reading.kind === 'offset' ? { ...reading, value_m: -reading.value_m } : reading;
}

function flippedCheck(check: ReadingCheck): ReadingCheck {
  return {
    ...check,
    residual_m: -check.residual_m,
    standardised: check.standardised === null ? null : -check.standardised,
    mistake_m: check.mistake_m === null ? null : -check.mistake_m,
  };
}

function cornersOf(network: Network, places: Float64Array, clockwise: boolean): AdjustedCorner[] {
  const turned = clockwise ? mirrored(places) : places;
  return Array.from({ length: places.length / 2 }, (_, i) => {
    const xx = network.covariance[2 * i]![2 * i]!;
    const xy = network.covariance[2 * i]![2 * i + 1]! * (clockwise ? -1 : 1);
    const yy = network.covariance[2 * i + 1]![2 * i + 1]!;
    return {
      x_m: turned[2 * i]!,
      y_m: turned[2 * i + 1]!,
      covariance_m2: [xx, xy, yy] as const,
      ellipse: errorEllipse(xx, xy, yy),
      loose: network.loose.some((way) => Math.hypot(way[2 * i]!, way[2 * i + 1]!) > 1e-4),
    };
  });
}

function mostDifferent(a: Float64Array, b: Float64Array) {
  let most = { from: 0, to: 1, difference_m: 0 };
  const span = (p: Float64Array, i: number, j: number) =>
    Math.hypot(p[2 * i]! - p[2 * j]!, p[2 * i + 1]! - p[2 * j + 1]!);
  for (let from = 0; from < a.length / 2; from++)
    for (let to = from + 1; to < a.length / 2; to++) {
      const difference_m = Math.abs(span(a, from, to) - span(b, from, to));
      if (difference_m > most.difference_m) most = { from, to, difference_m };
    }
  return most;
}
