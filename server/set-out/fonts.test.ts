import { describe, expect, it } from 'vitest';
import { fontBytes, scriptRuns } from './fonts.ts';
import { sayLength } from './say.ts';
import { unpackWoff } from './unpack-woff.ts';

describe('the typeface of printed sheets', () => {
  it('cuts a text into runs of one file each and loses nothing it has', () => {
    expect(scriptRuns('Łódź 1⁄2 × Ø')).toEqual([
      { script: 'latin-ext', text: 'Ł' },
      { script: 'latin', text: 'ód' },
      { script: 'latin-ext', text: 'ź' },
      { script: 'latin', text: ' 1⁄2 × Ø' },
    ]);
    expect(scriptRuns('стол').map((r) => r.script)).toEqual(['cyrillic']);
    expect(scriptRuns('木\n\ud800')).toEqual([{ script: 'latin', text: '? ?' }]);
  });

  it('is unpacked into a font whose tables have the check sums its directory says', () => {
    const font = fontBytes('latin', 400);
    const count = font.readUInt16BE(4);
    let checked = 0;
    for (let i = 0; i < count; i += 1) {
      const at = 12 + 16 * i;
      const tag = font.toString('latin1', at, at + 4);
      const [offset, size] = [font.readUInt32BE(at + 8), font.readUInt32BE(at + 12)];
      let sum = 0;
      for (let p = offset; p < offset + size; p += 4) sum = (sum + font.readUInt32BE(p)) >>> 0;
      // OpenType, "Calculating checksums": head is summed with its adjustment field as 0.
      if (tag === 'head') sum = (sum - font.readUInt32BE(offset + 8)) >>> 0;
      expect([tag, sum]).toEqual([tag, font.readUInt32BE(at + 4)]);
      checked += 1;
    }
    expect(checked).toBeGreaterThan(8);
    expect(() => unpackWoff(Buffer.from('no font at all'))).toThrow(RangeError);
  });
});

describe('a size on the sheet', () => {
  it('is said in 16ths where that is what it is, else in 32nds, or in tenths of a millimetre', () => {
    expect(sayLength(0.6477, 'us')).toBe('25 1⁄2 in');
    expect(sayLength(0.0254 * (3 + 5 / 32), 'us')).toBe('3 5⁄32 in');
    expect(sayLength(0.6477, 'metric')).toBe('647.7 mm');
    expect(sayLength(0.65, 'metric')).toBe('650 mm');
  });
});
