/**
 * The chance that a pour is finished in time: many pours thrown with drawn durations, temperature and resin. Reliability by Monte
 * Carlo with Latin hypercube sampling (McKay, Beckman and Conover 1979, Technometrics 21, 239) in independent batches, whose scatter
 * gives the error told (batch means).
 */
import { quantileOfSorted } from '#core/numeric/quantile.ts';
import { latinHypercube, normalQuantile, randomStream } from '#core/numeric/random.ts';
import { within } from '#core/quantity/domain.ts';
import { drawModels } from '#core/resin/ensemble.ts';
import type { CoatPlan } from '../plan.ts';
import type { PlanRequest } from '../plan-coat.ts';
import { lossesKept } from './cure-ends.ts';
import { frameOf, type PourFrame } from './frame.ts';
import { type DrawResponse, respond } from './response.ts';
import { checkSpreads, type PourSpreads, type StepSpread, type TimedKind } from './spreads.ts';
import { stepIdsOf, type Thrown, throwPour } from './throw-pour.ts';

export interface ChanceRequest {
  readonly request: PlanRequest;
  readonly plan: CoatPlan;
  readonly spreads: PourSpreads;
  /** Pours thrown, 100 to 1 000 000; default 10 000. */
  readonly pours?: number;
  /** Resins drawn, 2 to 1000; default 48. */
  readonly resins?: number;
  /** Whole number; the same seed gives the same chance. Default 1. */
  readonly seed?: number;
}

export interface StepChance {
  readonly id: string;
  readonly label: string;
  /** Share of all pours in which this step is late, and in which it is the one latest. */
  readonly late: number;
  readonly breaks: number;
}

export interface Chance {
  readonly pours: number;
  /** Share of pours in which every window holds, 0 to 1, and its standard error: of the throwing, and of having drawn so few resins. */
  readonly chance: number;
  readonly standardError: number;
  /** The least slack of a pour, s: 5, 50 and 95 % quantiles. Negative: late. */
  readonly slack: { readonly low_s: number; readonly mid_s: number; readonly high_s: number };
  /** In the order of the plan. */
  readonly steps: readonly StepChance[];
  /** Id of the step that most often breaks; null: none ever did. */
  readonly weakest: string | null;
}

export const DEFAULT_POURS = 10_000;
export const DEFAULT_RESINS = 48;
const BATCHES = 10;
/** One pour in two thousand is further off than this many standard deviations of the temperature; its cups are read there. */
const REACH_z = 3.5;

/** What all pours of a plan share: computed once, thrown from by as many workers as there are. */
export interface ThrowingGround {
  readonly frame: PourFrame;
  readonly responses: readonly DrawResponse[];
  readonly spreads: PourSpreads;
}

/** @throws RangeError for figures out of range, or a plan that is not of the request. */
export function throwingGround(ask: ChanceRequest): ThrowingGround {
  const { request, plan, spreads, resins = DEFAULT_RESINS, seed = 1 } = ask;
  within('resins', resins, 2, 1000);
  checkSpreads(spreads);
  const frame = frameOf(request, plan);
  // the first of the draws is the card's own model, which is no draw
  const models = drawModels(request.coat.card, resins + 1, seed).slice(1);
  const lossOf = lossesKept();
  const reach_K = REACH_z * spreads.temperature_K;
  const responses = models.map((model) => respond(model, frame.response, reach_K, lossOf));
  return { frame, responses, spreads };
}

/** Least slack of each pour of a batch, and the place of the step that has it; `late` counts the pours a step is late in. */
export interface Batch {
  readonly slack_s: Float64Array;
  readonly step: Uint16Array;
  /** Place of the resin it was poured with. */
  readonly resin: Uint16Array;
  readonly late: Uint32Array;
}

/** Throws one batch. Pure: the same ground, count and seed give the same batch. @throws RangeError for a count below 1. */
export function throwBatch(ground: ThrowingGround, count: number, seed: number): Batch {
  const { frame, responses } = ground;
  const steps = stepIdsOf(frame).length;
  const points = latinHypercube(count, 2 * frame.cups.length + 11, randomStream(seed));
  const batch: Batch = {
    slack_s: new Float64Array(count),
    step: new Uint16Array(count),
    resin: new Uint16Array(count),
    late: new Uint32Array(steps),
  };
  const slacks = new Float64Array(steps);
  points.forEach((point, i) => {
    const draw = Math.min(responses.length - 1, Math.floor(point[0]! * responses.length));
    throwPour(frame, responses[draw]!, thrownAt(point, ground), slacks);
    let least = 0;
    for (let k = 0; k < steps; k++) {
      if (slacks[k]! < slacks[least]!) least = k;
      if (slacks[k]! < 0) batch.late[k]! += 1;
    }
    batch.slack_s[i] = slacks[least]!;
    batch.step[i] = least;
    batch.resin[i] = draw;
  });
  return batch;
}

/** A point of the unit cube read as a pour. */
function thrownAt(point: Float64Array, { frame, spreads }: ThrowingGround): Thrown {
  const cups = frame.cups.length;
  const z = (k: number) => normalQuantile(point[k]!);
  const day = z(2);
  const share = Math.sqrt(spreads.common);
  const rest = Math.sqrt(1 - spreads.common);
  const factor = ({ factor: middle, ln }: StepSpread, own: number) =>
    middle * Math.exp(ln * (share * day + rest * own));
  const of = (kind: TimedKind, k: number) => factor(spreads.steps[kind], z(k));
  const { chance, mid_s, ln } = spreads.pause;
  return {
    by_K: spreads.temperature_K * z(1),
    meld: of('meld', 3),
    wrap: of('wrap edges', 4),
    torch: of('torch', 5),
    scrape: of('scrape drips', 6),
    pause:
      point[7]! < chance
        ? { cup: Math.min(cups - 1, Math.floor(point[8]! * cups)), lasts_s: mid_s * Math.exp(ln * z(9)) }
        : null,
    mix: Float64Array.from({ length: cups }, (_, i) => of('mix', 11 + i)),
    pour: Float64Array.from({ length: cups }, (_, i) => of('pour', 11 + cups + i)),
  };
}

/** Chance to finish of a planned coat. @throws RangeError for figures out of range, or a plan that is not of the request. */
export function chanceToFinish(ask: ChanceRequest): Chance {
  const { pours = DEFAULT_POURS, seed = 1 } = ask;
  within('pours', pours, 100, 1_000_000);
  const ground = throwingGround(ask);
  const size = Math.ceil(pours / BATCHES);
  return tellChance(
    ask.plan,
    ground.frame,
    Array.from({ length: BATCHES }, (_, i) => throwBatch(ground, size, batchSeed(seed, i))),
  );
}

export const batchSeed = (seed: number, batch: number) => seed * 7919 + batch;

/** Puts batches together, in whatever order they were thrown. @throws RangeError with fewer than two. */
export function tellChance(plan: CoatPlan, frame: PourFrame, batches: readonly Batch[]): Chance {
  if (batches.length < 2) throw new RangeError(`batches has ${batches.length}; allowed: 2 or more`);
  const pours = batches.reduce((sum, { slack_s }) => sum + slack_s.length, 0);
  const held = batches.map(({ slack_s }) => slack_s.filter((slack) => slack >= 0).length / slack_s.length);
  const chance = batches.reduce((sum, { slack_s }, i) => sum + held[i]! * slack_s.length, 0) / pours;
  const all = new Float64Array(pours);
  const ids = stepIdsOf(frame);
  const breaks = new Uint32Array(ids.length);
  const late = new Uint32Array(ids.length);
  let place = 0;
  for (const batch of batches) {
    all.set(batch.slack_s, place);
    place += batch.slack_s.length;
    batch.late.forEach((count, k) => {
      late[k]! += count;
    });
    batch.step.forEach((k, i) => {
      if (batch.slack_s[i]! < 0) breaks[k]! += 1;
    });
  }
  all.sort();
  const steps = ids.map((id, k) => ({
    id,
    label: labelOf(plan, id),
    late: late[k]! / pours,
    breaks: breaks[k]! / pours,
  }));
  const weakest = steps.reduce((worst, step) => (step.breaks > worst.breaks ? step : worst), steps[0]!);
  return {
    pours,
    chance,
    standardError: Math.sqrt(variance(held) / held.length + resinVariance(batches)),
    slack: {
      low_s: quantileOfSorted(all, 0.05),
      mid_s: quantileOfSorted(all, 0.5),
      high_s: quantileOfSorted(all, 0.95),
    },
    steps,
    weakest: weakest.breaks > 0 ? weakest.id : null,
  };
}

function variance(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
}

/**
 * Variance of the chance for want of more resins: what the resins' own chances differ by beyond the noise of the pours thrown with
 * each, over their number. An upper bound, for the resins are a Latin hypercube too.
 */
function resinVariance(batches: readonly Batch[]): number {
  const thrown = new Map<number, { pours: number; held: number }>();
  for (const { resin, slack_s } of batches)
    resin.forEach((draw, i) => {
      const of = thrown.get(draw) ?? { pours: 0, held: 0 };
      of.pours += 1;
      if (slack_s[i]! >= 0) of.held += 1;
      thrown.set(draw, of);
    });
  const each = [...thrown.values()].filter(({ pours }) => pours > 1);
  if (each.length < 2) return 0;
  const shares = each.map(({ pours, held }) => held / pours);
  const noise = each.reduce((sum, { pours }, k) => sum + (shares[k]! * (1 - shares[k]!)) / (pours - 1), 0);
  return Math.max(0, variance(shares) - noise / each.length) / each.length;
}

/** Several people wrapping have a step each in the plan; the chance has one for all. */
function labelOf(plan: CoatPlan, id: string): string {
  const step = plan.steps.find((each) => each.id === id || (id === 'wrap' && each.kind === 'wrap edges'));
  return step?.label ?? id;
}
