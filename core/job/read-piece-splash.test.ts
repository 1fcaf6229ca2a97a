import { describe, expect, it } from 'vitest';
import type { Outline } from '#core/piece/piece.ts';
import { toSI } from '#core/quantity/units.ts';
import { computeJob } from './compute-job.ts';
import { Notes } from './notes.ts';
import { readSplashes } from './read-piece-splash.ts';
import { job, withPiece } from './sample.check.ts';

const inch = (n: number): number => toSI(n, 'in');
const top: Outline = { shape: 'rectangle', length_m: inch(42), width_m: inch(22) };

describe('splashes', () => {
  it('are as long as their side, the side splash ending at the backsplash', () => {
    const parts = readSplashes(
      [
        { side: 'back', height: '4 in', thickness: '3/4 in' },
        { side: 'left', height: '', thickness: '' },
      ],
      top,
      new Notes(),
    );
    expect(parts.map((part) => part.length_m)).toEqual([inch(42), inch(22) - inch(0.75)]);
    // 42 in x (4 in + 3/4 in); 21 1/4 in x 4 3/4 in and the front end of 3 sq in.
    expect(parts[0]!.filmArea_m2).toBeCloseTo(199.5 * 0.0254 ** 2, 12);
    expect(parts[1]!.filmArea_m2).toBeCloseTo(103.9375 * 0.0254 ** 2, 12);
  });

  it('follow the legs of an L', () => {
    const ell: Outline = {
      shape: 'ell',
      side: 'right',
      length_m: 2.1,
      width_m: 0.6,
      returnLength_m: 1.7,
      returnWidth_m: 0.6,
    };
    const splash = (side: 'left' | 'right') => ({ side, height: '', thickness: '' });
    const parts = readSplashes([splash('right'), splash('left')], ell, new Notes());
    expect(parts.map((part) => part.length_m)).toEqual([1.7, 0.6]);
  });

  it('stand once on a side, and not on a rim', () => {
    const notes = new Notes();
    const back = { side: 'back', height: '', thickness: '' } as const;
    expect(readSplashes([back, back], top, notes)).toHaveLength(1);
    expect(readSplashes([back], { shape: 'round', diameter_m: 1 }, notes)).toEqual([]);
    expect(notes.problems.map((p) => `${p.path} ${p.code}`)).toEqual([
      'piece.splashes.1.side splash.twice',
      'piece.splashes.0.side splash.rim',
    ]);
  });

  it('are counted with the top in what a coat takes', () => {
    const ofTop = (document: typeof job): number => {
      const lines = computeJob(document).coats[0]!.plan!.quantity.lines;
      return lines.find((line) => line.key === 'top')!.volume_m3;
    };
    const document = withPiece({ splashes: [{ side: 'back', height: '4 in', thickness: '3/4 in' }] });
    const { topArea_m2, bounds } = computeJob(job).measures!;
    const splash_m2 = (bounds.maxX_m - bounds.minX_m) * inch(4.75);
    expect(ofTop(document) / ofTop(job)).toBeCloseTo((topArea_m2 + splash_m2) / topArea_m2, 9);
  });
});
