import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measurePiece } from './measure.ts';
import { edgeNames } from './outline.ts';
import type { CutOut, EdgeProfile, EdgeSpec, Outline, Piece, PieceMeasures } from './piece.ts';
import { validatePiece } from './validate.ts';

const { PI } = Math;

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

const size = fc.double({ min: 0.005, max: 3, noNaN: true });
const small = fc.double({ min: -0.01, max: 0.3, noNaN: true });
const anyNumber = fc.oneof(size, small, fc.double());
const anyOutline: fc.Arbitrary<Outline> = fc.oneof(
  fc.record({
    shape: fc.constant('rectangle' as const),
    length_m: size,
    width_m: size,
    cornerRadius_m: small,
  }),
  fc.record({
    shape: fc.constant('ell' as const),
    side: fc.constantFrom('left' as const, 'right' as const),
    length_m: size,
    width_m: size,
    returnLength_m: size,
    returnWidth_m: size,
    cornerRadius_m: small,
    insideRadius_m: small,
  }),
  fc.record({ shape: fc.constant('round' as const), diameter_m: anyNumber }),
  fc.record({ shape: fc.constant('ellipse' as const), length_m: size, width_m: anyNumber }),
  fc.record({
    shape: fc.constant('polygon' as const),
    corners: fc.array(fc.record({ x_m: anyNumber, y_m: anyNumber, radius_m: small }), { maxLength: 8 }),
  }),
  fc
    .record({
      start: fc.record({ x_m: size, y_m: size }),
      steps: fc.array(
        fc.record({
          to: fc.record({ x_m: size, y_m: size }),
          bulge: fc.double({ min: -2, max: 2, noNaN: true }),
        }),
        {
          maxLength: 5,
        },
      ),
    })
    .map(({ start, steps }) => ({
      shape: 'path' as const,
      start,
      segments: [...steps, { to: start, bulge: 0.3 }].map((s) => ({ kind: 'arc' as const, ...s })),
    })),
);
const anyProfile: fc.Arbitrary<EdgeProfile> = fc.oneof(
  fc.record({ kind: fc.constantFrom('square eased' as const, 'round-over' as const), radius_m: small }),
  fc.constant({ kind: 'bullnose' as const }),
  fc.record({ kind: fc.constant('bevel' as const), leg_m: small }),
  fc.record({ kind: fc.constant('chiselled' as const), factor: fc.double({ min: 1, max: 2 }) }),
);
const anyCutOut: fc.Arbitrary<CutOut> = fc
  .record({
    x_m: size,
    y_m: size,
    l: small,
    w: small,
    r: small,
    turn: fc.double({ min: -4, max: 4, noNaN: true }),
  })
  .chain(({ x_m, y_m, l, w, r, turn }) => {
    const common = { name: 'hole', centre: { x_m, y_m }, rotation_rad: turn, rim: 'wrapped' as const };
    return fc.constantFrom<CutOut>(
      { ...common, shape: 'rectangle', length_m: l, width_m: w, cornerRadius_m: r },
      { ...common, shape: 'oval', length_m: l, width_m: w },
      { ...common, shape: 'round', diameter_m: l },
    );
  });

describe('any piece a person may type', () => {
  it('is either explained or measured with finite figures that agree with each other', () => {
    let sound = 0;
    fc.assert(
      fc.property(
        anyOutline,
        fc.oneof(fc.constant([]), fc.array(anyCutOut, { maxLength: 3 })),
        fc.oneof(fc.constant(eased.profile), anyProfile),
        fc.double({ min: 0.002, max: 0.2, noNaN: true }),
        (outline, cutOuts, profile, faceHeight_m) => {
          const piece = pieceOf(outline, cutOuts, { ...eased, faceHeight_m, profile });
          const problems = validatePiece(piece);
          const result = measurePiece(piece);
          expect(result.ok).toBe(problems.length === 0);
          for (const p of problems) {
            expect(p.path).toMatch(/^(outline|edges|cutOuts|bodyThickness)/);
            expect(p.allowed).toBeTruthy();
          }
          if (!result.ok) return;
          sound += 1;
          const m = result.value;
          for (const value of Object.values(m))
            if (typeof value === 'number') expect(value).toBeGreaterThanOrEqual(0);
          expect(m.topArea_m2).toBeGreaterThan(0);
          expect(m.topArea_m2).toBeLessThanOrEqual(m.grossArea_m2);
          const outer = m.edges.filter((e) => e.outer);
          expect(outer.reduce((sum, e) => sum + e.length_m, 0)).toBeCloseTo(m.perimeter_m, 9);
          // Isoperimetric inequality, and the circle inside.
          expect(m.perimeter_m ** 2).toBeGreaterThanOrEqual(4 * PI * m.grossArea_m2 * (1 - 1e-9));
          expect(PI * m.inscribedRadius_m ** 2).toBeLessThanOrEqual(m.grossArea_m2 * (1 + 1e-9));
          expect(m.longestDiagonal_m).toBeGreaterThanOrEqual(2 * m.inscribedRadius_m - 1e-3);
          expect(m.longestDiagonal_m).toBeLessThanOrEqual(m.perimeter_m / 2 + 1e-9);
        },
      ),
      { numRuns: 1500 },
    );
    expect(sound).toBeGreaterThan(50);
  });

  it('has its top reduced by exactly the area of each hole, whatever the order', () => {
    const outline: Outline = { shape: 'rectangle', length_m: 3, width_m: 1 };
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.02, max: 0.3, noNaN: true }), { minLength: 1, maxLength: 5 }),
        (widths) => {
          const holes = widths.map(
            (diameter_m, i): CutOut => ({
              name: `hole ${i}`,
              shape: 'round',
              diameter_m,
              centre: { x_m: 0.3 + 0.55 * i, y_m: 0.5 },
              rim: 'wrapped',
            }),
          );
          const taken = widths.reduce((sum, d) => sum + (PI * d * d) / 4, 0);
          expect(measured(pieceOf(outline, holes)).topArea_m2).toBeCloseTo(3 - taken, 12);
          expect(measured(pieceOf(outline, holes.toReversed())).topArea_m2).toBeCloseTo(3 - taken, 12);
        },
      ),
      { numRuns: 50 },
    );
  });
});
