/**
 * Independent check values of the cure equations for the regular card's constants (k1 7.333e-5 /s, rho 0.5, order 2.3, H 300 kJ/kg, cp
 * 1900 J/kg/K), from another program's integrator at relative tolerance 1e-10. Precision: all printed digits at relative tolerance
 * 1e-9 of ours; the default tolerance is checked against the same values at 2e-5 (conversion), 0.05 s and 0.02 K.
 */
import { describe, expect, it } from 'vitest';
import { DEFAULT_TOLERANCE, type Tolerance } from '#core/numeric/rosenbrock.ts';
import { REGULAR_50 } from '#core/resin/cards.ts';
import { cureCup } from '#core/resin/cup.ts';
import { firstTime, readState } from '#core/resin/history.ts';
import type { CureHistory, ResinModel } from '#core/resin/model.ts';
import { cupStages } from '#core/resin/stages.ts';

const T0 = 297.15;
const tight: Tolerance = { relative: 1e-9, conversion: 1e-10, temperature: 1e-7 };
const regular: ResinModel = { ...REGULAR_50.model, heat_J_kg: 300_000 };
/** f_d = 1 everywhere. */
const liquid: ResinModel = { ...regular, vitrificationOffset_K: 1e5 };

function cup(model: ResinModel, loss_W_K: number, duration_s: number, tolerance: Tolerance): CureHistory {
  return cureCup({
    model,
    mass_kg: 0.1,
    air: { time_s: [0], temperature_K: [T0] },
    start: { conversion: 0, temperature_K: T0 },
    start_s: 0,
    duration_s,
    tolerance,
    loss_W_K,
  });
}

describe.each([
  ['tight', tight, 0.51e-8, 0.51e-3, 0.51e-3],
  ['default', DEFAULT_TOLERANCE, 2e-5, 0.05, 0.02],
] as const)('at %s tolerance', (_name, tolerance, conversionOff, timeOff, kelvinOff) => {
  const isothermal = (model: ResinModel, duration: number) =>
    cup({ ...model, heat_J_kg: 0 }, 0, duration, tolerance);

  it('runs isothermally without vitrification', () => {
    const history = isothermal(liquid, 36_000);
    const values = [0.0436247, 0.12736623, 0.24008029, 0.4132995, 0.66774803, 0.80686708];
    [600, 1800, 3600, 7200, 18_000, 36_000].forEach((time, i) => {
      expect(Math.abs(readState(history, time, liquid).conversion - values[i]!)).toBeLessThan(conversionOff);
    });
  });

  it('freezes on the way to 168 h', () => {
    const history = isothermal(regular, 168 * 3600);
    const values = [0.24008029, 0.66774802, 0.80683086, 0.89210028, 0.91612248, 0.9261742];
    [1, 5, 10, 24, 72, 168].forEach((hour, i) => {
      const got = readState(history, hour * 3600, regular).conversion;
      expect(Math.abs(got - values[i]!), `${hour} h`).toBeLessThan(conversionOff);
    });
  });

  it('runs away without loss', () => {
    const history = cup(liquid, 0, 2000, tolerance);
    const rows = [
      [40, 833.968, 0.1013333],
      [50, 1055.62, 0.1646667],
      [100, 1368.32, 0.4813333],
    ] as const;
    for (const [celsius, time, conversion] of rows) {
      const got = firstTime(history, (_a, T) => T, celsius + 273.15)!;
      // Brent stops within 0.01 s, beside the integrator's own error.
      expect(Math.abs(got - time)).toBeLessThan(timeOff + 0.01);
      // No loss: T = T0 + (H/cp) a to rounding, at any tolerance.
      const state = readState(history, time, liquid);
      expect(state.temperature_K - T0).toBeCloseTo((300_000 / 1900) * state.conversion, 9);
      expect(conversion * (300_000 / 1900)).toBeCloseTo(celsius - 24, 4);
    }
  });

  it('peaks at 137.159 C after 2014.7 s with 0.1 W/K', () => {
    const history = cup(liquid, 0.1, 4000, tolerance);
    const { peak_s } = cupStages(history, liquid);
    const state = readState(history, peak_s, liquid);
    expect(Math.abs(peak_s - 2014.7)).toBeLessThan(1);
    expect(Math.abs(state.temperature_K - 273.15 - 137.159)).toBeLessThan(kelvinOff);
    expect(Math.abs(state.conversion - 0.91001)).toBeLessThan(0.0005);
  });
});
