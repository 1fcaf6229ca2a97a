import type { Chance } from '#core/pour/chance/chance.ts';
import type { PourSpreads } from '#core/pour/chance/spreads.ts';
import type { WayChance } from '#core/pour/chance/ways-chance.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { PlanRequest } from '#core/pour/plan-coat.ts';
import type { OrderOffer } from '#core/pour/search/order-of-plan.ts';

export interface ChanceOf {
  readonly request: PlanRequest;
  readonly plan: CoatPlan;
  readonly spreads: PourSpreads;
}

export interface ChanceAsk {
  readonly number: number;
  readonly what: 'chance' | 'ways';
  readonly of: ChanceOf;
}

export type ChanceReply =
  | {
      readonly number: number;
      readonly what: 'chance';
      readonly chance: Chance;
      readonly order: OrderOffer | null;
    }
  | { readonly number: number; readonly what: 'ways'; readonly ways: readonly WayChance[] }
  | { readonly number: number; readonly what: 'failed'; readonly failed: string };
