/** The cups of a plan as the search takes them, and what another order, or other hands, would bring. Offered, never put in. */
import { filmEnds } from '../chance/cure-ends.ts';
import { CUP_SPAN_s } from '../cup-times.ts';
import { layOut } from '../lay-out.ts';
import { oldestCup } from '../oldest-cup.ts';
import type { CoatPlan } from '../plan.ts';
import type { PlanRequest } from '../plan-coat.ts';
import { filmRequestOf } from '../settle.ts';
import { type FoundOrder, type SearchRequest, searchOrder } from './search-order.ts';
import type { SearchCup } from './timing.ts';

export interface OrderTurn {
  /** Number of the cup in the plan, from 1. */
  readonly cup: number;
  readonly colour: string;
  readonly mixer: number;
}

export interface OrderOffer {
  /** Least slack over cups and films as planned, edges worked at once, s; negative: late. */
  readonly now_s: number;
  readonly then_s: number;
  readonly turns: readonly OrderTurn[];
  /** The cups come in another order; else only the hands differ. */
  readonly reorders: boolean;
  /** No order leaves more than this, s; `then_s` where the search ended by itself. */
  readonly bound_s: number;
  readonly proven: boolean;
}

/** What is gained must be worth a change of the look, s. Our own choice. */
export const WORTH_OFFERING_s = 15;

/** Working life of a film nobody has seen the end of. */
const LONG_s = 86_400;

/**
 * The plan as a search: the cups' safe pour-now times, and for each cup the working life of its film, from the card's own model, shortened to
 * the safe end as that of the plan's oldest film is.
 */
export function searchOf(request: PlanRequest, plan: CoatPlan): SearchRequest {
  const oldest = oldestCup(plan);
  const { model } = request.coat.card;
  const lifeOf = (index: number) => {
    const at = plan.cupForecasts[index]!;
    const { workingEnd_s } = filmEnds(
      model,
      filmRequestOf(request, plan.cups[index]!.mass_kg, {
        mixed_s: at.mixed_s,
        pour_s: at.emptied_s,
        emptied_s: at.emptied_s,
        spread_s: at.emptied_s,
      }),
    );
    return workingEnd_s ?? LONG_s;
  };
  const lives = new Map<number, number>();
  const life_s = (index: number) => {
    const { mass_kg } = plan.cups[index]!;
    const known = lives.get(mass_kg) ?? lifeOf(index);
    lives.set(mass_kg, known);
    return known;
  };
  const told = plan.stages.find(({ key }) => key === 'working end')?.at ?? null;
  const from_s = plan.cupForecasts[oldest]!.mixed_s;
  const safe = told === null ? 1 : Math.max(0.05, (told.low_s - from_s) / Math.max(1, life_s(oldest)));
  const cups = plan.cups.map(({ number }, i): SearchCup => {
    const at = plan.cupForecasts[i]!;
    const step = (kind: 'mix' | 'pour') =>
      plan.steps.find((each) => each.kind === kind && each.cup === number)!;
    const [mix, pour] = [step('mix'), step('pour')];
    return {
      mix_s: mix.end_s - mix.start_s,
      empty_s: at.emptied_s - pour.start_s,
      spread_s: pour.end_s - at.emptied_s,
      pourNow_s: at.pourNow === null ? CUP_SPAN_s : Math.max(1, at.pourNow.low_s - at.mixed_s),
      working_s: life_s(i) * safe,
    };
  });
  return { cups, crew: request.coat.crew, after_s: after_s(request, plan) };
}

/** Melding and edges one after the other for one person, side by side for more. */
function after_s({ coat: { crew } }: PlanRequest, plan: CoatPlan): number {
  const laid = layOut({ cups: [{ mix_s: 0, empty_s: 0, spread_s: 0 }], crew, ...topWork(plan) });
  return laid.done_s - laid.down_s;
}

function topWork(plan: CoatPlan) {
  const total = (kind: 'meld' | 'wrap edges') =>
    plan.steps
      .filter((step) => step.kind === kind)
      .reduce((sum, { start_s, end_s }) => sum + end_s - start_s, 0);
  return { meld_s: total('meld'), wrap_s: total('wrap edges') };
}

/** Least slack of the cups as the plan lays them out, edges at once. */
export function slackAsPlanned_s({ cups, crew, after_s: rest_s }: SearchRequest): number {
  const laid = layOut({ cups, crew, meld_s: 0, wrap_s: 0 });
  const done_s = laid.down_s + rest_s;
  return Math.min(
    ...cups.map((cup, i) => {
      const { mixed_s, emptied_s } = laid.cups[i]!;
      return Math.min(mixed_s + cup.pourNow_s - emptied_s, mixed_s + cup.working_s - done_s);
    }),
  );
}

/** @returns null where the plan's own order is within a quarter of a minute of the best found. */
export function betterOrder(request: PlanRequest, plan: CoatPlan): OrderOffer | null {
  const search = searchOf(request, plan);
  const now_s = slackAsPlanned_s(search);
  const found: FoundOrder = searchOrder(search);
  if (found.slack_s < now_s + WORTH_OFFERING_s) return null;
  return {
    now_s,
    then_s: found.slack_s,
    turns: found.turns.map(({ cup, mixer }) => {
      const { number, colour } = plan.cups[cup]!;
      return { cup: number, colour, mixer };
    }),
    reorders: found.turns.some(({ cup }, k) => cup !== k),
    bound_s: found.bound_s,
    proven: found.proven,
  };
}
