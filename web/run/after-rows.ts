/** The pour as it was against the pour as planned, step by step. Pure. */
import type { CoatPlan, Step } from '#core/pour/plan.ts';
import type { RunState } from '#core/pour/run/fold-run.ts';

export interface AfterRow {
  readonly step: Step;
  readonly planned: { readonly start_s: number; readonly lasts_s: number };
  /** null: skipped, or never done. */
  readonly actual: { readonly start_s: number; readonly lasts_s: number } | null;
  readonly skipped: boolean;
}

/** In the order of the plan; keeping hands off is no step anybody takes. */
export function afterRows(plan: CoatPlan, state: RunState): readonly AfterRow[] {
  return plan.steps
    .filter(({ kind }) => kind !== 'hands off')
    .map((step): AfterRow => {
      const known = state.steps.get(step.id);
      return {
        step,
        planned: { start_s: step.start_s, lasts_s: step.end_s - step.start_s },
        actual:
          known?.state === 'done' ? { start_s: known.began_s, lasts_s: known.done_s - known.began_s } : null,
        skipped: known?.state === 'skipped',
      };
    });
}
