import { describe, expect, it, test } from 'vitest';
import { QUICK_20, REGULAR_50 } from './cards.ts';
import { cureCup } from './cup.ts';
import { cupTest } from './cup-test.ts';
import { readState } from './history.ts';
import type { ResinModel } from './model.ts';
import { readObservation } from './observations.ts';

const measured = (model: ResinModel, celsius: number, every_s: number, until_s: number, start = celsius) => {
  const history = cureCup({
    model,
    mass_kg: 0.1,
    air: { time_s: [0], temperature_K: [celsius + 273.15] },
    start: { conversion: 0, temperature_K: start + 273.15 },
    start_s: 0,
    duration_s: until_s,
  });
  return Array.from({ length: Math.floor(until_s / every_s) + 1 }, (_, i) => ({
    time_s: every_s * i,
    temperature_K: readState(history, every_s * i, model).temperature_K,
  }));
};

describe('a cup test', () => {
  test.each([
    ['quick at 24 C', QUICK_20.model, 24, 24],
    ['regular at 24 C', REGULAR_50.model, 24, 24],
    ['regular at 18 C', REGULAR_50.model, 18, 18],
    ['regular, mixed cold in a warm shop', REGULAR_50.model, 27, 22],
  ] as const)('finds k1 again within 2 %: %s', (_name, model, celsius, start) => {
    const readings = measured(model, celsius, 30, 1200, start);
    const found = cupTest({ readings, mass_kg: 0.1, air_K: celsius + 273.15, model });
    if (!found.ok) throw new Error(JSON.stringify(found.problems));
    expect(Math.abs(found.value.kRef_per_s / model.kRef_per_s - 1)).toBeLessThan(0.02);
    // Heat and heat capacity alone are 9.5 %.
    expect(found.value.sdLn).toBeGreaterThan(0.095);
    expect(found.value.sdLn).toBeLessThan(0.16);
  });

  it('starts at about 1.9 K/min (quick) and 0.7 K/min (regular)', () => {
    // H k1/cp without loss: 320e3 x 1.856e-4/1900 = 1.88 K/min, 300e3 x 7.333e-5/1900 = 0.695 K/min.
    for (const [model, rate] of [
      [QUICK_20.model, 1.88],
      [REGULAR_50.model, 0.695],
    ] as const) {
      const found = cupTest({ readings: measured(model, 24, 10, 60), mass_kg: 0.1, air_K: 297.15, model });
      expect(found.ok && Math.abs((found.value.slope_K_s * 60) / rate - 1)).toBeLessThan(0.1);
    }
  });

  it('tells the loss: without its correction a cup that is warmer than the air would look slow', () => {
    const readings = measured(REGULAR_50.model, 18, 60, 900, 26);
    const found = cupTest({ readings, mass_kg: 0.1, air_K: 291.15, model: REGULAR_50.model });
    expect(found.ok && found.value.loss_K_s).toBeGreaterThan(0);
    expect(found.ok && Math.abs(found.value.kRef_per_s / REGULAR_50.model.kRef_per_s - 1)).toBeLessThan(0.03);
  });

  it('refuses a cup that did not warm, too few readings and times that go back', () => {
    const flat = [0, 60, 120, 180].map((time_s) => ({ time_s, temperature_K: 297.15 }));
    const model = REGULAR_50.model;
    const code = (readings: typeof flat) => {
      const found = cupTest({ readings, mass_kg: 0.1, air_K: 297.15, model });
      return found.ok ? null : found.problems[0]!.code;
    };
    expect(code(flat)).toBe('cup-test.no-rise');
    expect(code(flat.slice(0, 2))).toBe('observation.few-readings');
    expect(code([flat[0]!, flat[2]!, flat[1]!])).toBe('observation.reading-order');
  });
});

describe('an observation', () => {
  const typed = { id: 'a', kind: 'cup time', time: '9 min', mass: '100 g', air: '81 F', reaches: '40 C' };
  it('is read in SI', () => {
    const read = readObservation(typed);
    expect(read.ok && read.value).toMatchObject({
      kind: 'cup time',
      time_s: 540,
      mass_kg: expect.closeTo(0.1, 12),
      reaches_K: 313.15,
      air_K: expect.closeTo(300.3722, 4),
      withdrawn: false,
    });
  });

  test.each([
    ['no air', { ...typed, air: '' }, 'observations.2.air', 'observation.missing'],
    ['no mass', { ...typed, mass: '' }, 'observations.2.mass', 'observation.missing'],
    ['the other unit', { ...typed, air: '81 C' }, 'observations.2.air', 'temperature.other-unit'],
    ['a touch without a film', { ...typed, kind: 'touch' }, 'observations.2.film', 'observation.missing'],
    [
      'two readings',
      { ...typed, kind: 'cup temperatures', readings: [{ at: '1', temperature: '80 F' }] },
      'observations.2.readings',
      'observation.few-readings',
    ],
    ['a kind of its own', { ...typed, kind: 'smell' }, 'observations.2.kind', 'observation.shape'],
  ])('is refused with %s', (_name, input, path, code) => {
    const read = readObservation(input, 'observations.2');
    expect(!read.ok && read.problems).toContainEqual(expect.objectContaining({ path, code }));
  });

  it('may be a gel in a cup or in a film', () => {
    const film = readObservation({ id: 'a', kind: 'gel', time: '2 h', film: '2 mm', air: '75 F' });
    expect(film.ok && film.value).toMatchObject({ film_m: 0.002 });
    const cup = readObservation({ id: 'a', kind: 'gel', time: '30 min', mass: '200 g', air: '75 F' });
    expect(cup.ok && cup.value).toMatchObject({ mass_kg: 0.2 });
  });
});
