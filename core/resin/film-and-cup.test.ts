import { describe, expect, it } from 'vitest';
import { BOARDS } from './boards.ts';
import { QUICK_20, REGULAR_50 } from './cards.ts';
import { cureCup } from './cup.ts';
import { cureFilm, type FilmSetup } from './film.ts';
import { firstTime, readState, spanOf, thetaLeft, timeOfTheta } from './history.ts';
import { tgOf } from './kinetics.ts';
import type { CureHistory, ResinModel } from './model.ts';
import { cupStages, filmStages } from './stages.ts';
import { GELLED_VISCOSITY_Pa_s } from './viscosity.ts';

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

describe('a film', () => {
  const model = REGULAR_50.model;

  it('takes the conversion and warmth of its cup with it', () => {
    const fresh = filmStages(filmOf(model, 24), model, at(24));
    const aged = filmOf(model, 24, { start: { conversion: 0.1, temperature_K: 308.15 }, start_s: 900 });
    expect(spanOf(aged)).toEqual({ start_s: 900, end_s: 900 + 48 * hour });
    const stages = filmStages(aged, model, at(24));
    expect(stages.workingEnd_s! - 900).toBeLessThan(0.75 * fresh.workingEnd_s!);
  });

  it('follows the air and a cold board', () => {
    const nightly = {
      time_s: Array.from({ length: 49 }, (_, i) => i * hour),
      temperature_K: Array.from({ length: 49 }, (_, i) => 291 + 4 * Math.cos((i / 12) * Math.PI)),
    };
    const history = filmOf(model, 21, { air: nightly });
    for (const knot of nightly.time_s) expect(history.time_s).toContain(knot);
    // Long after the exotherm the film is within a kelvin of the air.
    expect(
      Math.abs(readState(history, 40 * hour, model).temperature_K - nightly.temperature_K[40]!),
    ).toBeLessThan(1);
    const usual = filmStages(filmOf(model, 24), model, at(24)).workingEnd_s!;
    const coldBoard = filmStages(filmOf(model, 24, { boardStart_K: 283.15 }), model, at(24)).workingEnd_s!;
    expect(coldBoard - usual).toBeGreaterThan(600);
  });

  it('spends its flow budget by gel: as fine quadrature of 1/viscosity', () => {
    const history = filmOf(model, 24);
    const gel = filmStages(history, model, at(24)).gel_s!;
    let sum = 0;
    const pieces = 20_000;
    for (let i = 0; i < pieces; i++) {
      const eta = readState(history, ((i + 0.5) * gel) / pieces, model).viscosity_Pa_s;
      if (eta !== null) sum += gel / pieces / eta;
    }
    const total = thetaLeft(history, 0);
    expect(Math.abs(total / sum - 1)).toBeLessThan(1e-6);
    expect(thetaLeft(history, gel)).toBeLessThan(1e-4 * total);
    expect(thetaLeft(history, 48 * hour)).toBe(0);
    const half = timeOfTheta(history, total / 2)!;
    expect(thetaLeft(history, half)).toBeCloseTo(total / 2, 1);
    expect(timeOfTheta(history, 2 * total)).toBeNull();
  });

  it('has no viscosity past gel, and a finite one in the history', () => {
    const history = filmOf(model, 24);
    expect(readState(history, 20 * hour, model).viscosity_Pa_s).toBeNull();
    expect(Math.max(...history.viscosity_Pa_s)).toBe(GELLED_VISCOSITY_Pa_s);
  });

  it('has its stages in order, and full cure only after 30 days', () => {
    const history = filmOf(model, 24, { duration_s: 30 * 24 * hour });
    const s = filmStages(history, model, at(24));
    const inOrder = [
      s.workingEnd_s,
      s.noMoreLevelling_s,
      s.gel_s,
      s.recoatOpens_s,
      s.recoatBestFrom_s,
      s.recoatBestTo_s,
      s.recoatCloses_s,
      s.dryHard_s,
      s.sandable_s,
      s.inUse_s,
      s.fullCure_s,
    ];
    inOrder.forEach((time, i) => {
      expect(time).not.toBeNull();
      if (i > 0) expect(time!).toBeGreaterThanOrEqual(inOrder[i - 1]!);
    });
    // About 7 days at 24 C.
    expect(s.fullCure_s! / 86_400).toBeGreaterThan(5);
    expect(s.fullCure_s! / 86_400).toBeLessThan(9);
    expect(filmStages(filmOf(model, 24), model, at(24)).fullCure_s).toBeNull();
  });

  it('answers null for what lies beyond its history', () => {
    const s = filmStages(filmOf(model, 6, { duration_s: 20 * hour }), model, at(6));
    expect(s.dryHard_s).toBeNull();
    expect(s.inUse_s).toBeNull();
    expect(s.workingEnd_s).not.toBeNull();
  });

  it('crosses a level where the interpolated state is at it', () => {
    const history = filmOf(model, 24);
    const time = firstTime(history, (a, T) => tgOf(model, a) - T, 5)!;
    const state = readState(history, time, model);
    expect(state.tg_K - state.temperature_K).toBeCloseTo(5, 3);
    expect(firstTime(history, (a) => a, 0)).toBe(0);
    expect(firstTime(history, (a) => a, 0.999)).toBeNull();
  });

  it('refuses what is out of range, by name', () => {
    expect(() => filmOf(model, 24, { thickness_m: 0 })).toThrow(/thickness_m is 0/);
    expect(() => filmOf(model, 24, { start: { conversion: 1.2, temperature_K: 300 } })).toThrow(
      /start.conversion/,
    );
    expect(() => filmOf(model, 24, { start: { conversion: 0, temperature_K: 20 } })).toThrow(
      /start.temperature_K/,
    );
    expect(() => filmOf(model, 24, { duration_s: Number.NaN })).toThrow(/duration_s/);
    expect(() => filmOf(model, 24, { air: { time_s: [], temperature_K: [] } })).toThrow(RangeError);
    expect(() => filmOf({ ...model, rho: 0 }, 24)).toThrow(/rho is 0/);
    expect(() => readState(filmOf(model, 24), -1, model)).toThrow(/time_s is -1/);
  });
});

describe('a cup', () => {
  it('warns, then calls, then is in danger, then gels', () => {
    const s = cupStages(cupOf(QUICK_20.model, 0.5), QUICK_20.model);
    expect(s.warm_s!).toBeLessThan(s.pourNow_s!);
    expect(s.pourNow_s!).toBeLessThan(s.danger_s!);
    expect(s.danger_s!).toBeLessThan(s.gel_s!);
    expect(s.gel_s!).toBeLessThan(s.peak_s);
  });

  it('has a centre at most 15 K above its mean and not above what its heat allows', () => {
    const history = cupOf(REGULAR_50.model, 0.1);
    const rise = REGULAR_50.model.heat_J_kg / REGULAR_50.model.heatCapacity_J_kgK;
    history.hottest_K.forEach((hottest, i) => {
      const mean = history.temperature_K[i]!;
      expect(hottest).toBeGreaterThanOrEqual(mean);
      expect(hottest - mean).toBeLessThanOrEqual(15 + 1e-9);
      expect(hottest).toBeLessThanOrEqual(Math.max(mean, 297.15 + rise * history.conversion[i]! + 1e-9));
    });
  });

  it('refuses a mass or a diameter out of range', () => {
    expect(() => cupOf(QUICK_20.model, 0)).toThrow(/mass_kg is 0/);
    expect(() =>
      cureCup({
        model: QUICK_20.model,
        mass_kg: 1,
        cup: { diameter_m: 9 },
        air: at(20),
        start: { conversion: 0, temperature_K: 293.15 },
        start_s: 0,
        duration_s: 60,
      }),
    ).toThrow(/diameter_m is 9/);
  });
});
