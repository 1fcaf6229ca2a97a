import { describe, expect, it } from 'vitest';
import { SHOP_DEFAULTS } from '#core/pour/shop-rates.ts';
import { QUICK_20, REGULAR_50 } from '#core/resin/cards.ts';
import { cureCup } from '#core/resin/cup.ts';
import { drawModels } from '#core/resin/ensemble.ts';
import { cupStages } from '#core/resin/stages.ts';
import { standTime_s } from './durations.ts';
import { drawByPourNow, HEAVIEST_CUP_kg, largestCup } from './largest-cup.ts';

const at = (celsius: number) => ({
  air: { time_s: [0], temperature_K: [celsius + 273.15] },
  start: { conversion: 0, temperature_K: celsius + 273.15 },
  tinted: true,
  rates: SHOP_DEFAULTS,
});
const draws = drawModels(REGULAR_50, 32, 1);
const massAt = (celsius: number, spare_s = 0) => {
  const found = largestCup({ ...at(celsius), models: draws, spare_s });
  return found.possible ? found.mass_kg : 0;
};

describe('the largest cup that is out in time', () => {
  it('gets smaller as the shop and the resin get warmer', () => {
    const masses = [22, 24, 26, 28, 30, 32].map((celsius) => massAt(celsius));
    for (let i = 1; i < masses.length; i++) expect(masses[i]!).toBeLessThan(masses[i - 1]!);
  });

  it('gets smaller with time to spare and never larger with a slower mixer', () => {
    expect(massAt(26, 120)).toBeLessThan(massAt(26, 0));
    const slow = largestCup({ ...at(26), models: draws, rates: { ...SHOP_DEFAULTS, mix_s: 240 } });
    expect(slow.possible && slow.mass_kg).toBeLessThan(massAt(26));
  });

  it('lies where pour-now meets mix + tint + pour, computed afresh with the integrator at its own tolerance', () => {
    const found = largestCup({ ...at(26), models: draws });
    if (!found.possible) throw new Error(found.why);
    expect(found.limitedBy).toBe('heat');
    const model = drawByPourNow({ ...at(26), models: draws }, [0.05])[0]!;
    const history = cureCup({ model, mass_kg: found.mass_kg, ...at(26), start_s: 0, duration_s: 3600 });
    const pourNow_s = cupStages(history, model).pourNow_s!;
    const stands_s = standTime_s(found.mass_kg, true, SHOP_DEFAULTS);
    expect(pourNow_s).toBeGreaterThan(stands_s - 1);
    // half a percent of the mass is worth at most this much standing
    const step_s = standTime_s(found.mass_kg * 1.006, true, SHOP_DEFAULTS) - stands_s;
    expect(pourNow_s - stands_s).toBeLessThan(step_s + 2);
  });

  it('says that no cup can be poured in time: a quick resin at 30 C', () => {
    const found = largestCup({ ...at(30), models: drawModels(QUICK_20, 32, 1) });
    expect(found.possible).toBe(false);
    if (found.possible) return;
    expect(found.why).toContain('at 86 °F can be poured in time');
    expect(found.pourNow_s).toBeLessThan(found.stands_s);
  });

  it('stops at what a person handles when heat is no limit: a cold slow resin', () => {
    const slow = { ...REGULAR_50.model, kRef_per_s: 1e-5 };
    expect(largestCup({ ...at(18), models: [slow] })).toMatchObject({
      possible: true,
      limitedBy: 'handling',
      mass_kg: HEAVIEST_CUP_kg,
    });
  });

  it('orders the draws: fast before middle before slow, and takes a single model as it is', () => {
    const [fast, middle, slow] = drawByPourNow({ ...at(24), models: draws }, [0.05, 0.5, 0.95]);
    const time = (model: (typeof draws)[number]) =>
      cupStages(cureCup({ model, mass_kg: 1, ...at(24), start_s: 0, duration_s: 14_400 }), model).pourNow_s!;
    expect(time(fast!)).toBeLessThan(time(middle!));
    expect(time(middle!)).toBeLessThan(time(slow!));
    const earlier = draws.filter((model) => time(model) < time(fast!) - 0.01).length;
    expect(earlier).toBe(1);
    expect(drawByPourNow({ ...at(24), models: [REGULAR_50.model] }, [0.05])).toEqual([REGULAR_50.model]);
  });

  it('refuses an empty ensemble and a negative spare', () => {
    expect(() => largestCup({ ...at(24), models: [] })).toThrow('models');
    expect(() => largestCup({ ...at(24), models: draws, spare_s: -1 })).toThrow('spare_s');
  });
});
