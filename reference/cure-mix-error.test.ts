/**
 * Mix error: unreacted groups act like missing conversion, Tg_max = DiBenedetto(min(r, 1/r)) (form of Pascault and Williams 1990; that Tg
 * is highest near r = 1 and falls several kelvin per 5 %: Meyer et al., Polymer 36 (1995) 1407, from memory). Table computed
 * beforehand with Tg -36 and 57 C, lambda 0.44. Also the Tg(a) table and Horie's times off the ratio.
 * Precision: printed digits (1 C; 0.1 C).
 */
import { describe, expect, it } from 'vitest';
import { REGULAR_50 } from '#core/resin/cards.ts';
import { horieTime } from '#core/resin/closed-forms.ts';
import { cureCup } from '#core/resin/cup.ts';
import { firstTime, readState } from '#core/resin/history.ts';
import { conversionForTg, tgOf } from '#core/resin/kinetics.ts';
import { modelOffRatio, tgAtBalance } from '#core/resin/mix-error.ts';
import type { ResinModel } from '#core/resin/model.ts';

const model = REGULAR_50.model;
const celsius = (kelvin: number) => kelvin - 273.15;

describe('Tg against conversion', () => {
  it.each([
    [0.2, -26.8],
    [0.4, -14.9],
    [0.6, 1.0],
    [0.7, 11.1],
    [0.75, 16.9],
    [0.8, 23.3],
    [0.85, 30.4],
    [0.9, 38.2],
    [0.95, 47.1],
    [1, 57.0],
  ])('%f', (conversion, tg) => {
    expect(Math.abs(celsius(tgOf(model, conversion)) - tg)).toBeLessThan(0.051);
    expect(conversionForTg(model, tgOf(model, conversion))).toBeCloseTo(conversion, 12);
  });
});

describe('highest Tg of a mix off its ratio', () => {
  const table = [
    [0.8, 23],
    [0.85, 30],
    [0.9, 38],
    [0.95, 47],
    [1, 57],
    [1.05, 48],
    [1.1, 40],
    [1.15, 33],
    [1.2, 28],
    [1.3, 19],
  ] as const;
  it.each(table)('r %f', (balance, tg) => {
    expect(Math.abs(celsius(tgAtBalance(model, balance)) - tg)).toBeLessThan(0.51);
  });

  it.each(table)('r %f: a cup without vitrification ends there', (balance) => {
    const off = { ...modelOffRatio(model, 0.875, balance), vitrificationOffset_K: 1e5, heat_J_kg: 0 };
    const history = cureCup({
      model: off,
      balance,
      mass_kg: 0.1,
      air: { time_s: [0], temperature_K: [333.15] },
      start: { conversion: 0, temperature_K: 333.15 },
      start_s: 0,
      duration_s: 1e8,
    });
    const end = readState(history, 1e8, off);
    expect(Math.abs(end.tg_K - tgAtBalance(model, balance))).toBeLessThan(0.6);
  });
});

describe('rate off the ratio', () => {
  const horie: ResinModel = {
    ...model,
    kRef_per_s: 2e-5,
    rho: 0.05,
    order: 2,
    vitrificationOffset_K: 1e5,
    heat_J_kg: 0,
  };
  it.each([0.9, 1, 1.1])('is the Horie mechanism at order 2, B %f', (balance) => {
    const history = cureCup({
      model: horie,
      balance,
      mass_kg: 0.1,
      air: { time_s: [0], temperature_K: [297.15] },
      start: { conversion: 0, temperature_K: 297.15 },
      start_s: 0,
      duration_s: 30_000,
      tolerance: { relative: 1e-9, conversion: 1e-10, temperature: 1e-6 },
    });
    for (const a of [0.2, 0.577, 0.8]) {
      const time = horieTime(2e-5, 4e-4, a, balance);
      expect(Math.abs(firstTime(history, (x) => x, a)! - time)).toBeLessThan(0.02);
    }
  });

  it('+-10 % of hardener moves 0.577 by +17 and -13 %', () => {
    const even = horieTime(2e-5, 4e-4, 0.577, 1);
    expect(Math.abs(horieTime(2e-5, 4e-4, 0.577, 0.9) / even - 1.17)).toBeLessThan(0.0051);
    expect(Math.abs(horieTime(2e-5, 4e-4, 0.577, 1.1) / even - 0.87)).toBeLessThan(0.0051);
  });
});
