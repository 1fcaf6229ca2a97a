/**
 * A brief from a photograph: how large the patches are and which way they run, by the mean length of what a straight line meets
 * of one colour. A disc of diameter D is met over pi D / 4 on average (Cauchy's formula; from memory), so D = 4 / pi times
 * that. Patches narrower than three pixels are taken for grain and joined to what is beside them.
 */
import { positive } from '#core/quantity/domain.ts';
import { LookBriefDocument } from './look-document.ts';
import type { PhotoColours } from './photo-shares.ts';

const GRAIN = 3;
/** Runs this much longer one way than the other make a direction (shop default, no source). */
const DIRECTED = 1.35;

export interface PatchSizes {
  /** Mean run along a row and along a column, m. */
  readonly along_m: number;
  readonly across_m: number;
  /** Size across of a round patch with these runs, m. */
  readonly block_m: number;
}

/** Patches of a labelled picture of this scale, m for each pixel, above 0. RangeError when no pixel lies on the top. */
export function patchSizes(
  { labels }: Pick<PhotoColours, 'labels'>,
  columns: number,
  rows: number,
  pixel_m: number,
): PatchSizes {
  positive('pixel_m', pixel_m, 'm');
  const along_m = meanRun(rows, columns, (line, at) => labels[line * columns + at]!) * pixel_m;
  const across_m = meanRun(columns, rows, (line, at) => labels[at * columns + line]!) * pixel_m;
  return { along_m, across_m, block_m: (4 / Math.PI) * Math.sqrt(along_m * across_m) };
}

function meanRun(lines: number, length: number, label: (line: number, at: number) => number): number {
  let [pixels, runs] = [0, 0];
  for (let line = 0; line < lines; line++) {
    let current = 255;
    for (let at = 0; at < length; at++) {
      const here = label(line, at);
      if (here === 255) {
        current = 255;
        continue;
      }
      pixels++;
      if (here === current) continue;
      let long = 1;
      while (long < GRAIN && at + long < length && label(line, at + long) === here) long++;
      if (current !== 255 && long < GRAIN) continue;
      current = here;
      runs++;
    }
  }
  if (runs === 0) throw new RangeError('no pixel of the picture lies on the top');
  return pixels / runs;
}

/**
 * The brief of a look like the picture; sizes as text in centimetres to the millimetre. Meld and restlessness cannot be
 * read from it and stay as given.
 */
export function briefFromPatches(
  sizes: PatchSizes,
  given: Pick<LookBriefDocument, 'meld' | 'restless'>,
): LookBriefDocument {
  const ratio = sizes.along_m / sizes.across_m;
  const block_m = Math.min(1, Math.max(0.02, sizes.block_m));
  return LookBriefDocument.parse({
    ...given,
    blockSize: `${Math.round(block_m * 1000) / 10} cm`,
    direction: ratio > DIRECTED ? 'along' : ratio < 1 / DIRECTED ? 'across' : 'none',
  });
}
