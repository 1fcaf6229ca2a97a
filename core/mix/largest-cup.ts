/** The largest cup that can still be mixed, tinted and poured before it heats up. */

import { formatDuration, formatMass, formatTemperature } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { cureCup } from '#core/resin/cup.ts';
import type { AirTemperature, CureState, ResinModel } from '#core/resin/model.ts';
import { cupStages } from '#core/resin/stages.ts';
import { type CupRates, standTime_s } from './durations.ts';

export interface LargestCupRequest {
  /** Models the resin may have (`drawModels`); one model is taken as it is. */
  readonly models: readonly ResinModel[];
  readonly air: AirTemperature;
  /** Parts when they meet. */
  readonly start: CureState;
  readonly start_s?: number;
  readonly tinted: boolean;
  readonly rates: CupRates;
  /** Time that must be left over, from 0; default 0. */
  readonly spare_s?: number;
  /** Units of the figures in `why`; US when left out. */
  readonly system?: System;
}

export type LargestCup =
  | {
      readonly possible: true;
      readonly mass_kg: number;
      /** heat: the pour-now time; handling: heavier cups are not looked at. */
      readonly limitedBy: 'heat' | 'handling';
      /** Safe pour-now time of a cup of this mass, from its parts meeting; null: later than it has to stand by far. */
      readonly pourNow_s: number | null;
      readonly stands_s: number;
    }
  | { readonly possible: false; readonly why: string; readonly pourNow_s: number; readonly stands_s: number };

/** Cups looked at: below, nobody mixes for a top; above, nobody lifts and pours in one go. Common practice, no source. */
export const SMALLEST_CUP_kg = 0.1;
export const HEAVIEST_CUP_kg = 10;

/** Mass at which the draws are put in order of pour-now time. */
const ORDERING_MASS_kg = 1;
const ORDERING_SPAN_s = 4 * 3600;
/** For ordering draws and finding a mass; times come out within about half a percent. */
const QUICK = { relative: 1e-4, conversion: 1e-5, temperature: 0.01 } as const;

/**
 * The draw with a share of the ensemble before it, by the pour-now time of a cup of 1 kg (or the mass given). One draw stands for a
 * quantile at every mass, which keeps masses comparable. Draws that never get there come last. With share 0.05 it is the
 * draw at or just before the 5 % quantile.
 */
export function drawByPourNow(
  request: Pick<LargestCupRequest, 'models' | 'air' | 'start' | 'start_s'>,
  shares: readonly number[],
  mass_kg = ORDERING_MASS_kg,
): readonly ResinModel[] {
  const { models } = request;
  if (models.length === 0) throw new RangeError('models is empty; allowed: one or more');
  if (models.length === 1) return shares.map(() => models[0]!);
  const order = models
    .map((model) => ({ model, at: pourNowOf(model, mass_kg, request, ORDERING_SPAN_s) ?? Number.MAX_VALUE }))
    .sort((a, b) => a.at - b.at);
  return shares.map((share) => {
    const place = share * (models.length - 1);
    return order[share <= 0.5 ? Math.floor(place) : Math.ceil(place)]!.model;
  });
}

/** Pour-now time of a cup from its parts meeting, s; null when not reached within the span. */
function pourNowOf(
  model: ResinModel,
  mass_kg: number,
  { air, start, start_s = 0 }: Pick<LargestCupRequest, 'air' | 'start' | 'start_s'>,
  span_s: number,
): number | null {
  const history = cureCup({ model, mass_kg, air, start, start_s, duration_s: span_s, tolerance: QUICK });
  const at = cupStages(history, model).pourNow_s;
  return at === null ? null : at - start_s;
}

/**
 * The largest mass whose safe pour-now time (5 % quantile of the draws: 40 C, or 8 % of the reaction used up) is not earlier than the
 * time it has to stand (mix + tint + pour of that mass) plus the spare. Heavier cups stand longer and heat sooner, so there is
 * one such mass; found by bisection on its logarithm to 0.5 %, rounded down.
 * @throws RangeError for an empty list of models or a spare below 0.
 */
export function largestCup(request: LargestCupRequest): LargestCup {
  const { tinted, rates, spare_s = 0, system = 'us' } = request;
  if (!(spare_s >= 0)) throw new RangeError(`spare_s is ${spare_s}; allowed: 0 or more`);
  const model = drawByPourNow(request, [0.05])[0]!;
  const look = (mass_kg: number) => {
    const stands_s = standTime_s(mass_kg, tinted, rates);
    const pourNow_s = pourNowOf(model, mass_kg, request, stands_s + spare_s + 1);
    return { mass_kg, stands_s, pourNow_s, fine: pourNow_s === null || pourNow_s >= stands_s + spare_s };
  };
  const least = look(SMALLEST_CUP_kg);
  if (!least.fine) {
    const pourNow_s = least.pourNow_s!;
    return {
      possible: false,
      pourNow_s,
      stands_s: least.stands_s,
      why: `No cup of this resin at ${formatTemperature(request.start.temperature_K, system)} can be poured in time: even ${formatMass(SMALLEST_CUP_kg)} may have to be out ${formatDuration(pourNow_s)} after the parts meet, and mixing and pouring take ${formatDuration(least.stands_s)}${spare_s > 0 ? ` with ${formatDuration(spare_s)} to spare` : ''}.`,
    };
  }
  const most = look(HEAVIEST_CUP_kg);
  if (most.fine) return { possible: true, ...pick(most), limitedBy: 'handling' };
  let low = least;
  let high = most.mass_kg;
  while (high > low.mass_kg * 1.005) {
    const middle = look(Math.sqrt(low.mass_kg * high));
    if (middle.fine) low = middle;
    else high = middle.mass_kg;
  }
  return { possible: true, ...pick(low), limitedBy: 'heat' };
}

function pick(look: { mass_kg: number; stands_s: number; pourNow_s: number | null }) {
  return { mass_kg: look.mass_kg, stands_s: look.stands_s, pourNow_s: look.pourNow_s };
}
