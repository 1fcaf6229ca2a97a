import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turning_rad } from './arc.ts';
import { ELLIPSE_TOLERANCE_M, ellipseDeviation_m, ellipsePath } from './ellipse.ts';
import { cutOutPath, edgeNames, outlinePath } from './outline.ts';
import { bounds, centroid, cornerTurn_rad, pathArea_m2, pathLength_m, pointInside } from './path.ts';
import type { EllOutline, Outline, Path } from './piece.ts';

const { PI } = Math;

function edgeLength(path: Path, edge: string): number {
  return pathLength_m(path.filter((s) => s.edge === edge));
}

function closedAndChained(path: Path): void {
  path.forEach((s, i) => {
    expect(s.to).toEqual(path[(i + 1) % path.length]!.from);
  });
  expect(path.reduce((sum, s) => sum + turning_rad(s), 0) + cornersOf(path)).toBeCloseTo(2 * PI, 9);
}

function cornersOf(path: Path): number {
  return path.reduce((sum, s, i) => sum + cornerTurn_rad(s, path[(i + 1) % path.length]!), 0);
}

describe('a rectangle with rounded corners', () => {
  const l = 1.22;
  const w = 0.56;
  const r = 0.025;
  const path = outlinePath({ shape: 'rectangle', length_m: l, width_m: w, cornerRadius_m: r });

  it('has l w - (4 - pi) r^2 of area and 2 (l + w) - (8 - 2 pi) r of length', () => {
    expect(pathArea_m2(path)).toBeCloseTo(l * w - (4 - PI) * r * r, 14);
    expect(pathLength_m(path)).toBeCloseTo(2 * (l + w) - (8 - 2 * PI) * r, 14);
    closedAndChained(path);
  });

  it('gives each straight edge half of the roundings at its ends', () => {
    expect(edgeLength(path, 'front')).toBeCloseTo(l - 2 * r + (PI * r) / 2, 14);
    expect(edgeLength(path, 'left')).toBeCloseTo(w - 2 * r + (PI * r) / 2, 14);
  });

  it('runs along y = 0 in front, and its centre is the centre', () => {
    const front = path.find((s) => s.edge === 'front' && s.kind === 'line')!;
    expect([front.from.y_m, front.to.y_m]).toEqual([0, 0]);
    expect(front.to.x_m).toBeGreaterThan(front.from.x_m);
    expect(centroid(path).x_m).toBeCloseTo(l / 2, 14);
    expect(centroid(path).y_m).toBeCloseTo(w / 2, 14);
  });

  it('becomes a capsule when the radius is half the width', () => {
    const capsule = outlinePath({ shape: 'rectangle', length_m: l, width_m: w, cornerRadius_m: w / 2 });
    expect(pathArea_m2(capsule)).toBeCloseTo((l - w) * w + (PI * w * w) / 4, 14);
    expect(pathLength_m(capsule)).toBeCloseTo(2 * (l - w) + PI * w, 13);
    expect(edgeLength(capsule, 'left')).toBeCloseTo((PI * w) / 4, 13);
    closedAndChained(capsule);
  });

  it('refuses a radius over half the short side', () => {
    expect(() =>
      outlinePath({ shape: 'rectangle', length_m: 1, width_m: 0.4, cornerRadius_m: 0.21 }),
    ).toThrow(RangeError);
  });
});

describe('an L counter', () => {
  const ell: EllOutline = {
    shape: 'ell',
    side: 'left',
    length_m: 2.4,
    width_m: 0.635,
    returnLength_m: 1.8,
    returnWidth_m: 0.6,
    cornerRadius_m: 0.02,
    insideRadius_m: 0.05,
  };
  // Two rectangles, five outside corners taken off, one inside corner filled.
  const area = 2.4 * 0.635 + 0.6 * (1.8 - 0.635) - 5 * (1 - PI / 4) * 0.02 ** 2 + (1 - PI / 4) * 0.05 ** 2;
  const length = 2 * (2.4 + 1.8) - (5 * 0.02 + 0.05) * (2 - PI / 2);

  it.each(['left', 'right'] as const)('has the area and length of its two legs, return on the %s', (side) => {
    const path = outlinePath({ ...ell, side });
    expect(pathArea_m2(path)).toBeCloseTo(area, 13);
    expect(pathLength_m(path)).toBeCloseTo(length, 13);
    closedAndChained(path);
    const box = bounds(path);
    expect(box.minX_m).toBeCloseTo(0, 14);
    expect(box.maxX_m).toBeCloseTo(2.4, 14);
    expect(box.minY_m).toBeCloseTo(0.635 - 1.8, 14);
    expect(box.maxY_m).toBeCloseTo(0.635, 14);
    expect(new Set(path.map((s) => s.edge))).toEqual(new Set(edgeNames(ell)));
  });

  it('leaves the maker standing in the inside corner', () => {
    const left = outlinePath(ell);
    const right = outlinePath({ ...ell, side: 'right' });
    expect(pointInside(left, { x_m: 0.3, y_m: -1 })).toBe(true);
    expect(pointInside(left, { x_m: 2.1, y_m: -1 })).toBe(false);
    expect(pointInside(right, { x_m: 0.3, y_m: -1 })).toBe(false);
    expect(pointInside(right, { x_m: 2.1, y_m: -1 })).toBe(true);
  });
});

describe('a round top', () => {
  it('has pi d^2 / 4 of area and pi d of rim', () => {
    const path = outlinePath({ shape: 'round', diameter_m: 0.9 });
    expect(pathArea_m2(path)).toBeCloseTo((PI * 0.81) / 4, 14);
    expect(pathLength_m(path)).toBeCloseTo(PI * 0.9, 14);
    closedAndChained(path);
  });
});

/** Perimeter of an ellipse by the arithmetic-geometric mean (Gauss; exact to rounding). */
function perimeterByMean(a: number, b: number): number {
  let x = a;
  let y = b;
  let power = 1;
  let sum = (a * a + b * b) / 2;
  // 2 pi (a0^2 - sum 2^(n-1) c_n^2) / AGM, c_0^2 = a^2 - b^2.
  for (let n = 1; n < 12; n += 1) {
    const c = (x - y) / 2;
    [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
    sum -= power * c * c;
    power *= 2;
  }
  return (2 * PI * sum) / x;
}

describe('an ellipse by arcs', () => {
  it.each([
    [1.8, 0.9],
    [1, 0.99],
    [3, 0.5],
    [0.45, 0.35],
    [9, 0.3],
  ])('of %d by %d m keeps pi a b and the perimeter within its stated deviation', (l, w) => {
    const path = ellipsePath(l, w, 'rim');
    const deviation = ellipseDeviation_m(l, w);
    expect(deviation).toBeLessThanOrEqual(ELLIPSE_TOLERANCE_M);
    expect(path.length).toBeGreaterThanOrEqual(8);
    const exact = perimeterByMean(l / 2, w / 2);
    // A strip of the deviation's width along the perimeter; a curve within d of a convex one is within 2 pi d as long.
    expect(Math.abs(pathArea_m2(path) - (PI * l * w) / 4)).toBeLessThanOrEqual(deviation * exact);
    expect(Math.abs(pathLength_m(path) - exact)).toBeLessThanOrEqual(2 * PI * deviation);
    closedAndChained(path);
  });

  it('has no corner anywhere', () => {
    const path = ellipsePath(1.8, 0.7, 'rim');
    path.forEach((s, i) => {
      expect(Math.abs(cornerTurn_rad(s, path[(i + 1) % path.length]!))).toBeLessThan(1e-9);
      expect(s.bulge).toBeGreaterThan(0);
    });
  });

  it('agrees with Ramanujan (1914) on the perimeter of a 2 : 1 oval', () => {
    const a = 0.9;
    const b = 0.45;
    const h = ((a - b) / (a + b)) ** 2;
    const ramanujan = PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    expect(Math.abs(ramanujan - perimeterByMean(a, b))).toBeLessThan(1e-7);
    expect(Math.abs(pathLength_m(ellipsePath(1.8, 0.9, 'rim')) - ramanujan)).toBeLessThan(
      2 * PI * ellipseDeviation_m(1.8, 0.9),
    );
  });
});

describe('a polygon', () => {
  it('takes its corners either way round and keeps the names of its edges', () => {
    const corners = [
      { x_m: 0, y_m: 0, radius_m: 0.1 },
      { x_m: 1, y_m: 0 },
      { x_m: 0, y_m: 1 },
    ];
    const one = outlinePath({ shape: 'polygon', corners });
    const other = outlinePath({ shape: 'polygon', corners: [corners[0]!, corners[2]!, corners[1]!] });
    const area = 0.5 - (1 - PI / 4) * 0.01;
    expect(pathArea_m2(one)).toBeCloseTo(area, 14);
    expect(pathArea_m2(other)).toBeCloseTo(area, 14);
    expect(edgeLength(one, 'edge 2')).toBeCloseTo(Math.SQRT2, 14);
    expect(edgeLength(other, 'edge 3')).toBeCloseTo(1 - 0.1 + (PI * 0.1) / 4, 14);
    closedAndChained(other);
  });

  it('of Brahmagupta, sides 25 39 60 52, has the area 1764', () => {
    const corners = [
      [0, 0],
      [20, -15],
      [56, 0],
      [20, 48],
    ].map(([x, y]) => ({ x_m: x! / 100, y_m: y! / 100 }));
    const path = outlinePath({ shape: 'polygon', corners });
    expect(pathArea_m2(path) * 1e4).toBeCloseTo(1764, 10);
    expect([1, 2, 3, 4].map((i) => edgeLength(path, `edge ${i}`) * 100)).toEqual(
      [25, 39, 60, 52].map((side) => expect.closeTo(side, 12)),
    );
  });
});

describe('a path', () => {
  it('closes, turns counter-clockwise and names what was left unnamed', () => {
    // A half-round table end, typed clockwise.
    const outline: Outline = {
      shape: 'path',
      start: { x_m: 0, y_m: 0 },
      segments: [
        { kind: 'arc', to: { x_m: 1, y_m: 0 }, bulge: -1, edge: 'bow' },
        { kind: 'line', to: { x_m: 0, y_m: 0 } },
      ],
    };
    const path = outlinePath(outline);
    expect(pathArea_m2(path)).toBeCloseTo(PI / 8, 14);
    expect(edgeLength(path, 'bow')).toBeCloseTo(PI / 2, 14);
    expect(edgeNames(outline)).toEqual(['bow', 'edge 2']);
    closedAndChained(path);
  });
});

describe('a cut-out', () => {
  it('is turned about its centre and keeps its size', () => {
    fc.assert(
      fc.property(fc.double({ min: -7, max: 7, noNaN: true }), (rotation_rad) => {
        const rim = cutOutPath({
          name: 'bowl',
          shape: 'rectangle',
          length_m: 0.4,
          width_m: 0.3,
          cornerRadius_m: 0.05,
          centre: { x_m: 0.6, y_m: 0.28 },
          rotation_rad,
          rim: 'wrapped',
        });
        expect(pathArea_m2(rim)).toBeCloseTo(0.12 - (4 - PI) * 0.0025, 12);
        expect(centroid(rim).x_m).toBeCloseTo(0.6, 12);
        expect(centroid(rim).y_m).toBeCloseTo(0.28, 12);
      }),
    );
  });

  it('refuses sizes that are none', () => {
    const hole = { name: 'tap', shape: 'round', centre: { x_m: 0, y_m: 0 }, rim: 'dammed' } as const;
    expect(() => cutOutPath({ ...hole, diameter_m: 0 })).toThrow(/diameter_m 0/);
    expect(() => cutOutPath({ ...hole, diameter_m: Number.NaN })).toThrow(RangeError);
  });
});
