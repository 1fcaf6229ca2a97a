import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgeNames } from '../outline.ts';
import type { CutOut, EdgeSpec, Outline, Piece } from '../piece.ts';
import { type SetOut, setOut } from './set-out.ts';

const eased: EdgeSpec = {
  kind: 'finished',
  faceHeight_m: 0.038,
  profile: { kind: 'square eased', radius_m: 0.003 },
  undersideReturn_m: 0.02,
};

function pieceOf(outline: Outline, cutOuts: readonly CutOut[] = []): Piece {
  return {
    outline,
    edges: Object.fromEntries(edgeNames(outline).map((name) => [name, eased])),
    cutOuts,
    bodyThickness_m: 0.038,
  };
}

function sheetOf(piece: Piece): SetOut {
  const result = setOut(piece);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const sink: CutOut = {
  name: 'sink',
  shape: 'rectangle',
  length_m: 0.4,
  width_m: 0.3,
  cornerRadius_m: 0.02,
  centre: { x_m: 0.5, y_m: 0.25 },
  rim: 'wrapped',
};

describe('setting out', () => {
  it('gives a rectangle its corners from left and front, and two equal diagonals', () => {
    const s = sheetOf(pieceOf({ shape: 'rectangle', length_m: 0.8, width_m: 0.6 }));
    expect(s.datums.across).toMatchObject({ side: 'left', edge: 'left' });
    expect(s.datums.up).toMatchObject({ side: 'front', edge: 'front' });
    expect(s.corners.map((c) => [c.number, c.at.across_m, c.at.up_m])).toEqual([
      [1, 0, 0],
      [2, 0.8, 0],
      [3, 0.8, 0.6],
      [4, 0, 0.6],
    ]);
    expect(s.diagonals.map((d) => [d.from, d.to])).toEqual([
      [1, 3],
      [2, 4],
    ]);
    for (const d of s.diagonals) expect(d.length_m).toBeCloseTo(1, 12);
    expect(s.overall).toEqual({ length_m: 0.8, width_m: 0.6 });
  });

  it('says where a rounding begins and ends and where its centre is', () => {
    const s = sheetOf(pieceOf({ shape: 'rectangle', length_m: 0.8, width_m: 0.6, cornerRadius_m: 0.05 }));
    const { rounding, radius_m } = s.corners[1]!;
    expect(radius_m).toBe(0.05);
    expect(rounding!.begin.across_m).toBeCloseTo(0.75, 12);
    expect(rounding!.begin.up_m).toBeCloseTo(0, 12);
    expect(rounding!.end.across_m).toBeCloseTo(0.8, 12);
    expect(rounding!.end.up_m).toBeCloseTo(0.05, 12);
    expect(rounding!.centre.across_m).toBeCloseTo(0.75, 12);
    expect(rounding!.centre.up_m).toBeCloseTo(0.05, 12);
  });

  it('measures an L from the two walls it stands against, with nine diagonals', () => {
    const ell: Outline = {
      shape: 'ell',
      side: 'right',
      length_m: 2.4,
      width_m: 0.6,
      returnLength_m: 1.8,
      returnWidth_m: 0.6,
    };
    const s = sheetOf(pieceOf(ell, [{ ...sink, centre: { x_m: 0.5, y_m: 0.3 } }]));
    expect(s.datums.across).toMatchObject({ side: 'right', edge: 'right' });
    expect(s.datums.up).toMatchObject({ side: 'back', edge: 'back' });
    expect(s.diagonals.length).toBe(9);
    expect(s.cutOuts[0]!.centre.across_m).toBeCloseTo(1.9, 12);
    expect(s.cutOuts[0]!.centre.up_m).toBeCloseTo(0.3, 12);
    const inside = s.corners.filter((c) => c.insideAngle_rad > Math.PI + 0.1);
    expect(inside.length).toBe(1);
  });

  it('places a cut-out by its centre and by its edges', () => {
    const [c] = sheetOf(pieceOf({ shape: 'rectangle', length_m: 1.2, width_m: 0.55 }, [sink])).cutOuts;
    expect(c!.near.across_m).toBeCloseTo(0.3, 12);
    expect(c!.far.across_m).toBeCloseTo(0.7, 12);
    expect(c!.beyond.across_m).toBeCloseTo(0.5, 12);
    expect(c!.near.up_m).toBeCloseTo(0.1, 12);
    expect(c!.far.up_m).toBeCloseTo(0.4, 12);
    expect(c!.beyond.up_m).toBeCloseTo(0.15, 12);
  });

  it('draws an oval with two nails and a string that reach every point of the rim', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 6.3, noNaN: true }),
        (length_m, width_m, t) => {
          const { oval } = sheetOf(pieceOf({ shape: 'ellipse', length_m, width_m }));
          const p = {
            x: oval!.centre.across_m + oval!.halfLength_m * Math.cos(t),
            y: oval!.centre.up_m + oval!.halfWidth_m * Math.sin(t),
          };
          const [a, b] = oval!.nails;
          const round =
            Math.hypot(p.x - a.across_m, p.y - a.up_m) +
            Math.hypot(p.x - b.across_m, p.y - b.up_m) +
            Math.hypot(a.across_m - b.across_m, a.up_m - b.up_m);
          expect(round).toBeCloseTo(oval!.string_m, 9);
        },
      ),
    );
  });

  it('names the arcs of a free shape, and leaves out the sum of the angles there', () => {
    const s = sheetOf(
      pieceOf({
        shape: 'path',
        start: { x_m: 0, y_m: 0 },
        segments: [
          { kind: 'line', to: { x_m: 1, y_m: 0 } },
          { kind: 'arc', to: { x_m: 1, y_m: 0.6 }, bulge: 1 },
          { kind: 'line', to: { x_m: 0, y_m: 0.6 } },
          { kind: 'line', to: { x_m: 0, y_m: 0 } },
        ],
      }),
    );
    expect(s.arcs.length).toBe(1);
    expect(s.arcs[0]!.radius_m).toBeCloseTo(0.3, 12);
    expect(s.arcs[0]!.centre.across_m).toBeCloseTo(1, 12);
    expect(s.arcs[0]!.length_m).toBeCloseTo(0.3 * Math.PI, 12);
    expect(s.checks.map((c) => c.kind)).toEqual(['round the outline']);
  });

  it('lists every edge with kind, profile, height and underside return', () => {
    const s = sheetOf(
      pieceOf({ shape: 'rectangle', length_m: 0.8, width_m: 0.6 }, [
        { ...sink, length_m: 0.3, width_m: 0.2, centre: { x_m: 0.4, y_m: 0.3 } },
      ]),
    );
    expect(s.edges.map((e) => e.name)).toEqual(['front', 'right', 'back', 'left']);
    expect(s.edges[0]).toMatchObject({ kind: 'finished', faceHeight_m: 0.038, undersideReturn_m: 0.02 });
    expect(s.rims).toMatchObject([{ name: 'sink', rim: 'wrapped', faceHeight_m: 0.038 }]);
  });

  it('explains a piece that cannot be built, and sets nothing out', () => {
    const over = setOut(
      pieceOf({ shape: 'rectangle', length_m: 0.8, width_m: 0.6 }, [
        { ...sink, centre: { x_m: 0.05, y_m: 0.3 } },
      ]),
    );
    expect(over.ok).toBe(false);
    if (!over.ok) expect(over.problems[0]!.path).toMatch(/^cutOuts\.0/);
  });
});

/** A star-shaped polygon: sound whatever the numbers. */
const anyPolygon = fc
  .array(fc.double({ min: 0.4, max: 1.2, noNaN: true }), { minLength: 3, maxLength: 12 })
  .map(
    (reaches): Outline => ({
      shape: 'polygon',
      corners: reaches.map((reach, i) => ({
        x_m: 1.5 + reach * Math.cos((2 * Math.PI * i) / reaches.length),
        y_m: 1.5 + reach * Math.sin((2 * Math.PI * i) / reaches.length),
        radius_m: 0.01,
      })),
    }),
  );

describe('any polygon set out', () => {
  it('has corners at or beyond both datums, sums that come out, and diagonals that fit its corners', () => {
    fc.assert(
      fc.property(anyPolygon, (outline) => {
        const s = sheetOf(pieceOf(outline));
        for (const c of s.corners)
          for (const d of c.rounding === null ? [c.at] : [c.rounding.begin, c.rounding.end]) {
            expect(d.across_m).toBeGreaterThanOrEqual(-1e-9);
            expect(d.up_m).toBeGreaterThanOrEqual(-1e-9);
          }
        for (const sum of s.checks)
          expect(sum.parts.reduce((all, p) => all + p.value, 0)).toBeCloseTo(sum.total, 9);
        expect(s.checks.some((c) => c.kind === 'inside angles')).toBe(true);
        for (const d of s.diagonals) {
          const [a, b] = [s.corners[d.from - 1]!.at, s.corners[d.to - 1]!.at];
          expect(d.length_m).toBeCloseTo(Math.hypot(a.across_m - b.across_m, a.up_m - b.up_m), 12);
        }
        const n = s.corners.length;
        if (n >= 4) expect(s.diagonals.length).toBeGreaterThanOrEqual(n - 3);
      }),
    );
  });
});
