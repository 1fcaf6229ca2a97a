import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '#core/numeric/random.ts';
import type { Point } from '#core/piece/piece.ts';
import { adjustOutline } from './adjust-outline.ts';
import { ellipseHolds } from './error-ellipse.ts';
import { distancesOf, ell, onBase, quadrilateral, surveyOf } from './sample-surveys.ts';

const gap_m = (a: Point, b: Point) => Math.hypot(a.x_m - b.x_m, a.y_m - b.y_m);

describe('exact readings', () => {
  it('of a random quadrilateral give its very shape', () => {
    fc.assert(
      fc.property(fc.nat(1e6), (seed) => {
        const truth = onBase(quadrilateral(randomStream(seed)));
        const { corners, s0, rank, wrongTurns } = adjustOutline(surveyOf(truth, 'oooo', distancesOf(truth)));
        corners.forEach((corner, i) => {
          expect(gap_m(corner, truth[i]!)).toBeLessThan(1e-9);
        });
        expect(rank).toBe(5);
        expect(s0).toBeLessThan(1e-6);
        expect(wrongTurns).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  it('of a random L with its sides and the least number of diagonals give its very shape', () => {
    fc.assert(
      fc.property(fc.nat(1e6), (seed) => {
        const truth = onBase(ell(randomStream(seed)));
        const pairs = ['AB', 'BC', 'CD', 'DE', 'EF', 'FA', 'AC', 'AD', 'AE'];
        const { corners, dof, rank, crosses } = adjustOutline(
          surveyOf(truth, 'oooioo', distancesOf(truth, pairs)),
        );
        corners.forEach((corner, i) => {
          expect(gap_m(corner, truth[i]!)).toBeLessThan(1e-8);
        });
        expect(rank).toBe(9);
        expect(dof).toBe(0);
        expect(crosses).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  it('from a straightedge place a corner without a diagonal', () => {
    const truth = onBase(quadrilateral(randomStream(5)));
    const readings = distancesOf(truth, ['AB', 'BC']);
    const beside = (corner: number) => [
      {
        kind: 'along' as const,
        from: 0,
        to: 1,
        corner,
        value_m: truth[corner]!.x_m,
        sigma_m: 0.001,
        path: 'x',
      },
      {
        kind: 'offset' as const,
        from: 0,
        to: 1,
        corner,
        value_m: truth[corner]!.y_m,
        sigma_m: 0.001,
        path: 'y',
      },
    ];
    const { corners, dof } = adjustOutline(
      surveyOf(truth, 'oooo', [...readings, ...beside(2), ...beside(3)]),
    );
    corners.forEach((corner, i) => {
      expect(gap_m(corner, truth[i]!)).toBeLessThan(1e-9);
    });
    expect(dof).toBe(1);
  });
});

describe('noisy readings', () => {
  /** Hits of 95 % ellipses, and weighted squares, over many surveys of one shape. */
  function trials(
    truth: readonly Point[],
    turns: string,
    pairs: readonly string[] | undefined,
    count: number,
  ) {
    const stream = randomStream(41);
    const hits = truth.map(() => 0);
    let squares = 0;
    let passed = 0;
    let dof = 0;
    for (let trial = 0; trial < count; trial++) {
      const readings = distancesOf(truth, pairs).map((reading) => ({
        ...reading,
        value_m: reading.value_m + reading.sigma_m * stream.normal(),
      }));
      const outline = adjustOutline(surveyOf(truth, turns, readings));
      outline.corners.forEach((corner, i) => {
        if (i < 2) return;
        const t = truth[i]!;
        if (ellipseHolds(corner.ellipse, t.x_m - corner.x_m, t.y_m - corner.y_m)) hits[i]!++;
      });
      squares += outline.test!.value;
      dof = outline.dof;
      if (outline.test!.passes) passed++;
    }
    return { hits: hits.slice(2), squares: squares / count, dof, passed };
  }

  // 600 trials at 95 %: binomial standard deviation 5.3; 3.5 of them either side fails one honest run in 2000 a corner.
  it.each([
    ['a quadrilateral', quadrilateral(randomStream(11)), 'oooo', undefined],
    ['an L', ell(randomStream(12)), 'oooioo', undefined],
    [
      'an L with two spare readings',
      ell(randomStream(13)),
      'oooioo',
      ['AB', 'BC', 'CD', 'DE', 'EF', 'FA', 'AC', 'AD', 'AE', 'BD', 'CF'],
    ],
  ])(
    'of %s spread as predicted: the ellipses hold the truth 95 times in 100',
    (_name, shape, turns, pairs) => {
      const count = 600;
      const { hits, squares, dof, passed } = trials(onBase(shape), turns, pairs, count);
      for (const hit of [...hits, passed]) {
        expect(hit).toBeGreaterThanOrEqual(0.95 * count - 19);
        expect(hit).toBeLessThanOrEqual(0.95 * count + 19);
      }
      // Mean of chi-square is dof, its variance 2 dof.
      expect(Math.abs(squares - dof)).toBeLessThan(3.5 * Math.sqrt((2 * dof) / count));
    },
  );
});

describe('the outline', () => {
  it('does not depend on where or how the wall stands, nor on the order of readings', () => {
    fc.assert(
      fc.property(fc.nat(1e6), fc.double({ min: -3, max: 3, noNaN: true }), (seed, turn_rad) => {
        const shape = quadrilateral(randomStream(seed));
        const moved = shape.map(({ x_m, y_m }) => ({
          x_m: x_m * Math.cos(turn_rad) - y_m * Math.sin(turn_rad) + 7,
          y_m: x_m * Math.sin(turn_rad) + y_m * Math.cos(turn_rad) - 2,
        }));
        const a = adjustOutline(surveyOf(shape, 'oooo', distancesOf(shape)));
        const b = adjustOutline(surveyOf(moved, 'oooo', distancesOf(moved).reverse()));
        a.corners.forEach((corner, i) => {
          expect(gap_m(corner, b.corners[i]!)).toBeLessThan(1e-9);
          expect(Math.abs(corner.ellipse.long_m - b.corners[i]!.ellipse.long_m)).toBeLessThan(1e-9);
        });
      }),
      { numRuns: 50 },
    );
  });

  it('named clockwise is the mirror, its residuals the same', () => {
    const shape = quadrilateral(randomStream(8));
    const readings = distancesOf(shape).map((reading, i) => ({
      ...reading,
      value_m: reading.value_m + 0.001 * i,
    }));
    const plain = adjustOutline(surveyOf(shape, 'oooo', readings));
    const mirror = adjustOutline({ ...surveyOf(shape, 'oooo', readings), clockwise: true });
    mirror.corners.forEach((corner, i) => {
      expect(corner.x_m).toBe(plain.corners[i]!.x_m);
      expect(corner.y_m).toBeCloseTo(-plain.corners[i]!.y_m, 15);
    });
    expect(mirror.checks).toEqual(plain.checks);
  });

  it('refuses fewer than three corners and corners that are not there', () => {
    const shape = quadrilateral(randomStream(8));
    expect(() => adjustOutline(surveyOf(shape, 'oo', []))).toThrow(RangeError);
    expect(() => adjustOutline(surveyOf(shape, 'ooo', distancesOf(shape)))).toThrow(RangeError);
  });
});

describe('too few readings', () => {
  const square = [
    { x_m: 0, y_m: 0 },
    { x_m: 1.2, y_m: 0 },
    { x_m: 1.2, y_m: 0.6 },
    { x_m: 0, y_m: 0.6 },
  ];

  it('four sides alone leave the frame loose, and a diagonal is asked for', () => {
    const { rank, unknowns, corners, next, verdict } = adjustOutline(
      surveyOf(square, 'oooo', distancesOf(square, ['AB', 'BC', 'CD', 'DA'])),
    );
    expect([rank, unknowns]).toEqual([4, 5]);
    expect(corners.map(({ loose }) => loose)).toEqual([false, false, true, true]);
    expect(next[0]).toMatchObject({ holds: true, again: false });
    expect([next[0]!.from, next[0]!.to]).toEqual([0, 2]);
    expect(verdict.kind).toBe('unchecked');
    expect(gap_m(corners[2]!, square[2]!)).toBeLessThan(1e-9);
  });

  it('names the one corner that hangs loose', () => {
    const { corners } = adjustOutline(
      surveyOf(square, 'oooo', distancesOf(square, ['AB', 'BC', 'AC', 'DA'])),
    );
    expect(corners.map(({ loose }) => loose)).toEqual([false, false, false, true]);
  });

  it('none at all is still an outline, wholly loose', () => {
    const { corners, rank } = adjustOutline(surveyOf(square, 'oooo', []));
    expect(rank).toBe(0);
    expect(corners.slice(1).every(({ loose }) => loose)).toBe(true);
    expect(corners.every(({ x_m, y_m }) => Number.isFinite(x_m + y_m))).toBe(true);
  });

  it('the distance it asks for does what it promises', () => {
    const shape = quadrilateral(randomStream(21));
    const held = distancesOf(shape, ['AB', 'BC', 'CD', 'DA', 'AC']);
    const first = adjustOutline(surveyOf(shape, 'oooo', held));
    const total = (outline: ReturnType<typeof adjustOutline>) =>
      Math.max(...outline.corners.map(({ ellipse }) => ellipse.long_m));
    const best = first.next[0]!;
    expect([best.from, best.to, best.holds]).toEqual([1, 3, false]);
    const more = distancesOf(shape, ['BD']);
    expect(total(adjustOutline(surveyOf(shape, 'oooo', [...held, ...more])))).toBeLessThan(total(first));
  });
});

describe('a misread tape', () => {
  const shape = ell(randomStream(31));
  const all = distancesOf(shape);

  it('is found where readings check each other, with the size of the mistake', () => {
    fc.assert(
      fc.property(fc.nat(all.length - 1), fc.constantFrom(-0.0254, 0.0254, 0.1), (wrong, error) => {
        const readings = all.map((r, i) => (i === wrong ? { ...r, value_m: r.value_m + error } : r));
        const { verdict, checks } = adjustOutline(surveyOf(shape, 'oooioo', readings));
        expect(verdict).toEqual({ kind: 'suspect', reading: wrong });
        expect(Math.abs(checks[wrong]!.mistake_m! / error - 1)).toBeLessThan(0.25);
      }),
      { numRuns: 40 },
    );
  });

  it('cannot be told with one reading to spare: all six stand alike', () => {
    const four = quadrilateral(randomStream(32));
    const readings = distancesOf(four).map((r, i) => (i === 1 ? { ...r, value_m: r.value_m + 0.0254 } : r));
    const { verdict, checks, dof } = adjustOutline(surveyOf(four, 'oooo', readings));
    expect(dof).toBe(1);
    expect(verdict.kind).toBe('cannot tell');
    const sizes = checks.map(({ standardised }) => Math.abs(standardised!));
    for (const size of sizes) expect(size / sizes[0]!).toBeCloseTo(1, 6);
  });
});

describe('a shape that folds two ways', () => {
  it('is told, with the distance that decides', () => {
    // D hangs on C and E, all but in one line: folded over CE it still turns outward within a degree.
    const shape = [
      [0, 0],
      [2, 0],
      [2, 0.6],
      [1, 0.606],
      [0, 0.6],
    ].map(([x, y]) => ({ x_m: x!, y_m: y! }));
    const held = ['AB', 'BC', 'AC', 'AE', 'BE', 'CD', 'DE'];
    const { otherShape } = adjustOutline(surveyOf(shape, 'ooooo', distancesOf(shape, held)));
    expect([otherShape!.from, otherShape!.to]).toContain(3);
    expect(otherShape!.difference_m).toBeGreaterThan(0.005);
    const more = adjustOutline(surveyOf(shape, 'ooooo', distancesOf(shape, [...held, 'AD', 'BD'])));
    expect(gap_m(more.corners[3]!, shape[3]!)).toBeLessThan(1e-8);
  });

  it('may put two corners on one spot in a fold it drops', () => {
    const kite = [
      [0, 0],
      [1, -0.5],
      [2, 0],
      [1, 0.5],
    ].map(([x, y]) => ({ x_m: x!, y_m: y! }));
    const readings = distancesOf(kite, ['AC', 'AB', 'BC', 'CD', 'DA', 'BD']);
    const { corners } = adjustOutline(surveyOf(kite, 'oooo', readings));
    corners.forEach((corner, i) => {
      expect(gap_m(corner, onBase(kite)[i]!)).toBeLessThan(1e-9);
    });
  });
});
