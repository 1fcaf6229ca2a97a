/** Do the readings agree, and if not, which one is it? */
import { chiSquareExceeds, chiSquareQuantile } from '#core/numeric/chi-square.ts';
import type { Network } from './network.ts';

/** How a reading stands to the others. */
export interface ReadingCheck {
  /** Adjusted less measured, m. */
  readonly residual_m: number;
  /** Residual over its own standard deviation; null where nothing checks the reading. */
  readonly standardised: number | null;
  /** Share of an error in this reading that its residual shows, 0 (nothing) to 1. */
  readonly checked: number;
  /** How much too long it reads if all others are right, m; null where nothing checks it. */
  readonly mistake_m: number | null;
}

export interface ChiSquareTest {
  readonly value: number;
  readonly dof: number;
  /** 95 % point: more than this, one survey in twenty with honest readings. */
  readonly limit: number;
  readonly chance: number;
  readonly passes: boolean;
}

export type Verdict =
  /** No reading is checked by another. */
  | { readonly kind: 'unchecked' }
  | { readonly kind: 'agree' }
  /** One reading stands out: the rest agree without it, and no other would do as well. */
  | { readonly kind: 'suspect'; readonly reading: number }
  /** Readings disagree, and leaving out any of these would put it right: measure one of them again. */
  | { readonly kind: 'cannot tell'; readonly readings: readonly number[] }
  /** Leaving out one reading does not put it right; those furthest off first. */
  | { readonly kind: 'several'; readonly readings: readonly number[] };

/** A reading less checked than this says nothing by its residual. */
const CHECKED = 1e-6;
/** 0.1 % two-sided: W. Baarda 1968, A Testing Procedure for Use in Geodetic Networks. */
const STANDS_OUT = 3.29;

/** Chi-square test of the weighted squares at 5 %; null without a check. */
export function chiSquareTest(network: Network): ChiSquareTest | null {
  const { dof, weightedSquares: value } = network;
  if (dof < 1) return null;
  const limit = chiSquareQuantile(0.95, dof);
  return { value, dof, limit, chance: chiSquareExceeds(value, dof), passes: value <= limit };
}

/** Residuals against what each one should scatter by: v / (sigma sqrt(r)), r the checked share (Baarda 1968). */
export function checkReadings(network: Network, sigmas_m: readonly number[]): ReadingCheck[] {
  return network.residuals_m.map((residual_m, i) => {
    const checked = network.checked[i]!;
    if (checked < CHECKED) return { residual_m, standardised: null, checked: 0, mistake_m: null };
    return {
      residual_m,
      standardised: residual_m / (sigmas_m[i]! * Math.sqrt(checked)),
      checked,
      mistake_m: -residual_m / checked,
    };
  });
}

/**
 * Data snooping with the sigmas known beforehand: leaving out reading i lowers the weighted squares by its standardised residual
 * squared. Another reading does as well when the two drops differ by less than 3.841 (95 % of chi-square, one degree). With one
 * degree of freedom all drops are equal, so no single reading can be blamed.
 */
export function judge(test: ChiSquareTest | null, checks: readonly ReadingCheck[]): Verdict {
  if (test === null) return { kind: 'unchecked' };
  const drops = checks.map(({ standardised }) => (standardised ?? 0) ** 2);
  const order = drops.map((_, i) => i).sort((i, j) => drops[j]! - drops[i]!);
  const first = order[0]!;
  if (test.passes && drops[first]! <= STANDS_OUT ** 2) return { kind: 'agree' };
  const left = test.dof - 1;
  const heals = (i: number) => {
    const rest = Math.max(0, test.value - drops[i]!);
    return left === 0 ? rest < 1e-6 * test.value + 1e-9 : rest <= chiSquareQuantile(0.95, left);
  };
  const near = chiSquareQuantile(0.95, 1);
  const alike = order.filter((i) => drops[first]! - drops[i]! < near && heals(i));
  if (alike.length === 0)
    return { kind: 'several', readings: order.filter((i) => drops[i]! > 4).slice(0, 6) };
  return alike.length === 1 ? { kind: 'suspect', reading: first } : { kind: 'cannot tell', readings: alike };
}
