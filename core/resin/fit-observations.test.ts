import { describe, expect, it, test } from 'vitest';
import { REGULAR_50 } from './cards.ts';
import { indexOf } from './coordinates.ts';
import { cureCup } from './cup.ts';
import { drawModels } from './ensemble.ts';
import { fitCard, withObservations } from './fit-card.ts';
import { REGULAR_DOCUMENT } from './generic-documents.ts';
import { readState } from './history.ts';
import type { ResinCard } from './model.ts';
import type { Observation } from './observations.ts';
import { outlookOf, whatItTaught } from './outlook.ts';
import { readCard } from './read-card.ts';
import { cupStages } from './stages.ts';

function told52(): ResinCard {
  const label = [{ kind: 'working time' as const, value: '52 min', temperature: '24 C', film: '2.5 mm' }];
  const read = readCard({ ...REGULAR_DOCUMENT, label });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return fitCard(read.value);
}
const sd = (card: ResinCard, i: number) => Math.hypot(...card.posterior!.cholesky[i]!);

describe('observations', () => {
  const seen = { id: 'a', date: '', withdrawn: false, air_K: 297.15 } as const;
  const hot: Observation = { ...seen, kind: 'cup time', mass_kg: 0.1, reaches_K: 323.15, time_s: 1800 };

  it('teach: a cup of 100 g narrows the flash most, and withdrawn it is as if never seen', () => {
    const taught = whatItTaught(REGULAR_50, hot);
    expect(taught.narrowed.flash!).toBeLessThan(0.6);
    expect(taught.narrowed.gel!).toBeLessThan(0.95);
    expect(taught.narrowed.workingTime!).toBeLessThan(1.2);
    expect(taught.after.flash!.low_s).toBeGreaterThan(taught.before.flash!.low_s);
    const back = withObservations(taught.card, [{ ...hot, withdrawn: true }]);
    const never = withObservations(REGULAR_50, []);
    expect(back.posterior).toEqual(never.posterior);
    expect(back.observations).toHaveLength(1);
  });

  it('a gel time of a film pins the gel', () => {
    const gel: Observation = { ...seen, kind: 'gel', film_m: 0.0025, time_s: 200 * 60 };
    const { gel: after } = outlookOf(withObservations(REGULAR_50, [gel]));
    expect(after!.mid_s / 60).toBeGreaterThan(175);
    expect(after!.mid_s / 60).toBeLessThan(225);
    // 0.12 each way plus what is left of the spread in the draws.
    expect(Math.log(after!.high_s / after!.low_s)).toBeLessThan(3.29 * 0.16);
  });

  test.each([
    ['too early', 'later'],
    ['ok', 'earlier'],
    ['too late', 'earlier'],
  ] as const)('a coat that was %s after 5 h moves the window %s', (result, way) => {
    const time_s = 5 * 3600;
    const recoated: Observation = { ...seen, kind: 'recoat', film_m: 0.0025, time_s, result };
    const before = outlookOf(withObservations(REGULAR_50, [])).gel!.mid_s;
    // Regular gels after 2 to 4 h: "ok" and "too late" at 5 h cut off slow resins, "too early" fast ones.
    const after = outlookOf(withObservations(REGULAR_50, [recoated])).gel!.mid_s;
    if (way === 'later') expect(after).toBeGreaterThan(before);
    else expect(after).toBeLessThan(1.02 * before);
  });

  it('the same working time in a cold and in a warm shop tells the activation', () => {
    const at = (celsius: number, minutes: number, id: string): Observation => ({
      ...seen,
      id,
      air_K: celsius + 273.15,
      kind: 'working end',
      film_m: 0.0025,
      time_s: minutes * 60,
    });
    const k = indexOf('activation_kJ_mol');
    const plain = told52();
    // A resin of 65 kJ/mol: 52 min at 24 C, twice 120 min at 15 C and 32 min at 30 C.
    const told = withObservations(plain, [
      at(15, 120, 'a'),
      at(15, 120, 'b'),
      at(30, 32, 'c'),
      at(30, 32, 'd'),
    ]);
    expect(sd(told, k)).toBeLessThan(0.85 * sd(plain, k));
    expect(told.posterior!.mean[k]!).toBeGreaterThan(plain.posterior!.mean[k]! + 2);
  });

  it('readings of a cup of a known resin lead back to its cups', () => {
    const truth = drawModels(REGULAR_50, 30, 5)[17]!;
    const air = { time_s: [0], temperature_K: [297.15] };
    const start = { conversion: 0, temperature_K: 297.15 };
    const history = cureCup({ model: truth, mass_kg: 0.1, air, start, start_s: 0, duration_s: 3600 });
    const stages = cupStages(history, truth);
    const readings = Array.from({ length: 40 }, (_, i) => 60 * i)
      .filter((time) => time < stages.danger_s!)
      .map((time_s) => ({ time_s, temperature_K: readState(history, time_s, truth).temperature_K }));
    const series: Observation = { ...seen, kind: 'cup temperatures', mass_kg: 0.1, readings };
    const { flash } = outlookOf(withObservations(REGULAR_50, [series]));
    const kilogram = cureCup({ model: truth, mass_kg: 1, air, start, start_s: 0, duration_s: 3 * 3600 });
    const true_s = cupStages(kilogram, truth).peak_s;
    expect(true_s).toBeGreaterThan(flash!.low_s);
    expect(true_s).toBeLessThan(flash!.high_s);
    const before = outlookOf(withObservations(REGULAR_50, [])).flash!;
    expect(Math.log(flash!.high_s / flash!.low_s)).toBeLessThan(0.6 * Math.log(before.high_s / before.low_s));
  });
});
