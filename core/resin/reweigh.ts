import { cholesky } from '#core/numeric/cholesky.ts';
import { indexOf } from './coordinates.ts';
import type { LabelFilm } from './label-film.ts';
import type { ModeFit } from './mode.ts';
import type { ResinModel, ResinPosterior } from './model.ts';
import { standardDraws, toldPoint } from './posterior.ts';

/** Draws a round, and rounds. */
const DRAWS = 160;
const ROUNDS = 2;
/** Draws reach further than the present distribution by this, so that what it misses is seen. */
const WIDER = 1.25;
/** Coordinates whose covariance is corrected, the first of `COORDINATES`: timing, rho, order, working ratio, dry hard. */
const BENT = 5;
const DRY = indexOf('dryHardOffset_K');

/**
 * Corrects a normal distribution for what the curvature at its top does not see: draws from it (somewhat widened), weighs each by
 * the true posterior density over told points, and takes over the weighted mean, and the weighted covariance of the five
 * coordinates that bend (importance sampling; twice, the second time from the corrected distribution). What the draws would give
 * with the weights of the present distribution itself is subtracted, so that no change is made where it is right.
 * Deterministic.
 *
 * @param costOf half the sum of squares, priors included.
 */
export function reweigh(start: ResinPosterior, film: LabelFilm, costOf: ModeFit['costOf']): ResinPosterior {
  let posterior = start;
  for (let round = 0; round < ROUNDS; round++) {
    const drawn = weighedDraws(posterior, film, costOf, DRAWS, 1 + round, WIDER);
    const present = weights(
      drawn.map(({ z }) => -0.5 * (1 - WIDER ** -2) * z.reduce((sum, value) => sum + value * value, 0)),
    );
    posterior = moved(
      posterior,
      drawn.map(({ z }) => z),
      drawn.map(({ weight }) => weight),
      present,
    );
  }
  return posterior;
}

/** A draw of a widened distribution, and its weight in the true posterior; weights sum to 1. */
export interface WeighedDraw {
  /** In standard deviations of the distribution that was widened. */
  readonly z: readonly number[];
  readonly model: ResinModel;
  readonly weight: number;
}

/**
 * Draws from a distribution widened by `wider`, each weighed by the true posterior density over the density it was drawn
 * with. With some thousand draws weighted quantiles are those of the posterior itself, whatever its shape (about 0.5 ms a draw).
 */
export function weighedDraws(
  from: ResinPosterior,
  film: LabelFilm,
  costOf: ModeFit['costOf'],
  count: number,
  seed: number,
  wider: number,
): WeighedDraw[] {
  const logs: number[] = [];
  const drawn = standardDraws(count, seed).map((standard) => {
    const z = standard.map((value) => wider * value);
    const told = toldPoint(from, z);
    const { model, volumeLn } = film.withVolume(told);
    told[DRY] = model.dryHardOffset_K;
    const ownLn = -0.5 * standard.reduce((sum, value) => sum + value * value, 0);
    logs.push(volumeLn - costOf(told, model) - ownLn);
    return { z, model };
  });
  const weight = weights(logs);
  return drawn.map((one, i) => ({ ...one, weight: weight[i]! }));
}

/** Weights that sum to 1 from their logarithms; none above 5 %, which tames a single lucky draw. */
function weights(logs: readonly number[]): number[] {
  const top = Math.max(...logs.filter((value) => Number.isFinite(value)));
  const raw = logs.map((value) => (Number.isFinite(value) ? Math.exp(value - top) : 0));
  const sum = raw.reduce((a, b) => a + b, 0);
  const cut = raw.map((value) => Math.min(0.05, value / sum));
  const rest = cut.reduce((a, b) => a + b, 0);
  return cut.map((value) => value / rest);
}

function moved(
  from: ResinPosterior,
  draws: readonly (readonly number[])[],
  target: readonly number[],
  present: readonly number[],
): ResinPosterior {
  const count = from.mean.length;
  const meanOf = (w: readonly number[], i: number) => draws.reduce((sum, z, d) => sum + w[d]! * z[i]!, 0);
  const centre = Array.from({ length: count }, (_, i) => meanOf(target, i));
  const bias = Array.from({ length: count }, (_, i) => meanOf(present, i));
  // The others move with these five as their correlations say; on their own they would only pick up noise.
  const shift = centre.map((value, i) => (i < BENT ? value - bias[i]! : 0));
  const spread = (w: readonly number[], m: readonly number[], i: number, j: number) =>
    draws.reduce((sum, z, d) => sum + w[d]! * (z[i]! - m[i]!) * (z[j]! - m[j]!), 0);
  const changed = Array.from({ length: BENT }, (_, i) =>
    Array.from(
      { length: BENT },
      (__, j) => (i === j ? 1 : 0) + spread(target, centre, i, j) - spread(present, bias, i, j),
    ),
  );
  const mean = toldPoint(from, shift);
  // Where sampling noise leaves no covariance the old one stays.
  const block = cholesky(changed);
  if (block === null) return { mean, cholesky: from.cholesky };
  const lower = from.cholesky.map((row) =>
    row.map((value, j) => {
      if (j >= BENT) return value;
      let sum = 0;
      for (let k = j; k < BENT; k++) sum += row[k]! * block[k]![j]!;
      return sum;
    }),
  );
  return { mean, cholesky: lower };
}
