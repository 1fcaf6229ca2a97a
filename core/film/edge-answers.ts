/**
 * One kind of edge as a maker asks about it: how much stays on the face and on the arris and how much ends on the floor, by WHEN the edge is
 * worked; the best minute to wrap it; what one coat leaves and how many reach the film wanted; whether rounding it over would help.
 */

import { notNegative, positive, within } from '#core/quantity/domain.ts';
import { arrisFilm_m } from './arris.ts';
import { DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { hangingDrop } from './drips.ts';
import { edgeReasons } from './edge-reasons.ts';
import { edgeLoss_m2 } from './edge-run-off.ts';
import { faceFilm, thetaLeftForFaceMean } from './face.ts';
import { type FlowBudget, thetaLeftAt, thetaTotal, timeWhenThetaLeft } from './flow-budget.ts';
import { thetaToLevel } from './levelling.ts';
import { MARK_GONE } from './levelling-answers.ts';
import { rangeFromViscosity, type Spread } from './ranges.ts';
import type { Reason } from './reason.ts';
import { DRY_ARRIS_ANGLE_deg, pinnedOnRoundArris } from './self-damming.ts';

/** Radius that the question about a round-over asks about, m. */
export const ROUND_OVER_m = 0.003;
/** A round-over is worth it when the arris keeps half as much again (a rule of judgement). */
export const ROUND_OVER_WORTH = 1.5;
/** Marks of a brush or a gloved finger along an edge, m apart (common practice, no source). */
export const WRAP_PITCH_m = 0.005;
/** Thicker resin no longer wets and spreads under a brush or glove, Pa s (a rule of judgement). */
export const WORKABLE_Pa_s = 50;
/** No more coats are counted than this. */
export const MOST_PASSES = 9;

export interface EdgeRequest {
  readonly series: FlowBudget;
  /** The top is down and even, s, within the series: edges are worked from here on. */
  readonly down_s: number;
  /** Surface across the profile from the end of the flat top to the bottom, m, above 0. */
  readonly height_m: number;
  /** Of this kind of edge, m, above 0. */
  readonly length_m: number;
  readonly arrisRadius_m: number;
  /** Film on the top, m, above 0. */
  readonly topFilm_m: number;
  /** Film that is wiped or brushed onto the face, m, above 0. */
  readonly faceFilm_m: number;
  /** Mean film wanted on the face in the end, m, above 0. */
  readonly wanted_m: number;
  /** Area of the top and length of ALL its wetted edges: together they limit what can run off. */
  readonly area_m2: number;
  readonly wettedLength_m: number;
  /** Advancing angle on the dry arris, degrees, 0 to 90; 20 when left out (common practice, no source). */
  readonly contactAngle_deg?: number;
  readonly liquid?: Liquid;
  /** Moments told, 2 to 500; 40 when left out. */
  readonly moments?: number;
}

/** What gel finds when the edge is worked at a moment. */
export interface EdgeMoment {
  readonly time_s: number;
  readonly thetaLeft_per_Pa: number;
  readonly faceMean_m: number;
  readonly faceBottom_m: number;
  /** Least film on the arris: under a flat top film of topFilm_m wiped over it. */
  readonly arris_m: number;
  /** Leaves the top over this edge, m3: over the dry arris until it is worked, and over the worked one from then on. */
  readonly runOff_m3: number;
  /** Sheds from what was put on the face, m3. */
  readonly shed_m3: number;
  /** Of both, what is more than hangs as drops along the edge: on the floor, m3. */
  readonly floor_m3: number;
  /** Marks of the tool still level on the face. */
  readonly marksLevel: boolean;
}

export interface EdgeAnswers {
  readonly moments: readonly EdgeMoment[];
  /** Until the edge is worked: whether the dry arris holds the top by itself, and how thick a film it would, m. */
  readonly dry: { readonly holds_m: number; readonly staysByItself: boolean };
  /** Last moment at which the resin can still be spread along the edge, s; undefined when it never can. */
  readonly workableUntil_s?: number;
  /** Window in which one coat reaches the film wanted, can be spread, and its marks level; undefined when there is none. */
  readonly window?: { readonly from_s: number; readonly to_s: number };
  /** Best moment: middle of the window, else the last at which marks level, else at once. */
  readonly best: EdgeMoment;
  readonly onePass: { readonly face_m: Spread; readonly arris_m: Spread };
  /** Coats, each let gel, to the film wanted on the face when worked at the best moment; undefined for more than nine. */
  readonly passes?: number;
  readonly roundOver: {
    readonly radius_m: number;
    readonly arris_m: number;
    /** Film on the arris with it over film now. */
    readonly gain: number;
    readonly worthIt: boolean;
  };
  readonly reasons: readonly Reason[];
}

/**
 * Answers for an edge. Face: Jeffreys 1930. Arris: own solutions on a rounded profile (arris.ts). Run-off: similarity solution with the limit
 * of the top's size, and what a dry arris lets over before it is worked (edge-run-off.ts). Dry arris: Gibbs pinning. Marks on a face are levelled by surface tension alone
 * (Orchard 1962 without weight), judged on the mean film that is left.
 * Worked later, an edge holds more and loses less; only run-off under 0.5 mL per metre may differ, where surface tension pushes some
 * back onto the top. Accuracy: +-22 % by the viscosity; 10 % by the arris.
 * @throws RangeError outside the ranges of {@link EdgeRequest}.
 */
export function edgeAnswers(request: EdgeRequest): EdgeAnswers {
  const { series, down_s, height_m, length_m, arrisRadius_m, topFilm_m, faceFilm_m, wanted_m } = request;
  const liquid = request.liquid ?? DEFAULT_LIQUID;
  positive('length_m', length_m, 'm');
  positive('wanted_m', wanted_m, 'm');
  notNegative('arrisRadius_m', arrisRadius_m, 'm');
  const count = within('moments', request.moments ?? 40, 2, 500, '');
  const angle = request.contactAngle_deg ?? DRY_ARRIS_ANGLE_deg;
  const end_s = series.time_s[series.time_s.length - 1]!;
  within('down_s', down_s, series.time_s[0]!, end_s, 's');
  const at = (time_s: number): EdgeMoment => edgeMoment(request, time_s);
  const moments: EdgeMoment[] = [];
  for (let i = 0; i < count; i++)
    moments.push(at(Math.min(end_s, down_s + ((end_s - down_s) * i) / (count - 1))));

  const workableUntil_s = workableUntil(series, down_s);
  const levelsUntil_s = workableUntil_s === undefined ? undefined : lastLevelling_s(request, workableUntil_s);
  const reach = Math.min(wanted_m, faceFilm_m);
  const enough = Math.min(thetaTotal(series), thetaLeftForFaceMean(height_m, faceFilm_m, reach, liquid));
  const holdsFrom_s = wanted_m > faceFilm_m ? undefined : Math.max(down_s, timeWhenThetaLeft(series, enough));
  const window =
    holdsFrom_s !== undefined && levelsUntil_s !== undefined && holdsFrom_s <= levelsUntil_s
      ? { from_s: holdsFrom_s, to_s: levelsUntil_s }
      : undefined;
  const best = at(window === undefined ? (levelsUntil_s ?? down_s) : (window.from_s + window.to_s) / 2);
  const passes = Math.ceil(wanted_m / best.faceMean_m - 1e-9);
  const pinned = pinnedOnRoundArris(angle, arrisRadius_m, liquid).thickness_m;
  const dry = { holds_m: pinned, staysByItself: topFilm_m <= pinned };
  const rounded_m = arrisFilm_m(
    topFilm_m,
    Math.max(ROUND_OVER_m, arrisRadius_m),
    best.thetaLeft_per_Pa,
    liquid,
  );
  const gain = rounded_m / best.arris_m;
  const roundOver = { radius_m: ROUND_OVER_m, arris_m: rounded_m, gain, worthIt: gain >= ROUND_OVER_WORTH };
  const onePass = {
    face_m: rangeFromViscosity(best.faceMean_m, -0.5),
    arris_m: rangeFromViscosity(best.arris_m, -0.25),
  };
  return {
    moments,
    dry,
    ...(workableUntil_s === undefined ? {} : { workableUntil_s }),
    ...(window === undefined ? {} : { window }),
    best,
    onePass,
    ...(passes <= MOST_PASSES ? { passes } : {}),
    roundOver,
    reasons: edgeReasons({ request, best, dry, roundOver, passes, window: window !== undefined, onePass }),
  };
}

/**
 * What gel finds when the edge is worked at one moment.
 * @param time_s from request.down_s to the end of the series
 * @throws RangeError outside this or the ranges of {@link EdgeRequest}.
 */
export function edgeMoment(request: EdgeRequest, time_s: number): EdgeMoment {
  const liquid = request.liquid ?? DEFAULT_LIQUID;
  within('time_s', time_s, request.down_s, request.series.time_s.at(-1)!, 's');
  const { series, height_m, length_m, arrisRadius_m, topFilm_m, faceFilm_m } = request;
  const thetaLeft_per_Pa = thetaLeftAt(series, time_s);
  const face = faceFilm({ height_m, appliedThickness_m: faceFilm_m, thetaLeft_per_Pa, liquid });
  const loss_m2 = edgeLoss_m2({
    film_m: topFilm_m,
    thetaDry_per_Pa: Math.max(0, thetaLeftAt(series, request.down_s) - thetaLeft_per_Pa),
    thetaLeft_per_Pa,
    edgeLength_m: Math.max(length_m, request.wettedLength_m),
    arrisRadius_m,
    area_m2: request.area_m2,
    contactAngle_deg: request.contactAngle_deg,
    liquid,
  });
  const runOff_m3 = loss_m2 * length_m;
  const shed_m3 = face.drained_m2 * length_m;
  return {
    time_s,
    thetaLeft_per_Pa,
    faceMean_m: face.mean_m,
    faceBottom_m: face.bottom_m,
    arris_m: arrisFilm_m(topFilm_m, arrisRadius_m, thetaLeft_per_Pa, liquid),
    runOff_m3,
    shed_m3,
    floor_m3: Math.max(0, runOff_m3 + shed_m3 - hangingDrop(liquid).storedPerMetre_m2 * length_m),
    marksLevel: thetaLeft_per_Pa > 0 && marksNeed_per_Pa(face.mean_m, liquid) <= thetaLeft_per_Pa,
  };
}

/** Last time from `from_s` on at which the viscosity is workable; exponential between samples. */
function workableUntil(series: FlowBudget, from_s: number): number | undefined {
  const { time_s, viscosity_Pa_s } = series;
  const last = viscosity_Pa_s.findLastIndex((viscosity) => viscosity <= WORKABLE_Pa_s);
  if (last < 0) return undefined;
  let until_s = time_s[last]!;
  if (last + 1 < time_s.length) {
    const rise = Math.log(viscosity_Pa_s[last + 1]! / viscosity_Pa_s[last]!);
    until_s += ((time_s[last + 1]! - until_s) * Math.log(WORKABLE_Pa_s / viscosity_Pa_s[last]!)) / rise;
  }
  return until_s >= from_s ? until_s : undefined;
}

/** Budget that marks of a wrap need on a face: no help from weight. */
function marksNeed_per_Pa(film_m: number, liquid: Liquid): number {
  return thetaToLevel(WRAP_PITCH_m, film_m, MARK_GONE, {
    density_kg_m3: Number.MIN_VALUE,
    surfaceTension_N_m: liquid.surfaceTension_N_m,
  });
}

/** Last moment at which marks level: they do while much budget is left and not when little is. Bisection to 0.1 s. */
function lastLevelling_s(request: EdgeRequest, end_s: number): number | undefined {
  const levels = (time_s: number): boolean => edgeMoment(request, time_s).marksLevel;
  // a face worked very early may drain so thin that its marks stay: look from the end backwards
  const steps = 60;
  let low = end_s;
  for (let i = steps; i >= 0; i--) {
    const time_s = request.down_s + ((end_s - request.down_s) * i) / steps;
    if (levels(time_s)) {
      let high = low;
      low = time_s;
      while (high - low > 0.1) {
        const middle = (low + high) / 2;
        if (levels(middle)) low = middle;
        else high = middle;
      }
      return low;
    }
    low = time_s;
  }
  return undefined;
}
