import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { composeAlternatives, composeLook } from './compose.ts';
import { laid, setting, withMoves } from './look.check.ts';
import { DIRECTIONS, EDGE_PLACES, LookDocument, MELDS, SYMMETRIES } from './look-document.ts';
import { lookShares, shareSamples } from './look-shares.ts';
import { readLook } from './read-look.ts';

const SETTING = setting([laid({ splashes: [{ side: 'back', length_m: 1.2, height_m: 0.1 }] })]);
const FINE = shareSamples(SETTING.panels, 100_000);
const WANTED = new Map([
  ['dark', 0.6],
  ['green', 0.25],
  ['warm', 0.15],
]);
const CALM = {
  blockSize: '5 in',
  meld: 'soft',
  direction: 'along',
  edge: 'front',
  edgeColour: 'warm',
  restless: 0.2,
  shares: [],
} satisfies LookDocument['brief'];

function composed(document: LookDocument, wanted = WANTED, within = SETTING) {
  const made = composeLook(document, wanted, within);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}
function sharesOf(document: LookDocument, within = SETTING, samples = FINE) {
  const look = readLook(document, within);
  if (!look.ok) throw new Error(JSON.stringify(look.problems));
  return lookShares(look.value, samples);
}

describe('a composed look', () => {
  test('has the shares of its brief within 0.5 % of the area, counted on finer samples than it was made with', () => {
    const brief = fc.record({
      blockSize: fc.constantFrom('', '3 in', '150 mm'),
      meld: fc.constantFrom(...MELDS),
      direction: fc.constantFrom(...DIRECTIONS),
      edge: fc.constantFrom(...EDGE_PLACES),
      edgeColour: fc.constant('warm'),
      restless: fc.double({ min: 0, max: 1, noNaN: true }),
      shares: fc.constant<LookDocument['brief']['shares']>([]),
    });
    const asked = fc.record({
      brief,
      seed: fc.nat(1e6),
      symmetry: fc.constantFrom(...SYMMETRIES),
      green: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
      warm: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
    });
    fc.assert(
      fc.property(asked, ({ green, warm, ...change }) => {
        const wanted = new Map([
          ['dark', 1 - green - warm],
          ['green', green],
          ['warm', warm],
        ]);
        const { look } = composed(withMoves([], change), wanted);
        const shares = sharesOf(look);
        [...wanted.values()].forEach((share, at) => {
          expect(Math.abs(shares[at]! - share)).toBeLessThan(0.005);
        });
      }),
      { numRuns: 12 },
    );
  });

  test('is a valid document, the same for the same seed and another for another', () => {
    const document = withMoves([], { brief: CALM });
    const { look } = composed(document);
    expect(LookDocument.parse(JSON.parse(JSON.stringify(look)))).toEqual(look);
    expect(composed(document).look).toEqual(look);
    const looks = composeAlternatives(document, WANTED, SETTING, 3);
    expect(looks.every((one) => one.ok)).toBe(true);
    expect(new Set(looks.map((one) => JSON.stringify(one.ok && one.value.look.moves))).size).toBe(3);
    expect(looks[0]!.ok && looks[0]!.value.look).toEqual(look);
  });

  test('keeps what is in a locked area and pours nothing else there', () => {
    const { look } = composed(withMoves([], { brief: CALM }));
    const corners: [number, number][] = [
      [0, 0],
      [0.5, 0],
      [0.5, 0.6],
      [0, 0.6],
    ];
    const locked = [{ id: 'l', name: '', corners }];
    const inside = (moves: LookDocument['moves']) =>
      moves.filter(
        (m) => m.kind === 'puddle' && m.path.some(([x, y]) => x > 0 && x < 0.5 && y > 0 && y < 0.6),
      );
    const again = composed({ ...look, seed: 99, locked }).look;
    expect(inside(look.moves).length).toBeGreaterThan(2);
    expect(
      inside(again.moves).filter((m) => !inside(look.moves).some((was) => was.id === m.id)),
    ).toHaveLength(0);
    for (const was of inside(look.moves)) expect(again.moves).toContainEqual(was);
  });

  test('gathers the edge colour at the edge asked for', () => {
    const { look } = composed(withMoves([], { brief: { ...CALM, meld: 'crisp' } }));
    const strip = shareSamples([{ ...SETTING.panels[0]!, depth_m: 0.1, area_m2: 0.12 }], 10_000);
    expect(sharesOf(look, SETTING, strip)[2]!).toBeGreaterThan(0.35);
  });

  test('goes on over a second piece beside the first', () => {
    const two = setting([laid(), laid({ name: 'Right half', at: [1.2, 0] })]);
    const { look } = composed(withMoves([], { brief: CALM }), WANTED, two);
    const second = shareSamples([two.panels[1]!], 20_000);
    expect(two.panels[1]!.name).toBe('Right half');
    expect(sharesOf(look, two, second)[1]!).toBeGreaterThan(0.05);
    expect(Math.abs(sharesOf(look, two, shareSamples(two.panels, 60_000))[1]! - 0.25)).toBeLessThan(0.005);
  });
});

describe('a brief that cannot be met says why', () => {
  const problem = (change: Partial<LookDocument>, wanted: ReadonlyMap<string, number> = WANTED) => {
    const made = composeLook(withMoves([], change), wanted, SETTING);
    return made.ok ? null : made.problems[0];
  };
  test('a size that cannot be read, an edge without a colour', () => {
    expect(problem({ brief: { ...CALM, blockSize: 'big' } })).toMatchObject({ path: 'brief.blockSize' });
    expect(problem({ brief: { ...CALM, blockSize: '9 ft' } })!.allowed).toMatch(/ft|in/);
    expect(problem({ brief: { ...CALM, edgeColour: '' } })).toMatchObject({
      path: 'brief.edgeColour',
      read: 'nothing',
    });
  });
  test('no colours, a colour that is not there, a share below nothing', () => {
    expect(problem({}, new Map())).toMatchObject({ code: 'look.no-colours' });
    expect(problem({}, new Map([['blue', 1]]))).toMatchObject({ code: 'look.colour', read: 'blue' });
    expect(problem({}, new Map([['dark', -0.1]]))).toMatchObject({ code: 'look.share' });
  });
  test('an area locked all over', () => {
    const corners: [number, number][] = [
      [-1, -1],
      [3, -1],
      [3, 3],
      [-1, 3],
    ];
    expect(problem({ locked: [{ id: 'l', name: '', corners }] })).toMatchObject({ code: 'look.no-room' });
  });
});
