import type { Column } from './column.ts';
import type { Tolerance } from './rosenbrock.ts';

/**
 * State and work arrays of one integration (a resource: allocated once, reused every step). The step is RODAS3 in the
 * transformed form of Hairer and Wanner (IV.7): with s = 2/h,
 *   (s - J) U1 = F(t, y) + h/2 F_t                     (s - J) U2 = F(t, y) + 4 U1/h + 3h/2 F_t
 *   (s - J) U3 = F(t+h, y + 2 U1) + (U1 - U2)/h        (s - J) U4 = F(t+h, y + 2 U1 + U3) + (U1 - U2 - 8/3 U3)/h
 *   y(t+h) = y + 2 U1 + U3 + U4,  error estimate U4.
 */
export class ColumnSolver {
  readonly a: Float64Array;
  readonly T: Float64Array;
  /** Rates at the present state. */
  readonly fa: Float64Array;
  readonly fT: Float64Array;

  readonly #column: Column;
  readonly #nodes: number;
  readonly #reacting: number;
  readonly #ua: readonly Float64Array[];
  readonly #uT: readonly Float64Array[];
  readonly #stageA: Float64Array;
  readonly #stageT: Float64Array;
  readonly #stageFa: Float64Array;
  readonly #stageFT: Float64Array;
  /** Per reacting node: df/da, df/dT and 1/(s - df/da). */
  readonly #dfda: Float64Array;
  readonly #dfdT: Float64Array;
  readonly #inverse: Float64Array;
  /** Tridiagonal factors: reciprocal pivots and the lower multipliers. */
  readonly #pivot: Float64Array;
  readonly #lower: Float64Array;
  readonly #slopes = new Float64Array(3);

  constructor(column: Column, conversion: ArrayLike<number>, temperature: ArrayLike<number>) {
    const nodes = column.capacity.length;
    const reacting = column.heat.length;
    if (conversion.length !== reacting || temperature.length !== nodes) {
      throw new RangeError(
        `initial state has ${conversion.length} conversions and ${temperature.length} temperatures; ` +
          `${reacting} and ${nodes} expected`,
      );
    }
    this.#column = column;
    this.#nodes = nodes;
    this.#reacting = reacting;
    this.a = Float64Array.from(conversion);
    this.T = Float64Array.from(temperature);
    for (const value of [...this.a, ...this.T]) {
      if (!Number.isFinite(value)) throw new RangeError(`initial value ${value} must be finite`);
    }
    const some = (length: number) => new Float64Array(length);
    this.fa = some(reacting);
    this.fT = some(nodes);
    this.#ua = [some(reacting), some(reacting), some(reacting), some(reacting)];
    this.#uT = [some(nodes), some(nodes), some(nodes), some(nodes)];
    this.#stageA = some(reacting);
    this.#stageT = some(nodes);
    this.#stageFa = some(reacting);
    this.#stageFT = some(nodes);
    this.#dfda = some(reacting);
    this.#dfdT = some(reacting);
    this.#inverse = some(reacting);
    this.#pivot = some(nodes);
    this.#lower = some(nodes);
  }

  /** Rates at the present state into `fa`, `fT`. */
  slopes(air: number): void {
    this.#evaluate(this.a, this.T, air, this.fa, this.fT);
  }

  /** Largest slope in units of the tolerance, at least 1e-12. */
  slopeNorm(tolerance: Tolerance): number {
    let norm = 1e-12;
    for (let i = 0; i < this.#reacting; i++) {
      const scale = tolerance.conversion + tolerance.relative * Math.abs(this.a[i]!);
      norm = Math.max(norm, Math.abs(this.fa[i]!) / scale);
    }
    for (let j = 0; j < this.#nodes; j++) {
      norm = Math.max(norm, Math.abs(this.fT[j]!) / tolerance.temperature);
    }
    return norm;
  }

  /** Tries a step; the new state waits in the stage arrays. Returns the error in units of the tolerance. */
  attempt(h: number, air: number, nextAir: number, airSlope: number, tolerance: Tolerance): number {
    const { a, T, fa, fT } = this;
    const stageA = this.#stageA;
    const stageT = this.#stageT;
    const stageFa = this.#stageFa;
    const stageFT = this.#stageFT;
    const reacting = this.#reacting;
    const nodes = this.#nodes;
    const [a1, a2, a3, a4] = this.#ua as [Float64Array, Float64Array, Float64Array, Float64Array];
    const [T1, T2, T3, T4] = this.#uT as [Float64Array, Float64Array, Float64Array, Float64Array];
    const last = nodes - 1;
    const perStep = 1 / h;
    this.#factor(2 * perStep, air);

    const column = this.#column;
    const driftFirst = (column.firstLoss.slope(T[0]! - air) * airSlope) / column.capacity[0]!;
    const driftLast = (column.lastLoss.slope(T[last]! - air) * airSlope) / column.capacity[last]!;
    a1.set(fa);
    T1.set(fT);
    T1[0]! += 0.5 * h * driftFirst;
    T1[last]! += 0.5 * h * driftLast;
    this.#solve(a1, T1);

    for (let i = 0; i < reacting; i++) a2[i] = fa[i]! + 4 * perStep * a1[i]!;
    for (let j = 0; j < nodes; j++) T2[j] = fT[j]! + 4 * perStep * T1[j]!;
    T2[0]! += 1.5 * h * driftFirst;
    T2[last]! += 1.5 * h * driftLast;
    this.#solve(a2, T2);

    for (let i = 0; i < reacting; i++) stageA[i] = a[i]! + 2 * a1[i]!;
    for (let j = 0; j < nodes; j++) stageT[j] = T[j]! + 2 * T1[j]!;
    this.#evaluate(stageA, stageT, nextAir, stageFa, stageFT);
    for (let i = 0; i < reacting; i++) a3[i] = stageFa[i]! + perStep * (a1[i]! - a2[i]!);
    for (let j = 0; j < nodes; j++) T3[j] = stageFT[j]! + perStep * (T1[j]! - T2[j]!);
    this.#solve(a3, T3);

    for (let i = 0; i < reacting; i++) stageA[i]! += a3[i]!;
    for (let j = 0; j < nodes; j++) stageT[j]! += T3[j]!;
    this.#evaluate(stageA, stageT, nextAir, stageFa, stageFT);
    const third = 8 / 3;
    for (let i = 0; i < reacting; i++) a4[i] = stageFa[i]! + perStep * (a1[i]! - a2[i]! - third * a3[i]!);
    for (let j = 0; j < nodes; j++) T4[j] = stageFT[j]! + perStep * (T1[j]! - T2[j]! - third * T3[j]!);
    this.#solve(a4, T4);

    let error = 0;
    for (let i = 0; i < reacting; i++) {
      stageA[i]! += a4[i]!;
      const size = Math.max(Math.abs(a[i]!), Math.abs(stageA[i]!));
      const part = Math.abs(a4[i]!) / (tolerance.conversion + tolerance.relative * size);
      // Written so that NaN is passed on rather than lost.
      if (!(part <= error)) error = part;
    }
    const perKelvin = 1 / tolerance.temperature;
    for (let j = 0; j < nodes; j++) {
      stageT[j]! += T4[j]!;
      const part = Math.abs(T4[j]!) * perKelvin;
      if (!(part <= error)) error = part;
    }
    return Number.isNaN(error) ? Number.POSITIVE_INFINITY : error;
  }

  /** Makes the tried state the present one and evaluates its rates. */
  accept(air: number): void {
    this.a.set(this.#stageA);
    this.T.set(this.#stageT);
    this.slopes(air);
  }

  #evaluate(a: Float64Array, T: Float64Array, air: number, outA: Float64Array, outT: Float64Array): void {
    const { capacity, conductance, heat, reaction, firstLoss, lastLoss } = this.#column;
    const nodes = this.#nodes;
    let incoming = -firstLoss.flow(T[0]! - air);
    for (let j = 0; j < nodes; j++) {
      const outgoing = j + 1 < nodes ? conductance[j]! * (T[j]! - T[j + 1]!) : lastLoss.flow(T[j]! - air);
      let power = incoming - outgoing;
      if (j < this.#reacting) {
        const f = reaction.rate(a[j]!, T[j]!);
        outA[j] = f;
        power += heat[j]! * f;
      }
      outT[j] = power / capacity[j]!;
      incoming = outgoing;
    }
  }

  /** Factors s - J, the conversions eliminated: ua = (ra + f_T uT)/(s - f_a). */
  #factor(s: number, air: number): void {
    const { capacity, conductance, heat, reaction, firstLoss, lastLoss } = this.#column;
    const { a, T } = this;
    const out = this.#slopes;
    const nodes = this.#nodes;
    const pivot = this.#pivot;
    const lower = this.#lower;
    for (let j = 0; j < nodes; j++) {
      const c = capacity[j]!;
      let own = 0;
      if (j > 0) own += conductance[j - 1]!;
      else own += firstLoss.slope(T[0]! - air);
      if (j < nodes - 1) own += conductance[j]!;
      else own += lastLoss.slope(T[j]! - air);
      let diagonal = s + own / c;
      if (j < this.#reacting) {
        reaction.slopes(a[j]!, T[j]!, out);
        const inverse = 1 / (s - out[1]!);
        this.#dfda[j] = out[1]!;
        this.#dfdT[j] = out[2]!;
        this.#inverse[j] = inverse;
        diagonal -= (heat[j]! / c) * out[2]! * s * inverse;
      }
      if (j > 0) {
        // Row j has -G/C_j below the diagonal, row j-1 has -G/C_(j-1) above it.
        const below = -conductance[j - 1]! / c;
        const above = -conductance[j - 1]! / capacity[j - 1]!;
        const multiplier = below * pivot[j - 1]!;
        lower[j] = multiplier;
        diagonal -= multiplier * above;
      }
      pivot[j] = 1 / diagonal;
    }
  }

  /** Solves in place for right-hand sides (ra, rT). */
  #solve(ra: Float64Array, rT: Float64Array): void {
    const { capacity, conductance, heat } = this.#column;
    const nodes = this.#nodes;
    const reacting = this.#reacting;
    const pivot = this.#pivot;
    const lower = this.#lower;
    for (let j = 0; j < nodes; j++) {
      let value = rT[j]!;
      if (j < reacting) value += (heat[j]! / capacity[j]!) * this.#dfda[j]! * ra[j]! * this.#inverse[j]!;
      if (j > 0) value -= lower[j]! * rT[j - 1]!;
      rT[j] = value;
    }
    rT[nodes - 1]! *= pivot[nodes - 1]!;
    for (let j = nodes - 2; j >= 0; j--) {
      rT[j] = (rT[j]! + (conductance[j]! / capacity[j]!) * rT[j + 1]!) * pivot[j]!;
    }
    for (let i = 0; i < reacting; i++) ra[i] = (ra[i]! + this.#dfdT[i]! * rT[i]!) * this.#inverse[i]!;
  }
}
