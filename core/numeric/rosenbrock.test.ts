import { describe, expect, it } from 'vitest';
import { type Column, inert, type LocalReaction, linearLoss, surroundingsAt } from './column.ts';
import { type ColumnSpan, integrateColumn } from './rosenbrock.ts';

/** Autocatalytic and temperature dependent: f = 0.02 e^(T/20) (0.2 + a)(1 - a)^2. */
const lively: LocalReaction = {
  rate: (a, T) => 0.02 * Math.exp(T / 20) * (0.2 + a) * (1 - a) ** 2,
  slopes: (a, T, out) => {
    const front = 0.02 * Math.exp(T / 20);
    out[0] = front * (0.2 + a) * (1 - a) ** 2;
    out[1] = front * ((1 - a) ** 2 - 2 * (0.2 + a) * (1 - a));
    out[2] = out[0] / 20;
  },
};

const column = (overrides: Partial<Column> = {}): Column => ({
  capacity: Float64Array.of(1, 2, 3),
  conductance: Float64Array.of(0.3, 0.1),
  heat: Float64Array.of(30, 40),
  reaction: lively,
  firstLoss: { flow: (d) => 0.05 * d + 0.001 * d * Math.abs(d), slope: (d) => 0.05 + 0.002 * Math.abs(d) },
  lastLoss: linearLoss(0.02),
  ...overrides,
});

function endOf(body: Column, span: ColumnSpan, a = [0, 0.1], T = [0, 5, 2]): number[] {
  let state: number[] = [];
  integrateColumn(body, a, T, span, (_t, conversion, temperature) => {
    state = [...conversion, ...temperature];
  });
  return state;
}

const air = { time: [0, 20], value: [0, 10] };
const loose = { relative: 1e12, conversion: 1e12, temperature: 1e12 };
const tight = { relative: 1e-11, conversion: 1e-12, temperature: 1e-10 };

describe('the column integrator', () => {
  it('is of order 3, time-varying surroundings and nonlinear loss included', () => {
    const exact = endOf(column(), { start: 0, end: 20, surroundings: air, tolerance: tight });
    const errors = [0.5, 0.25, 0.125, 0.0625].map((step) => {
      const got = endOf(column(), {
        start: 0,
        end: 20,
        surroundings: air,
        tolerance: loose,
        firstStep: step,
        largestStep: step,
      });
      return Math.max(...got.map((value, i) => Math.abs(value - exact[i]!)));
    });
    const orders = errors.slice(1).map((error, i) => Math.log2(errors[i]! / error));
    for (const order of orders) {
      expect(order).toBeGreaterThan(2.7);
      expect(order).toBeLessThan(3.4);
    }
  });

  it('keeps the error near the tolerance asked for', () => {
    const exact = endOf(column(), { start: 0, end: 60, surroundings: air, tolerance: tight });
    for (const relative of [1e-4, 1e-6, 1e-8]) {
      const tolerance = { relative, conversion: relative / 10, temperature: 100 * relative };
      const got = endOf(column(), { start: 0, end: 60, surroundings: air, tolerance });
      for (let i = 0; i < 2; i++) expect(Math.abs(got[i]! - exact[i]!)).toBeLessThan(10 * relative);
      for (let i = 2; i < 5; i++) expect(Math.abs(got[i]! - exact[i]!)).toBeLessThan(1000 * relative);
    }
  });

  it('loses no heat in an insulated column, to rounding', () => {
    const body = column({ firstLoss: linearLoss(0), lastLoss: linearLoss(0) });
    const energy = (s: number[]) => s[2]! + 2 * s[3]! + 3 * s[4]! - 30 * s[0]! - 40 * s[1]!;
    const before = energy([0, 0.1, 0, 5, 2]);
    const after = energy(endOf(body, { start: 0, end: 40, surroundings: air }));
    expect(Math.abs(after - before)).toBeLessThan(1e-10);
  });

  it('follows Newton cooling of one node to a ramp of the surroundings', () => {
    // C dT/dt = -G (T - r t): T = r (t - tau) + (T0 + r tau) e^(-t/tau), tau = C/G.
    const body = column({
      capacity: Float64Array.of(4),
      conductance: new Float64Array(0),
      heat: new Float64Array(0),
      reaction: inert,
      firstLoss: linearLoss(0.5),
      lastLoss: linearLoss(0.3),
    });
    const [T] = endOf(body, { start: 0, end: 12, surroundings: { time: [0, 12], value: [0, 24] } }, [], [7]);
    const tau = 5;
    expect(T).toBeCloseTo(2 * (12 - tau) + (7 + 2 * tau) * Math.exp(-12 / tau), 2);
  });

  it('steps on every knot of the surroundings and on the end', () => {
    const times: number[] = [];
    const surroundings = { time: [-5, 1.25, 3, 7.5, 40], value: [0, 5, 5, -3, 2] };
    integrateColumn(column(), [0, 0], [0, 0, 0], { start: 0, end: 11, surroundings }, (t) => {
      times.push(t);
    });
    for (const knot of [0, 1.25, 3, 7.5, 11]) expect(times).toContain(knot);
    expect(times.every((t, i) => i === 0 || t > times[i - 1]!)).toBe(true);
  });

  it('reports the rates at the accepted state', () => {
    integrateColumn(
      column(),
      [0, 0],
      [0, 0, 0],
      { start: 0, end: 5, surroundings: air },
      (t, a, T, fa, fT) => {
        expect(fa[0]).toBeCloseTo(lively.rate(a[0]!, T[0]!), 14);
        const out = 0.1 * (T[2]! - T[1]!) + 0.02 * (T[2]! - surroundingsAt(air, t));
        expect(fT[2]).toBeCloseTo(-out / 3, 12);
      },
    );
  });

  it('says so when it cannot finish', () => {
    const span = { start: 0, end: 1000, surroundings: air, maxSteps: 5, firstStep: 1e-3 };
    expect(() => endOf(column(), span)).toThrow(/no end after 5 steps: reached .* of 1000/);
  });

  it('refuses what makes no sense', () => {
    expect(() => endOf(column(), { start: 1, end: 0, surroundings: air })).toThrow(RangeError);
    expect(() => endOf(column(), { start: 0, end: Number.NaN, surroundings: air })).toThrow(RangeError);
    expect(() => endOf(column(), { start: 0, end: 1, surroundings: air }, [0], [0, 0, 0])).toThrow(
      RangeError,
    );
    expect(() =>
      endOf(column(), { start: 0, end: 1, surroundings: { time: [0, 0], value: [1, 2] } }),
    ).toThrow(/increase/);
    expect(() =>
      endOf(column({ capacity: Float64Array.of(1, 0, 1) }), { start: 0, end: 1, surroundings: air }),
    ).toThrow(/capacity 0/);
    expect(() => linearLoss(-1)).toThrow(RangeError);
  });

  it('answers the start alone for an empty span', () => {
    expect(endOf(column(), { start: 3, end: 3, surroundings: air })).toEqual([0, 0.1, 0, 5, 2]);
  });
});

describe('surroundings', () => {
  it('are linear between knots and held outside', () => {
    const series = { time: [10, 20, 40], value: [1, 3, -1] };
    expect([0, 10, 15, 20, 30, 40, 99].map((t) => surroundingsAt(series, t))).toEqual([
      1, 1, 2, 3, 1, -1, -1,
    ]);
  });
});
