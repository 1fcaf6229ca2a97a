/**
 * How far off its ratio a mix may be. Groups that find no partner act like missing conversion: the glass transition of the
 * cured film falls by about 10 K at 5 % error and 18 K at 10 % for a coating resin (DiBenedetto relation with the limiting
 * group fully reacted, see core/resin/mix-error.ts), and at about 8 % it is no longer above a warm shop. Hence: up to 3 %
 * fine, up to 10 % a warning, beyond that the cup is not poured. The steps are common practice, no source.
 */
import { fixed } from '#core/quantity/rounding.ts';
import type { CupRecipe } from './coat.ts';

export const RATIO_FINE = 0.03;
export const RATIO_SOFT = 0.08;
export const RATIO_REFUSED = 0.1;

export interface RatioVerdict {
  readonly verdict: 'fine' | 'warn' | 'refuse';
  /** |rounding| + what the scale can add. */
  readonly error: number;
  /** null when fine. */
  readonly says: string | null;
}

/**
 * The smaller part below which a scale of this step cannot hold 3 %: half a step of rounding and half a step of the scale.
 * Worked: 1 g -> 33.3 g, so "below about 35 g".
 * @param step_kg above 0 @throws RangeError otherwise.
 */
export function leastPart_kg(step_kg: number): number {
  if (!(step_kg > 0)) throw new RangeError(`step_kg is ${step_kg}; allowed: more than 0`);
  return step_kg / RATIO_FINE;
}

const grams = (mass_kg: number, step_kg: number) =>
  `${fixed(mass_kg * 1000, Math.max(0, Math.min(3, Math.ceil(-Math.log10(step_kg * 1000) - 1e-9))))} g`;

/** Whether a cup as weighed on this scale keeps its ratio, and if not, what to do. */
export function judgeRatio(
  cup: Pick<CupRecipe, 'number' | 'partA_kg' | 'partB_kg' | 'ratioError' | 'scaleError'>,
  scaleStep_kg: number,
): RatioVerdict {
  const error = Math.abs(cup.ratioError) + cup.scaleError;
  if (error <= RATIO_FINE) return { verdict: 'fine', error, says: null };
  const small = cup.partB_kg <= cup.partA_kg ? 'B' : 'A';
  const part_kg = Math.min(cup.partA_kg, cup.partB_kg);
  const off = error > 1 ? 'more than 100%' : `${fixed(error * 100, 1)}%`;
  const facts = `Cup ${cup.number}: part ${small} is ${grams(part_kg, scaleStep_kg)}; on a scale of ${grams(scaleStep_kg, scaleStep_kg)} steps the ratio can be ${off} off`;
  const remedy = `part ${small} below ${grams(Math.ceil(1 / RATIO_FINE) * scaleStep_kg, scaleStep_kg)} cannot meet 3%: weigh on a finer scale or mix more at once and split it`;
  if (error > RATIO_REFUSED)
    return { verdict: 'refuse', error, says: `${facts}. Do not pour it: ${remedy}.` };
  const soft = error > RATIO_SOFT ? ' It may never get hard.' : '';
  return { verdict: 'warn', error, says: `${facts}; ${remedy}.${soft}` };
}
