/**
 * Quantity, cups and timing hang on each other: how much runs off depends on when the edges are worked, that on how long the
 * cups take, and those on the quantity. They are brought into agreement by a few rounds; the number of cups never falls from one
 * round to the next, so the rounds end.
 */
import type { Coat, CoatQuantity, CupRecipe } from '#core/mix/coat.ts';
import { emptyTime_s, mixTime_s } from '#core/mix/durations.ts';
import { type LargestCup, largestCup } from '#core/mix/largest-cup.ts';
import { coatQuantity, withRounding, wrappedEdges } from '#core/mix/quantity.ts';
import { type CupShare, splitCups, weighCups } from '#core/mix/split-cups.ts';
import type { PieceMeasures } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { spanOf, thetaLeft } from '#core/resin/history.ts';
import type { AirTemperature, Board, CureHistory } from '#core/resin/model.ts';
import type { CupModels } from './cup-times.ts';
import { type FilmRequest, filmOf } from './film-times.ts';
import { type LayOut, layOut, withEdgesLater } from './lay-out.ts';
import type { ShopRates } from './shop-rates.ts';

export interface SettleRequest {
  readonly coat: Coat;
  readonly measures: PieceMeasures;
  readonly board: Board;
  readonly air: AirTemperature;
  readonly rates: ShopRates;
  /** Units of the figures in sentences; US when left out. */
  readonly system?: System;
}

export interface Settled {
  /** With the line for rounding to the scale. */
  readonly quantity: CoatQuantity;
  readonly cups: readonly CupRecipe[];
  readonly laid: LayOut;
  /** Wrapped edge, m. */
  readonly edgeLength_m: number;
  /** Flow budget left when the edges are worked (without edges: when the film is down), 1/Pa. */
  readonly thetaWhenWrapped_per_Pa: number;
  /** Budget spent on dry edges before, from the film being down, 1/Pa. */
  readonly thetaDry_per_Pa: number;
  /** Cups a colour, as shares of the coat. */
  readonly split: readonly CupShare[];
  readonly largest: LargestCup;
  /** The largest cup allowed here, by heat and by the maker, kg. */
  readonly allowed_kg: number;
  /** Film of the first cup, by the card's own model. */
  readonly firstFilm: CureHistory;
}

/** Cups planned when not even a small one can be poured in time: the plan then says by how much it fails. */
export const FALLBACK_CUP_kg = 0.5;

/** How far the viscosity of a resin may be off either way, so the flow budget too (an estimate from memory). */
export const THETA_FACTOR = 1.5;

/** Cups no smaller than this share of the coat are planned, whatever the maker's limit: a hundred cups are no pour. */
export const SMALLEST_SHARE = 0.01;

const ROUNDS = 8;

/**
 * The largest cup: by the safe pour-now time with the slack that makes a pour fit, else without slack, else by the middle
 * estimate (tight at best). The answer told is the one without slack.
 */
function cupLimit(request: SettleRequest, models: CupModels): Pick<Settled, 'largest' | 'allowed_kg'> {
  const { coat, air, rates, system = 'us' } = request;
  const tinted = coat.colours.some((colour) => colour.colourant !== 'none');
  const ask = { air, start: coat.resin, tinted, rates, system };
  const safe = largestCup({ ...ask, models: [models.fast] });
  const tries = [
    () => largestCup({ ...ask, models: [models.fast], spare_s: rates.tightUnder_s }),
    () => safe,
    () => largestCup({ ...ask, models: [models.mid] }),
  ];
  let mass_kg = FALLBACK_CUP_kg;
  for (const attempt of tries) {
    const found = attempt();
    if (!found.possible) continue;
    mass_kg = found.mass_kg;
    break;
  }
  return { largest: safe, allowed_kg: Math.min(mass_kg, coat.largestCup_kg ?? mass_kg) };
}

/** What the film of a laid-out cup starts from. */
export function filmRequestOf(
  request: SettleRequest,
  cup_kg: number,
  at: LayOut['cups'][number],
): FilmRequest {
  return {
    thickness_m: request.coat.film_m,
    board: request.board,
    board_K: request.coat.board_K,
    air: request.air,
    resin: request.coat.resin,
    cup_kg,
    mixed_s: at.mixed_s,
    emptied_s: at.emptied_s,
  };
}

/** What settling starts from when only the wait before the edges is changed. */
export interface SettledWait {
  readonly from: Settled;
  /** Left to stand before the edges are worked, s, from 0. */
  readonly wait_s: number;
}

/**
 * Without `waiting` the edges are worked as soon as hands are free.
 * @throws RangeError when a figure of the request is out of range, such as `fewestCups` above 200.
 */
export function settleCoat(request: SettleRequest, models: CupModels, waiting?: SettledWait): Settled {
  const { coat, measures, rates } = request;
  const { model, mix } = coat.card;
  const { largest, allowed_kg: largest_kg } = waiting?.from ?? cupLimit(request, models);
  const edgeLength_m = wrappedEdges(coat, measures).reduce((sum, edge) => sum + edge.length_m, 0);
  const meld_s =
    coat.kind === 'colour coat' && coat.colours.length > 1
      ? Math.max(rates.leastMeld_s, measures.topArea_m2 * rates.meld_s_per_m2)
      : 0;
  const wrap_s = edgeLength_m / rates.wrap_m_per_s;

  let split: readonly CupShare[] = waiting?.from.split ?? [];
  let theta = waiting?.from.thetaWhenWrapped_per_Pa ?? 0;
  let dry = waiting?.from.thetaDry_per_Pa ?? 0;
  let state: Omit<Settled, 'largest' | 'allowed_kg' | 'edgeLength_m'> | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const shares = split.flatMap(({ cups, share }) => new Array<number>(cups).fill(share));
    const bill = coatQuantity({
      coat,
      measures,
      thetaWhenWrapped_per_Pa: budgetRange(theta),
      thetaDry_per_Pa: budgetRange(dry),
      cups: Math.max(1, shares.length),
      ...(shares.length === 0 ? {} : { cupShares: shares }),
      rates,
    });
    const cup_kg = Math.max(largest_kg, bill.mass_kg * SMALLEST_SHARE);
    const next = splitCups(coat.colours, bill.mass_kg, cup_kg, Math.max(coat.fewestCups, shares.length));
    const sameSplit = next.length === split.length && next.every((part, i) => part.cups === split[i]!.cups);
    split = next;
    if (!sameSplit && round < ROUNDS - 1) continue;
    const cups = weighCups(split, bill.mass_kg, mix, model.density_kg_m3, rates.scaleStep_kg);
    const soonest = layOut({
      cups: cups.map((cup) => workOf(cup, bill, request)),
      crew: coat.crew,
      meld_s,
      wrap_s,
    });
    const laid = withEdgesLater(soonest, waiting?.wait_s ?? 0);
    const firstFilm = filmOf(model, filmRequestOf(request, cups[0]!.mass_kg, laid.cups[0]!));
    const left = thetaAt(firstFilm, laid.wrapped_s - laid.cups[0]!.emptied_s);
    const spent = Math.max(0, thetaAt(firstFilm, laid.down_s - laid.cups[0]!.emptied_s) - left);
    const weighed_kg = cups.reduce((sum, cup) => sum + cup.mass_kg, 0);
    state = {
      quantity: withRounding(bill, weighed_kg, model.density_kg_m3),
      cups,
      laid,
      thetaWhenWrapped_per_Pa: left,
      thetaDry_per_Pa: spent,
      split,
      firstFilm,
    };
    if (edgeLength_m === 0 || Math.abs(left - theta) + Math.abs(spent - dry) <= 0.002 * left) break;
    theta = left;
    dry = spent;
  }
  return { ...state!, largest, allowed_kg: largest_kg, edgeLength_m };
}

/** A budget and what it is when the viscosity is off either way. */
function budgetRange(theta: number) {
  return { low: theta / THETA_FACTOR, mid: theta, high: theta * THETA_FACTOR };
}

/** Flow budget left at a time on the film's clock; before it starts all of it. */
export function thetaAt(film: CureHistory, time_s: number): number {
  const { start_s, end_s } = spanOf(film);
  return thetaLeft(film, Math.min(end_s, Math.max(start_s, time_s)));
}

function workOf(cup: CupRecipe, bill: CoatQuantity, { measures, rates }: SettleRequest) {
  return {
    mix_s: mixTime_s(cup.mass_kg, cup.colourant !== 'none', rates),
    empty_s: emptyTime_s(cup.mass_kg, rates),
    spread_s: ((cup.mass_kg / bill.mass_kg) * measures.topArea_m2) / rates.spread_m2_per_s,
  };
}
