/** What was approved, beside what there is now. Pure. */
import type { LookDocument } from '#core/look/look-document.ts';

export type ApprovalState = 'none' | 'as it is' | 'changed';

export function approvalState(approved: LookDocument['approved'], hash: string): ApprovalState {
  if (approved === null) return 'none';
  return approved.hash === hash ? 'as it is' : 'changed';
}

/** "panel B3, by A. Hart."; without a panel "by A. Hart, without a sample." */
export function sampleWords(by: string, sample: string): string {
  const [who, panel] = [by.trim(), sample.trim()];
  return panel === '' ? `by ${who}, without a sample.` : `panel ${panel}, by ${who}.`;
}
