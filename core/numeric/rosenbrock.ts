import type { Column, Surroundings } from './column.ts';
import { checkColumn, checkSurroundings, surroundingsAt } from './column.ts';
import { ColumnSolver } from './column-solver.ts';

/** Local error allowed per step. */
export interface Tolerance {
  /** Relative to the conversion. */
  readonly relative: number;
  /** Absolute, of the conversion. */
  readonly conversion: number;
  /** Absolute, of the temperature (its zero is arbitrary, so no relative part). */
  readonly temperature: number;
}

/** Chosen by the tolerance study in `rosenbrock.test.ts` and `reference/cure-regressions.test.ts`. */
export const DEFAULT_TOLERANCE: Tolerance = { relative: 1e-5, conversion: 1e-6, temperature: 1e-3 };

export interface ColumnSpan {
  readonly start: number;
  readonly end: number;
  readonly surroundings: Surroundings;
  readonly tolerance?: Tolerance;
  /** Default: from the initial slopes. */
  readonly firstStep?: number;
  /** Default: the whole span. */
  readonly largestStep?: number;
  /** Default 100 000; more attempts throw RangeError. */
  readonly maxSteps?: number;
}

/**
 * Called at the start and after every accepted step. The arrays are the solver's own, valid during the call only:
 * conversions and their rates (reacting nodes), temperatures and their rates (all nodes). Returning `STOP` ends there.
 */
export type ColumnObserver = (
  time: number,
  conversion: Float64Array,
  temperature: Float64Array,
  conversionRate: Float64Array,
  temperatureRate: Float64Array,
) => unknown;

/** What an observer returns when it has seen enough. */
export const STOP = 'stop';

/**
 * Moves a column from `span.start` to `span.end` with the four-stage, L-stable, stiffly accurate Rosenbrock method RODAS3
 * (order 3, embedded order 2; Sandu, Verwer, Blom, Spee, Carmichael and Potra 1997, "Benchmarking stiff ODE solvers for
 * atmospheric chemistry problems II: Rosenbrock solvers"; coefficients from memory, order shown by test). Local
 * conversions are eliminated node by node, so a stage costs one tridiagonal solve. Steps land on every knot of the
 * surroundings, so that within a step they are linear and their time derivative is exact. Step control: maximum norm, PI
 * (Hairer and Wanner, Solving ODEs II, IV.2), factor between 0.2 and 5.
 *
 * @throws RangeError if the span, the tolerance or an initial value is out of range, or after `maxSteps` attempts.
 */
export function integrateColumn(
  column: Column,
  conversion: ArrayLike<number>,
  temperature: ArrayLike<number>,
  span: ColumnSpan,
  observe: ColumnObserver,
): void {
  checkColumn(column);
  checkSurroundings(span.surroundings);
  const tolerance = span.tolerance ?? DEFAULT_TOLERANCE;
  const { start, end } = span;
  checkSpan(start, end, tolerance);
  const solver = new ColumnSolver(column, conversion, temperature);
  const maxSteps = span.maxSteps ?? 100_000;
  const largest = span.largestStep ?? end - start;

  let time = start;
  let air = surroundingsAt(span.surroundings, time);
  solver.slopes(air);
  if (observe(time, solver.a, solver.T, solver.fa, solver.fT) === STOP || end === start) return;

  let step = Math.min(span.firstStep ?? 10 / solver.slopeNorm(tolerance), largest, end - start);
  let previousError = 1;
  let rejected = false;
  let attempts = 0;
  let knot = 0;
  const knots = span.surroundings.time;
  while (time < end) {
    while (knot < knots.length && knots[knot]! <= time) knot++;
    const target = knot < knots.length ? Math.min(knots[knot]!, end) : end;
    const targetAir = surroundingsAt(span.surroundings, target);
    const segmentStart = time;
    const airAtStart = air;
    const slope = (targetAir - airAtStart) / (target - segmentStart);
    while (time < target) {
      if (++attempts > maxSteps) {
        throw new RangeError(`no end after ${maxSteps} steps: reached ${time} of ${end}, step ${step}`);
      }
      const left = target - time;
      const lands = step >= left * (1 - 1e-10);
      const h = lands ? left : Math.min(step, 0.5 * left);
      const next = lands ? target : time + h;
      const nextAir = lands ? targetAir : airAtStart + slope * (next - segmentStart);
      const error = solver.attempt(h, air, nextAir, slope, tolerance);
      if (error <= 1) {
        time = next;
        air = nextAir;
        solver.accept(air);
        if (observe(time, solver.a, solver.T, solver.fa, solver.fT) === STOP) return;
        const safeError = Math.max(error, 1e-4);
        let factor = 0.9 * safeError ** (-0.7 / 3) * previousError ** (0.4 / 3);
        factor = Math.min(rejected ? 1 : 5, Math.max(0.2, factor));
        previousError = safeError;
        rejected = false;
        // A step cut short to land says nothing against the longer one proposed before it.
        step = Math.min(largest, Math.max(h * factor, h < step ? step * Math.min(1, factor) : 0));
      } else {
        rejected = true;
        step = Number.isFinite(error) ? h * Math.max(0.2, 0.9 * error ** (-1 / 3)) : h * 0.1;
        if (time + step <= time) throw new RangeError(`the step fell below rounding at time ${time}`);
      }
    }
  }
}

function checkSpan(start: number, end: number, tolerance: Tolerance): void {
  if (!(Number.isFinite(start) && Number.isFinite(end) && end >= start)) {
    throw new RangeError(`span ${start} to ${end} must be finite and not run backwards`);
  }
  if (!(tolerance.relative >= 0 && tolerance.conversion > 0 && tolerance.temperature > 0)) {
    throw new RangeError('tolerances must be positive');
  }
}
