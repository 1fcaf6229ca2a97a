import { describe, expect, it } from 'vitest';
import { planCoat } from '../plan-coat.ts';
import { QUICK_20, requestOf } from '../sample-request.check.ts';
import { chanceToFinish } from './chance.ts';
import { DEFAULT_SPREADS } from './spreads.ts';
import { waysByChance } from './ways-chance.ts';

describe('ways out by chance', () => {
  const request = requestOf({ card: QUICK_20, crew: 1 });
  const plan = planCoat({ ...request, waysOut: false });
  const ask = { request, plan, spreads: DEFAULT_SPREADS, pours: 1000, resins: 12 };
  const ways = waysByChance(ask);

  it('are ranked by the chance, the best first', () => {
    const chances = ways.map(({ chance }) => chance.chance);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    expect(ways.length).toBeGreaterThanOrEqual(4);
  });

  it('beat the plan as it is with a helper, and say that it asks for one person more', () => {
    const helper = ways.find(({ key }) => key === 'a helper')!;
    expect(helper.chance.chance).toBeGreaterThan(chanceToFinish(ask).chance);
    expect(helper.cost.people).toBe(1);
  });

  it('count both pours of two stages', () => {
    const two = ways.find(({ key }) => key === 'two stages')!;
    expect(two.cost.hands_s).toBeGreaterThan(0);
    expect(two.cost.recoat_s!).toBeGreaterThan(0);
  });
});
