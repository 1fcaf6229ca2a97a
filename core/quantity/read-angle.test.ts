import { describe, expect, it } from 'vitest';
import { readAngle_rad } from './read-angle.ts';

const code = (text: string) => {
  const read = readAngle_rad(text);
  return read.ok ? null : read.problems[0]?.code;
};

describe('an angle', () => {
  it('is read in degrees, with or without the word', () => {
    for (const [text, degrees] of [
      ['90', 90],
      ['22.5°', 22.5],
      ['-15 deg', -15],
      ['7 1/2 degrees', 7.5],
      ['22,5', 22.5],
      ['360', 360],
    ] as const)
      expect(readAngle_rad(text)).toMatchObject({
        ok: true,
        value: expect.closeTo((degrees * Math.PI) / 180, 12),
      });
  });

  it('is refused with the reason where it is none', () => {
    expect(code('')).toBe('angle.empty');
    expect(code('soon')).toBe('angle.unreadable');
    expect(code('361')).toBe('angle.range');
    expect(code('30 in')).toBe('angle.unknown-unit');
    expect(code('10 20')).not.toBeNull();
  });
});
