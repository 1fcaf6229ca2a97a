/**
 * When the steps still to do will be done: those done stand where they were, one in hand goes on, the rest follow by the plan's own rules
 * (a cup after the one before, hands off the top before its edges, the plan's minute for the edges) as soon as their person is free.
 */
import { FIRST_TORCH_AFTER_s } from '../after-pour.ts';
import type { CoatPlan, Step } from '../plan.ts';
import type { RunState } from './fold-run.ts';

export interface TimedStep {
  readonly step: Step;
  readonly state: 'done' | 'in hand' | 'to do' | 'skipped';
  /** As it was or, for what is not done, as it is expected. Skipped steps: when they were skipped. */
  readonly start_s: number;
  readonly end_s: number;
}

export interface RemainingRequest {
  readonly plan: CoatPlan;
  readonly state: RunState;
  readonly now_s: number;
  /** Ends of windows that may ask for a step sooner than planned, by kind. */
  readonly closes_s?: { readonly torch: number; readonly gel: number };
  /** Kept free before a window closes, s. */
  readonly spare_s: number;
}

const LATER = new Set<Step['kind']>(['torch', 'scrape drips', 'hands off']);

/** In the order of the plan. */
export function remainingSteps(request: RemainingRequest): readonly TimedStep[] {
  const { plan, state, now_s, closes_s, spare_s } = request;
  const placed = new Map<string, TimedStep>();
  const free = new Map<number, number>();
  const freeOf = (person: number) => free.get(person) ?? 0;
  const place = (step: Step, how: TimedStep['state'], start_s: number, end_s: number) => {
    placed.set(step.id, { step, state: how, start_s, end_s });
    if (how !== 'skipped') free.set(step.person, Math.max(freeOf(step.person), end_s));
  };
  for (const step of plan.steps) {
    const known = state.steps.get(step.id);
    if (known?.state === 'done') place(step, 'done', known.began_s, known.done_s);
    if (known?.state === 'skipped') place(step, 'skipped', known.at_s, known.at_s);
  }
  const begun = plan.steps.filter(({ id }) => state.steps.get(id)?.state === 'begun');
  for (const step of begun) {
    const { began_s } = state.steps.get(step.id) as { readonly began_s: number };
    place(step, 'in hand', began_s, Math.max(now_s, began_s + step.end_s - step.start_s));
  }
  const running = state.started_s !== null && state.finished_s === null;
  const inHand = new Set(begun.map(({ person }) => person));
  const endOf = (id: string) => placed.get(id)?.end_s ?? 0;
  const endsOf = (kind: Step['kind']) =>
    plan.steps.filter((step) => step.kind === kind).map(({ id }) => endOf(id));
  const plannedDown_s = Math.max(
    0,
    ...plan.steps.filter(({ kind }) => kind === 'pour').map(({ end_s }) => end_s),
  );
  const ordered = [...plan.steps].sort(
    (a, b) =>
      Number(LATER.has(a.kind)) - Number(LATER.has(b.kind)) || a.start_s - b.start_s || a.person - b.person,
  );
  for (const step of ordered) {
    if (placed.has(step.id)) continue;
    const lasts_s = step.end_s - step.start_s;
    const free_s = Math.max(now_s, freeOf(step.person));
    const down_s = Math.max(0, ...endsOf('pour'));
    const shift_s = Math.max(0, down_s - plannedDown_s);
    let start_s = free_s;
    if (step.kind === 'mix' && step.person !== 1) {
      // a second pair of hands starts so that the cup is ready when the pourer is
      start_s = Math.max(free_s, freeOf(1) - lasts_s);
    } else if (step.kind === 'pour') start_s = Math.max(free_s, endOf(`mix-${step.cup}`));
    else if (step.kind === 'meld') start_s = Math.max(free_s, down_s);
    else if (step.kind === 'wrap edges') {
      const from_s = step.person === 1 ? Math.max(down_s, ...endsOf('meld')) : down_s;
      start_s = Math.max(free_s, from_s, step.start_s);
    } else if (step.kind !== 'mix') {
      const opens_s = step.kind === 'torch' ? down_s + FIRST_TORCH_AFTER_s : down_s;
      const wanted_s = step.start_s + shift_s;
      const closing_s =
        step.kind === 'torch' ? closes_s?.torch : step.kind === 'scrape drips' ? closes_s?.gel : undefined;
      const latest_s = closing_s === undefined ? wanted_s : Math.max(opens_s, closing_s - lasts_s - spare_s);
      start_s = Math.max(free_s, Math.min(wanted_s, latest_s));
    }
    // what a person could be at now, they are taken to be at
    const how =
      running && start_s <= now_s && !inHand.has(step.person) && !LATER.has(step.kind) ? 'in hand' : 'to do';
    if (how === 'in hand') {
      inHand.add(step.person);
      const since_s = Math.min(now_s, Math.max(freeOf(step.person), state.started_s ?? 0));
      place(step, how, since_s, Math.max(now_s, since_s + lasts_s));
    } else place(step, how, start_s, start_s + lasts_s);
  }
  return plan.steps.map(({ id }) => placed.get(id)!);
}
