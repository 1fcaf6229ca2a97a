import { cholesky, choleskyInverse, choleskySolve, type Matrix } from '#core/numeric/cholesky.ts';
import { formatDuration } from '#core/quantity/format.ts';
import { COORDINATES, type CoordinateName } from './coordinates.ts';
import type { ModeFit } from './mode.ts';
import type { FigureAccount, Tension } from './model.ts';
import type { Term } from './term.ts';

/** A figure contradicts the rest when it lies this many standard deviations from what the rest leads to. */
export const TENSION_SD = 2;

/** Coordinates that say how the reaction runs; the others say what is called workable, dry, thick. */
const KINETIC: readonly CoordinateName[] = ['timingLn', 'rhoLn', 'order', 'activation_kJ_mol'];

/** A figure that narrows no kinetic coordinate by more than this carries no kinetic information. */
const NO_NEWS = 0.98;

/** The fit without one term, to first order (exact for a linear model): where it would go, and how wide it would be. */
interface Without {
  readonly move: readonly number[];
  readonly covariance: Matrix;
  /** Half the difference of ln det of the precisions, in bits: what the term tells given all others. */
  readonly bits: number;
}

/**
 * What each term tells and whether it fits the others. Each is left out in turn (leave-one-out in the linearised problem, where it
 * needs no new fit): the distance of the term from what the others lead to, in units of both uncertainties, is its tension.
 */
export function accountOf(
  terms: readonly Term[],
  sources: readonly FigureAccount['source'][],
  fit: ModeFit,
): { readonly figures: readonly FigureAccount[]; readonly tensions: readonly Tension[] } {
  const without = terms.map((_, i) => leaveOut(fit, i));
  const stands = terms.map((_, i) => {
    const { slope, residual } = joined(fit, i);
    const { move, covariance } = without[i]!;
    const left = residual + dot(slope, move);
    const variance = dot(
      slope,
      covariance.map((row) => dot(row, slope)),
    );
    return { left, sd: Math.sqrt(1 + variance) };
  });
  const figures = terms.map((term, i): FigureAccount => {
    const narrowed = KINETIC.map((name) => {
      const k = COORDINATES.findIndex((each) => each.name === name);
      return Math.sqrt(fit.covariance[k]![k]! / without[i]!.covariance[k]![k]!);
    });
    const all = COORDINATES.map((_, k) => Math.sqrt(fit.covariance[k]![k]! / without[i]!.covariance[k]![k]!));
    const most = Math.min(...all);
    return {
      said: term.said,
      source: sources[i]!,
      away_sd: stands[i]!.left / stands[i]!.sd,
      bits: Math.max(0, without[i]!.bits),
      kinetic: Math.min(...narrowed) < NO_NEWS,
      taught: most < NO_NEWS ? COORDINATES[all.indexOf(most)]!.about : null,
      narrowedTo: most,
    };
  });
  return { figures, tensions: tensionsOf(terms, fit, without, stands) };
}

function tensionsOf(
  terms: readonly Term[],
  fit: ModeFit,
  without: readonly Without[],
  stands: readonly { readonly left: number; readonly sd: number }[],
): Tension[] {
  const found: Tension[] = [];
  const told = new Set<string>();
  terms.forEach((term, i) => {
    const { left, sd } = stands[i]!;
    if (Math.abs(left / sd) <= TENSION_SD) return;
    const { slope, residual } = joined(fit, i);
    // The partner: without which this term would come closest.
    let partner = -1;
    let relief = 0.05 * Math.abs(residual);
    terms.forEach((_, j) => {
      if (j === i) return;
      const eased = Math.abs(residual) - Math.abs(residual + dot(slope, without[j]!.move));
      if (eased > relief) {
        relief = eased;
        partner = j;
      }
    });
    const other = partner < 0 ? null : terms[partner]!.said;
    const key = [term.said, other ?? ''].sort().join('|');
    if (told.has(key)) return;
    told.add(key);
    const expected =
      term.told === undefined ? null : term.told.time_s * Math.exp(limited(left * term.told.sdLn));
    const instead =
      expected === null ? '' : `; without it about ${formatDuration(expected)} would be expected`;
    found.push({
      said: term.said,
      against: other,
      away_sd: left / sd,
      words:
        other === null
          ? `${capital(term.said)} is not what such resins do${instead}.`
          : `${capital(term.said)} and ${other} do not fit one resin${instead}.`,
    });
  });
  return found;
}

const limited = (value: number): number => Math.min(3, Math.max(-3, value));
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** A term of several residuals as one of unit variance: their sum over the root of their number. */
function joined(fit: ModeFit, i: number): { readonly slope: number[]; readonly residual: number } {
  const rows = fit.slopes[i]!;
  const scale = 1 / Math.sqrt(rows.length);
  return {
    slope: COORDINATES.map((_, k) => scale * rows.reduce((sum, row) => sum + row[k]!, 0)),
    residual: scale * fit.residuals[i]!.reduce((sum, value) => sum + value, 0),
  };
}

function leaveOut(fit: ModeFit, i: number): Without {
  const own = cholesky(fit.covariance);
  if (own === null) throw new RangeError('the covariance of the fit is not positive definite');
  const precision = choleskyInverse(own);
  const rows = fit.slopes[i]!;
  const rest = precision.map((row, a) =>
    row.map((value, b) => value - rows.reduce((sum, slope) => sum + slope[a]! * slope[b]!, 0)),
  );
  const factor = cholesky(rest);
  if (factor === null) throw new RangeError('a figure holds more than the whole fit');
  const pull = COORDINATES.map((_, k) =>
    rows.reduce((sum, slope, r) => sum + slope[k]! * fit.residuals[i]![r]!, 0),
  );
  const lnDet = (lower: Matrix) => lower.reduce((sum, row, k) => sum + 2 * Math.log(row[k]!), 0);
  return {
    move: choleskySolve(factor, pull),
    covariance: choleskyInverse(factor),
    // ln det(precision) = -ln det(covariance).
    bits: (0.5 * (-lnDet(own) - lnDet(factor))) / Math.LN2,
  };
}
