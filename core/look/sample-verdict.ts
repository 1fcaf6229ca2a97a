/** A made sample beside the agreed colour: how far apart, and what that means in words. */
import { notNegative } from '#core/quantity/domain.ts';
import { colourDifference } from './colour-difference.ts';
import type { Lab } from './lab.ts';

/**
 * Below 1 nobody sees it side by side, 2 is a careful match, 5 is the same colour word (common practice, no source; the
 * CIEDE2000 unit is about what can just be seen).
 */
export const SAMPLE_LIMITS = { unseen: 1, match: 2, near: 5 } as const;

export type Verdict = 'matches' | 'near' | 'differs' | 'cannot tell';

export interface SampleVerdict {
  readonly difference: number;
  readonly verdict: Verdict;
  /** Whether the sample is lighter or darker, redder or greener, yellower or bluer; the largest part first, none below 0.5. */
  readonly towards: readonly string[];
}

/**
 * Delta E 2000 of the sample and the verdict. `error` is that of the reading (0 for an instrument): where the whole range of the
 * difference does not fall on one side of the limit, nothing can be told. Error 0 or more, else RangeError.
 */
export function judgeSample(agreed: Lab, made: Lab, error = 0): SampleVerdict {
  notNegative('error', error, '');
  const difference = colourDifference(agreed, made);
  const [least, most] = [word(Math.max(0, difference - error)), word(difference + error)];
  const verdict: Verdict = least === most ? least : 'cannot tell';
  const parts = [
    { by: made[0] - agreed[0], more: 'lighter', less: 'darker' },
    { by: made[1] - agreed[1], more: 'redder', less: 'greener' },
    { by: made[2] - agreed[2], more: 'yellower', less: 'bluer' },
  ];
  return {
    difference,
    verdict,
    towards: parts
      .filter(({ by }) => Math.abs(by) >= 0.5)
      .sort((a, b) => Math.abs(b.by) - Math.abs(a.by))
      .map(({ by, more, less }) => (by > 0 ? more : less)),
  };
}

function word(difference: number): Exclude<Verdict, 'cannot tell'> {
  if (difference <= SAMPLE_LIMITS.match) return 'matches';
  return difference <= SAMPLE_LIMITS.near ? 'near' : 'differs';
}
