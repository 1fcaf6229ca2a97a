import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlinePath } from '#core/piece/outline.ts';
import { pathArea_m2 } from '#core/piece/path.ts';
import { checkShape } from './check-job.ts';
import { computeJob } from './compute-job.ts';
import type { OutlineDocument } from './document.ts';
import { Notes } from './notes.ts';
import { type BowedCorner, bowedOutline } from './read-piece-bow.ts';
import { withPiece } from './sample.check.ts';

const square = (bow_m: number, radius_m = 0): BowedCorner[] => [
  { x_m: 0, y_m: 0, radius_m, bow_m },
  { x_m: 1, y_m: 0, radius_m, bow_m: 0 },
  { x_m: 1, y_m: 1, radius_m: 0, bow_m: 0 },
  { x_m: 0, y_m: 1, radius_m: 0, bow_m: 0 },
];

const area = (corners: readonly BowedCorner[]): number => {
  const outline = bowedOutline(corners, new Notes());
  if (outline === null) throw new Error('no outline');
  return pathArea_m2(outlinePath(outline));
};

/** Area between an arc and its chord, from chord and rise: r = (c²/4 + s²)/(2 s). */
function cap(chord: number, rise: number): number {
  const r = (chord * chord) / 4 / (2 * rise) + rise / 2;
  const half = rise <= r ? Math.asin(chord / 2 / r) : Math.PI - Math.asin(chord / 2 / r);
  return (r * r * (2 * half - Math.sin(2 * half))) / 2;
}

describe('bowed sides', () => {
  it('leave a polygon with straight sides a polygon', () => {
    expect(bowedOutline(square(0), new Notes())?.shape).toBe('polygon');
  });

  it('add the cap of the arc outwards and take it away inwards, whichever way round the corners run', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.002, max: 0.45, noNaN: true }), fc.boolean(), (rise, turned) => {
        // Turned round, the side from (1,0) back to (0,0) leaves the last corner of the list.
        const corners = (bow_m: number): BowedCorner[] => {
          if (!turned) return square(bow_m);
          const back = square(0).reverse();
          return back.map((corner, i) => (i === 2 ? { ...corner, bow_m } : corner));
        };
        expect(area(corners(rise))).toBeCloseTo(1 + cap(1, rise), 9);
        expect(area(corners(-rise))).toBeCloseTo(1 - cap(1, rise), 9);
      }),
    );
  });

  it('keep the roundings of corners between straight sides', () => {
    const corners = square(0.1).map((corner, i) => (i === 2 ? { ...corner, radius_m: 0.1 } : corner));
    expect(area(corners)).toBeCloseTo(1 + cap(1, 0.1) - 0.01 * (1 - Math.PI / 4), 9);
  });

  it('are refused beyond a half circle and next to a rounded corner', () => {
    const far = new Notes();
    expect(bowedOutline(square(0.51), far)).toBeNull();
    expect(far.problems.map((p) => `${p.path} ${p.code}`)).toEqual([
      'piece.outline.corners.0.bow outline.bow',
    ]);
    const round = new Notes();
    expect(bowedOutline(square(0.1, 0.02), round)).toBeNull();
    expect(round.problems.map((p) => p.path)).toEqual([
      'piece.outline.corners.0.radius',
      'piece.outline.corners.1.radius',
    ]);
  });

  it('may be left out of a document, as before there were any', () => {
    const outline = {
      shape: 'polygon',
      corners: [
        { x: '0 in', y: '0 in', radius: '' },
        { x: '40 in', y: '0 in', radius: '' },
        { x: '40 in', y: '20 in', radius: '' },
      ],
    };
    const old = { ...withPiece({}), piece: { outline } };
    const shape = checkShape(old);
    expect(shape.ok && shape.value.piece.outline).toMatchObject({
      corners: [{ bow: '' }, { bow: '' }, { bow: '' }],
    });
    expect(shape.ok && shape.value.piece.splashes).toEqual([]);
    const unread = withPiece({ outline: outline as unknown as OutlineDocument, edges: [], cutOuts: [] });
    expect(computeJob(unread).measures?.topArea_m2).toBeCloseTo(400 * 0.0254 ** 2, 9);
  });
});
