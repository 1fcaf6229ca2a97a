/**
 * Light read from a photograph against a grey card or a white whose reflectance is known. One reference sets the level of each
 * channel; two also set how the camera bends the scale between them. The error that is told has two parts, added as squares:
 * noise of a reading (0.015 of full light, from memory), and with one reference the camera's own curve, taken as a power
 * of 1.1 away from the reference (from memory; a camera's curve is not that of the sRGB standard).
 */
import { colourDifference } from './colour-difference.ts';
import { PHOTO_NOISE } from './colourant.ts';
import { labOfLinear } from './lab.ts';
import type { LinearRgb } from './srgb.ts';

export interface Reference {
  /** As read from the picture. */
  readonly read: LinearRgb;
  /** What it is known to give back, 0.01 to 1: 0.18 for a usual grey card, 0.82 for a white card. */
  readonly known: number;
}

export interface Corrected {
  readonly light: LinearRgb;
  /** Delta E 2000 within which the true colour lies in about two of three pictures. */
  readonly error: number;
}

const CURVE = 1.1;
/** A reference darker than this in any channel gives no level. */
const LEAST = 0.05;

/** Corrects by one white: null where it is too dark to go by. */
export function byWhite(read: LinearRgb, known: number): ((light: LinearRgb) => LinearRgb) | null {
  if (read.some((channel) => !(channel >= LEAST))) return null;
  return (light) => [
    (light[0] * known) / read[0],
    (light[1] * known) / read[1],
    (light[2] * known) / read[2],
  ];
}

/**
 * Colour of a sample by one or two references in the same light. Null where they cannot be gone by: a channel under 5 % (grey: 2 %) of
 * full light or cut off at 99 %, or two references that are not told apart or stand the wrong way round.
 * @throws RangeError where a reference's known reflectance is outside 0.01 to 1, or there are not one or two.
 */
export function correctPhoto(sample: LinearRgb, references: readonly Reference[]): Corrected | null {
  if (references.length < 1 || references.length > 2)
    throw new RangeError(`${references.length} references: allowed one or two`);
  for (const { known } of references)
    if (!(known >= 0.01 && known <= 1)) throw new RangeError(`known = ${known}: allowed 0.01 to 1`);
  const [bright, dark] = [...references].sort((a, b) => b.known - a.known);
  for (const { read } of references)
    if (read.some((channel) => !(channel >= 0.02 && channel <= 0.99))) return null;
  if (dark !== undefined && bright!.read.some((channel, at) => !(channel > dark.read[at]! * 1.2)))
    return null;
  const power = (at: 0 | 1 | 2) =>
    dark === undefined
      ? 1
      : Math.log(bright!.known / dark.known) / Math.log(bright!.read[at] / dark.read[at]);
  const lift = (light: LinearRgb, curve: number): LinearRgb => {
    const channel = (at: 0 | 1 | 2) =>
      bright!.known * (Math.max(0, light[at]) / bright!.read[at]) ** (power(at) * curve);
    return [channel(0), channel(1), channel(2)];
  };
  const light = lift(sample, 1);
  const lab = labOfLinear(light);
  let squares = 0;
  for (const at of [0, 1, 2] as const) {
    const moved: [number, number, number] = [sample[0], sample[1], sample[2]];
    moved[at] += PHOTO_NOISE * Math.max(0.2, sample[at]);
    squares += colourDifference(lab, labOfLinear(lift(moved, 1))) ** 2;
  }
  if (dark === undefined) squares += colourDifference(lab, labOfLinear(lift(sample, CURVE))) ** 2;
  return { light, error: Math.sqrt(squares) };
}
