/** What every look keeps to, whatever is done to it: volumes are areas, order of what does not meet, the same answer twice. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { laid, puddle, setting, withMoves } from './look.check.ts';
import { patternOf } from './look.ts';
import type { LookMoveDocument } from './look-document.ts';
import { paint } from './picture.ts';
import { readLook } from './read-look.ts';

const SETTING = setting([laid()], 0);
/** A board so wide that nothing is carried over its edge: 256 samples a side. */
const WIDE = { left_m: -0.6, front_m: -0.9, width_m: 2.4, depth_m: 2.4, columns: 256, rows: 256 } as const;
const done = { kept: true, name: '' };

const coordinate = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });
const at = fc.tuple(coordinate(0.2, 1), coordinate(0.1, 0.5));
const tools: fc.Arbitrary<LookMoveDocument> = fc.oneof(
  fc.record({
    kind: fc.constant('stroke' as const),
    id: fc.constant('t'),
    kept: fc.constant(true),
    name: fc.constant(''),
    path: fc.tuple(at, at).map(([p, q]) => [p, q]),
    width_m: coordinate(0.01, 0.06),
    depth: coordinate(0, 1),
  }),
  fc.record({
    kind: fc.constant('swirl' as const),
    id: fc.constant('t'),
    kept: fc.constant(true),
    name: fc.constant(''),
    centre: at,
    turn_rad: coordinate(-2, 2),
    reach_m: coordinate(0.03, 0.1),
  }),
  fc.record({
    kind: fc.constant('waver' as const),
    id: fc.constant('t'),
    kept: fc.constant(true),
    name: fc.constant(''),
    amplitude_m: coordinate(0, 0.01),
    wavelength_m: coordinate(0.05, 0.2),
    seed: fc.nat(1e6),
  }),
);

function painted(moves: LookMoveDocument[]) {
  const look = readLook(withMoves(moves), SETTING);
  if (!look.ok) throw new Error(JSON.stringify(look.problems));
  return { colours: paint(patternOf(look.value), WIDE), film_m: look.value.film_m };
}
const shareOf = (colours: Uint8Array, colour: number) =>
  colours.reduce((sum, one) => sum + (one === colour ? 1 : 0), 0) / colours.length;

describe('a look', () => {
  test('keeps the area of what was poured below 0.1 % of the picture at 256 samples a side, whatever is done after', () => {
    fc.assert(
      fc.property(fc.array(tools, { minLength: 1, maxLength: 5 }), at, at, (after, p, q) => {
        const poured = [puddle('a', 'green', 1e-4, p), puddle('b', 'warm', 6e-5, q)];
        const { colours, film_m } = painted([
          ...poured,
          ...after.map((move, i) => ({ ...move, id: `t${i}` })),
        ]);
        for (const [colour, volume_m3] of [
          [1, 1e-4],
          [2, 6e-5],
        ] as const)
          expect(Math.abs(shareOf(colours, colour) - volume_m3 / film_m / 2.4 ** 2)).toBeLessThan(1e-3);
      }),
      { numRuns: 25 },
    );
  });

  test('is the same in either order of two pulls that do not meet', () => {
    const pull = (id: string, x: number): LookMoveDocument => ({
      kind: 'stroke',
      id,
      ...done,
      path: [
        [x, 0.2],
        [x + 0.1, 0.4],
      ],
      width_m: 0.03,
      depth: 0.8,
    });
    const poured = [puddle('a', 'green', 1e-4, [0.25, 0.3]), puddle('b', 'warm', 1e-4, [0.9, 0.3])];
    const [one, other] = [pull('s', 0.2), pull('t', 0.9)];
    expect(painted([...poured, one, other]).colours).toEqual(painted([...poured, other, one]).colours);
  });

  test('is painted the same twice', () => {
    fc.assert(
      fc.property(tools, at, (tool, p) => {
        const moves = [puddle('a', 'green', 1e-4, p), tool];
        expect(painted(moves).colours).toEqual(painted(structuredClone(moves)).colours);
      }),
      { numRuns: 5 },
    );
  });
});
