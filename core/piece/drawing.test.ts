import { describe, expect, it } from 'vitest';
import { meetings } from './crossing.ts';
import { type Dimension, type Drawing, dimensionedDrawing } from './drawing.ts';
import { edgeNames } from './outline.ts';
import type { CutOut, EdgeSpec, Outline, Piece, Segment } from './piece.ts';

const spec: EdgeSpec = {
  kind: 'finished',
  faceHeight_m: 0.038,
  profile: { kind: 'round-over', radius_m: 0.006 },
  undersideReturn_m: 0,
};
const bowl: CutOut = {
  name: 'bowl',
  shape: 'oval',
  length_m: 0.45,
  width_m: 0.3,
  centre: { x_m: 0.61, y_m: 0.25 },
  rim: 'wrapped',
};
const taps = [0.51, 0.61, 0.71].map(
  (x_m, i): CutOut => ({
    name: `tap ${i + 1}`,
    shape: 'round',
    diameter_m: 0.035,
    centre: { x_m, y_m: 0.47 },
    rim: 'dammed',
  }),
);

function drawn(outline: Outline, cutOuts: readonly CutOut[] = []): Drawing {
  const edges = Object.fromEntries(edgeNames(outline).map((name) => [name, spec]));
  const result = dimensionedDrawing({ outline, edges, cutOuts, bodyThickness_m: 0.038 });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const asLine = (d: Dimension): Segment => ({ kind: 'line', ...d.line, bulge: 0, edge: '' });
const said = (drawing: Drawing): [string, number][] =>
  drawing.dimensions.map((d) => [d.label, Math.round(d.value_m * 1e6) / 1e3]);

/** Nothing lies on anything else: lines outside the piece meet neither each other nor the outline. */
function nothingOverlaps(drawing: Drawing): void {
  const outside = drawing.dimensions.filter((d) => d.level > 0);
  outside.forEach((d, i) => {
    for (const e of outside.slice(0, i))
      expect([d.label, e.label, meetings(asLine(d), asLine(e)).length]).toEqual([d.label, e.label, 0]);
    for (const s of drawing.outline) expect([d.label, meetings(asLine(d), s).length]).toEqual([d.label, 0]);
  });
  for (const d of drawing.dimensions) {
    const length = Math.hypot(d.line.to.x_m - d.line.from.x_m, d.line.to.y_m - d.line.from.y_m);
    expect(length).toBeCloseTo(Math.abs(d.value_m), 12);
    for (const p of [d.line.from, d.line.to]) {
      expect(p.x_m).toBeGreaterThan(drawing.extent.minX_m);
      expect(p.x_m).toBeLessThan(drawing.extent.maxX_m);
      expect(p.y_m).toBeGreaterThan(drawing.extent.minY_m);
      expect(p.y_m).toBeLessThan(drawing.extent.maxY_m);
    }
  }
}

describe('the drawing of a vanity top', () => {
  const drawing = drawn({ shape: 'rectangle', length_m: 1.22, width_m: 0.56, cornerRadius_m: 0.025 }, [
    bowl,
    ...taps,
  ]);

  it('gives length, depth, each hole from left and front, and its size', () => {
    expect(said(drawing)).toEqual(
      expect.arrayContaining([
        ['length', 1220],
        ['width', 560],
        ['cut-out from left', 610],
        ['cut-out from front', 250],
        ['cut-out length', 450],
        ['cut-out width', 300],
        ['cut-out from left', 510],
        ['cut-out from left', 710],
        ['cut-out from front', 470],
        ['cut-out diameter', 35],
      ]),
    );
    expect(drawing.leaders).toMatchObject([{ label: 'corner radius', value_m: 0.025, count: 4 }]);
  });

  it('puts overall sizes outermost and no line on another', () => {
    nothingOverlaps(drawing);
    const front = drawing.dimensions.filter((d) => d.offsetDirection.y === -1);
    const length = front.find((d) => d.label === 'length')!;
    expect(length.level).toBe(Math.max(...front.map((d) => d.level)));
    // Holes side by side share a level: three tap diameters stand in one row behind the piece.
    const rows = drawing.dimensions.filter((d) => d.label === 'cut-out diameter').map((d) => d.level);
    expect(new Set(rows).size).toBe(1);
  });

  it('says once what several holes share', () => {
    const depth = drawing.dimensions.filter((d) => d.label === 'cut-out from front');
    expect(depth.map((d) => [d.of, Math.round(d.value_m * 1000)])).toEqual([
      ['bowl', 250],
      ['tap 1, tap 2, tap 3', 470],
    ]);
    const middle = drawing.dimensions.filter((d) => d.label === 'cut-out from left' && d.value_m === 0.61);
    expect(middle.map((d) => d.of)).toEqual(['bowl, tap 2']);
  });

  it('points the radius note at the middle of a rounding', () => {
    const { at } = drawing.leaders[0]!;
    const k = 0.025 * (1 - Math.SQRT1_2);
    expect([at.x_m, at.y_m]).toEqual([expect.closeTo(1.22 - k, 12), expect.closeTo(0.56 - k, 12)]);
  });

  it('marks each segment with the way its edge is made', () => {
    expect(new Set(drawing.outline.map((s) => s.style))).toEqual(new Set(['finished']));
    expect(drawing.cutOuts.map((c) => c.segments[0]!.style)).toEqual([
      'finished',
      'dammed',
      'dammed',
      'dammed',
    ]);
  });
});

describe('the drawing of an L counter', () => {
  it.each(['left', 'right'] as const)('dimensions both legs, return on the %s', (side) => {
    const drawing = drawn(
      {
        shape: 'ell',
        side,
        length_m: 2.4,
        width_m: 0.635,
        returnLength_m: 1.8,
        returnWidth_m: 0.6,
        cornerRadius_m: 0.01,
        insideRadius_m: 0.05,
      },
      [{ ...bowl, centre: { x_m: 1.2, y_m: 0.3 } }],
    );
    expect(said(drawing)).toEqual(
      expect.arrayContaining([
        ['length', 2400],
        ['width', 635],
        ['return length', 1800],
        ['return width', 600],
        ['cut-out from front', 300],
      ]),
    );
    expect(drawing.leaders.map((l) => [l.label, l.count])).toEqual(
      expect.arrayContaining([
        ['corner radius', 5],
        ['inside radius', 1],
      ]),
    );
    nothingOverlaps(drawing);
  });
});

describe('the drawing of other shapes', () => {
  it('gives a round top its diameter, an oval its two axes', () => {
    const round = drawn({ shape: 'round', diameter_m: 0.9 });
    expect(said(round)).toEqual([['diameter', 900]]);
    const oval = drawn({ shape: 'ellipse', length_m: 1.8, width_m: 0.9 });
    expect(said(oval)).toEqual([
      ['length', 1800],
      ['width', 900],
    ]);
    nothingOverlaps(oval);
  });

  it('gives a polygon its slanted sides beside them, in pockets as notes', () => {
    const corners = [
      [0, 0],
      [1.5, 0],
      [1.5, 0.6],
      [0.78, 0.6],
      [0.76, 0.3],
      [0.74, 0.6],
      [0, 0.6],
    ].map(([x_m, y_m]) => ({ x_m: x_m!, y_m: y_m! }));
    const drawing = drawn({ shape: 'polygon', corners });
    nothingOverlaps(drawing);
    // The notch is too narrow for a line between its sides.
    expect(drawing.leaders.map((l) => l.of)).toContain('edge 5');
    expect(drawing.dimensions.filter((d) => d.label === 'edge length').map((d) => d.of)).toContain('edge 3');
  });

  it('carries the sizes of a turned hole inside it', () => {
    const drawing = drawn({ shape: 'rectangle', length_m: 1.2, width_m: 0.8 }, [
      { ...bowl, centre: { x_m: 0.6, y_m: 0.4 }, rotation_rad: 0.5 },
    ]);
    const inside = drawing.dimensions.filter((d) => d.level === 0);
    expect(inside.map((d) => [d.label, d.value_m])).toEqual([
      ['cut-out length', 0.45],
      ['cut-out width', 0.3],
    ]);
    const [a, b] = inside.map((d) => [
      (d.line.from.x_m + d.line.to.x_m) / 2,
      (d.line.from.y_m + d.line.to.y_m) / 2,
    ]);
    // 50 mm below the middle and 75 mm left of it, in the hole's own axes.
    expect(Math.hypot(a![0]! - b![0]!, a![1]! - b![1]!)).toBeCloseTo(Math.hypot(0.05, 0.075), 12);
    nothingOverlaps(drawing);
  });
});

describe('a faulty piece', () => {
  const outline: Outline = { shape: 'rectangle', length_m: 1.2, width_m: 0.6 };
  const piece: Piece = {
    outline,
    edges: {},
    cutOuts: [
      { ...bowl, centre: { x_m: 0.6, y_m: 0.1 } },
      { ...bowl, length_m: -1 },
    ],
    bodyThickness_m: 0.038,
  };

  it('is drawn as far as it can be, with what is wrong', () => {
    const result = dimensionedDrawing(piece);
    expect(result.ok && result.value.cutOuts.map((c) => c.name)).toEqual(['bowl']);
    expect(result.ok && result.value.outline[0]!.style).toBe('unknown');
    expect(result.ok && result.warnings.map((p) => p.code)).toEqual(
      expect.arrayContaining(['edge.missing', 'cut-out.over-edge', 'length.range']),
    );
  });

  it('is not drawn when its outline is no shape', () => {
    const result = dimensionedDrawing({ ...piece, outline: { ...outline, width_m: 0 } });
    expect(result).toMatchObject({ ok: false, problems: [{ path: 'outline.width' }] });
  });
});
