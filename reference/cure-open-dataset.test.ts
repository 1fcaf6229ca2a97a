/**
 * Isothermal cure of DGEBA with ethylenediamine (EDA), 1,3-diaminopropane (DAP) and 1,4-diaminobutane (DAB), 25 to 60 C: published
 * medians of a Kamal-Malkin fit with a plateau r,
 *   da/dt = (k1 + k2 a^m)(1 - a)^(n/2)(r - a)^(n/2),
 * from the open data set "epoxy_HPC" (T. K. Meldrum, combined_arrhenius table; numbers only, not peer-checked). Conversions computed
 * beforehand from these constants at relative tolerance 1e-10. The rate law is not the app's; it checks the integrator on measured
 * systems. Precision: the printed digit (5e-5), plus what half a unit in the
 * last printed digit of each constant does to the conversion (m to 0.0005 alone moves it by up to 2e-4), at relative tolerance 1e-8.
 */
import { expect, it } from 'vitest';
import { type LocalReaction, linearLoss } from '#core/numeric/column.ts';
import { integrateColumn } from '#core/numeric/rosenbrock.ts';

interface Fit {
  readonly k1: number;
  readonly k2: number;
  readonly m: number;
  readonly n: number;
  readonly r: number;
}

function kamalMalkin({ k1, k2, m, n, r }: Fit): LocalReaction {
  const rate = (a: number) => {
    const x = Math.max(a, 0);
    return x >= r ? 0 : (k1 + k2 * x ** m) * ((1 - x) * (r - x)) ** (n / 2);
  };
  return {
    rate,
    slopes: (a, _T, out) => {
      const f = rate(a);
      out[0] = f;
      out[1] = 0;
      out[2] = 0;
      if (f > 0 && a > 0) {
        out[1] = f * ((k2 * m * a ** (m - 1)) / (k1 + k2 * a ** m) - n / 2 / (1 - a) - n / 2 / (r - a));
      }
    },
  };
}

const minutes = [30, 60, 120, 180, 240, 360, 600, 1440];

it.each([
  [
    'EDA 25 C',
    3.577e-5,
    2.655e-4,
    1.588,
    1.479,
    0.7888,
    [0.053, 0.1063, 0.2193, 0.3403, 0.4595, 0.6432, 0.7752, 0.7888],
  ],
  [
    'DAP 25 C',
    2.791e-5,
    2.26e-4,
    1.089,
    1.163,
    0.5582,
    [0.0384, 0.083, 0.1894, 0.308, 0.417, 0.5431, 0.5582, 0.5582],
  ],
  [
    'DAB 25 C',
    2.626e-5,
    3.837e-4,
    1.506,
    1.221,
    0.6066,
    [0.0351, 0.0727, 0.1618, 0.2739, 0.3995, 0.5794, 0.6066, 0.6066],
  ],
  ['EDA 50 C', 8.549e-5, 8.985e-4, 0.737, 1.542, 0.6822, [0.2554, 0.5029, 0.6653, 0.6821, 0.6822]],
  ['DAP 50 C', 1.371e-4, 9.804e-4, 0.851, 1.533, 0.7511, [0.3286, 0.5913, 0.7384, 0.751, 0.7511]],
  ['DAB 50 C', 2.0e-4, 1.064e-3, 0.836, 1.356, 0.8299, [0.4873, 0.7499, 0.8299]],
  ['DAP 60 C', 2.798e-4, 1.657e-3, 0.799, 1.549, 0.8511, [0.6347, 0.81, 0.8509]],
  ['DAB 60 C', 4.203e-4, 2.598e-3, 1.099, 1.538, 0.8998, [0.7564, 0.8842, 0.8998]],
] as const)('%s', (_name, k1, k2, m, n, r, row) => {
  const fit: Fit = { k1, k2, m, n, r };
  const got = conversions(fit, row.length);
  // Half a unit in the last printed digit: k to four figures, m and n to 0.001, r to 0.0001.
  const last: Fit = { k1: 5e-4 * figure(k1), k2: 5e-4 * figure(k2), m: 5e-4, n: 5e-4, r: 5e-5 };
  const allowed = new Array<number>(row.length).fill(5e-5);
  for (const key of ['k1', 'k2', 'm', 'n', 'r'] as const) {
    const moved = conversions({ ...fit, [key]: fit[key] + last[key] }, row.length);
    moved.forEach((a, i) => {
      allowed[i]! += Math.abs(a - got[i]!);
    });
  }
  row.forEach((conversion, i) => {
    expect(allowed[i]!).toBeLessThan(6e-4);
    expect(Math.abs(got[i]! - conversion), `${minutes[i]} min`).toBeLessThan(allowed[i]!);
  });
});

/** Power of ten of the first figure. */
function figure(value: number): number {
  return 10 ** Math.floor(Math.log10(value));
}

function conversions(fit: Fit, count: number): number[] {
  const got: number[] = [];
  let from = 0;
  let a = 0;
  for (const minute of minutes.slice(0, count)) {
    integrateColumn(
      {
        capacity: Float64Array.of(1),
        conductance: new Float64Array(0),
        heat: Float64Array.of(0),
        reaction: kamalMalkin(fit),
        firstLoss: linearLoss(0),
        lastLoss: linearLoss(0),
      },
      [a],
      [0],
      {
        start: from,
        end: minute * 60,
        surroundings: { time: [0], value: [0] },
        tolerance: { relative: 1e-8, conversion: 1e-9, temperature: 1 },
      },
      (_t, conversion) => {
        a = conversion[0]!;
      },
    );
    from = minute * 60;
    got.push(a);
  }
  return got;
}
