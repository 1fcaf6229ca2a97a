import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointAlong, segmentLength_m } from '../arc.ts';
import { cutOutPath, edgeNames, outlinePath } from '../outline.ts';
import { pathLength_m } from '../path.ts';
import type { CutOut, EdgeSpec, Outline, Piece } from '../piece.ts';
import { clipSegment, within } from './clip.ts';
import { joinedTiles } from './joined-tiles.ts';
import { ROOM_M, type Tiling, templateTiles, tileLabel } from './template-tiles.ts';

const edge: EdgeSpec = {
  kind: 'finished',
  faceHeight_m: 0.038,
  profile: { kind: 'square eased', radius_m: 0.003 },
  undersideReturn_m: 0,
};

function pieceOf(outline: Outline, cutOuts: readonly CutOut[] = []): Piece {
  return {
    outline,
    edges: Object.fromEntries(edgeNames(outline).map((name) => [name, edge])),
    cutOuts,
    bodyThickness_m: 0.038,
  };
}

const A4 = { paper: 'A4', orientation: 'landscape', margin_m: 0.008, overlap_m: 0.015 } as const;

function tiled(piece: Piece, wishes: Parameters<typeof templateTiles>[1] = A4): Tiling {
  const result = templateTiles(piece, wishes);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const anyOutline: fc.Arbitrary<Outline> = fc.oneof(
  fc.record({
    shape: fc.constant('rectangle' as const),
    length_m: fc.double({ min: 0.2, max: 2.5, noNaN: true }),
    width_m: fc.double({ min: 0.2, max: 1, noNaN: true }),
    cornerRadius_m: fc.double({ min: 0, max: 0.1, noNaN: true }),
  }),
  fc.record({
    shape: fc.constant('round' as const),
    diameter_m: fc.double({ min: 0.1, max: 1.5, noNaN: true }),
  }),
  fc.record({
    shape: fc.constant('ellipse' as const),
    length_m: fc.double({ min: 0.2, max: 2, noNaN: true }),
    width_m: fc.double({ min: 0.2, max: 1, noNaN: true }),
  }),
  fc.array(fc.double({ min: 0.3, max: 0.9, noNaN: true }), { minLength: 3, maxLength: 9 }).map(
    (reaches): Outline => ({
      shape: 'polygon',
      corners: reaches.map((reach, i) => ({
        x_m: reach * Math.cos((2 * Math.PI * i) / reaches.length),
        y_m: reach * Math.sin((2 * Math.PI * i) / reaches.length),
      })),
    }),
  ),
);
const anyWishes = fc.record({
  paper: fc.constantFrom('A4' as const, 'Letter' as const),
  orientation: fc.constantFrom('portrait' as const, 'landscape' as const),
  margin_m: fc.double({ min: 0.003, max: 0.03, noNaN: true }),
  overlap_m: fc.double({ min: 0.005, max: 0.05, noNaN: true }),
});

describe('the sheets of a template', () => {
  it('show every point of the outline and of every rim, clear of the ends of the grid', () => {
    fc.assert(
      fc.property(anyOutline, anyWishes, (outline, wishes) => {
        const hole: CutOut = {
          name: 'tap',
          shape: 'round',
          diameter_m: 0.03,
          centre: middle(outline),
          rim: 'dammed',
        };
        const piece = pieceOf(outline, [hole]);
        const t = tiled(piece, wishes);
        for (const path of [outlinePath(outline), cutOutPath(hole)])
          for (const s of path)
            for (let i = 0; i <= 8; i += 1) {
              const p = pointAlong(s, i / 8);
              expect(t.tiles.some((tile) => within(p, tile.window))).toBe(true);
            }
        const all = t.tiles.map((tile) => tile.window);
        const xs = outlinePath(outline).flatMap((s) => [s.from.x_m, s.to.x_m]);
        expect(Math.min(...xs) - Math.min(...all.map((w) => w.minX_m))).toBeGreaterThanOrEqual(ROOM_M - 1e-9);
        expect(Math.max(...all.map((w) => w.maxX_m)) - Math.max(...xs)).toBeGreaterThanOrEqual(ROOM_M - 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it('overlap by what was asked, and their windows and margins fill the paper but for the foot', () => {
    fc.assert(
      fc.property(anyOutline, anyWishes, (outline, wishes) => {
        const t = tiled(pieceOf(outline), wishes);
        const at = new Map(t.tiles.map((tile) => [`${tile.row} ${tile.column}`, tile.window]));
        for (const { row, column, window } of t.tiles) {
          expect(window.maxX_m - window.minX_m).toBeCloseTo(t.page.width_m - 2 * wishes.margin_m, 9);
          const right = at.get(`${row} ${column + 1}`);
          if (right !== undefined) expect(window.maxX_m - right.minX_m).toBeCloseTo(wishes.overlap_m, 9);
          const below = at.get(`${row + 1} ${column}`);
          if (below !== undefined) expect(below.maxY_m - window.minY_m).toBeCloseTo(wishes.overlap_m, 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('carry the same crosses as their neighbours, inside the strip both share', () => {
    fc.assert(
      fc.property(anyOutline, anyWishes, (outline, wishes) => {
        const t = tiled(pieceOf(outline), wishes);
        const byLabel = new Map(t.tiles.map((tile) => [tile.label, tile]));
        for (const tile of t.tiles)
          for (const mark of tile.marks) {
            const other = byLabel.get(mark.with)!;
            const twin = other.marks.find((m) => m.name === mark.name)!;
            expect(Math.hypot(twin.at.x_m - mark.at.x_m, twin.at.y_m - mark.at.y_m)).toBeLessThan(1e-9);
            expect(within(mark.at, tile.window) && within(mark.at, other.window)).toBe(true);
          }
        // Every sheet but a lone one hangs on another.
        if (t.tiles.length > 1) for (const tile of t.tiles) expect(tile.marks.length).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });

  it('leave out what nothing falls on: the middle of a wide top', () => {
    const t = tiled(pieceOf({ shape: 'rectangle', length_m: 1.5, width_m: 1 }));
    expect(t.tiles.length).toBeLessThan(t.rows * t.columns);
    expect(t.tiles.every((tile) => tile.parts.length > 0)).toBe(true);
  });

  it('keep a blank sheet where a rim would lie loose without it', () => {
    const t = tiled(
      pieceOf({ shape: 'rectangle', length_m: 2.4, width_m: 1.6 }, [
        {
          name: 'tap',
          shape: 'round',
          diameter_m: 0.035,
          centre: { x_m: 1.2, y_m: 0.8 },
          rim: 'dammed',
        },
      ]),
    );
    expect(t.tiles.some((tile) => tile.bridge)).toBe(true);
    for (const tile of t.tiles) expect(tile.bridge).toBe(tile.parts.length === 0);
  });

  it('refuse a template nobody would tape together, and a piece that cannot be built', () => {
    const big = templateTiles(pieceOf({ shape: 'rectangle', length_m: 10, width_m: 0.02 }), {
      ...A4,
      paper: 'Letter',
      margin_m: 0.03,
      overlap_m: 0.05,
    });
    expect(big.ok).toBe(true);
    const huge = templateTiles(
      pieceOf(
        { shape: 'rectangle', length_m: 10, width_m: 10 },
        Array.from({ length: 12 }, (_, i) => ({
          name: `slot ${i}`,
          shape: 'rectangle' as const,
          length_m: 9,
          width_m: 0.1,
          cornerRadius_m: 0.01,
          centre: { x_m: 5, y_m: 0.5 + i * 0.8 },
          rim: 'dammed' as const,
        })),
      ),
      A4,
    );
    expect(huge).toMatchObject({ ok: false, problems: [{ code: 'template.sheets' }] });
    expect(templateTiles(pieceOf({ shape: 'round', diameter_m: 0 }), A4).ok).toBe(false);
  });

  it('throw on a margin or overlap outside their range', () => {
    const piece = pieceOf({ shape: 'round', diameter_m: 1 });
    expect(() => templateTiles(piece, { ...A4, margin_m: 0 })).toThrow(RangeError);
    expect(() => templateTiles(piece, { ...A4, overlap_m: Number.NaN })).toThrow(RangeError);
  });

  it('are named by row letter and column number', () => {
    expect([tileLabel(0, 0), tileLabel(25, 8), tileLabel(26, 0), tileLabel(51, 1), tileLabel(52, 0)]).toEqual(
      ['A1', 'Z9', 'AA1', 'AZ2', 'BA1'],
    );
  });
});

describe('clipping', () => {
  it('cuts a path into parts whose lengths add up when windows fill the plane', () => {
    fc.assert(
      fc.property(
        anyOutline,
        fc.double({ min: 0.1, max: 0.4, noNaN: true }),
        fc.double({ min: -3.05, max: -3, noNaN: true }),
        (outline, size, origin) => {
          const path = outlinePath(outline);
          let length = 0;
          for (let x = origin; x < 3; x += size)
            for (let y = origin; y < 3; y += size)
              for (const s of path) {
                const window = { minX_m: x, maxX_m: x + size, minY_m: y, maxY_m: y + size };
                for (const part of clipSegment(s, window)) {
                  length += segmentLength_m(part);
                  for (const f of [0.01, 0.5, 0.99]) {
                    const p = pointAlong(part, f);
                    const slack = 1e-7;
                    expect(p.x_m).toBeGreaterThan(x - slack);
                    expect(p.x_m).toBeLessThan(x + size + slack);
                    expect(p.y_m).toBeGreaterThan(y - slack);
                    expect(p.y_m).toBeLessThan(y + size + slack);
                  }
                }
              }
          expect(length).toBeCloseTo(pathLength_m(path), 6);
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe('joining islands', () => {
  it('adds the shortest run of sheets and leaves a joined grid alone', () => {
    const joined = [
      [true, true],
      [false, true],
    ];
    expect(joinedTiles(joined)).toEqual(joined);
    expect(joinedTiles([[true, false, false, true]])).toEqual([[true, true, true, true]]);
    expect(joinedTiles([[false, false]])).toEqual([[false, false]]);
  });

  it('makes one group of any grid, and never takes a used sheet away', () => {
    const grid = fc
      .integer({ min: 1, max: 7 })
      .chain((n) =>
        fc.array(fc.array(fc.boolean(), { minLength: n, maxLength: n }), { minLength: 1, maxLength: 7 }),
      );
    fc.assert(
      fc.property(grid, (used) => {
        const kept = joinedTiles(used);
        used.forEach((cells, r) => {
          cells.forEach((cell, c) => {
            if (cell) expect(kept[r]![c]).toBe(true);
          });
        });
        expect(joinedTiles(kept)).toEqual(kept);
      }),
    );
  });
});

function middle(outline: Outline): { x_m: number; y_m: number } {
  if (outline.shape === 'rectangle' || outline.shape === 'ellipse')
    return { x_m: outline.length_m / 2, y_m: outline.width_m / 2 };
  if (outline.shape === 'round') return { x_m: outline.diameter_m / 2, y_m: outline.diameter_m / 2 };
  return { x_m: 0, y_m: 0 };
}
