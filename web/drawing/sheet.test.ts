import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensionedDrawing } from '#core/piece/drawing.ts';
import { type Box, covered, textWidth } from '#web/charts/label-places.ts';
import { arrowHead, sideOf } from './chains.ts';
import { crossesBox, extensionEnds } from './extension.ts';
import { fromPixel, toPixel } from './frame.ts';
import { SAMPLE_PIECES } from './sample-pieces.ts';
import { extensionPieces, layoutSheet, type Sheet } from './sheet.ts';

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

  it('draws no extension line through a figure, at any width', () => {
    fc.assert(
      fc.property(anyName, anyWidth, (name, width) => {
        const sheet = sheetOf(name, width);
        const lines = extensionPieces(sheet).flat();
        for (const { left, right, top, bottom } of figures(sheet)) {
          const box = { left: left + 0.1, right: right - 0.1, top: top + 0.1, bottom: bottom - 0.1 };
          expect(lines.filter((line) => crossesBox(line, box))).toEqual([]);
        }
      }),
    );
  });

  it('moves a figure along its line before it breaks an extension line', () => {
    const sheet = sheetOf('vanity', 1400);
    const drawn = extensionPieces(sheet).flat().length;
    expect(drawn).toBe(sheet.dimensions.flatMap(extensionEnds).length);
  });

  it('keeps every place under its pixel while something is dragged', () => {
    const before = sheetOf('vanity', 800);
    const wider = dimensionedDrawing({
      ...SAMPLE_PIECES.vanity!,
      outline: { shape: 'rectangle', length_m: 1.3, width_m: 0.7 },
    });
    if (!wider.ok) throw new Error('cannot be drawn');
    const held = layoutSheet(wider.value, 800, { system: 'us', small: false, highest: 760, held: before });
    expect([held.width, held.height]).toEqual([before.width, before.height]);
    const at = { x_m: 0.4, y_m: 0.2 };
    const pixel = toPixel(before.frame, at);
    expect(toPixel(held.frame, at).x).toBeCloseTo(pixel.x, 9);
    expect(toPixel(held.frame, at).y).toBeCloseTo(pixel.y, 9);
    expect(fromPixel(held.frame, pixel).x_m).toBeCloseTo(at.x_m, 12);
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
