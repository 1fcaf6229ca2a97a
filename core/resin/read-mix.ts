import type { z } from 'zod';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { readDensity_kg_m3, readFactor, readRatio } from '#core/quantity/read.ts';
import type { MixDocument } from './card-document.ts';
import { DocumentReader } from './document-reader.ts';
import type { MixRatio } from './model.ts';

/** Densities of parts A and B when the label says none, kg/m3 (A 1100 to 1160, B 950 to 1050; from memory). */
export const UNSAID_DENSITY_kg_m3 = { a: 1130, b: 1000 } as const;

/**
 * How far the ratio by weight and the ratio by volume with the densities may be apart, as a share of the ratio: from 3 % a
 * doubt (rounding of "100:45" explains up to about that), from 8 % a refusal, because one of the two would leave the resin soft.
 */
export const RATIO_TOLERANCE = { doubt: 0.03, refuse: 0.08 } as const;

/** Where a density is not said the other figures set it, if it comes out within this, kg/m3. */
const DENSITY_kg_m3 = { low: 800, high: 1600 } as const;

export interface MixRead {
  readonly ratio: MixRatio;
  readonly epoxyEquivalent_g_eq?: number | undefined;
}

/**
 * The mix ratio of a label: by volume, by weight, or both, which are then checked against each other through the densities. A
 * density that is not said follows from the two ratios; with one ratio alone it is `UNSAID_DENSITY_kg_m3`.
 */
export function readMix(document: z.infer<typeof MixDocument>): Result<MixRead> {
  const reader = new DocumentReader();
  const ratio = (text: string, path: string, what: string, basis: 'volume' | 'weight') => {
    const read = reader.maybe(text, (typed) =>
      readRatio(/[a-z]/i.test(typed.replace(/\bto\b/gi, '')) ? typed : `${typed} by ${basis}`, {
        path,
        what,
        min: 0.1,
        max: 100,
      }),
    );
    if (read !== undefined && read.basis !== basis) {
      reader.refuse(path, 'label.ratio-basis', `${what} is given by ${read.basis}.`, text, `by ${basis}`);
    }
    return read;
  };
  const volume = ratio(document.byVolume, 'mix.byVolume', 'Mix ratio by volume', 'volume');
  const weight = ratio(document.byWeight, 'mix.byWeight', 'Mix ratio by weight', 'weight');
  const density = (text: string, path: string, what: string) =>
    reader.maybe(text, (typed) =>
      readDensity_kg_m3(typed, { path, what, min: DENSITY_kg_m3.low, max: DENSITY_kg_m3.high }),
    );
  const saidA = density(document.densityA, 'mix.densityA', 'density of part A');
  const saidB = density(document.densityB, 'mix.densityB', 'density of part B');
  const epoxyEquivalent_g_eq = reader.maybe(document.epoxyEquivalent, (typed) =>
    readFactor(typed.replace(/\s*g\s*\/\s*(?:eq|mol)\.?\s*$/i, ''), {
      path: 'mix.epoxyEquivalent',
      what: 'epoxy equivalent weight',
      min: 120,
      max: 600,
    }),
  );
  if (volume === undefined && weight === undefined && reader.problems.length === 0) {
    reader.refuse(
      'mix.byVolume',
      'label.no-ratio',
      'The mix ratio is needed, by volume or by weight.',
      '',
      'as 2:1',
    );
  }
  if (reader.problems.length > 0) return bad(...reader.problems);

  let densityA = saidA ?? UNSAID_DENSITY_kg_m3.a;
  let densityB = saidB ?? UNSAID_DENSITY_kg_m3.b;
  let parts = volume;
  if (volume !== undefined && weight !== undefined) {
    // What density B / density A must be for both ratios to hold.
    const needed = (volume.a * weight.b) / (volume.b * weight.a);
    if (saidA === undefined && saidB !== undefined) densityA = saidB / needed;
    else if (saidB === undefined) densityB = densityA * needed;
    checkRatios(reader, document, needed, densityB / densityA, densityA, densityB);
  } else if (weight !== undefined) {
    parts = { a: weight.a / densityA, b: weight.b / densityB, basis: 'volume' };
    const scale = 1 / Math.min(parts.a, parts.b);
    parts = { a: parts.a * scale, b: parts.b * scale, basis: 'volume' };
  }
  if (parts === undefined || reader.problems.length > 0) return bad(...reader.problems);
  return good(
    {
      ratio: { volumeA: parts.a, volumeB: parts.b, densityA_kg_m3: densityA, densityB_kg_m3: densityB },
      ...(epoxyEquivalent_g_eq === undefined ? {} : { epoxyEquivalent_g_eq }),
    },
    reader.warnings,
  );
}

function checkRatios(
  reader: DocumentReader,
  document: z.infer<typeof MixDocument>,
  needed: number,
  had: number,
  densityA: number,
  densityB: number,
): void {
  const apart = Math.abs(Math.log(needed / had));
  const percent = Math.round(100 * Math.expm1(apart));
  const read = `${document.byVolume} by volume, ${document.byWeight} by weight`;
  const fitting = [densityA, densityB].every((d) => d >= DENSITY_kg_m3.low && d <= DENSITY_kg_m3.high);
  if (!fitting) {
    reader.refuse(
      'mix.byWeight',
      'label.ratios-disagree',
      `With these two ratios part B would weigh ${needed.toFixed(2)} times as much as part A by volume.`,
      read,
      'densities of 0.8 to 1.6 g/mL; check that A and B are not swapped',
    );
  } else if (apart >= Math.log1p(RATIO_TOLERANCE.refuse)) {
    reader.refuse(
      'mix.byWeight',
      'label.ratios-disagree',
      `The ratios by volume and by weight are ${percent} % apart with these densities.`,
      read,
      'at most 8 % apart',
    );
  } else if (apart >= Math.log1p(RATIO_TOLERANCE.doubt)) {
    reader.doubt(
      'mix.byWeight',
      'label.ratios-differ',
      `The ratios by volume and by weight are ${percent} % apart with these densities; the one by volume is used.`,
      read,
      'at most 3 % apart',
    );
  }
}
