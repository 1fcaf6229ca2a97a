/**
 * When the edges are worked. The later, the more a face holds and the less runs off (core/film), so the edges wait as long as the plan
 * allows: no step may become the tightest because of it, and the shop's patience is not overdrawn. A film within its working time is
 * far from the point at which marks of a glove stay, so that needs no limit of its own here.
 */
import type { Coat } from '#core/mix/coat.ts';
import type { PieceMeasures } from '#core/piece/piece.ts';
import { formatDuration, formatFilm, formatVolume } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { facesHold_m } from './film-answers.ts';
import type { WrapAdvice } from './plan.ts';
import type { Settled } from './settle.ts';
import type { Judged } from './verdict.ts';

/** A wait is not worth it for less than this share of the run-off, or less than half a fluid ounce (rules of judgement). */
export const LEAST_GAIN_SHARE = 0.05;
export const LEAST_GAIN_m3 = 29.5735295625e-6 / 2;

/** Less than this is told as a few drops, m3. */
const LEAST_TOLD_m3 = 1e-6;

/** Waits are whole minutes. */
const STEP_s = 60;

/**
 * Longest wait, s, in whole minutes up to the patience, with which the pour still fits and its tightest step has no less slack than without;
 * 0 for a pour that is tight or does not fit anyway.
 */
export function longestWait_s(
  patience_s: number,
  atOnce: Judged,
  judgedWith: (wait_s: number) => Judged,
): number {
  if (atOnce.verdict !== 'fits') return 0;
  for (let wait_s = Math.floor(patience_s / STEP_s) * STEP_s; wait_s > 0; wait_s -= STEP_s) {
    const { verdict, slack_s } = judgedWith(wait_s);
    if (verdict === 'fits' && slack_s >= atOnce.slack_s - 1e-6) return wait_s;
  }
  return 0;
}

export interface WrapChoice {
  readonly coat: Coat;
  readonly measures: PieceMeasures;
  readonly patience_s: number;
  readonly atOnce: Settled;
  readonly verdictAtOnce: Judged['verdict'];
  /** Longest wait allowed and the coat settled with it; null: no wait is allowed. */
  readonly waited: { readonly wait_s: number; readonly settled: Settled } | null;
  readonly system: System;
}

const runOff_m3 = ({ quantity }: Settled) =>
  quantity.lines.find((line) => line.key === 'run-off')?.volume_m3 ?? 0;

/** Whether the edges wait, what that brings, and the sentence that says so; null without edges to wrap. */
export function adviseWrap(choice: WrapChoice): WrapAdvice | null {
  const { coat, measures, atOnce, waited, verdictAtOnce, patience_s, system } = choice;
  const at_s = atOnce.laid.wrapFrom_s;
  if (at_s === null) return null;
  const faces = (settled: Settled) => facesHold_m(coat, measures, settled.thetaWhenWrapped_per_Pa);
  const none = {
    wait_s: 0,
    start_s: at_s,
    atOnce_s: at_s,
    savesRunOff_m3: 0,
    faceHolds_m: faces(atOnce),
    faceHoldsAtOnce_m: faces(atOnce),
  };
  const volume = (volume_m3: number) => formatVolume(volume_m3, system);
  if (waited === null) {
    const why =
      verdictAtOnce !== 'fits'
        ? 'this pour has no time to wait'
        : patience_s < STEP_s
          ? 'the shop waits for no edge'
          : 'any wait would leave the tightest step less time';
    return { ...none, says: `Wrap the edges as soon as hands are free: ${why}.` };
  }
  const { wait_s, settled } = waited;
  const saves_m3 = runOff_m3(atOnce) - runOff_m3(settled);
  const says = `waiting ${formatDuration(wait_s)}`;
  if (saves_m3 < LEAST_GAIN_m3 || saves_m3 < LEAST_GAIN_SHARE * runOff_m3(atOnce))
    return {
      ...none,
      says: `Wrap the edges as soon as hands are free: ${says} would save only ${saves_m3 < LEAST_TOLD_m3 ? 'a few drops' : volume(saves_m3)} of the ${volume(runOff_m3(atOnce))} that runs off.`,
    };
  const start_s = settled.laid.wrapFrom_s ?? at_s + wait_s;
  const film = (film_m: number) => formatFilm(film_m, system, { as: 'thickness' });
  const later_m = faces(settled);
  const limit =
    wait_s + STEP_s > patience_s
      ? `${formatDuration(patience_s)} is the longest wait in the shop's rates (common practice, no source)`
      : 'later, the tightest step would have less time';
  return {
    wait_s,
    start_s,
    atOnce_s: at_s,
    savesRunOff_m3: saves_m3,
    faceHolds_m: later_m,
    faceHoldsAtOnce_m: none.faceHolds_m,
    says: `Wrap the edges at ${formatDuration(start_s)}, not at ${formatDuration(at_s)}: wrapping right away would cost ${volume(saves_m3)} more run-off and leave ${film(none.faceHolds_m)} instead of ${film(later_m)} on the faces; ${limit}.`,
  };
}
