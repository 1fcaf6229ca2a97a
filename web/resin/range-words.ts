/** Ranges of times in words. Pure. */
import type { ReachedRange } from '#core/resin/ensemble.ts';
import { afterPourText } from '#web/charts/time-text.ts';

/** "36 to 56 min"; "7 to 18 h"; "9 h or later" when some of the draws never get there; "not within 30 days". */
export function spanText(range: ReachedRange | null): string {
  if (range === null) return 'not within 30 days';
  const low = afterPourText(range.low_s);
  if (range.reached < 0.95) return `${low} or later`;
  const high = afterPourText(range.high_s);
  if (low === high) return low;
  const [figure, unit] = low.split(' ');
  return unit === high.split(' ')[1] ? `${figure} to ${high}` : `${low} to ${high}`;
}

/** "16 % narrower", "12 % wider", "as wide as before": a share of the width after, against before. */
export function narrowedText(share: number | null): string {
  if (share === null) return '';
  const percent = Math.round(Math.abs(1 - share) * 100);
  if (percent < 1) return 'as wide as before';
  return `${percent} % ${share < 1 ? 'narrower' : 'wider'}`;
}
