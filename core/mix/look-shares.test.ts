import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyLook, type LookDocument } from '#core/look/look-document.ts';
import type { Colour } from './coat.ts';
import { lookPours } from './look-pours.ts';
import { pouredShares, shareOfCups, sharesAsTyped, sharesWithOne, withShares } from './look-shares.ts';
import { splitCups, weighCups } from './split-cups.ts';

const KEYS = ['dark', 'green', 'warm'];
const WHOLE_M3 = 0.001;
const MIX = { volumeA: 2, volumeB: 1, densityA_kg_m3: 1150, densityB_kg_m3: 980 };

const volumes = fc.array(fc.double({ min: 1e-5, max: 4e-5, noNaN: true }), { minLength: 1, maxLength: 8 });
const looks: fc.Arbitrary<LookDocument> = fc.tuple(volumes, volumes).map(([green, warm]) => ({
  ...emptyLook(),
  moves: [...green.map((v) => ['green', v] as const), ...warm.map((v) => ['warm', v] as const)].map(
    ([colour, volume_m3], at) => ({
      kind: 'puddle',
      id: `p${at}`,
      kept: true,
      name: '',
      colour,
      volume_m3,
      path: [[0.1 * at, 0.1]],
    }),
  ),
}));
const parts = fc.double({ min: 0.05, max: 1, noNaN: true });
const wanted = fc.tuple(parts, parts, parts).map((p) => {
  const sum = p[0] + p[1] + p[2];
  return new Map(KEYS.map((key, at) => [key, p[at]! / sum]));
});
const value = <T>(result: { ok: true; value: T } | { ok: false; problems: readonly unknown[] }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

describe('shares and puddles', () => {
  test('are one whole, whatever is poured', () => {
    fc.assert(
      fc.property(looks, (look) => {
        const shares = pouredShares(look, KEYS, WHOLE_M3);
        expect([...shares.values()].reduce((a, b) => a + b)).toBeCloseTo(1, 12);
      }),
    );
  });

  test('a changed share is what the puddles then hold; doing it twice changes nothing more', () => {
    fc.assert(
      fc.property(looks, wanted, (look, shares) => {
        const once = value(withShares(look, KEYS, shares, WHOLE_M3));
        for (const [key, share] of pouredShares(once, KEYS, WHOLE_M3))
          expect(share).toBeCloseTo(shares.get(key)!, 12);
        const twice = value(withShares(once, KEYS, shares, WHOLE_M3));
        twice.moves.forEach((move, at) => {
          const before = once.moves[at]!;
          if (move.kind === 'puddle' && before.kind === 'puddle')
            expect(move.volume_m3 / before.volume_m3).toBeCloseTo(1, 12);
        });
      }),
    );
  });

  test('there and back is the same look', () => {
    fc.assert(
      fc.property(looks, wanted, (look, shares) => {
        const was = pouredShares(look, KEYS, WHOLE_M3);
        const back = value(withShares(value(withShares(look, KEYS, shares, WHOLE_M3)), KEYS, was, WHOLE_M3));
        back.moves.forEach((move, at) => {
          const before = look.moves[at]!;
          if (move.kind === 'puddle' && before.kind === 'puddle')
            expect(move.volume_m3 / before.volume_m3).toBeCloseTo(1, 9);
        });
      }),
    );
  });

  test('one share changed leaves the others in proportion', () => {
    fc.assert(
      fc.property(wanted, fc.double({ min: 0, max: 1, noNaN: true }), (shares, share) => {
        const changed = sharesWithOne(shares, 'green', share);
        expect(changed.get('green')).toBe(share);
        expect([...changed.values()].reduce((a, b) => a + b)).toBeCloseTo(1, 12);
        expect(changed.get('dark')! * shares.get('warm')!).toBeCloseTo(
          changed.get('warm')! * shares.get('dark')!,
          12,
        );
      }),
    );
  });

  test('as texts add up to 100 %', () => {
    fc.assert(
      fc.property(wanted, (shares) => {
        const tenths = [...sharesAsTyped(shares).values()].map((text) =>
          Math.round(Number.parseFloat(text) * 10),
        );
        expect(tenths.reduce((a, b) => a + b)).toBe(1000);
      }),
    );
  });

  test('a share that no puddle can hold is refused with its field', () => {
    const none = { ...emptyLook(), moves: [] };
    const shares = new Map(KEYS.map((key) => [key, 1 / 3]));
    const refused = withShares(none, KEYS, shares, WHOLE_M3);
    expect(refused.ok).toBe(false);
    expect(!refused.ok && refused.problems.map((p) => [p.path, p.code])).toEqual([
      ['colours.1.share', 'look.no-puddle'],
      ['colours.2.share', 'look.no-puddle'],
    ]);
    const half = withShares(none, KEYS, new Map([['dark', 0.5]]), WHOLE_M3);
    expect(!half.ok && half.problems[0]).toMatchObject({
      code: 'colours.shares',
      read: '50 %',
      allowed: '100 %',
    });
  });
});

describe('cups and puddles', () => {
  const colour = (name: string, share: number): Colour => ({
    name,
    share,
    colourant: 'none',
    load: 0,
    swatch: '#888888',
  });
  const cupsFor = (shares: ReadonlyMap<string, number>, mass_kg: number) => {
    const split = splitCups(
      [...shares].map(([key, share]) => colour(key, share)),
      mass_kg,
      0.3,
      1,
    );
    const weighed = weighCups(split, mass_kg, MIX, 1100, 1e-6);
    return weighed;
  };

  test('every gram of every cup goes somewhere, and every puddle gets its volume', () => {
    fc.assert(
      fc.property(looks, fc.double({ min: 0.5, max: 3, noNaN: true }), (look, mass_kg) => {
        const shares = pouredShares(look, KEYS, WHOLE_M3);
        const cups = cupsFor(shares, mass_kg);
        const pours = lookPours({
          look,
          colours: KEYS.map((key) => ({ key, label: key })),
          cups,
          whole_m3: WHOLE_M3,
        });
        for (const cup of cups) {
          const out = pours
            .filter((pour) => pour.cup === cup.number)
            .reduce((sum, pour) => sum + pour.mass_kg, 0);
          expect(out).toBeCloseTo(cup.mass_kg, 8);
        }
        for (const move of look.moves) {
          if (move.kind !== 'puddle') continue;
          const got = pours
            .filter((pour) => pour.move === move.id)
            .reduce((sum, pour) => sum + pour.film_m3, 0);
          expect(got / move.volume_m3).toBeCloseTo(1, 6);
        }
      }),
    );
  });

  test('a larger cup is a larger share of the same coat, and the puddles follow', () => {
    fc.assert(
      fc.property(looks, fc.double({ min: 0.1, max: 0.8, noNaN: true }), (look, cup_kg) => {
        const shares = sharesWithOne(pouredShares(look, KEYS, WHOLE_M3), 'green', shareOfCups(cup_kg, 1));
        const changed = value(withShares(look, KEYS, shares, WHOLE_M3));
        const green = cupsFor(pouredShares(changed, KEYS, WHOLE_M3), 1).filter(
          (cup) => cup.colour === 'green',
        );
        expect(green.reduce((sum, cup) => sum + cup.mass_kg, 0)).toBeCloseTo(cup_kg, 4);
      }),
    );
  });
});
