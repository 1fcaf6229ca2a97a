import { describe, expect, it } from 'vitest';
import { measurePiece } from './measure.ts';
import { edgeNames } from './outline.ts';
import type { CutOut, EdgeProfile, EdgeSpec, Outline, Piece, PieceMeasures } from './piece.ts';
import { developedHeight_m, faceArea_m2, planOverlap_m } from './profile.ts';

const { PI, SQRT2 } = Math;

const eased: EdgeSpec = {
  kind: 'finished',
  faceHeight_m: 0.038,
  profile: { kind: 'square eased', radius_m: 0.003 },
  undersideReturn_m: 0,
};

function pieceOf(outline: Outline, cutOuts: readonly CutOut[] = [], spec: EdgeSpec = eased): Piece {
  const edges = Object.fromEntries(edgeNames(outline).map((name) => [name, spec]));
  return { outline, edges, cutOuts, bodyThickness_m: 0.038 };
}

function measured(piece: Piece): PieceMeasures {
  const result = measurePiece(piece);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

describe('an edge profile', () => {
  const t = 0.04;
  it.each([
    [{ kind: 'round-over', radius_m: 0.01 }, t - 0.01 + (PI / 2) * 0.01],
    [{ kind: 'square eased', radius_m: 0 }, t],
    [{ kind: 'bullnose' }, (PI * t) / 2],
    [{ kind: 'bevel', leg_m: 0.006 }, t - 0.006 + 0.006 * SQRT2],
    [{ kind: 'chiselled', factor: 1.5 }, 0.06],
  ] as [EdgeProfile, number][])('%j develops to %d m', (profile, developed) => {
    expect(developedHeight_m({ faceHeight_m: t, profile })).toBeCloseTo(developed, 15);
  });

  it('refuses a profile larger than its face', () => {
    expect(() =>
      developedHeight_m({ faceHeight_m: 0.01, profile: { kind: 'round-over', radius_m: 0.02 } }),
    ).toThrow(/radius_m 0.02/);
    expect(() => developedHeight_m({ faceHeight_m: 0, profile: { kind: 'bullnose' } })).toThrow(RangeError);
  });
});

/** Area of a surface of revolution round a disc of radius R by adding up thin cones: nothing shared with the code. */
function surfaceOfRevolution(curve: (f: number) => readonly [number, number]): number {
  const n = 20000;
  let area = 0;
  let [x, z] = curve(0);
  for (let i = 1; i <= n; i += 1) {
    const [nx, nz] = curve(i / n);
    area += PI * (x + nx) * Math.hypot(nx - x, nz - z);
    [x, z] = [nx, nz];
  }
  return area;
}

describe('plan area and face area together', () => {
  const R = 0.3;
  const t = 0.04;
  const disc: Outline = { shape: 'round', diameter_m: 2 * R };
  const r = 0.012;
  const cases: [EdgeProfile, number, (f: number) => readonly [number, number]][] = [
    [
      { kind: 'round-over', radius_m: r },
      R - r,
      (f) => [R - r + r * Math.sin((f * PI) / 2), -r + r * Math.cos((f * PI) / 2)],
    ],
    [
      { kind: 'bullnose' },
      R - t / 2,
      (f) => [R - t / 2 + (t / 2) * Math.sin(f * PI), (t / 2) * Math.cos(f * PI)],
    ],
    [{ kind: 'bevel', leg_m: r }, R - r, (f) => [R - r + r * f, -r * f]],
  ];
  it.each(cases)('are the true surface of a round top with %j', (profile, flat, curve) => {
    const m = measured(pieceOf(disc, [], { ...eased, faceHeight_m: t, profile }));
    const plumb = profile.kind === 'bullnose' ? 0 : 2 * PI * R * (t - r);
    const surface = PI * flat * flat + surfaceOfRevolution(curve) + plumb;
    expect(Math.abs((m.topArea_m2 + m.finishedFaceArea_m2) / surface - 1)).toBeLessThan(1e-8);
  });

  it('are the true surface of the inside of a hole with a round-over', () => {
    const hole = { faceHeight_m: t, profile: { kind: 'round-over', radius_m: r } } as const;
    const inner = surfaceOfRevolution((f) => [
      R + r - r * Math.sin((f * PI) / 2),
      -r + r * Math.cos((f * PI) / 2),
    ]);
    const plumb = 2 * PI * R * (t - r);
    // The flat begins r further out; the plan area begins at R.
    const strip = PI * ((R + r) ** 2 - R * R);
    expect(Math.abs(faceArea_m2(hole, 2 * PI * R, -2 * PI) / (inner + plumb - strip) - 1)).toBeLessThan(1e-8);
  });

  it('need no correction along a straight edge but the overlap', () => {
    const edge = { faceHeight_m: t, profile: { kind: 'round-over', radius_m: r } } as const;
    expect(faceArea_m2(edge, 2, 0)).toBeCloseTo(2 * (developedHeight_m(edge) - planOverlap_m(edge)), 15);
  });
});

describe('a vanity top with a bowl', () => {
  // 1220 x 560 mm, square corners, bowl 450 x 330 oval wrapped, tap hole 35 mm dammed; back and right at walls.
  const outline: Outline = { shape: 'rectangle', length_m: 1.22, width_m: 0.56 };
  const bowl: CutOut = {
    name: 'bowl',
    shape: 'rectangle',
    length_m: 0.45,
    width_m: 0.3,
    cornerRadius_m: 0.05,
    centre: { x_m: 0.61, y_m: 0.25 },
    rim: 'wrapped',
  };
  const tap: CutOut = {
    name: 'tap',
    shape: 'round',
    diameter_m: 0.035,
    centre: { x_m: 0.61, y_m: 0.47 },
    rim: 'dammed',
  };
  const base = pieceOf(outline, [bowl, tap], { ...eased, undersideReturn_m: 0.025 });
  const wall: EdgeSpec = { ...eased, kind: 'wall' };
  const piece: Piece = { ...base, edges: { ...base.edges, back: wall, right: wall } };
  const m = measured(piece);
  const bowlArea = 0.45 * 0.3 - (4 - PI) * 0.0025;
  const bowlRim = 2 * 0.75 - (8 - 2 * PI) * 0.05;

  it('takes the holes out of the top and adds wrapped rims to the faces', () => {
    expect(m.grossArea_m2).toBeCloseTo(0.6832, 13);
    expect(m.topArea_m2).toBeCloseTo(0.6832 - bowlArea - (PI * 0.035 ** 2) / 4, 13);
    expect(m.wrappedRimLength_m).toBeCloseTo(bowlRim, 13);
    expect(m.finishedEdgeLength_m).toBeCloseTo(1.22 + 0.56, 13);
    expect(m.perimeter_m).toBeCloseTo(3.56, 13);
    // Eased 3 mm on 38 mm: 38 - 6 + 4.712 = 36.712 mm beyond the plan area; the rim gains 0.0708 r^2 a radian.
    const net = 0.038 - 0.006 + (PI / 2) * 0.003;
    const rim = bowlRim * net + 2 * PI * (PI / 2 - 1.5) * 0.003 ** 2;
    expect(m.finishedFaceArea_m2).toBeCloseTo((1.22 + 0.56) * net + rim, 13);
    expect(m.undersideReturnArea_m2).toBeCloseTo((1.22 + 0.56) * 0.025, 13);
  });

  it('lists outline edges, then rims, saying which are coated', () => {
    expect(m.edges.map((e) => [e.name, e.kind, e.outer])).toEqual([
      ['front', 'finished', true],
      ['right', 'wall', true],
      ['back', 'wall', true],
      ['left', 'finished', true],
      ['bowl', 'finished', false],
      ['tap', 'dammed', false],
    ]);
    expect(m.edges[5]!.faceHeight_m).toBe(0.038);
  });

  it('weighs its net area, and less with a board and strips', () => {
    expect(m.bodyMass_kg).toBeCloseTo(m.topArea_m2 * 0.038 * 740, 12);
    const built = measurePiece(piece, {
      density_kg_m3: 721,
      buildUp: { boardThickness_m: 0.019, stripWidth_m: 0.075 },
    });
    const strips = 0.075 * (m.finishedEdgeLength_m + m.wrappedRimLength_m) * 0.019;
    expect(built.ok && built.value.bodyMass_kg).toBeCloseTo(721 * (m.topArea_m2 * 0.019 + strips), 12);
    expect(() => measurePiece(piece, { density_kg_m3: 0 })).toThrow(/density_kg_m3/);
    expect(() => measurePiece(piece, { buildUp: { boardThickness_m: 0.05, stripWidth_m: 0.05 } })).toThrow(
      /boardThickness_m/,
    );
  });

  it('goes through a door by its diagonal', () => {
    expect(m.longestDiagonal_m).toBeCloseTo(Math.hypot(1.22, 0.56), 13);
    expect(m.halfShortSide_m).toBeCloseTo(0.28, 14);
    expect(m.inscribedRadius_m).toBeGreaterThan(0.28 - 0.0005);
    expect(m.inscribedRadius_m).toBeLessThanOrEqual(0.28 + 1e-12);
  });
});

describe('reach', () => {
  it('of a disc is its diameter and its radius', () => {
    const m = measured(pieceOf({ shape: 'round', diameter_m: 0.9 }));
    expect(m.longestDiagonal_m).toBeCloseTo(0.9, 12);
    expect(m.inscribedRadius_m).toBeCloseTo(0.45, 3);
  });

  it('of a right triangle: the hypotenuse, and (a + b - c) / 2', () => {
    const m = measured(
      pieceOf({
        shape: 'polygon',
        corners: [
          { x_m: 0, y_m: 0 },
          { x_m: 0.8, y_m: 0 },
          { x_m: 0, y_m: 0.6 },
        ],
      }),
    );
    expect(m.longestDiagonal_m).toBeCloseTo(1, 13);
    expect(m.inscribedRadius_m).toBeGreaterThan(0.2 - 0.0005);
    expect(m.inscribedRadius_m).toBeLessThanOrEqual(0.2 + 1e-12);
  });

  it('of an L: from end to end, and the circle in the corner', () => {
    // Widths w, diagonal of the inside corner from the outer one w sqrt 2: r + r sqrt 2 = w sqrt 2.
    const w = 0.6;
    const m = measured(
      pieceOf({ shape: 'ell', side: 'right', length_m: 2, width_m: w, returnLength_m: 2, returnWidth_m: w }),
    );
    const r = (w * SQRT2) / (1 + SQRT2);
    // The furthest pair: (0, back) to (2, end) and (0, front) ... the outer diagonal 2 sqrt 2 joins the two ends.
    expect(m.longestDiagonal_m).toBeCloseTo(2 * SQRT2, 12);
    expect(m.inscribedRadius_m).toBeGreaterThan(r - 0.0005);
    expect(m.inscribedRadius_m).toBeLessThanOrEqual(r + 1e-12);
  });
});
