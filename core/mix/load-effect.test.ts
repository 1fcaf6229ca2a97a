import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ColourantKind } from './coat.ts';
import { COLOURANT_LIMITS } from './colourant-limits.ts';
import { loadEffect } from './load-effect.ts';

const kinds = Object.keys(COLOURANT_LIMITS) as ColourantKind[];

test('6 % of a paste, half of it carrier, softens a resin of 330 K by 5.2 K (Fox) and takes 5.7 % of its heat', () => {
  const effect = loadEffect('pigment paste', 0.06, 330);
  const carrier = 0.03 / 1.03;
  expect(330 - effect.softer_K).toBeCloseTo(1 / ((1 - carrier) / 330 + carrier / 213), 9);
  expect(effect.softer_K).toBeCloseTo(5.2, 1);
  expect(effect.lessHeat).toBeCloseTo(0.06 / 1.06, 12);
  expect(effect.over).toBe(false);
});

test('powders soften nothing, and no colourant does nothing at all', () => {
  expect(loadEffect('mica powder', 0.05, 330).softer_K).toBeCloseTo(0, 12);
  expect(loadEffect('none', 0, 330)).toMatchObject({ softer_K: 0, lessHeat: 0, over: false, says: [] });
});

test('more colourant softens more, and is told once it is over its limit', () => {
  fc.assert(
    fc.property(fc.constantFrom(...kinds), fc.double({ min: 0, max: 0.25, noNaN: true }), (kind, load) => {
      const [one, two] = [loadEffect(kind, load, 330), loadEffect(kind, 2 * load, 330)];
      expect(two.softer_K).toBeGreaterThanOrEqual(one.softer_K - 1e-12);
      expect(one.over).toBe(load > one.limit + 1e-12);
      expect(one.says.some((sentence) => sentence.includes('tacky'))).toBe(one.over);
    }),
  );
  expect(() => loadEffect('none', -0.1, 330)).toThrow(RangeError);
  expect(() => loadEffect('none', 0, 57)).toThrow(/finalTg_K/);
});
