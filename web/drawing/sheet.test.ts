import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensionedDrawing } from '#core/piece/drawing.ts';
import { type Box, covered, textWidth } from '#web/charts/label-places.ts';
import { arrowHead, sideOf } from './chains.ts';
import { SAMPLE_PIECES } from './sample-pieces.ts';
import { layoutSheet, type Sheet } from './sheet.ts';

function sheetOf(name: string, width: number, small = false): Sheet {
  const drawing = dimensionedDrawing(SAMPLE_PIECES[name]!);
  if (!drawing.ok) throw new Error(`${name} cannot be drawn`);
  return layoutSheet(drawing.value, width, { system: 'us', small, highest: 760 });
}

/** Boxes of the figures of upright and level dimension lines. */
function figures(sheet: Sheet): Box[] {
  return sheet.dimensions
    .filter((d) => sideOf(d.dimension) !== null)
    .map(({ at, text, turn }) => {
      const long = textWidth(text, sheet.size) / 2;
      const tall = sheet.size / 2;
      const [x, y] = turn === 0 ? [long, tall] : [tall, long];
      return { left: at.x - x, right: at.x + x, top: at.y - y, bottom: at.y + y };
    });
}

const names = Object.keys(SAMPLE_PIECES);
const anyName = fc.constantFrom(...names);
const anyWidth = fc.integer({ min: 300, max: 1900 });

describe('sheet of a drawing', () => {
  it('fits words, lines and piece inside its width at 300 to 1900 px', () => {
    fc.assert(
      fc.property(anyName, anyWidth, (name, width) => {
        const sheet = sheetOf(name, width);
        for (const d of sheet.dimensions)
          for (const p of [d.from, d.to, d.at]) {
            expect(p.x).toBeGreaterThanOrEqual(-0.5);
            expect(p.x).toBeLessThanOrEqual(width + 0.5);
            expect(p.y).toBeGreaterThanOrEqual(-0.5);
            expect(p.y).toBeLessThanOrEqual(sheet.height + 0.5);
          }
        for (const box of figures(sheet)) {
          expect(box.left).toBeGreaterThanOrEqual(-1);
          expect(box.right).toBeLessThanOrEqual(width + 1);
        }
      }),
    );
  });

  it('keeps figures of dimension lines off each other at any width', () => {
    fc.assert(
      fc.property(anyName, anyWidth, (name, width) => {
        const boxes = figures(sheetOf(name, width));
        boxes.forEach((box, i) => {
          expect(covered(box, boxes.slice(i + 1))).toBe(0);
        });
      }),
    );
  });

  it('never sets words smaller than 12 px, and does not scale them with the piece', () => {
    fc.assert(
      fc.property(anyName, anyWidth, (name, width) => {
        expect(sheetOf(name, width).size).toBeGreaterThanOrEqual(12);
        expect(sheetOf(name, width).size).toBe(sheetOf('bar', width).size);
      }),
    );
  });

  it('draws overall sizes outermost', () => {
    const sheet = sheetOf('vanity', 1000);
    const below = sheet.dimensions.filter((d) => sideOf(d.dimension) === 'front');
    const lowest = below.reduce((a, b) => (b.from.y > a.from.y ? b : a));
    expect(lowest.text).toBe('42 in');
  });

  it('shows every size core asks for, and only overall sizes at a glance', () => {
    const drawing = dimensionedDrawing(SAMPLE_PIECES.vanity!);
    expect(drawing.ok && sheetOf('vanity', 800).dimensions.length).toBe(
      drawing.ok && drawing.value.dimensions.length,
    );
    expect(
      sheetOf('vanity', 300, true)
        .dimensions.map((d) => d.text)
        .sort(),
    ).toEqual(['21 1/2 in', '42 in']);
  });

  it('says radii in a note on a wide sheet and in words under a narrow one', () => {
    expect(sheetOf('vanity', 900).leaders.map((l) => l.text)).toEqual(['R 3/8 in (4 corners)']);
    expect(sheetOf('vanity', 900).notes).toEqual([]);
    expect(sheetOf('vanity', 360).leaders).toEqual([]);
    expect(sheetOf('vanity', 360).notes).toEqual(['Corner radius 3/8 in (4 corners)']);
  });

  it('puts an arrow at the end of its line', () => {
    expect(arrowHead({ x: 10, y: 0 }, { x: 0, y: 0 }, 10)).toBe('M10 0L0 2.8L0 -2.8Z');
    expect(arrowHead({ x: 1, y: 1 }, { x: 1, y: 1 }, 10)).toBe('');
  });
});
