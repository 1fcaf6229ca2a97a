/**
 * What a glossy film mirrors of a long lamp over the bench, seen from straight above: a soft streak across the drawing. Only
 * to show that it is glossy; colours are agreed without it.
 */
import { MIRRORED_NORMAL } from '../surface.ts';

/** Brightness of the lamp over that of a white wall in its light (common practice, no source). */
const LAMP = 2;
/** The streak crosses the drawing from its front left, leaning by a third. */
export const LEAN = 1 / 3;
export const MIDDLE = 0.36;
export const HALF_WIDTH = 0.07;

/** Light the streak adds at its middle for a gloss of 0 (matt) to 1 (mirror). */
export function streakLight(gloss: number): number {
  return gloss * MIRRORED_NORMAL * LAMP;
}

/** Share of it at a place of the drawing, both coordinates over the width of the drawing. */
export function streakShare(across: number, up: number): number {
  const off = Math.abs(across - LEAN * up - MIDDLE) / HALF_WIDTH;
  if (off >= 1) return 0;
  const q = 1 - off * off;
  return q * q;
}
