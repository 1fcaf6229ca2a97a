import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutOutPath, outlinePath } from '../outline.ts';
import { bounds, distanceToPath_m, flattenPath, pathArea_m2 } from '../path.ts';
import type { CutOut, Path, PathOutline, Piece } from '../piece.ts';
import { importedCutOut, importedOutline } from './imported-piece.ts';
import { loopPath, pieceLoops } from './piece-loops.ts';
import { readDxf } from './read-dxf.ts';
import { readSvg } from './read-svg.ts';
import { writeDxf } from './write-dxf.ts';
import { writeSvg } from './write-svg.ts';

/** Largest distance between two paths, both ways. */
function apart_m(a: Path, b: Path): number {
  const stray = (p: Path, q: Path): number =>
    Math.max(...flattenPath(p, 1e-5).map((point) => distanceToPath_m(q, point)));
  return Math.max(stray(a, b), stray(b, a));
}

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A star-shaped polygon with rounded corners and one hole of each kind well inside it. */
const pieces = fc
  .record({
    radii: fc.array(size(0.5, 0.6), { minLength: 5, maxLength: 9 }),
    corner: size(0, 0.02),
    turn: size(0, 3),
    round: size(0.02, 0.1),
    oval: fc.tuple(size(0.05, 0.2), size(0.05, 0.2)),
    box: fc.tuple(size(0.05, 0.15), size(0.05, 0.15), size(0, 0.02)),
  })
  .map(({ radii, corner, turn, round, oval, box }): Piece => {
    const corners = radii.map((r, i) => ({
      x_m: r * Math.cos((i / radii.length) * 2 * Math.PI),
      y_m: r * Math.sin((i / radii.length) * 2 * Math.PI),
      radius_m: corner,
    }));
    const cutOuts: CutOut[] = [
      { shape: 'round', name: 'tap', centre: { x_m: 0, y_m: 0.2 }, diameter_m: round, rim: 'dammed' },
      {
        shape: 'oval',
        name: 'bowl',
        centre: { x_m: -0.15, y_m: -0.1 },
        length_m: oval[0],
        width_m: oval[1],
        rotation_rad: turn,
        rim: 'dammed',
      },
      {
        shape: 'rectangle',
        name: 'sink & <drain>',
        centre: { x_m: 0.15, y_m: -0.1 },
        length_m: box[0],
        width_m: box[1],
        cornerRadius_m: box[2],
        rotation_rad: turn,
        rim: 'dammed',
      },
    ];
    return { outline: { shape: 'polygon', corners }, edges: {}, cutOuts, bodyThickness_m: 0.019 };
  });

const ROUND_TRIP_M = 1e-5;
/** Bent, and as flat as can be: a centre hundreds of kilometres out, or a line in all but name. */
const bulges = fc.oneof(
  size(-0.2, 0.2),
  fc.tuple(fc.constantFrom(-1, 1), size(-12, -3)).map(([side, power]) => side * 10 ** power),
);

describe('a piece written and read again', () => {
  const routes = {
    'DXF R12 in mm': (p: Piece) => readDxf(writeDxf(p, { version: 'R12', unit: 'mm' })),
    'DXF R12 in inches': (p: Piece) => readDxf(writeDxf(p, { version: 'R12', unit: 'in' })),
    'DXF 2000 in mm': (p: Piece) => readDxf(writeDxf(p, { version: 'R2000', unit: 'mm' })),
    'DXF 2000 in inches': (p: Piece) => readDxf(writeDxf(p, { version: 'R2000', unit: 'in' })),
    'SVG in mm': (p: Piece) => readSvg(writeSvg(p)),
  };
  for (const [name, route] of Object.entries(routes))
    it(`is the same within 0.01 mm: ${name}`, () => {
      fc.assert(
        fc.property(pieces, (piece) => {
          const read = route(piece);
          expect(read.ok ? [] : read.problems).toEqual([]);
          if (!read.ok) return;
          expect(apart_m(read.value.outline.path, outlinePath(piece.outline))).toBeLessThan(ROUND_TRIP_M);
          expect(read.value.cutOuts).toHaveLength(3);
          for (const loop of pieceLoops(piece).cutOuts) {
            const path = loopPath(loop);
            const nearest = Math.min(...read.value.cutOuts.map((c) => apart_m(c.path, path)));
            expect(nearest).toBeLessThan(ROUND_TRIP_M);
          }
        }),
        { numRuns: 25 },
      );
    }, 30_000);

  it('gives the outline of a piece and its template as a cut-out', () => {
    fc.assert(
      fc.property(size(0.1, 0.4), size(0.1, 0.4), size(0, 0.04), fc.nat(2), (length_m, width_m, r, kind) => {
        const outline =
          kind === 0
            ? ({ shape: 'rectangle', length_m, width_m, cornerRadius_m: r } as const)
            : kind === 1
              ? ({ shape: 'round', diameter_m: length_m } as const)
              : ({ shape: 'ellipse', length_m, width_m } as const);
        const read = readSvg(writeSvg({ outline, edges: {}, cutOuts: [], bodyThickness_m: 0.019 }));
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        const back = importedOutline(read.value);
        if (!back.ok) throw new Error(JSON.stringify(back.problems));
        const area = pathArea_m2(outlinePath(outline));
        expect(Math.abs(pathArea_m2(outlinePath(back.value)) / area - 1)).toBeLessThan(2e-3);
        const hole = importedCutOut(read.value, { x_m: 1, y_m: 1 });
        if (!hole.ok) throw new Error(JSON.stringify(hole.problems));
        expect(hole.value.cutOut.centre).toEqual({ x_m: 1, y_m: 1 });
        expect(hole.value.strays_m).toBeLessThan(3e-4);
      }),
      { numRuns: 30 },
    );
  });

  it('gives a template of another shape as it was drawn, with holes written and read again', () => {
    const outline = fc
      .array(fc.tuple(size(0.12, 0.18), bulges), { minLength: 4, maxLength: 9 })
      .map((spokes): PathOutline => {
        const at = (i: number) => {
          const k = i % spokes.length;
          const angle = (2 * Math.PI * k) / spokes.length;
          return { x_m: spokes[k]![0] * Math.cos(angle), y_m: spokes[k]![0] * Math.sin(angle) };
        };
        const segments = spokes.map(([, bulge], i) => ({ kind: 'arc' as const, to: at(i + 1), bulge }));
        return { shape: 'path', start: at(0), segments };
      });
    fc.assert(
      fc.property(outline, size(-3, 3), fc.constantFrom(...Object.values(routes)), (drawn, turn, route) => {
        const sink: CutOut = {
          shape: 'template',
          outline: drawn,
          name: 'sink',
          centre: { x_m: 0.6, y_m: 0.3 },
          rotation_rad: turn,
          rim: 'dammed',
        };
        const top = { shape: 'rectangle', length_m: 1.2, width_m: 0.6 } as const;
        const read = route({ outline: top, edges: {}, cutOuts: [sink], bodyThickness_m: 0.019 });
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        const [hole] = read.value.cutOuts;
        expect(apart_m(hole!.path, cutOutPath(sink))).toBeLessThan(ROUND_TRIP_M);
        const template = importedCutOut({ ...read.value, outline: hole! }, { x_m: 1, y_m: 1 }, 'sink');
        if (!template.ok) throw new Error(JSON.stringify(template.problems));
        if (template.value.cutOut.shape !== 'template') return;
        expect(apart_m(template.value.path, cutOutPath(template.value.cutOut))).toBeLessThan(1e-9);
        const box = bounds(cutOutPath(template.value.cutOut));
        expect((box.minX_m + box.maxX_m) / 2).toBeCloseTo(1, 9);
        expect((box.minY_m + box.maxY_m) / 2).toBeCloseTo(1, 9);
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});
