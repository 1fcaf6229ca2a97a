import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COUNTER, laid, puddle, setting, withMoves } from './look.check.ts';
import { type Look, patternOf } from './look.ts';
import { LookDocument } from './look-document.ts';
import { lookShares, shareSamples } from './look-shares.ts';
import { colourAt } from './picture.ts';
import { planeArea_m2, readLook } from './read-look.ts';

const SETTING = setting();
const SAMPLES = shareSamples(SETTING.panels, 20_000);
const WHOLE_M3 = planeArea_m2(SETTING.panels) * SETTING.film_m;

function read(document: LookDocument, within = SETTING): Look {
  const look = readLook(document, within);
  if (!look.ok) throw new Error(JSON.stringify(look.problems));
  return look.value;
}
const problemsOf = (document: LookDocument) => {
  const look = readLook(document, SETTING);
  return look.ok ? [] : look.problems;
};

describe('a look', () => {
  test('of nothing is its ground all over', () => {
    expect([...lookShares(read(withMoves([])), SAMPLES)]).toEqual([1, 0, 0]);
    expect([...lookShares(read(withMoves([], { ground: 'warm' })), SAMPLES)]).toEqual([0, 0, 1]);
  });

  test('shows of a colour what was poured of it: a volume is its area times the film', () => {
    const parts = fc.record({
      share: fc.double({ min: 0.02, max: 0.25, noNaN: true }),
      x: fc.double({ min: 0.35, max: 0.5, noNaN: true }),
      y: fc.double({ min: 0.25, max: 0.35, noNaN: true }),
    });
    fc.assert(
      fc.property(parts, ({ share, x, y }) => {
        const look = read(withMoves([puddle('a', 'green', share * 0.4 * WHOLE_M3, [x, y])]));
        expect(Math.abs(lookShares(look, SAMPLES)[1]! - share * 0.4)).toBeLessThan(2e-3);
      }),
      { numRuns: 30 },
    );
  });

  test('a puddle lies where it was poured when nothing comes after it, and still does after three more', () => {
    const spot = puddle('a', 'green', 0.02 * WHOLE_M3, [0.2, 0.2]);
    const others = [
      puddle('b', 'warm', 0.1 * WHOLE_M3, [0.5, 0.4]),
      puddle('c', 'warm', 0.1 * WHOLE_M3, [0.45, 0.15]),
    ];
    const map = read(withMoves([spot])).moves[0]!.maps[0]!;
    expect(map).toMatchObject({ kind: 'puddle', centre: [0.2, 0.2] });
    const middle = (look: Look) => {
      const at = colourAt(patternOf(look));
      let [x, y, n] = [0, 0, 0];
      for (let i = 0; i < SAMPLES.x.length; i++) {
        const [px, py] = [SAMPLES.x[i]!, SAMPLES.y[i]!];
        if (at(px, py) === 1) [x, y, n] = [x + px, y + py, n + 1];
      }
      return [x / n, y / n] as const;
    };
    const [x, y] = middle(read(withMoves([spot, ...others])));
    expect(Math.hypot(x - 0.2, y - 0.2)).toBeLessThan(0.06);
  });

  test('a ribbon covers what a round puddle of the same cup covers', () => {
    const ribbon = read(
      withMoves([puddle('a', 'green', 0.08 * WHOLE_M3, [0.15, 0.3], [0.4, 0.4], [0.55, 0.2])]),
    );
    expect(ribbon.moves[0]!.maps.length).toBeGreaterThan(3);
    expect(Math.abs(lookShares(ribbon, SAMPLES)[1]! - 0.08)).toBeLessThan(2e-3);
  });

  test('a move that is not kept leaves no trace', () => {
    const kept = [puddle('a', 'green', 0.1 * WHOLE_M3, [0.3, 0.3])];
    const more = { ...puddle('b', 'warm', 0.1 * WHOLE_M3, [0.4, 0.3]), kept: false };
    expect(read(withMoves([...kept, more])).moves).toEqual(read(withMoves(kept)).moves);
  });
});

describe('symmetry', () => {
  test.each(['left and right', 'half turn'] as const)('%s: both sides hold the same colours', (symmetry) => {
    const plain = setting([laid({ piece: { ...COUNTER, cutOuts: [] } })]);
    const whole = planeArea_m2(plain.panels) * plain.film_m;
    const look = read(
      withMoves(
        [
          puddle('a', 'green', 0.15 * whole, [0.3, 0.2]),
          puddle('b', 'warm', 0.1 * whole, [0.25, 0.45]),
          {
            kind: 'stroke',
            id: 's',
            kept: true,
            name: '',
            path: [
              [0.2, 0.3],
              [0.4, 0.35],
            ],
            width_m: 0.03,
            depth: 0.8,
          },
        ],
        { symmetry },
      ),
      plain,
    );
    const all = shareSamples(plain.panels.slice(0, 1), 40_000);
    const half = (keep: (x: number) => boolean) => {
      const at = [...all.x.keys()].filter((i) => keep(all.x[i]!));
      const pick = (from: Float64Array) => Float64Array.from(at, (i) => from[i]!);
      return lookShares(look, { x: pick(all.x), y: pick(all.y), weight: pick(all.weight) });
    };
    const [left, right] = [half((x) => x < 0.6), half((x) => x > 0.6)];
    left.forEach((share, at) => {
      expect(Math.abs(share - right[at]!)).toBeLessThan(0.01);
    });
    expect(Math.abs(lookShares(look, shareSamples(plain.panels, 40_000))[1]! - 0.15)).toBeLessThan(5e-3);
  });
});

describe('the panels', () => {
  test('are the top and its three finished faces, and their films add up to what stays on the work', () => {
    expect(SETTING.panels.map((panel) => panel.name)).toEqual([
      'Counter',
      'Counter, front face',
      'Counter, right face',
      'Counter, left face',
    ]);
    const top = 1.2 * 0.6 - (4 - Math.PI) * 0.01 ** 2 - Math.PI * 0.15 ** 2;
    expect(SETTING.panels[0]!.area_m2).toBeCloseTo(top, 9);
    expect(WHOLE_M3).toBeGreaterThan(top * SETTING.film_m);
    expect(WHOLE_M3).toBeLessThan(top * SETTING.film_m + 2.4 * 0.04 * 0.0005);
  });

  test('of a face goes on from the edge of the top, outwards', () => {
    const [, front, right, left] = SETTING.panels;
    expect(front!.toPlane(0.5, 0)[1]).toBeCloseTo(0, 9);
    expect(front!.toPlane(0.5, -0.03)[1]).toBeCloseTo((-0.03 * 0.5) / 1.3, 9);
    expect(right!.toPlane(0.3, -0.03)[0]).toBeGreaterThan(1.2);
    expect(left!.toPlane(0.3, -0.03)[0]).toBeLessThan(0);
  });

  test('of a splash start at the side they stand on', () => {
    const { panels } = setting([
      laid({
        splashes: [
          { side: 'back', length_m: 1.2, height_m: 0.1 },
          { side: 'left', length_m: 0.58, height_m: 0.1 },
          { side: 'right', length_m: 0.58, height_m: 0.1 },
        ],
      }),
    ]);
    const at = (name: string) => panels.find((panel) => panel.name === name)!;
    expect(at('Counter, backsplash').toPlane(0.3, 0)).toEqual([0.3, 0.6]);
    expect(at('Counter, left splash').toPlane(0.2, 0.05)).toEqual([-0.05, 0.2]);
    expect(at('Counter, right splash').toPlane(0.2, 0.05)[0]).toBeCloseTo(1.25, 12);
  });

  test('of a second piece lie where it is laid, turned', () => {
    const { panels } = setting([laid(), laid({ name: 'Shelf', at: [2, 0], turn_rad: Math.PI / 2 })]);
    const shelf = panels.find((panel) => panel.name === 'Shelf')!;
    expect(shelf.kind).toBe('piece');
    const [x, y] = shelf.toPlane(1, 0);
    expect(x).toBeCloseTo(2, 12);
    expect(y).toBeCloseTo(1, 12);
  });
});

describe('what cannot be painted is named', () => {
  test('a colour the coat does not have', () => {
    expect(problemsOf(withMoves([puddle('a', 'blue', 1e-5, [0.3, 0.3])]))).toMatchObject([
      { path: 'moves.0.colour', code: 'look.colour', read: 'blue', allowed: 'dark, green, warm' },
    ]);
    expect(problemsOf(withMoves([], { ground: 'blue' }))[0]).toMatchObject({ path: 'ground' });
  });

  test('more than the coat holds', () => {
    const [problem] = problemsOf(withMoves([puddle('a', 'green', WHOLE_M3 * 1.01, [0.3, 0.3])]));
    expect(problem).toMatchObject({ path: 'moves', code: 'look.too-much' });
    expect(problem!.allowed).toMatch(/^up to .*fl oz/);
  });

  test('an id given twice, and an edge that is not there', () => {
    const twice = puddle('a', 'green', 1e-5, [0.3, 0.3]);
    expect(problemsOf(withMoves([twice, twice]))[0]).toMatchObject({ code: 'look.same-id' });
    const fog = {
      kind: 'fogged edge',
      id: 'f',
      kept: true,
      name: '',
      colour: '#ffffff',
      edges: ['rim'],
      reach_m: 0.1,
      strength: 0.5,
    } as const;
    expect(problemsOf(withMoves([{ ...fog, edges: ['rim'] }]))[0]).toMatchObject({
      code: 'look.edge',
      read: 'rim',
    });
  });

  test('a puddle beside the work is doubted, not refused', () => {
    const look = readLook(withMoves([puddle('a', 'green', 1e-5, [5, 5])]), SETTING);
    expect(look.ok && look.warnings).toMatchObject([{ code: 'warning.look-beside', path: 'moves.0.path' }]);
  });

  test('a file with a figure out of its range is refused by its shape', () => {
    const wrong = { version: 1, moves: [puddle('a', 'green', -1, [0.3, 0.3])] };
    expect(LookDocument.safeParse(wrong).success).toBe(false);
    expect(LookDocument.safeParse({ version: 2 }).success).toBe(false);
    expect(
      LookDocument.safeParse({ version: 1, moves: [puddle('a', 'green', 1e-5, [Number.NaN, 0])] }).success,
    ).toBe(false);
  });
});
