import { describe, expect, it, test } from 'vitest';
import { QUICK_20 } from '#core/resin/cards.ts';
import type { Colour, ColourantKind } from './coat.ts';
import { COLOURANT_LIMITS, checkColours, colourantLimit } from './colourant-limits.ts';

const colour = (change: Partial<Colour>): Colour => ({
  name: 'red',
  share: 1,
  colourant: 'pigment paste',
  load: 0.03,
  swatch: '#aa0000',
  ...change,
});
const check = (colours: readonly Colour[], colourantLimit = 0.06) =>
  checkColours({ colours, card: { ...QUICK_20, colourantLimit } });

describe('limits of colourants by mass of the mix', () => {
  test.each<[ColourantKind, number]>([
    ['pigment paste', 0.06],
    ['mica powder', 0.05],
    ['dry pigment', 0.03],
    ['liquid dye', 0.02],
    ['alcohol ink', 0.01],
  ])('%s may be up to its limit and not a hair more', (colourant, limit) => {
    expect(COLOURANT_LIMITS[colourant]).toBe(limit);
    expect(check([colour({ colourant, load: limit })])).toEqual([]);
    const [problem] = check([colour({ colourant, load: limit + 0.0001 })]);
    expect(problem).toMatchObject({ path: 'colours.0.load', code: 'colour.load' });
    expect(problem!.allowed).toContain(`${limit * 100}%`);
  });

  it('lets the label of the resin be stricter, and says that it is the resin', () => {
    const [problem] = check([colour({ load: 0.05 })], 0.04);
    expect(problem!.message).toContain('this resin allows');
    expect(problem!.allowed).toContain('4%');
    expect(colourantLimit({ colourant: 'mica powder' }, 0.02)).toBe(0.02);
    expect(colourantLimit({ colourant: 'alcohol ink' }, 0.06)).toBe(0.01);
  });

  it('refuses a load without a colourant and only doubts a colourant without a load', () => {
    expect(check([colour({ colourant: 'none', load: 0.02 })])[0]!.code).toBe('colour.load-without-colourant');
    expect(check([colour({ load: 0 })])[0]!.code).toBe('warning.colour-without-load');
    expect(check([colour({ colourant: 'none', load: 0 })])).toEqual([]);
  });

  it('refuses a load that is negative or not a number', () => {
    expect(check([colour({ load: -0.01 })])[0]!.code).toBe('colour.load');
    expect(check([colour({ load: Number.NaN })])[0]!.code).toBe('colour.load');
  });
});

describe('shares of the colours', () => {
  it('must make 100 % within half a percent', () => {
    const three = (last: number) => [colour({ share: 0.5 }), colour({ share: 0.3 }), colour({ share: last })];
    expect(check(three(0.2))).toEqual([]);
    expect(check(three(0.205))).toEqual([]);
    expect(check(three(0.195))).toEqual([]);
    expect(check(three(0.206))[0]).toMatchObject({
      path: 'colours',
      code: 'colours.shares',
      read: '100.6%',
    });
    expect(check(three(0.19))[0]!.code).toBe('colours.shares');
  });

  it('takes a coat without colours as clear', () => {
    expect(check([])).toEqual([]);
  });
});
