import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlinePath } from './outline.ts';
import {
  bounds,
  centroid,
  distanceToPath_m,
  flattenPath,
  movePath,
  pathArea_m2,
  pathLength_m,
  pointInside,
  reversePath,
  signedArea_m2,
} from './path.ts';
import type { Path, Point } from './piece.ts';

/** Stars with rounded corners about the origin: never crossing, convex and concave corners, any size. */
const shape = fc
  .record({
    size: fc.double({ min: 0.1, max: 2, noNaN: true }),
    reach: fc.array(fc.double({ min: 0.4, max: 1, noNaN: true }), { minLength: 3, maxLength: 12 }),
    round: fc.double({ min: 0, max: 0.05, noNaN: true }),
  })
  .map(({ size, reach, round }) =>
    outlinePath({
      shape: 'polygon',
      corners: reach.map((r, i) => ({
        x_m: size * r * Math.cos((2 * Math.PI * i) / reach.length),
        y_m: size * r * Math.sin((2 * Math.PI * i) / reach.length),
        radius_m: size * round * 0.2,
      })),
    }),
  );

const place = fc.record({
  angle: fc.double({ min: -10, max: 10, noNaN: true }),
  x_m: fc.double({ min: -10, max: 10, noNaN: true }),
  y_m: fc.double({ min: -10, max: 10, noNaN: true }),
});

function mirror(path: Path): Path {
  const flip = (p: Point): Point => ({ x_m: -p.x_m, y_m: p.y_m });
  return path.map((s) => ({ ...s, from: flip(s.from), to: flip(s.to), bulge: -s.bulge }));
}

function polygonArea(points: readonly Point[]): number {
  return points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length]!;
    return sum + (p.x_m * q.y_m - q.x_m * p.y_m) / 2;
  }, 0);
}

describe('area and length', () => {
  it('do not change when the piece is moved, turned or mirrored', () => {
    fc.assert(
      fc.property(shape, place, (path, { angle, ...by }) => {
        const moved = movePath(path, angle, by);
        const area = pathArea_m2(path);
        const length = pathLength_m(path);
        expect(Math.abs(pathArea_m2(moved) / area - 1)).toBeLessThan(1e-9);
        expect(Math.abs(pathLength_m(moved) / length - 1)).toBeLessThan(1e-9);
        expect(Math.abs(signedArea_m2(mirror(path)) / -area - 1)).toBeLessThan(1e-12);
        expect(Math.abs(signedArea_m2(reversePath(path)) / -area - 1)).toBeLessThan(1e-12);
        expect(Math.abs(pathLength_m(mirror(path)) / length - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('have a centre that moves along', () => {
    fc.assert(
      fc.property(shape, place, (path, { angle, ...by }) => {
        const c = centroid(path);
        const moved = centroid(movePath(path, angle, by));
        expect(moved.x_m).toBeCloseTo(c.x_m * Math.cos(angle) - c.y_m * Math.sin(angle) + by.x_m, 8);
        expect(moved.y_m).toBeCloseTo(c.x_m * Math.sin(angle) + c.y_m * Math.cos(angle) + by.y_m, 8);
      }),
    );
  });

  it('add up when a piece is cut in two along an arc', () => {
    const a = { x_m: 0.5, y_m: 0 };
    const b = { x_m: 0.7, y_m: 0.6 };
    const cut = (bulge: number, from: Point, to: Point) => ({
      kind: 'arc' as const,
      from,
      to,
      bulge,
      edge: 'seam',
    });
    const line = (from: Point, to: Point) => ({ kind: 'line' as const, from, to, bulge: 0, edge: 'side' });
    const corner = [
      { x_m: 0, y_m: 0 },
      { x_m: 1.2, y_m: 0 },
      { x_m: 1.2, y_m: 0.6 },
      { x_m: 0, y_m: 0.6 },
    ] as const;
    const left = [line(corner[0], a), cut(0.4, a, b), line(b, corner[3]), line(corner[3], corner[0])];
    const right = [line(a, corner[1]), line(corner[1], corner[2]), line(corner[2], b), cut(-0.4, b, a)];
    expect(pathArea_m2(left) + pathArea_m2(right)).toBeCloseTo(0.72, 14);
    const [cl, cr] = [centroid(left), centroid(right)];
    const [al, ar] = [pathArea_m2(left), pathArea_m2(right)];
    expect((cl.x_m * al + cr.x_m * ar) / 0.72).toBeCloseTo(0.6, 13);
    expect((cl.y_m * al + cr.y_m * ar) / 0.72).toBeCloseTo(0.3, 13);
  });
});

describe('a flattened path', () => {
  it('has its corners on the path and its sides within the tolerance', () => {
    fc.assert(
      fc.property(shape, fc.constantFrom(0.01, 0.001, 0.0001, 0.00001), (path, tolerance_m) => {
        const points = flattenPath(path, tolerance_m);
        points.forEach((p, i) => {
          const q = points[(i + 1) % points.length]!;
          expect(distanceToPath_m(path, p)).toBeLessThan(1e-9);
          for (const f of [0.25, 0.5, 0.75]) {
            const on = { x_m: p.x_m + f * (q.x_m - p.x_m), y_m: p.y_m + f * (q.y_m - p.y_m) };
            expect(distanceToPath_m(path, on)).toBeLessThanOrEqual(tolerance_m * (1 + 1e-6) + 1e-12);
          }
        });
      }),
      { numRuns: 40 },
    );
  });

  it('comes closer with the square of the side: order 2 in area and in length', () => {
    const circle = outlinePath({ shape: 'round', diameter_m: 1 });
    const errors = [1e-2, 1e-3, 1e-4, 1e-5].map((tolerance_m) => {
      const points = flattenPath(circle, tolerance_m);
      return { n: points.length, area: Math.PI / 4 - polygonArea(points) };
    });
    for (let i = 1; i < errors.length; i += 1) {
      const [coarse, fine] = [errors[i - 1]!, errors[i]!];
      const order = Math.log(coarse.area / fine.area) / Math.log(fine.n / coarse.n);
      expect(order).toBeGreaterThan(1.95);
      expect(order).toBeLessThan(2.05);
    }
  });

  it('refuses a tolerance that would never end', () => {
    const circle = outlinePath({ shape: 'round', diameter_m: 1 });
    for (const t of [0, -1, Number.NaN, Infinity, 1e-9])
      expect(() => flattenPath(circle, t)).toThrow(RangeError);
  });
});

describe('inside or outside', () => {
  it('has no holes along the chords of its arcs: a disc is whole in every row and column of a grid', () => {
    for (const diameter_m of [0.6, 0.61, 0.9, 1.1]) {
      const disc = outlinePath({ shape: 'round', diameter_m });
      for (const n of [60, 61, 90, 120])
        for (let row = 0; row < n; row++) {
          const inside = Array.from({ length: n }, (_, column) =>
            pointInside(disc, {
              x_m: ((column + 0.5) / n) * diameter_m,
              y_m: ((row + 0.5) / n) * diameter_m,
            }),
          );
          expect(inside.lastIndexOf(true) - inside.indexOf(true) + 1).toBe(inside.filter(Boolean).length);
        }
    }
  });
  it('agrees with the closed forms of a disc and of a rounded rectangle', () => {
    const disc = outlinePath({ shape: 'round', diameter_m: 1 });
    const card = outlinePath({ shape: 'rectangle', length_m: 1, width_m: 0.6, cornerRadius_m: 0.2 });
    const coordinate = fc.double({ min: -0.2, max: 1.2, noNaN: true });
    fc.assert(
      fc.property(coordinate, coordinate, (x_m, y_m) => {
        const r = Math.hypot(x_m - 0.5, y_m - 0.5);
        if (Math.abs(r - 0.5) > 1e-9) expect(pointInside(disc, { x_m, y_m })).toBe(r < 0.5);
        // Distance to the inner rectangle the rounding is drawn around.
        const dx = Math.max(0, Math.abs(x_m - 0.5) - 0.3);
        const dy = Math.max(0, Math.abs(y_m - 0.3) - 0.1);
        const d = Math.hypot(dx, dy);
        if (Math.abs(d - 0.2) > 1e-9) expect(pointInside(card, { x_m, y_m })).toBe(d < 0.2);
      }),
      { numRuns: 2000 },
    );
  });

  it('measures the distance to the rim of a disc exactly', () => {
    const disc = outlinePath({ shape: 'round', diameter_m: 1 });
    expect(distanceToPath_m(disc, { x_m: 0.6, y_m: 0.5 })).toBeCloseTo(0.4, 14);
    expect(distanceToPath_m(disc, { x_m: 1.5, y_m: 0.5 })).toBeCloseTo(0.5, 14);
  });

  it('puts a box round arcs, not round their ends', () => {
    const half: Path = [
      { kind: 'arc', from: { x_m: 0, y_m: 0 }, to: { x_m: 0, y_m: 1 }, bulge: 1, edge: 'bow' },
      { kind: 'line', from: { x_m: 0, y_m: 1 }, to: { x_m: 0, y_m: 0 }, bulge: 0, edge: 'back' },
    ];
    const box = bounds(half);
    expect(box.maxX_m).toBeCloseTo(0.5, 14);
    expect(box.minX_m).toBeCloseTo(0, 14);
    expect([box.minY_m, box.maxY_m]).toEqual([expect.closeTo(0, 14), expect.closeTo(1, 14)]);
  });
});
