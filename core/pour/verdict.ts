/** Does the pour fit? The verdict over all steps that must be done, and the sentence that says it. */
import { formatDuration } from '#core/quantity/format.ts';
import type { Verdict } from './plan.ts';
import type { LimitedStep } from './steps.ts';

export interface Judged {
  readonly verdict: Verdict;
  readonly slack_s: number;
  readonly slackStep: string;
  readonly says: string;
}

/** Rounding noise of times, s. */
const NOISE_s = 1e-6;

/**
 * fits: every step has at least the slack asked. tight: less, or a cup is out after its safe (5 %) pour-now time but before the
 * middle one. does not fit: a step ends after its window.
 */
export function judge(steps: readonly LimitedStep[], tightUnder_s: number, cups: number): Judged {
  const needed = steps.filter((step) => !step.optional);
  if (needed.length === 0) throw new RangeError('steps is empty; allowed: at least one that must be done');
  // Of a mix and its pour with the same slack it is the pour that is late.
  const least = needed.reduce((best, step) =>
    step.slack_s < best.slack_s - NOISE_s ||
    (best.kind === 'mix' && step.kind === 'pour' && step.slack_s < best.slack_s + NOISE_s)
      ? step
      : best,
  );
  const past = needed
    .filter((step) => step.end_s > step.hard_s + NOISE_s)
    .reduce<LimitedStep | null>(
      (worst, step) =>
        worst === null || step.end_s - step.hard_s > worst.end_s - worst.hard_s + NOISE_s ? step : worst,
      null,
    );
  const verdict: Verdict =
    past !== null ? 'does not fit' : least.slack_s < tightUnder_s - NOISE_s ? 'tight' : 'fits';
  const down = Math.max(...needed.filter((step) => step.kind === 'pour').map((step) => step.end_s));
  return {
    verdict,
    slack_s: least.slack_s,
    slackStep: least.id,
    says: sentence(verdict, least, past, cups, down),
  };
}

const lower = (label: string) => label.charAt(0).toLowerCase() + label.slice(1);

function sentence(
  verdict: Verdict,
  least: LimitedStep,
  past: LimitedStep | null,
  cups: number,
  down_s: number,
): string {
  const poured = `${cups === 1 ? 'one cup is' : `${cups} cups are`} down after ${formatDuration(down_s)}`;
  const { window } = least;
  const closes = `${window.limit} at ${formatDuration(window.closesMid_s)}, perhaps as early as ${formatDuration(window.closes_s)}`;
  if (verdict === 'fits')
    return `It fits: ${poured}, and the tightest step, "${lower(least.label)}", has ${formatDuration(least.slack_s)} to spare (${closes}).`;
  if (past !== null)
    return `It does not fit: "${lower(past.label)}" ends at ${formatDuration(past.end_s)}, ${formatDuration(past.end_s - past.hard_s)} too late (${past.window.limit} at ${formatDuration(past.window.closesMid_s)}, perhaps as early as ${formatDuration(past.window.closes_s)}).`;
  if (least.slack_s < 0)
    return `It is tight: ${poured}, but "${lower(least.label)}" ends ${formatDuration(-least.slack_s)} after the safe time (${closes}).`;
  return `It is tight: ${poured}, but "${lower(least.label)}" has only ${formatDuration(least.slack_s)} to spare (${closes}).`;
}
