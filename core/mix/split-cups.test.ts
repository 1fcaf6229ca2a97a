import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Colour } from './coat.ts';
import { partShares } from './parts.ts';
import { splitCups, weighCups, wholeShares } from './split-cups.ts';

const mix = { volumeA: 2, volumeB: 1, densityA_kg_m3: 1130, densityB_kg_m3: 980 };
const colour = (name: string, share: number, load = 0): Colour => ({
  name,
  share,
  load,
  colourant: load > 0 ? 'pigment paste' : 'none',
  swatch: '#000000',
});
const anyColours = fc
  .array(
    fc.tuple(fc.double({ min: 0.05, max: 1, noNaN: true }), fc.double({ min: 0, max: 0.06, noNaN: true })),
    { minLength: 1, maxLength: 6 },
  )
  .map((list) => {
    const total = list.reduce((sum, [share]) => sum + share, 0);
    return list.map(([share, load], i) => colour(`c${i}`, share / total, load));
  });
const anyMass = fc.double({ min: 0.2, max: 20, noNaN: true });
const anyLargest = fc.double({ min: 0.3, max: 5, noNaN: true });
const anyFewest = fc.integer({ min: 1, max: 12 });

describe('dividing a coat into cups', () => {
  it('keeps every cup within the largest, cups of a colour equal, shares whole and the number asked', () => {
    fc.assert(
      fc.property(anyColours, anyMass, anyLargest, anyFewest, (colours, mass, largest, fewest) => {
        const split = splitCups(colours, mass, largest, fewest);
        expect(split.reduce((sum, part) => sum + part.cups * part.share, 0)).toBeCloseTo(1, 12);
        for (const part of split) expect(part.share * mass).toBeLessThanOrEqual(largest * (1 + 1e-8));
        expect(split.reduce((sum, part) => sum + part.cups, 0)).toBeGreaterThanOrEqual(fewest);
      }),
    );
  });

  it('takes no more cups than needed: one cup fewer of any colour would be too heavy or too few', () => {
    fc.assert(
      fc.property(anyColours, anyMass, anyLargest, (colours, mass, largest) => {
        for (const { cups, share } of splitCups(colours, mass, largest, 1))
          if (cups > 1) expect((share * cups * mass) / (cups - 1)).toBeGreaterThan(largest);
      }),
    );
  });

  it('gives the extra cups to the heaviest: 60/28/12 % in 5 cups is 3, 1, 1', () => {
    const colours = [colour('ink', 0.6), colour('sea', 0.28), colour('copper', 0.12)];
    expect(splitCups(colours, 1, 5, 5).map((part) => part.cups)).toEqual([3, 1, 1]);
    expect(splitCups(colours, 1, 0.25, 1).map((part) => part.cups)).toEqual([3, 2, 1]);
  });

  it('makes shares that miss by half a percent whole, and no colours one clear colour', () => {
    const whole = wholeShares([colour('a', 0.5), colour('b', 0.505)]);
    expect(whole.reduce((sum, each) => sum + each.share, 0)).toBeCloseTo(1, 15);
    expect(wholeShares([])).toMatchObject([{ name: 'clear', share: 1, colourant: 'none' }]);
  });

  it('refuses nonsense', () => {
    expect(() => splitCups([], 0, 1, 1)).toThrow('mass_kg');
    expect(() => splitCups([], 1, 0, 1)).toThrow('largest_kg');
    expect(() => splitCups([], 1, 1, 0)).toThrow('fewestCups');
    expect(() => splitCups([], 100, 0.1, 1)).toThrow('1000 cups');
    expect(() => wholeShares([colour('a', 0)])).toThrow('shares');
  });
});

describe('what the scale is told', () => {
  it('conserves mass: cups make what was asked and at most five steps a cup more; A to B within the scale', () => {
    fc.assert(
      fc.property(anyColours, anyMass, anyLargest, (colours, mass, largest) => {
        const step = 0.001;
        const { shareA, shareB } = partShares(mix);
        const split = splitCups(colours, mass, largest, 1);
        const wanted_kg = split.flatMap(({ cups: count, share }) => Array<number>(count).fill(mass * share));
        const cups = weighCups(split, mass, mix, 1100, step);
        expect(cups).toHaveLength(wanted_kg.length);
        const total = cups.reduce((sum, cup) => sum + cup.mass_kg, 0);
        expect(total).toBeGreaterThanOrEqual(mass * (1 - 1e-8));
        expect(total).toBeLessThanOrEqual(mass + 5 * step * cups.length);
        cups.forEach((cup, i) => {
          expect(cup.number).toBe(i + 1);
          expect(cup.mass_kg).toBeCloseTo(cup.partA_kg + cup.partB_kg + cup.tint_kg, 12);
          expect(cup.volume_m3).toBeCloseTo(cup.mass_kg / 1100, 15);
          const asked = wanted_kg[i]! - cup.tint_kg;
          expect(Math.abs(cup.ratioError)).toBeLessThan(step / (asked * shareA) + step / (asked * shareB));
        });
      }),
      // A cup of about two steps of the scale beside five large ones.
      { examples: [[[0.05, 1, 1, 1, 1, 1].map((share, i) => colour(`c${i}`, share / 5.05)), 0.2, 5]] },
    );
  });

  it('tints by load of the mixed resin to the nearest step', () => {
    const [cup] = weighCups(splitCups([colour('red', 1, 0.03)], 1, 5, 1), 1, mix, 1100, 0.001);
    expect(cup!.tint_kg).toBe(0.029);
    expect(cup!.tint_kg / (cup!.partA_kg + cup!.partB_kg)).toBeCloseTo(0.03, 3);
  });
});
