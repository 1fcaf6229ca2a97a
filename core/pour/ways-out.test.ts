import { describe, expect, it } from 'vitest';
import { planCoat } from './plan-coat.ts';
import { celsius, QUICK_20, requestOf, steady } from './sample-request.check.ts';
import { openWays } from './ways-out.ts';

const tight = requestOf(
  { card: QUICK_20, resin: { conversion: 0, temperature_K: celsius(26) }, board_K: celsius(25) },
  { air: steady(celsius(26)) },
);

describe('ways out of a pour that does not fit', () => {
  const plan = planCoat(tight);

  it('are at least four, the most slack first, and each says what it costs', () => {
    expect(plan.verdict).not.toBe('fits');
    expect(plan.waysOut.map((way) => way.key).sort()).toEqual([
      'a helper',
      'cooler resin',
      'cooler shop',
      'more cups',
      'slower resin',
      'two stages',
    ]);
    const slacks = plan.waysOut.map((way) => way.slack_s);
    expect(slacks).toEqual([...slacks].sort((a, b) => b - a));
    for (const way of plan.waysOut) {
      expect(way.change.length).toBeGreaterThan(10);
      expect(way.note.length).toBeGreaterThan(20);
    }
  });

  it('are honest: doing one gives exactly the verdict and slack it promised', () => {
    for (const { way, request } of openWays(tight, plan)) {
      const { draws: _draws, ...rest } = request;
      const fresh = planCoat(rest);
      const promised = plan.waysOut.find((each) => each.key === way.key)!;
      expect([promised.verdict, promised.slack_s]).toEqual([fresh.verdict, fresh.slack_s]);
    }
  });

  it('help: the slower resin fits, and cooler resin has more slack than none', () => {
    const way = (key: string) => plan.waysOut.find((each) => each.key === key)!;
    expect(way('slower resin').verdict).toBe('fits');
    expect(way('cooler resin').slack_s).toBeGreaterThan(plan.slack_s);
    expect(way('cooler resin').note).toMatch(/It is \d+% thicker/);
  });

  it('are not looked for when the pour fits or when told not to', () => {
    expect(planCoat(requestOf()).waysOut).toEqual([]);
    expect(planCoat({ ...tight, waysOut: false }).waysOut).toEqual([]);
  });

  it('leave out what cannot be done: resin at 18 C, three people, no slower resin, a shop at 15 C', () => {
    const request = requestOf(
      { card: QUICK_20, crew: 3, resin: { conversion: 0, temperature_K: celsius(18) }, board_K: celsius(15) },
      { air: steady(celsius(15)), slowerCards: [QUICK_20] },
    );
    expect(openWays(request, planCoat({ ...request, waysOut: false })).map(({ way }) => way.key)).toEqual([
      'more cups',
      'two stages',
    ]);
  });

  it('cool the resin by 4 K but not below 18 C', () => {
    const at = (resin: number) =>
      openWays(requestOf({ resin: { conversion: 0, temperature_K: celsius(resin) } }), plan).find(
        ({ way }) => way.key === 'cooler resin',
      )!.request.coat.resin.temperature_K;
    expect(at(26)).toBeCloseTo(celsius(22), 9);
    expect(at(20)).toBeCloseTo(celsius(18), 9);
  });
});
