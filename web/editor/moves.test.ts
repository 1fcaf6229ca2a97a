import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';

// Many drawn pieces a test: a busy machine needs more than the usual five seconds.
vi.setConfig({ testTimeout: 60_000 });

import type { PieceDocument } from '#core/job/document.ts';
import { outlinePath } from '#core/piece/outline.ts';
import { pathArea_m2 } from '#core/piece/path.ts';
import { readLength_m } from '#core/quantity/read.ts';
import { toSI } from '#core/quantity/units.ts';
import { ellCounter, vanityVesselSink } from '#examples/jobs.ts';
import { change, redo, startHistory, undo } from '#web/draft/undo.ts';
import { cornerPlaces, polygonOf, withCornerOn, withOwnCorners, withoutCorner } from './corners.ts';
import { gapsOf } from './gaps.ts';
import { type Grid, lengthWords, snapped_m, step_m } from './grid.ts';
import { withTapHole } from './holes.ts';
import { aboutCutOut, lookAt } from './look.ts';
import { type Movable, movedByKey, movedTo, placeOf } from './moves.ts';
import { sideLength_m, withSideLength } from './side-length.ts';

const US: Grid = { system: 'us', snaps: true };
const rectangle = vanityVesselSink.piece;
const polygon = withOwnCorners(rectangle, US);
const anyGrid = fc.record({ system: fc.constantFrom('us' as const, 'metric' as const), snaps: fc.boolean() });
const anyPlace = fc.record({
  x_m: fc.double({ min: -0.2, max: 1.4, noNaN: true }),
  y_m: fc.double({ min: -0.2, max: 0.8, noNaN: true }),
});
const anyPick: fc.Arbitrary<Movable> = fc.oneof(
  fc.record({ kind: fc.constant('corner' as const), index: fc.integer({ min: 0, max: 3 }) }),
  fc.record({ kind: fc.constant('cut-out' as const), index: fc.constant(0) }),
);
const area = (piece: PieceDocument): number => pathArea_m2(outlinePath(lookAt(piece, 'us')!.piece.outline));

describe('the grid', () => {
  it('holds to the nearest sixteenth or millimetre, and a length reads back as it was written', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), anyGrid, (value_m, grid) => {
        const on_m = snapped_m(value_m, grid);
        expect(Math.abs(on_m - value_m)).toBeLessThanOrEqual(step_m(grid) / 2 + 1e-12);
        expect(snapped_m(on_m, grid)).toBeCloseTo(on_m, 12);
        const read = readLength_m(lengthWords(on_m, grid.system), { min: -10, max: 10 });
        expect(read.ok && read.value).toBeCloseTo(on_m, 9);
        const free = readLength_m(lengthWords(value_m, grid.system), { min: -10, max: 10 });
        expect(free.ok && Math.abs(free.value - value_m)).toBeLessThan(2e-5);
      }),
    );
  });
});

describe('moves on the drawing', () => {
  it('put a corner or a hole on the grid, and leave everything else as it was', () => {
    fc.assert(
      fc.property(anyPick, anyPlace, anyGrid, (pick, to, grid) => {
        const moved = movedTo(polygon, pick, to, grid);
        expect(lookAt(moved, 'us')).not.toBeNull();
        if (moved === polygon) return;
        const place = placeOf(moved, pick)!;
        expect(Math.hypot(place.x_m - to.x_m, place.y_m - to.y_m)).toBeLessThan(step_m(grid));
        expect(moved.edges).toBe(polygon.edges);
        if (pick.kind === 'corner') expect(moved.cutOuts).toBe(polygon.cutOuts);
        else expect(moved.outline).toBe(polygon.outline);
      }),
      { numRuns: 60 },
    );
  });

  it('by key go one step and come back, the texts of the other axis as they were typed', () => {
    fc.assert(
      fc.property(anyPick, anyGrid, fc.boolean(), (pick, grid, big) => {
        const there = movedByKey(polygon, pick, 'ArrowRight', grid, big)!;
        const back = movedByKey(there, pick, 'ArrowLeft', grid, big)!;
        const [a, b, c] = [polygon, there, back].map((piece) => placeOf(piece, pick)!);
        expect(b!.y_m).toBe(a!.y_m);
        expect(b!.x_m).toBeGreaterThan(a!.x_m);
        expect(Math.abs(c!.x_m - a!.x_m)).toBeLessThan(step_m(grid));
      }),
      { numRuns: 60 },
    );
    expect(movedByKey(polygon, { kind: 'corner', index: 0 }, 'Home', US, false)).toBeNull();
  });

  it('are undone and done again step by step through the history of the sheet', () => {
    const keys = fc.array(fc.constantFrom('ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(anyPick, keys, (pick, pressed) => {
        let history = startHistory(polygon);
        for (const key of pressed) {
          const moved = movedByKey(history.present, pick, key, US, false) ?? history.present;
          history = change(history, moved, 'Move', '', 0);
        }
        const end = history.present;
        for (const _ of pressed) history = undo(history);
        expect(history.present).toBe(polygon);
        for (const _ of pressed) history = redo(history);
        expect(history.present).toEqual(end);
      }),
      { numRuns: 30 },
    );
  });

  it('are refused where the outline could not be drawn any more', () => {
    const onto = cornerPlaces(polygon)![1]!;
    expect(movedTo(polygon, { kind: 'corner', index: 0 }, onto, US)).toBe(polygon);
  });
});

describe('corners', () => {
  it('of a rectangle and an L enclose what the shape did, edges under their new names', () => {
    expect(area(polygon)).toBeCloseTo(area(rectangle), 12);
    expect(polygon.edges.map((edge) => edge.kind)).toEqual(rectangle.edges.map((edge) => edge.kind));
    for (const side of ['left', 'right'] as const) {
      const ell: PieceDocument = {
        ...rectangle,
        edges: [],
        cutOuts: [],
        outline: {
          shape: 'ell',
          side,
          length: '96 in',
          width: '25 1/2 in',
          returnLength: '1800 mm',
          returnWidth: '24 in',
          cornerRadius: '1/2 in',
          insideRadius: '2 in',
        },
      };
      expect(area(withOwnCorners(ell, US))).toBeCloseTo(area(ell), 4);
    }
  });

  it('of an L keep what the edges of its return are to the shop', () => {
    const { piece } = ellCounter;
    const turned = withOwnCorners(piece, US);
    const known = turned.edges.flatMap(({ edge, countsAs }) => (countsAs ? [[edge, countsAs]] : []));
    expect(known).toHaveLength(2);
    expect(new Set(known.map(([, counts]) => counts))).toEqual(new Set(['return front', 'return end']));
    const [front] = known.find(([, counts]) => counts === 'return front')!;
    expect(lookAt(turned, 'us')!.piece.edges[front!]!.countsAs).toBe('return front');
    const warnings = (of: PieceDocument) => lookAt(of, 'us')!.warnings.map(({ code }) => code);
    expect(warnings(turned)).toEqual(warnings(piece));
  });

  it('added on a side change no area, and taken away again give the piece back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3 }), (side) => {
        const more = withCornerOn(polygon, side, { ...US, exact: true });
        expect(polygonOf(more)!.corners).toHaveLength(5);
        expect(lookAt(more, 'us')!.problems).toEqual([]);
        expect(area(more)).toBeCloseTo(area(polygon), 9);
        expect(withoutCorner(more, side + 1)).toEqual(polygon);
      }),
    );
  });

  it('are never fewer than three', () => {
    const three = withoutCorner(polygon, 0);
    expect(polygonOf(three)!.corners).toHaveLength(3);
    expect(withoutCorner(three, 0)).toBe(three);
  });
});

describe('a typed side', () => {
  it('is as long as typed, and a rectangle stays one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 160, max: 960 }), (edge, sixteenths) => {
        const text = lengthWords(toSI(sixteenths / 16, 'in'), 'us');
        const typed = withSideLength(polygon, `edge ${edge}`, text, 'us');
        const sides = [1, 2, 3, 4].map((n) => sideLength_m(typed, `edge ${n}`)!);
        expect(sides[edge - 1]).toBeCloseTo(toSI(sixteenths / 16, 'in'), 9);
        expect(sides[(edge + 1) % 4]).toBeCloseTo(sides[edge - 1]!, 9);
        expect(sides[edge % 4]).toBeCloseTo(sideLength_m(polygon, `edge ${(edge % 4) + 1}`)!, 9);
      }),
    );
  });

  it('of an L changes the size that makes it', () => {
    const ell: PieceDocument = {
      ...rectangle,
      outline: {
        shape: 'ell',
        side: 'left',
        length: '96 in',
        width: '25 1/2 in',
        returnLength: '72 in',
        returnWidth: '24 in',
        cornerRadius: '',
        insideRadius: '',
      },
    };
    for (const name of ['front', 'right', 'back', 'left', 'return end', 'return front']) {
      const typed = withSideLength(ell, name, '50 in', 'us');
      expect(sideLength_m(typed, name)).toBeCloseTo(toSI(50, 'in'), 9);
    }
  });

  it('stays when what is typed is no length', () => {
    expect(withSideLength(polygon, 'edge 1', '12 parsecs', 'us')).toBe(polygon);
    expect(withSideLength(polygon, 'edge 9', '12 in', 'us')).toBe(polygon);
  });
});

describe('holes', () => {
  it('for a tap are 1 3/8 in, each with a name of its own, and are warned about near an edge', () => {
    const once = withTapHole(polygon, lookAt(polygon, 'us')!.piece, US);
    const twice = withTapHole(once, lookAt(once, 'us')!.piece, US);
    expect(twice.cutOuts.slice(-2).map((c) => [c.name, c.length])).toEqual([
      ['tap hole', '1 3/8 in'],
      ['tap hole 2', '1 3/8 in'],
    ]);
    const pick = { kind: 'cut-out', index: polygon.cutOuts.length } as const;
    const near = movedTo(once, pick, { x_m: toSI(20, 'in'), y_m: toSI(1, 'in') }, US);
    const found = aboutCutOut(lookAt(near, 'us')!, pick.index);
    expect(found.map((problem) => problem.code)).toContain('cut-out.tap-edge');
  });

  it('say what is left of the top on every side', () => {
    const gaps = gapsOf(
      {
        shape: 'oval',
        length_m: 0.4,
        width_m: 0.3,
        centre: { x_m: 0.5, y_m: 0.25 },
        name: 'bowl',
        rim: 'wrapped',
      },
      { shape: 'rectangle', length_m: 1.1, width_m: 0.55 },
    );
    const left = Object.fromEntries(gaps.map((gap) => [gap.side, gap.left_m]));
    expect(left.left).toBeCloseTo(0.3, 9);
    expect(left.right).toBeCloseTo(0.4, 9);
    expect(left.front).toBeCloseTo(0.1, 9);
    expect(left.back).toBeCloseTo(0.15, 9);
  });

  it('before a rim count to the arc', () => {
    const hole = {
      shape: 'round',
      diameter_m: 0.02,
      centre: { x_m: 0.5, y_m: 0.8 },
      name: 'x',
      rim: 'dammed',
    } as const;
    const gaps = gapsOf(hole, { shape: 'round', diameter_m: 1 });
    expect(gaps.find((gap) => gap.side === 'left')!.left_m).toBeCloseTo(0.4 - 0.01, 3);
  });
});
