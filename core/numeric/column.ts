/**
 * A chain of nodes exchanging a potential (for us: heat), some of which carry a local reaction whose state belongs to that
 * node alone. Plain data; `integrateColumn` in `rosenbrock.ts` moves it through time.
 *
 *   C_j dT_j/dt = G_(j-1) (T_(j-1) - T_j) + G_j (T_(j+1) - T_j) + q_j f(a_j, T_j) - loss at the two ends
 *       da_j/dt = f(a_j, T_j)                                       for the first `heat.length` nodes
 *
 * Any geometry fits (slab, cylinder, sphere): it lives in the capacities and conductances.
 */
export interface Column {
  /** C_j > 0, one a node. */
  readonly capacity: Float64Array;
  /** G_j >= 0 between node j and j + 1; one fewer than nodes. */
  readonly conductance: Float64Array;
  /** q_j, released when a_j goes from 0 to 1; its length is the number of reacting nodes, counted from node 0. */
  readonly heat: Float64Array;
  readonly reaction: LocalReaction;
  /** Loss of node 0 to the surroundings. */
  readonly firstLoss: EndLoss;
  /** Loss of the last node to the surroundings. */
  readonly lastLoss: EndLoss;
}

/** f(a, T) with its partial derivatives, written into `out` as [f, df/da, df/dT]. */
export interface LocalReaction {
  rate(conversion: number, temperature: number): number;
  slopes(conversion: number, temperature: number, out: Float64Array): void;
}

/** Loss as a function of the excess d = T - T_surroundings, and its derivative. */
export interface EndLoss {
  flow(excess: number): number;
  slope(excess: number): number;
}

/** A loss proportional to the excess; 0 insulates. Throws RangeError if the conductance is negative or not finite. */
export function linearLoss(conductance: number): EndLoss {
  if (!(conductance >= 0 && Number.isFinite(conductance))) {
    throw new RangeError(`conductance ${conductance} must be finite and at least 0`);
  }
  return { flow: (excess) => conductance * excess, slope: () => conductance };
}

/** A body that does not react. */
export const inert: LocalReaction = {
  rate: () => 0,
  slopes: (_conversion, _temperature, out) => {
    out[0] = 0;
    out[1] = 0;
    out[2] = 0;
  },
};

/** Surroundings: piecewise linear between the knots, held before the first and after the last. */
export interface Surroundings {
  readonly time: readonly number[];
  readonly value: readonly number[];
}

/** Throws RangeError unless times strictly increase, and both series are finite and equally long. */
export function checkSurroundings(surroundings: Surroundings): void {
  const { time, value } = surroundings;
  if (time.length === 0 || time.length !== value.length) {
    throw new RangeError(`surroundings need as many values as times, got ${time.length} and ${value.length}`);
  }
  for (let i = 0; i < time.length; i++) {
    if (!Number.isFinite(time[i]!) || !Number.isFinite(value[i]!)) {
      throw new RangeError(`surroundings knot ${i} is (${time[i]}, ${value[i]}); both must be finite`);
    }
    if (i > 0 && time[i]! <= time[i - 1]!) {
      throw new RangeError(`surroundings times must increase: ${time[i]} follows ${time[i - 1]}`);
    }
  }
}

/** Value of the surroundings at a time. Times must increase (see `checkSurroundings`). */
export function surroundingsAt(surroundings: Surroundings, at: number): number {
  const { time, value } = surroundings;
  const last = time.length - 1;
  if (at <= time[0]!) return value[0]!;
  if (at >= time[last]!) return value[last]!;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (time[middle]! <= at) low = middle;
    else high = middle;
  }
  const share = (at - time[low]!) / (time[high]! - time[low]!);
  return value[low]! + share * (value[high]! - value[low]!);
}

/** Throws RangeError when arrays do not fit together or a capacity or conductance is out of range. */
export function checkColumn(column: Column): void {
  const nodes = column.capacity.length;
  if (nodes < 1) throw new RangeError('a column needs at least one node');
  if (column.conductance.length !== nodes - 1) {
    throw new RangeError(`conductance has ${column.conductance.length} entries; ${nodes - 1} expected`);
  }
  if (column.heat.length > nodes) {
    throw new RangeError(`heat has ${column.heat.length} entries; at most ${nodes} expected`);
  }
  for (const c of column.capacity) {
    if (!(c > 0 && Number.isFinite(c))) throw new RangeError(`capacity ${c} must be positive and finite`);
  }
  for (const g of column.conductance) {
    if (!(g >= 0 && Number.isFinite(g)))
      throw new RangeError(`conductance ${g} must be finite and at least 0`);
  }
  for (const q of column.heat) {
    if (!Number.isFinite(q)) throw new RangeError(`heat ${q} must be finite`);
  }
}
