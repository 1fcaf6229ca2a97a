import { latinHypercube, normalQuantile, randomStream } from '#core/numeric/random.ts';
import { requireRange } from './check.ts';
import { COORDINATE_COUNT } from './coordinates.ts';
import { labelFilm } from './label-film.ts';
import type { ResinModel, ResinPosterior } from './model.ts';

/** Draws are cut here, in standard deviations: beyond, a normal distribution says nothing about a resin. */
const CUT = 2.6;

/** Standard normal points by a Latin hypercube, one row a draw. `count` 1 to 10 000. */
export function standardDraws(count: number, seed: number): number[][] {
  requireRange('count', count, 1, 10_000);
  return latinHypercube(count, COORDINATE_COUNT, randomStream(seed)).map((uniform) =>
    Array.from(uniform, (u) => Math.min(CUT, Math.max(-CUT, normalQuantile(u)))),
  );
}

/** The told point (see `labelFilm`) of a standard one: mean + L z. */
export function toldPoint({ mean, cholesky }: ResinPosterior, z: readonly number[]): number[] {
  return mean.map((middle, i) => {
    let value = middle;
    const row = cholesky[i]!;
    for (let k = 0; k <= i; k++) value += row[k]! * z[k]!;
    return value;
  });
}

/** Models of a posterior, about 0.3 ms each; constants that are not fitted are those of `base`. `count` 1 to 10 000. */
export function drawPosterior(
  posterior: ResinPosterior,
  base: ResinModel,
  count: number,
  seed: number,
): ResinModel[] {
  const film = labelFilm(base);
  return standardDraws(count, seed).map((z) => film.modelOf(toldPoint(posterior, z)));
}
