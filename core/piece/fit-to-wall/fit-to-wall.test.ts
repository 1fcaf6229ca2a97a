import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '#core/piece/piece.ts';
import { shoelace_m2 } from '#core/piece/survey/polygon.ts';
import { alcoveWidth, largestSwing, tiltIn, turnedIn } from './alcove.ts';
import { carriers, intoBox, longestRoundCorner_m, roundCorner, throughDoor } from './carry-in.ts';
import { pieceFromWalls, type SideFit, wallJoint } from './from-wall.ts';
import { flatLimit_m, squareLimit_m } from './wall-tolerances.ts';

const box = (length: number, width: number): Point[] => [
  { x_m: 0, y_m: 0 },
  { x_m: length, y_m: 0 },
  { x_m: length, y_m: width },
  { x_m: 0, y_m: width },
];
const area = (points: readonly Point[]) => shoelace_m2(points.flatMap(({ x_m, y_m }) => [x_m, y_m]));
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('from walls to the piece', () => {
  const fits: SideFit[] = [
    { kind: 'overhang', reach_m: 0.03 },
    { kind: 'clearance', gap_m: 0.003 },
    { kind: 'scribe', spare_m: 0.01 },
    { kind: 'clearance', gap_m: 0.003 },
  ];

  it('moves each side by its own fit', () => {
    const piece = pieceFromWalls(box(1.2, 0.6), fits);
    if (!piece.ok) throw new Error('no piece');
    const xs = piece.value.map(({ x_m }) => x_m);
    const ys = piece.value.map(({ y_m }) => y_m);
    expect(Math.min(...xs)).toBeCloseTo(0.003, 12);
    expect(Math.max(...xs)).toBeCloseTo(1.197, 12);
    expect(Math.min(...ys)).toBeCloseTo(-0.03, 12);
    expect(Math.max(...ys)).toBeCloseTo(0.61, 12);
  });

  it('takes an even clearance off both ends, whichever way round the walls are named', () => {
    fc.assert(
      fc.property(size(0.3, 3), size(0.3, 1), size(0, 0.1), fc.boolean(), (length, width, gap_m, back) => {
        const walls = back ? box(length, width).reverse() : box(length, width);
        const piece = pieceFromWalls(
          walls,
          walls.map(() => ({ kind: 'clearance', gap_m })),
        );
        if (!piece.ok) throw new Error('no piece');
        expect(Math.abs(area(piece.value))).toBeCloseTo((length - 2 * gap_m) * (width - 2 * gap_m), 10);
      }),
    );
  });

  it('says when nothing is left, and when a side would have a step', () => {
    const all = box(1, 0.2).map((): SideFit => ({ kind: 'clearance', gap_m: 0.15 }));
    expect(pieceFromWalls(box(1, 0.2), all)).toMatchObject({
      ok: false,
      problems: [{ code: 'fit.nothing-left' }],
    });
    const five = [...box(1, 0.5).slice(0, 1), { x_m: 0.5, y_m: 0 }, ...box(1, 0.5).slice(1)];
    const stepped = [fits[0]!, fits[1]!, fits[1]!, fits[1]!, fits[1]!];
    expect(pieceFromWalls(five, stepped)).toMatchObject({ ok: false, problems: [{ code: 'fit.step' }] });
  });

  it('caulks a flat wall and scribes to one that bows by more than caulk fills', () => {
    expect(wallJoint([])).toEqual({ way: 'caulk', widest_m: 0.003175 });
    expect(wallJoint([0.002, -0.001]).way).toBe('caulk');
    const bowed = wallJoint([0.006, -0.004], 0.003);
    expect(bowed.way).toBe('scribe');
    expect(bowed.widest_m).toBeCloseTo(0.013, 12);
    expect(bowed.way === 'scribe' && bowed.spare_m).toBeCloseTo(0.01635, 12);
  });
});

describe('an alcove', () => {
  it('is as wide as the smallest of three', () => {
    const { usable_m, narrowest, range_m } = alcoveWidth({ back: 1.221, middle: 1.219, front: 1.224 }, 0.003);
    expect(usable_m).toBeCloseTo(1.213, 12);
    expect(narrowest).toBe('middle');
    expect(range_m).toBeCloseTo(0.005, 12);
  });

  it('lets a rectangle turn as far as the closed form says', () => {
    fc.assert(
      fc.property(size(0.6, 2), size(0.3, 0.6), size(0, 0.05), (length, width, spare) => {
        const room = length + spare;
        const diagonal = Math.hypot(length, width);
        const { free, left_rad, right_rad } = largestSwing(box(length, width), room, 10);
        expect(right_rad).toBeCloseTo(left_rad, 5);
        if (diagonal <= room) expect(free).toBe(true);
        else
          expect(left_rad).toBeCloseTo(
            Math.max(0, Math.atan2(width, length) - Math.acos(room / diagonal)),
            4,
          );
      }),
    );
  });

  it('holds a piece turned no farther than that, touching walls when it is turned so far', () => {
    fc.assert(
      fc.property(
        size(0.8, 2),
        size(0.3, 0.6),
        size(0.001, 0.05),
        size(0, 1),
        (length, width, spare, part) => {
          const room = length + spare;
          const outline = box(length, width);
          const most = largestSwing(outline, room, 10).left_rad;
          const xs = (turn: number) => turnedIn(outline, turn, room, 10).map(({ x_m }) => x_m);
          expect(Math.min(...xs(part * most))).toBeGreaterThanOrEqual(-1e-6);
          expect(Math.max(...xs(part * most))).toBeLessThanOrEqual(room + 1e-6);
          if (most < Math.PI) {
            expect(Math.min(...xs(most))).toBeCloseTo(0, 5);
            expect(Math.max(...xs(most))).toBeCloseTo(room, 5);
          }
          expect(Math.max(...turnedIn(outline, part, room, 10).map(({ y_m }) => y_m))).toBe(0);
        },
      ),
    );
  });

  it('that is shallow lets it turn farther', () => {
    const deep = largestSwing(box(1.2, 0.6), 1.21, 2);
    const shallow = largestSwing(box(1.2, 0.6), 1.21, 0.3);
    expect(shallow.left_rad).toBeGreaterThan(deep.left_rad);
  });

  it('narrower than the piece lets it not turn at all', () => {
    expect(largestSwing(box(1.2, 0.6), 1.1, 0.6)).toEqual({ free: false, left_rad: 0, right_rad: 0 });
  });

  it('takes a tilted top when its diagonal goes', () => {
    expect(tiltIn(1.2, 0.05, 1.203).goes).toBe(true);
    expect(tiltIn(1.2, 0.05, 1.201).goes).toBe(false);
    expect(tiltIn(1.2, 0.5, 1.4).spare_m).toBeCloseTo(0.1, 12);
  });
});

describe('the way in', () => {
  const load = { longest_m: 2.5, short_m: 0.65, thickness_m: 0.04, mass_kg: 52 };

  it('through a door on edge or flat, whichever leaves more room', () => {
    expect(throughDoor(load, 0.8, 2).spare_m).toBeCloseTo(0.76, 12);
    expect(throughDoor({ ...load, short_m: 2.2, longest_m: 3 }, 0.8, 2).goes).toBe(false);
  });

  it('round a corner: the classical longest ladder', () => {
    fc.assert(
      fc.property(size(0.7, 3), size(0.7, 3), (a, b) => {
        expect(longestRoundCorner_m(a, b, 0)).toBeCloseTo((a ** (2 / 3) + b ** (2 / 3)) ** 1.5, 8);
        expect(longestRoundCorner_m(a, b, 0.05)).toBeLessThan(longestRoundCorner_m(a, b, 0));
      }),
    );
    // Passages alike: the thick one loses twice its thickness.
    expect(longestRoundCorner_m(1, 1, 0.05)).toBeCloseTo(2 * Math.SQRT2 - 0.1, 8);
  });

  it('standing up makes it shorter in plan', () => {
    expect(roundCorner(load, 0.85, 0.85, 0.65).goes).toBe(false);
    expect(roundCorner(load, 0.85, 0.85, 2.4).goes).toBe(true);
    expect(roundCorner({ ...load, short_m: 2.5 }, 0.85, 0.85, 2.4).spare_m).toBeCloseTo(-0.1, 12);
  });

  it('into a lift by its diagonal, with hands by weight', () => {
    expect(intoBox(load, 1.1, 1.4, 2.1).goes).toBe(true);
    expect(intoBox({ ...load, longest_m: 3 }, 1.1, 1.4, 2.1).goes).toBe(false);
    expect([0, 25, 26, 52].map((kg) => carriers(kg))).toEqual([1, 1, 2, 3]);
  });
});

describe('walls as built', () => {
  it('may be out of square and flat by the table', () => {
    expect([0.4, 0.8, 2, 5, 40].map((m) => squareLimit_m(m) * 1000)).toEqual([3, 6, 8, 12, 30]);
    expect([0.05, 1, 4, 20].map((m) => flatLimit_m(m) * 1000)).toEqual([3, 5, 10, 25]);
    expect(flatLimit_m(7) * 1000).toBeCloseTo(15, 12);
  });
});
