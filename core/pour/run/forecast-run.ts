/** Every window of a pour that is under way: from what was done and read so far, what is left to do and until when. */

import { drawByPourNow } from '#core/mix/largest-cup.ts';
import { brent } from '#core/numeric/brent.ts';
import { within } from '#core/quantity/domain.ts';
import { cureCup } from '#core/resin/cup.ts';
import { drawModels } from '#core/resin/ensemble.ts';
import { readState } from '#core/resin/history.ts';
import type { AirTemperature, CureState, ResinModel } from '#core/resin/model.ts';
import { airFrom } from '../clocks.ts';
import { type CupModels, cupForecasts } from '../cup-times.ts';
import { DRAW_TOLERANCE, type FilmTimes, filmTimes } from '../film-times.ts';
import type { LaidOutCup } from '../lay-out.ts';
import { oldestCup } from '../oldest-cup.ts';
import type { CoatPlan, CupForecast, Window } from '../plan.ts';
import type { PlanRequest } from '../plan-coat.ts';
import { filmRequestOf } from '../settle.ts';
import {
  type CupLimits,
  type FilmLimits,
  handsOffWindow,
  type Limit,
  meldWindow,
  mixWindow,
  pourWindow,
  scrapeWindow,
  torchWindow,
  wrapWindow,
} from '../windows.ts';
import { airAsRead } from './air-read.ts';
import type { RunReading, RunState } from './fold-run.ts';
import { remainingSteps, type TimedStep } from './remaining-steps.ts';

export interface RunStep extends TimedStep {
  readonly window: Window;
  /** Safe close less expected end; negative: late. Of a step that is done: as it ended. */
  readonly slack_s: number;
}

export type CupPlace = 'not mixed' | 'standing' | 'empty';

export interface RunCup extends CupForecast {
  readonly place: CupPlace;
  /** Mean temperature now by the card's own model; null unless it stands. */
  readonly temperature_K: number | null;
}

export interface RunForecast {
  readonly now_s: number;
  readonly steps: readonly RunStep[];
  readonly cups: readonly RunCup[];
  readonly film: FilmTimes;
  /** As planned and as read. */
  readonly air: AirTemperature;
  /** How much warmer the resin is than planned, by thermometer readings in the cups, K. */
  readonly resinOff_K: number;
  /** The least slack of what must still be done; null: nothing is left. */
  readonly slack_s: number | null;
  readonly slackStep: string | null;
}

export interface RunForecastRequest {
  readonly request: PlanRequest;
  readonly plan: CoatPlan;
  readonly state: RunState;
  /** On the run's clock. */
  readonly now_s: number;
  /** Resins drawn for the safe ends, 2 to 200; default 16. */
  readonly draws?: number;
  readonly seed?: number;
}

/** How far a reading may move the resin, K: beyond that it is not believed to be of this cup. */
const MOST_OFF_K = 15;

/** @throws RangeError for `draws` or `now_s` out of range. */
export function forecastRun(ask: RunForecastRequest): RunForecast {
  const { request, plan, state, now_s, draws: count = 16, seed = 1 } = ask;
  within('draws', count, 2, 200);
  within('now_s', now_s, -86_400, 864_000, 's');
  const { coat, rates, system = 'us' } = request;
  const air = airAsRead(request.air, state.readings);
  const draws = drawModels(coat.card, count, seed);
  const first = remainingSteps({ plan, state, now_s, spare_s: rates.tightUnder_s });
  const resinOff_K = resinOff(ask, air, cupsLaid(plan, first));
  const start: CureState = { ...coat.resin, temperature_K: coat.resin.temperature_K + resinOff_K };
  const [fast, slow] = drawByPourNow({ models: draws, air, start }, [0.05, 0.95]);
  const models: CupModels = { fast: fast!, mid: coat.card.model, slow: slow! };
  const oldest = oldestCup(plan);
  const asRead = { ...coat, resin: start, board_K: boardAsRead(coat.board_K, state.readings) };
  const film = filmTimes(
    draws,
    filmRequestOf(
      { ...request, air, coat: asRead },
      plan.cups[oldest]!.mass_kg,
      cupsLaid(plan, first)[oldest]!,
    ),
  );
  const limits: FilmLimits = {
    cup: oldest + 1,
    workingEnd: film.stages.workingEnd_s,
    torch: film.torch,
    gel: film.stages.gel_s,
  };
  const closes_s = {
    torch: torchWindow(0, limits).window.closes_s,
    gel: scrapeWindow(0, limits).window.closes_s,
  };
  const timed = remainingSteps({ plan, state, now_s, closes_s, spare_s: rates.tightUnder_s });
  const laid = cupsLaid(plan, timed);
  const forecasts = cupForecasts(models, plan.cups, laid, start, air);
  const down_s = Math.max(0, ...laid.map(({ spread_s }) => spread_s));
  const steps = timed.map((each): RunStep => {
    const { window } = limitOf(each, { laid, forecasts, limits, film, down_s, system });
    return { ...each, window, slack_s: window.closes_s - each.end_s };
  });
  const needed = steps.filter(
    ({ state: how, step }) => (how === 'in hand' || how === 'to do') && !step.optional,
  );
  const least = needed.reduce<RunStep | null>(
    (best, step) => (best === null || step.slack_s < best.slack_s ? step : best),
    null,
  );
  return {
    now_s,
    steps,
    cups: forecasts.map((cup, i) => placeCup(cup, laid[i]!, now_s, coat.card.model)),
    film,
    air,
    resinOff_K,
    slack_s: least?.slack_s ?? null,
    slackStep: least?.step.id ?? null,
  };
}

interface Around {
  readonly laid: readonly LaidOutCup[];
  readonly forecasts: readonly CupForecast[];
  readonly limits: FilmLimits;
  readonly film: FilmTimes;
  readonly down_s: number;
  readonly system: 'us' | 'metric';
}

function limitOf({ step, start_s }: TimedStep, around: Around): Limit {
  const { laid, forecasts, limits, film, down_s, system } = around;
  if (step.cup !== null) {
    const at = laid[step.cup - 1]!;
    const cup: CupLimits = {
      number: step.cup,
      pourNow: forecasts[step.cup - 1]!.pourNow,
      empty_s: at.emptied_s - at.pour_s,
      spread_s: at.spread_s - at.emptied_s,
    };
    return step.kind === 'mix'
      ? mixWindow(start_s, cup, limits, system)
      : pourWindow(start_s, cup, limits, system);
  }
  switch (step.kind) {
    case 'meld':
      return meldWindow(down_s, limits);
    case 'wrap edges':
      return wrapWindow(down_s, limits);
    case 'torch':
      return torchWindow(start_s, limits, system);
    case 'scrape drips':
      return scrapeWindow(start_s, limits);
    default:
      return handsOffWindow(
        start_s,
        film.stages.recoatOpens_s ?? { low_s: start_s, mid_s: start_s, high_s: start_s },
      );
  }
}

/** Times of the cups as they were or are expected; emptying takes the planned share of pouring and spreading. */
function cupsLaid(plan: CoatPlan, timed: readonly TimedStep[]): readonly LaidOutCup[] {
  return plan.cups.map(({ number }, i): LaidOutCup => {
    const of = (kind: 'mix' | 'pour') => timed.find(({ step }) => step.kind === kind && step.cup === number)!;
    const mix = of('mix');
    const pour = of('pour');
    const planned = pour.step.end_s - pour.step.start_s;
    const share = planned > 0 ? (plan.cupForecasts[i]!.emptied_s - pour.step.start_s) / planned : 1;
    return {
      mixed_s: mix.start_s,
      pour_s: pour.start_s,
      emptied_s: pour.start_s + share * (pour.end_s - pour.start_s),
      spread_s: pour.end_s,
    };
  });
}

function boardAsRead(planned_K: number, readings: readonly RunReading[]): number {
  const read = readings.filter(({ of }) => of === 'board');
  return read.length === 0 ? planned_K : read[read.length - 1]!.temperature_K;
}

/**
 * How much warmer the parts must have been for the model's cup to be as warm as read: the last reading in a cup that stood then. The
 * other cups are from the same parts.
 */
function resinOff(ask: RunForecastRequest, air: AirTemperature, laid: readonly LaidOutCup[]): number {
  const { request, plan, state } = ask;
  const { coat } = request;
  const read = state.readings.filter(({ of, cup, at_s }) => {
    const at = of === 'cup' && cup !== null ? laid[cup - 1] : undefined;
    return at !== undefined && at_s > at.mixed_s && at_s <= at.emptied_s + 1;
  });
  const last = read[read.length - 1];
  if (last === undefined) return 0;
  const { mixed_s } = laid[last.cup! - 1]!;
  const after_s = last.at_s - mixed_s;
  const misses_K = (off_K: number) => {
    const history = cureCup({
      model: coat.card.model,
      mass_kg: plan.cups[last.cup! - 1]!.mass_kg,
      air: airFrom(air, mixed_s),
      start: { ...coat.resin, temperature_K: coat.resin.temperature_K + off_K },
      start_s: 0,
      duration_s: after_s,
      tolerance: DRAW_TOLERANCE,
    });
    return readState(history, after_s, coat.card.model).temperature_K - last.temperature_K;
  };
  if (misses_K(-MOST_OFF_K) >= 0) return -MOST_OFF_K;
  if (misses_K(MOST_OFF_K) <= 0) return MOST_OFF_K;
  return brent(misses_K, -MOST_OFF_K, MOST_OFF_K, 0.01);
}

function placeCup(cup: CupForecast, at: LaidOutCup, now_s: number, model: ResinModel): RunCup {
  if (now_s < at.mixed_s) return { ...cup, place: 'not mixed', temperature_K: null };
  if (now_s >= at.emptied_s) return { ...cup, place: 'empty', temperature_K: null };
  return {
    ...cup,
    place: 'standing',
    temperature_K: readState(cup.history, now_s - at.mixed_s, model).temperature_K,
  };
}
