import { cholesky } from '#core/numeric/cholesky.ts';
import { COORDINATES } from './coordinates.ts';
import { type LabelFilm, labelFilm } from './label-film.ts';
import { type FitRequest, findMode, type ModeFit } from './mode.ts';
import type { ResinModel, ResinPosterior } from './model.ts';
import { reweigh } from './reweigh.ts';

export interface ResinFit {
  /** The middle of the posterior. */
  readonly model: ResinModel;
  readonly posterior: ResinPosterior;
  /** The most probable resin, and how each term stands to it. */
  readonly most: ModeFit;
}

/**
 * Fits a resin: its most probable model (`findMode`), the normal distribution with the curvature there (Laplace) over told
 * points, corrected by importance sampling for what the curvature does not see (`reweigh`). About 0.1 s.
 *
 * @param most when it is known already.
 * @throws RangeError when the heat or a constant of the base model is out of its range.
 */
export function fitResin(request: FitRequest, most: ModeFit = findMode(request)): ResinFit {
  const film = labelFilm(request.base);
  const posterior = reweigh(toldPosterior(most, film), film, most.costOf);
  return { model: film.modelOf(posterior.mean), posterior, most };
}

/** The same normal distribution over told points (see `labelFilm`), by the derivatives of the two told times. */
function toldPosterior({ point: x, covariance }: ModeFit, film: LabelFilm): ResinPosterior {
  const mean = film.tell(x);
  const slopes = COORDINATES.map(({ sd }, j) => {
    const moved = (by: number) => film.tell(x.map((value, i) => (i === j ? value + by * sd : value)));
    const [up, down] = [moved(0.15), moved(-0.15)];
    return up.map((value, i) => (value - down[i]!) / (0.3 * sd));
  });
  // slopes[j][i] = d told_i / d x_j; told covariance = G C G'.
  const half = covariance.map((row) =>
    mean.map((_, i) => row.reduce((sum, value, k) => sum + value * slopes[k]![i]!, 0)),
  );
  const told = mean.map((_, i) =>
    mean.map((__, j) => half.reduce((sum, row, k) => sum + slopes[k]![i]! * row[j]!, 0)),
  );
  const factor = cholesky(told);
  if (factor === null) throw new RangeError('the told times do not tell the resins apart');
  return { mean, cholesky: factor };
}
