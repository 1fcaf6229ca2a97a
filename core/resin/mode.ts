import type { Matrix } from '#core/numeric/cholesky.ts';
import { leastSquares } from '#core/numeric/least-squares.ts';
import {
  COORDINATE_COUNT,
  COORDINATES,
  K1_PRIOR,
  modelAt,
  VISCOSITY_PRIOR_Pa_s,
  workingIntegral,
} from './coordinates.ts';
import type { ResinModel } from './model.ts';
import type { Term } from './term.ts';
import { compile } from './term-run.ts';

/** What a fit starts from. */
export interface FitRequest {
  /** Constants that are not fitted (conductivity, density, surface tension, ...), and their values. */
  readonly base: ResinModel;
  /** Middle of the prior of the heat of reaction: that of the mix ratio (`heatFromRatio`). */
  readonly heat_J_kg: number;
  readonly terms: readonly Term[];
}

/** The most probable resin, and the curvature around it. */
export interface ModeFit {
  /** Point in `COORDINATES`. */
  readonly point: readonly number[];
  readonly mode: ResinModel;
  /** Covariance of the coordinates by the curvature there (Gauss-Newton Hessian). */
  readonly covariance: Matrix;
  /** Each term's own residuals there, in standard deviations. */
  readonly residuals: readonly (readonly number[])[];
  /** Derivatives of those residuals by the coordinates. */
  readonly slopes: readonly (readonly Float64Array[])[];
  /** Half the sum of squares, priors included. */
  readonly cost: number;
  readonly converged: boolean;
  /** Half the sum of squares of the model of a point; of the point only the coordinates after the first count. */
  readonly costOf: (point: ArrayLike<number>, model: ResinModel) => number;
}

/** Middle of the prior in the coordinates. */
export function priorMiddle(request: Pick<FitRequest, 'base' | 'heat_J_kg'>): number[] {
  const middle = COORDINATES.map(({ name, mean }) =>
    name === 'heatLn'
      ? Math.log(request.heat_J_kg)
      : name === 'viscosityLn'
        ? Math.log(VISCOSITY_PRIOR_Pa_s)
        : mean,
  );
  middle[0] = 0;
  middle[0] = Math.log(workingIntegral(modelAt(middle, request.base))) - K1_PRIOR.meanLn;
  return middle;
}

/**
 * Most probable resin given its terms (label figures, shop observations) and the priors of `COORDINATES`, by damped least
 * squares over all coordinates at once. Films and cups are followed with their own heat: neither is taken as isothermal.
 *
 * @throws RangeError when the heat or a constant of the base model is out of its range.
 */
export function findMode(request: FitRequest): ModeFit {
  const { base, terms } = request;
  const middle = priorMiddle(request);
  const run = compile(terms, base);
  const own = terms.reduce((sum, term) => sum + term.count, 0);
  const weigh = (x: ArrayLike<number>, model: ResinModel, out: Float64Array): void => {
    out[0] = (Math.log(model.kRef_per_s) - K1_PRIOR.meanLn) / K1_PRIOR.sdLn;
    for (let i = 1; i < COORDINATE_COUNT; i++) out[i] = (x[i]! - middle[i]!) / COORDINATES[i]!.sd;
    let at = COORDINATE_COUNT;
    for (const values of run(model)) for (const value of values) out[at++] = value;
  };
  const found = leastSquares((x, out) => weigh(x, modelAt(x, base), out), middle, COORDINATE_COUNT + own, {
    scale: COORDINATES.map((each) => each.sd),
    step: 0.15,
    central: true,
    stepTolerance: 0.01,
    costTolerance: 1e-4,
    maxSteps: 40,
  });
  if (found.covariance === null) throw new RangeError('the priors leave a direction free');
  const work = new Float64Array(COORDINATE_COUNT + own);
  let at = COORDINATE_COUNT;
  const split = terms.map((term) => {
    const from = at;
    at += term.count;
    return { residuals: Array.from(found.residuals.slice(from, at)), slopes: found.jacobian.slice(from, at) };
  });
  return {
    point: Array.from(found.x),
    mode: modelAt(found.x, base),
    covariance: found.covariance,
    residuals: split.map((rows) => rows.residuals),
    slopes: split.map((rows) => rows.slopes),
    cost: found.cost,
    converged: found.converged,
    costOf: (point, model) => {
      weigh(point, model, work);
      return 0.5 * work.reduce((sum, value) => sum + value * value, 0);
    },
  };
}
