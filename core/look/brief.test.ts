import { describe, expect, test } from 'vitest';
import { readBrief, usualBlock_m, wantedShares } from './brief.ts';
import { emptyLook, LookBriefDocument } from './look-document.ts';

describe('a brief', () => {
  test('without a size takes a fifth of the depth, never less than a cup can pour', () => {
    const read = readBrief(emptyLook().brief, 0.6, ['1']);
    expect(read.ok && read.value.blockSize_m).toBeCloseTo(0.12, 12);
    expect(usualBlock_m(0.05)).toBe(0.02);
  });
  test('without shares takes those of the coat; with its own it goes by them', () => {
    const coat = [
      { key: '1', share: '60 %' },
      { key: '2', share: '40 %' },
    ];
    const plain = wantedShares(emptyLook().brief, coat);
    expect(plain.ok && [...plain.value]).toEqual([
      ['1', 0.6],
      ['2', 0.4],
    ]);
    const own = LookBriefDocument.parse({ shares: [{ colour: '2', share: '75 %' }, { colour: '1' }] });
    const read = wantedShares(own, coat);
    expect(read.ok && [...read.value]).toEqual([
      ['2', 0.75],
      ['1', 0],
    ]);
  });
  test('names a share that cannot be read by its field', () => {
    const own = LookBriefDocument.parse({ shares: [{ colour: '1', share: 'most' }] });
    const read = wantedShares(own, []);
    expect(!read.ok && read.problems[0]).toMatchObject({ path: 'brief.shares.0.share', read: 'most' });
  });
  test('of one colour needs no share', () => {
    const read = wantedShares(emptyLook().brief, [{ key: '1', share: '' }]);
    expect(read.ok && read.value.get('1')).toBe(1);
  });
});
