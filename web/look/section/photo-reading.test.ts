import { describe, expect, it } from 'vitest';
import { labOfLinear } from '#core/look/lab.ts';
import { linearOfHex } from '#core/look/srgb.ts';
import { lightAt, readPhoto } from './photo-reading.ts';

/** A dark top with its right quarter green, and a white card at its left edge; all of it in half the light. */
function photo(white = 235) {
  const [columns, rows] = [100, 40];
  const rgba = new Uint8ClampedArray(4 * columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const rgb = column < 20 ? [white, white, white] : column >= 80 ? [79, 127, 118] : [31, 47, 70];
      rgba.set([...rgb, 255], 4 * (row * columns + column));
    }
  return { columns, rows, rgba };
}
const plan = [
  { key: '1', lab: labOfLinear(linearOfHex('#1f2f46')), share: 0.6 },
  { key: '2', lab: labOfLinear(linearOfHex('#4f7f76')), share: 0.4 },
];
const top = { left: 0.2, top: 0, right: 1, bottom: 1 };

describe('a photograph of a finished top', () => {
  it('gives the shares of its colours beside those of the plan', () => {
    const read = readPhoto(photo(), top, null, plan, 0.8);
    expect(read.differences.map(({ found }) => found)).toEqual([0.75, 0.25]);
    expect(read.differences.map(({ planned }) => planned)).toEqual([0.6, 0.4]);
    for (const { difference } of read.differences) expect(difference).toBeLessThan(0.01);
    expect(read.error).toBeNull();
  });

  it('is led through a white card, with an error that is told', () => {
    const read = readPhoto(photo(), top, { x: 0.1, y: 0.5, known: 0.82 }, plan, 0.8);
    expect(read.referenceUsed).toBe(true);
    expect(read.error).toBeGreaterThan(0);
  });

  it('is left as it is where the card is too dark to go by', () => {
    const read = readPhoto(photo(10), top, { x: 0.1, y: 0.5, known: 0.82 }, plan, 0.8);
    expect(read.referenceUsed).toBe(false);
    expect(read.differences.map(({ found }) => found)).toEqual([0.75, 0.25]);
  });

  it('has the light of a spot averaged round it, also in a corner', () => {
    for (const channel of lightAt(photo(255), 0, 0)) expect(channel).toBeCloseTo(1, 9);
  });
});
