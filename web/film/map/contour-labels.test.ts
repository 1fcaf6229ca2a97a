import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { covered, textWidth } from '#web/charts/label-places.ts';
import { CLEAR_px, contourLabels, grown } from './contour-labels.ts';

// One pixel a millimetre: 358 by 190 px, as on a phone.
const frame = {
  left: 0,
  top: 0,
  pxPerMetre: 1000,
  bounds: { minX_m: 0, minY_m: 0, maxX_m: 0.358, maxY_m: 0.19 },
};
const room = { left: 4, top: 4, right: 354, bottom: 186 };
const SIZE = 13;
const across = (y_m: number) => Array.from({ length: 60 }, (_, i) => ({ x_m: 0.006 * i, y_m }));
const boxOf = (label: { text: string; x: number; y: number }) => {
  const half = textWidth(label.text, SIZE) / 2;
  return { left: label.x - half, right: label.x + half, top: label.y - SIZE / 2, bottom: label.y + SIZE / 2 };
};

describe('figures of contour lines', () => {
  it('stand in the middle of their lines where nothing is in the way', () => {
    const labels = contourLabels(
      [[across(0.05)], [across(0.1)]],
      ['35 mil', '40 mil'],
      frame,
      SIZE,
      room,
      [],
    );
    expect(labels.map(({ text }) => text)).toEqual(['35 mil', '40 mil']);
    expect(labels[0]!.x).toBeCloseTo(180, 6);
    expect(labels[0]!.y).toBeCloseTo(140, 6);
  });
  it('keep clear of every handle, of each other and of the border, wherever twelve handles stand', () => {
    const handle = fc.record({
      x: fc.double({ min: 14, max: 344, noNaN: true }),
      y: fc.double({ min: 14, max: 176, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(handle, { minLength: 1, maxLength: 12 }), (handles) => {
        const taken = handles.map(({ x, y }) => ({
          left: x - 14,
          right: x + 14,
          top: y - 14,
          bottom: y + 14,
        }));
        const lines = [0.03, 0.05, 0.07, 0.09, 0.11, 0.13, 0.15].map((y) => [across(y)]);
        const labels = contourLabels(
          lines,
          lines.map((_, i) => `${30 + 5 * i} mil`),
          frame,
          SIZE,
          room,
          taken,
        );
        for (const [i, label] of labels.entries()) {
          const box = boxOf(label);
          expect(covered(grown(box, CLEAR_px - 1), taken)).toBe(0);
          expect(covered(box, labels.slice(0, i).map(boxOf))).toBe(0);
          expect(box.left >= 0 && box.right <= 358 && box.top >= 0 && box.bottom <= 190).toBe(true);
        }
      }),
      { numRuns: 100 },
    );
  });
  it('go along their line to a free place', () => {
    const inTheMiddle = { left: 150, right: 210, top: 0, bottom: 190 };
    const [label] = contourLabels([[across(0.1)]], ['35 mil'], frame, SIZE, room, [inTheMiddle]);
    expect(label!.x < 150 - CLEAR_px || label!.x > 210 + CLEAR_px).toBe(true);
  });
  it('are left out on short lines and where there is no room', () => {
    const short = across(0.1).slice(0, 8);
    expect(contourLabels([[short]], ['35 mil'], frame, SIZE, room, [])).toEqual([]);
    const all = { left: 0, right: 358, top: 0, bottom: 190 };
    expect(contourLabels([[across(0.1)]], ['35 mil'], frame, SIZE, room, [all])).toEqual([]);
  });
});
