import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BOARDS } from './boards.ts';
import { QUICK_20, REGULAR_50 } from './cards.ts';
import { cureCup } from './cup.ts';
import { cureFilm, type FilmSetup } from './film.ts';
import { readState } from './history.ts';
import type { CureHistory, ResinModel } from './model.ts';
import { cupStages, filmStages } from './stages.ts';

const hour = 3600;
const at = (celsius: number) => ({ time_s: [0], temperature_K: [celsius + 273.15] });

const filmOf = (model: ResinModel, celsius: number, change: Partial<FilmSetup> = {}): CureHistory =>
  cureFilm({
    model,
    thickness_m: 0.0025,
    board: BOARDS['mdf-18'],
    air: at(celsius),
    start: { conversion: 0, temperature_K: celsius + 273.15 },
    start_s: 0,
    duration_s: 48 * hour,
    ...change,
  });

const cupOf = (model: ResinModel, mass_kg: number, celsius = 24, duration_s = 6 * hour): CureHistory =>
  cureCup({
    model,
    mass_kg,
    air: at(celsius),
    start: { conversion: 0, temperature_K: celsius + 273.15 },
    start_s: 0,
    duration_s,
  });

const anyModel = fc
  .record({
    base: fc.constantFrom(QUICK_20.model, REGULAR_50.model),
    k: fc.double({ min: -0.7, max: 0.7, noNaN: true }),
    rho: fc.double({ min: 0.05, max: 3, noNaN: true }),
    order: fc.double({ min: 1.2, max: 3.2, noNaN: true }),
    heat: fc.double({ min: 2e5, max: 4.5e5, noNaN: true }),
  })
  .map(
    ({ base, k, rho, order, heat }): ResinModel => ({
      ...base,
      kRef_per_s: base.kRef_per_s * Math.exp(k),
      rho,
      order,
      heat_J_kg: heat,
    }),
  );
const room = fc.double({ min: 8, max: 35, noNaN: true });

describe('any film or cup', () => {
  it('converts from 0 towards 1, never back by more than the tolerance, and stays finite', () => {
    fc.assert(
      fc.property(
        anyModel,
        room,
        fc.double({ min: 0.0005, max: 0.02, noNaN: true }),
        (model, celsius, thickness_m) => {
          for (const history of [
            filmOf(model, celsius, { thickness_m }),
            cupOf(model, thickness_m * 50, celsius),
          ]) {
            let before = 0;
            history.conversion.forEach((a, i) => {
              expect(a).toBeGreaterThanOrEqual(before - 1e-6);
              expect(a).toBeLessThanOrEqual(1);
              if (i > 0)
                expect(history.theta_per_Pa[i]!).toBeGreaterThanOrEqual(history.theta_per_Pa[i - 1]!);
              before = a;
            });
            for (const values of Object.values(history)) {
              expect(values.every((value: number) => Number.isFinite(value))).toBe(true);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('of an insulated cup is as hot as what has reacted, to rounding', () => {
    fc.assert(
      fc.property(anyModel, room, (model, celsius) => {
        const history = cureCup({
          model,
          mass_kg: 0.3,
          air: at(celsius),
          start: { conversion: 0.1, temperature_K: 300 },
          start_s: 0,
          duration_s: 5 * hour,
          loss_W_K: 0,
        });
        const rise = model.heat_J_kg / model.heatCapacity_J_kgK;
        history.conversion.forEach((a, i) => {
          // A conversion that oversteps 1 within its tolerance (1e-5) is recorded as 1.
          const off = a < 1 ? 1e-9 : 1e-5 * rise;
          expect(Math.abs(history.temperature_K[i]! - 300 - rise * (a - 0.1))).toBeLessThan(off);
        });
      }),
      { numRuns: 20 },
    );
  });

  it('is earlier at every stage in hotter air', () => {
    fc.assert(
      fc.property(anyModel, fc.double({ min: 10, max: 28, noNaN: true }), (model, celsius) => {
        const cold = filmStages(filmOf(model, celsius), model, at(celsius));
        const warm = filmStages(filmOf(model, celsius + 4), model, at(celsius + 4));
        for (const key of ['workingEnd_s', 'noMoreLevelling_s', 'gel_s', 'recoatOpens_s'] as const) {
          if (cold[key] === null) continue;
          expect(warm[key]).not.toBeNull();
          expect(warm[key]!, key).toBeLessThan(cold[key]);
        }
        const cupCold = cupStages(cupOf(model, 0.4, celsius), model);
        const cupWarm = cupStages(cupOf(model, 0.4, celsius + 4), model);
        if (cupCold.danger_s !== null) expect(cupWarm.danger_s!).toBeLessThan(cupCold.danger_s);
      }),
      { numRuns: 30 },
    );
  });

  it('is in danger no later with more in the cup', () => {
    fc.assert(
      fc.property(
        anyModel,
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 1.1, max: 5, noNaN: true }),
        (model, mass, times) => {
          const small = cupStages(cupOf(model, mass), model);
          const large = cupStages(cupOf(model, mass * times), model);
          for (const key of ['warm_s', 'pourNow_s', 'danger_s', 'gel_s'] as const) {
            if (small[key] !== null) expect(large[key]!, key).toBeLessThanOrEqual(small[key] + 0.2);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('does not depend on how long it is followed', () => {
    const model = REGULAR_50.model;
    const short = filmOf(model, 21, { duration_s: 5 * hour });
    const long = filmOf(model, 21, { duration_s: 700 * hour });
    for (const time of [600, hour, 3.3 * hour, 5 * hour]) {
      const a = readState(short, time, model);
      const b = readState(long, time, model);
      expect(Math.abs(a.conversion - b.conversion)).toBeLessThan(2e-5);
      expect(Math.abs(a.temperature_K - b.temperature_K)).toBeLessThan(5e-3);
      expect(Math.abs(a.theta_per_Pa / b.theta_per_Pa - 1)).toBeLessThan(1e-4);
    }
  });

  it('has stage times within 2 s or 2e-4 of a hundredfold tighter tolerance', () => {
    const tight = { relative: 1e-7, conversion: 1e-8, temperature: 1e-5 };
    for (const model of [QUICK_20.model, REGULAR_50.model]) {
      const usual = filmStages(filmOf(model, 24), model, at(24));
      const exact = filmStages(filmOf(model, 24, { tolerance: tight }), model, at(24));
      for (const key of [
        'workingEnd_s',
        'gel_s',
        'recoatOpens_s',
        'recoatCloses_s',
        'dryHard_s',
        'sandable_s',
      ] as const) {
        expect(Math.abs(usual[key]! - exact[key]!), key).toBeLessThan(Math.max(2, 2e-4 * exact[key]!));
      }
      expect(Math.abs(usual.workingEnd_s! - exact.workingEnd_s!)).toBeLessThan(0.1);
      expect(Math.abs(usual.peak_K - exact.peak_K)).toBeLessThan(0.02);
    }
  });
});
