import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '#core/numeric/random.ts';
import { cutOutSize } from './cut-out-size.ts';
import { dimensionedDrawing } from './drawing.ts';
import { measurePiece } from './measure.ts';
import { cutOutPath } from './outline.ts';
import { bounds, flattenPath, pathArea_m2, pathLength_m, pointInside } from './path.ts';
import type { CutOut, EdgeSpec, PathOutline, Piece, Point, PolygonOutline } from './piece.ts';
import { setOut } from './set-out/set-out.ts';
import { reviewPiece } from './validate.ts';

type Template = Extract<CutOut, { readonly shape: 'template' }>;

const eased: EdgeSpec = {
  kind: 'finished',
  faceHeight_m: 0.038,
  profile: { kind: 'square eased', radius_m: 0.003 },
  undersideReturn_m: 0,
};

function withHoles(cutOuts: readonly CutOut[]): Piece {
  return {
    outline: { shape: 'rectangle', length_m: 1.2, width_m: 0.6 },
    edges: { front: eased, right: eased, back: eased, left: eased },
    cutOuts,
    bodyThickness_m: 0.038,
  };
}

const template = (outline: Template['outline'], more: Partial<Template> = {}): Template => ({
  shape: 'template',
  outline,
  name: 'sink',
  centre: { x_m: 0.6, y_m: 0.3 },
  rim: 'dammed',
  ...more,
});

/** A sink with a straight back 0.5 m long and a bowed front: a rectangle 0.5 x 0.2 with a half ring below. */
const dee: PathOutline = {
  shape: 'path',
  start: { x_m: -0.15, y_m: 0.1 },
  segments: [
    { kind: 'line', to: { x_m: -0.15, y_m: -0.05 } },
    { kind: 'arc', to: { x_m: 0.15, y_m: -0.05 }, bulge: 1 },
    { kind: 'line', to: { x_m: 0.15, y_m: 0.1 } },
    { kind: 'line', to: { x_m: -0.15, y_m: 0.1 } },
  ],
};

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Star-shaped, every side an arc that bulges a little either way. */
const arcs = fc
  .array(fc.tuple(size(0.12, 0.18), size(-0.15, 0.15)), { minLength: 4, maxLength: 10 })
  .map((spokes): PathOutline => {
    const at = (i: number): Point => {
      const k = i % spokes.length;
      const angle = (2 * Math.PI * k) / spokes.length;
      return { x_m: spokes[k]![0] * Math.cos(angle), y_m: spokes[k]![0] * Math.sin(angle) };
    };
    return {
      shape: 'path',
      start: at(0),
      segments: spokes.map(([, bulge], i) => ({ kind: 'arc', to: at(i + 1), bulge })),
    };
  });

const rounded = fc.tuple(fc.array(size(0.12, 0.18), { minLength: 4, maxLength: 10 }), size(0, 0.01)).map(
  ([radii, radius_m]): PolygonOutline => ({
    shape: 'polygon',
    corners: radii.map((r, i) => ({
      x_m: r * Math.cos((2 * Math.PI * i) / radii.length),
      y_m: r * Math.sin((2 * Math.PI * i) / radii.length),
      radius_m,
    })),
  }),
);

const shoelace_m2 = (points: readonly Point[]): number =>
  Math.abs(
    points.reduce((sum, p, i) => {
      const q = points[(i + 1) % points.length]!;
      return sum + (p.x_m * q.y_m - q.x_m * p.y_m) / 2;
    }, 0),
  );

describe('a full-size template as a cut-out', () => {
  it('has the area of its lines and arcs, taken from the top', () => {
    const area = 0.3 * 0.15 + (Math.PI * 0.15 ** 2) / 2;
    expect(pathArea_m2(cutOutPath(template(dee)))).toBeCloseTo(area, 12);
    const measured = measurePiece(withHoles([template(dee, { rim: 'wrapped' })]));
    if (!measured.ok) throw new Error(JSON.stringify(measured.problems));
    expect(measured.value.topArea_m2).toBeCloseTo(1.2 * 0.6 - area, 12);
    expect(measured.value.wrappedRimLength_m).toBeCloseTo(0.6 + Math.PI * 0.15, 12);
    expect(measured.value.edges.at(-1)).toMatchObject({ name: 'sink', kind: 'finished', cutOut: 0 });
  });

  it('has the same area by exact arcs, by a fine polygon and by throwing darts', () => {
    fc.assert(
      fc.property(fc.oneof(arcs, rounded), size(-3, 3), fc.nat(1e6), (outline, rotation_rad, seed) => {
        const rim = cutOutPath(template(outline, { rotation_rad }));
        const exact = pathArea_m2(rim);
        expect(Math.abs(shoelace_m2(flattenPath(rim, 1e-6)) / exact - 1)).toBeLessThan(1e-4);
        const box = bounds(rim);
        const [wide, high] = [box.maxX_m - box.minX_m, box.maxY_m - box.minY_m];
        const darts = 4000;
        const random = randomStream(seed);
        let hits = 0;
        for (let i = 0; i < darts; i++)
          if (
            pointInside(rim, {
              x_m: box.minX_m + random.uniform() * wide,
              y_m: box.minY_m + random.uniform() * high,
            })
          )
            hits += 1;
        const share = exact / (wide * high);
        // Five and a half standard deviations: once in thirty million.
        expect(Math.abs(hits / darts - share)).toBeLessThan(5.5 * Math.sqrt((share * (1 - share)) / darts));
      }),
      { numRuns: 60 },
    );
  });

  it('keeps its area and its length round however it is turned and moved', () => {
    fc.assert(
      fc.property(
        fc.oneof(arcs, rounded),
        size(-7, 7),
        size(-5, 5),
        size(-5, 5),
        (outline, turn, x_m, y_m) => {
          const still = cutOutPath(template(outline));
          const moved = cutOutPath(template(outline, { rotation_rad: turn, centre: { x_m, y_m } }));
          expect(Math.abs(pathArea_m2(moved) / pathArea_m2(still) - 1)).toBeLessThan(1e-9);
          expect(Math.abs(pathLength_m(moved) / pathLength_m(still) - 1)).toBeLessThan(1e-9);
          expect(moved.every((s) => s.edge === 'sink')).toBe(true);
        },
      ),
    );
  });

  it('with straight sides changes its area by the determinant of any stretch and shear', () => {
    const factor = size(0.5, 2);
    fc.assert(
      fc.property(rounded, factor, factor, size(-0.4, 0.4), ({ corners }, a, d, b) => {
        const sharp = corners.map(({ x_m, y_m }) => ({ x_m, y_m }));
        const sheared = sharp.map(({ x_m, y_m }) => ({ x_m: a * x_m + b * y_m, y_m: d * y_m }));
        const area = (points: readonly Point[]) =>
          pathArea_m2(cutOutPath(template({ shape: 'polygon', corners: points })));
        expect(Math.abs(area(sheared) / (area(sharp) * a * d) - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it('has the size of the box round it, before it is turned', () => {
    const { length_m, width_m } = cutOutSize(template(dee, { rotation_rad: 1 }));
    expect([length_m, width_m]).toEqual([expect.closeTo(0.3, 12), expect.closeTo(0.3, 12)]);
    expect(cutOutSize({ shape: 'round', diameter_m: 0.04 })).toEqual({ length_m: 0.04, width_m: 0.04 });
  });

  it('is held off the edges and other holes like any cut-out', () => {
    const codes = (cutOuts: readonly CutOut[]) =>
      reviewPiece(withHoles(cutOuts)).problems.map(({ path, code }) => `${path} ${code}`);
    expect(codes([template(dee)])).toEqual([]);
    expect(codes([template(dee, { centre: { x_m: 0.1, y_m: 0.3 } })])).toEqual([
      'cutOuts.0.centre cut-out.over-edge',
    ]);
    // Beside the round front of the sink, inside the box round it: nothing touches.
    const tap: CutOut = {
      shape: 'round',
      diameter_m: 0.035,
      name: 'tap',
      centre: { x_m: 0.72, y_m: 0.125 },
      rim: 'dammed',
    };
    expect(codes([template(dee), tap])).toEqual([]);
    expect(codes([template(dee), { ...tap, centre: { x_m: 0.7, y_m: 0.2 } }])).toEqual([
      'cutOuts.1.centre cut-out.overlap',
    ]);
  });

  it('says what is wrong with an outline that cannot be cut', () => {
    const of = (corners: readonly (readonly [number, number])[]) =>
      reviewPiece(
        withHoles([template({ shape: 'polygon', corners: corners.map(([x_m, y_m]) => ({ x_m, y_m })) })]),
      ).problems;
    expect(
      of([
        [0, 0],
        [0.1, 0],
      ]),
    ).toMatchObject([{ path: 'cutOuts.0.outline.corners', code: 'outline.count', read: '2' }]);
    expect(
      of([
        [0, 0],
        [0.1, 0.1],
        [0.1, 0],
        [0, 0.1],
      ]),
    ).toMatchObject([{ path: 'cutOuts.0.outline', code: 'cut-out.crosses' }]);
    expect(
      of([
        [0, 0],
        [0.002, 0],
        [0, 0.002],
      ])[0],
    ).toMatchObject({ code: 'length.range' });
  });

  it('warns of a corner of the hole tighter than a shop cuts', () => {
    const warnings = (outline: Template['outline']) =>
      reviewPiece(withHoles([template(outline)])).warnings.filter(
        ({ code }) => code === 'corner.inside-tight',
      );
    expect(warnings(dee)).toHaveLength(1);
    const soft = [
      { x_m: -0.2, y_m: -0.1 },
      { x_m: 0.2, y_m: -0.1 },
      { x_m: 0.1, y_m: 0.1 },
      { x_m: -0.1, y_m: 0.1 },
    ];
    expect(warnings({ shape: 'polygon', corners: soft.map((p) => ({ ...p, radius_m: 0.02 })) })).toEqual([]);
    expect(
      warnings({ shape: 'polygon', corners: soft.map((p) => ({ ...p, radius_m: 0.005 })) }),
    ).toMatchObject([{ path: 'cutOuts.0.outline' }]);
  });

  it('is drawn and set out with its length, width and centre', () => {
    const drawn = dimensionedDrawing(withHoles([template(dee)]));
    if (!drawn.ok) throw new Error(JSON.stringify(drawn.problems));
    const values = drawn.value.dimensions.filter(({ of }) => of === 'sink').map(({ value_m }) => value_m);
    expect(values).toHaveLength(4);
    for (const expected of [0.6, 0.3, 0.3, 0.3]) expect(values).toContainEqual(expect.closeTo(expected, 9));
    const marked = setOut(withHoles([template(dee)]));
    if (!marked.ok) throw new Error(JSON.stringify(marked.problems));
    expect(marked.value.cutOuts[0]).toMatchObject({
      shape: 'template',
      length_m: expect.closeTo(0.3, 9),
      width_m: expect.closeTo(0.3, 9),
      cornerRadius_m: 0,
    });
  });
});
