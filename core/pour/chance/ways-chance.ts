/** The ways out ranked by the chance each one gives, with what it costs beside it. */
import type { CoatPlan, WayOut } from '../plan.ts';
import { type PlanRequest, planCoat } from '../plan-coat.ts';
import { openWays } from '../ways-out.ts';
import { type Chance, chanceToFinish } from './chance.ts';
import type { PourSpreads } from './spreads.ts';

/** What a way asks for beyond the plan as it is; negative: it saves. */
export interface WayCost {
  /** Mixed resin, kg. */
  readonly resin_kg: number;
  /** Hands at work until the last one leaves the film, s of all people together. */
  readonly hands_s: number;
  readonly people: number;
  /** The next coat may go on so much later, s; null: not within a month, with or without. */
  readonly recoat_s: number | null;
}

export interface WayChance extends Omit<WayOut, 'verdict' | 'slack_s'> {
  readonly chance: Chance;
  readonly cost: WayCost;
}

export interface WaysChanceRequest {
  readonly request: PlanRequest;
  readonly plan: CoatPlan;
  readonly spreads: PourSpreads;
  /** Of each way: default 2000 pours with 32 resins, all with the same draws, so that ways differ by what they do. */
  readonly pours?: number;
  readonly resins?: number;
  readonly seed?: number;
}

/** @throws RangeError as `chanceToFinish` does. */
export function waysByChance(ask: WaysChanceRequest): readonly WayChance[] {
  const { request, plan, spreads, pours = 2000, resins = 32, seed = 1 } = ask;
  return openWays(request, plan)
    .map(({ way, request: again }): WayChance => {
      const then = planCoat({ ...again, waysOut: false });
      // two stages are two pours alike: both must hold, and both cost
      const times = way.key === 'two stages' ? 2 : 1;
      const chance = chanceToFinish({ request: again, plan: then, spreads, pours, resins, seed });
      return {
        ...way,
        chance: times === 1 ? chance : { ...chance, chance: chance.chance ** times },
        cost: {
          resin_kg: times * then.quantity.mass_kg - plan.quantity.mass_kg,
          hands_s: times * handsOf(then) - handsOf(plan),
          people: again.coat.crew - request.coat.crew,
          recoat_s: later(recoat_s(then), recoat_s(plan), times),
        },
      };
    })
    .sort((a, b) => b.chance.chance - a.chance.chance);
}

const handsOf = (plan: CoatPlan) =>
  plan.steps
    .filter(({ kind }) => kind !== 'hands off')
    .reduce((sum, { start_s, end_s }) => sum + end_s - start_s, 0);

const recoat_s = (plan: CoatPlan) => plan.stages.find(({ key }) => key === 'recoat opens')?.at?.mid_s ?? null;

const later = (then: number | null, now: number | null, times: number) =>
  then === null || now === null ? null : times * then - now;
