/** Backsplash and side splashes: boards of their own, as long as the side of the top they stand on. */
import { checkOutline } from '#core/piece/check-outline.ts';
import type { Outline } from '#core/piece/piece.ts';
import { alongSide_m } from '#core/piece/side-length.ts';
import type { StandingSplash } from '#core/piece/splash-strips.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { SplashDocument } from './document.ts';
import type { Notes } from './notes.ts';

export interface SplashPart extends StandingSplash {
  /** Face, top edge and, on a side splash, the end toward the front: what is coated, m2. */
  readonly filmArea_m2: number;
}

/** The usual backsplash, 4 in by 3/4 in (common practice, no source). */
export const USUAL_SPLASH = { height_m: 0.1016, thickness_m: 0.01905 };

/**
 * The splashes as parts to be made. Nothing typed: the usual height and thickness. What cannot be read, or stands twice on
 * one side, or on an outline without sides, is noted; such a splash is left out.
 */
export function readSplashes(
  splashes: readonly SplashDocument[],
  outline: Outline | null,
  notes: Notes,
  at = 'piece.splashes',
): SplashPart[] {
  const read = splashes.map((splash, index) => {
    const path = `${at}.${index}`;
    const size = (key: 'height' | 'thickness', usual_m: number, max: number) =>
      notes.or(`${path}.${key}`, splash[key], usual_m, (text, ask) =>
        readLength_m(text, { ...ask, what: `${key} of the splash`, min: 0.003, max }),
      );
    const height_m = size('height', USUAL_SPLASH.height_m, 2);
    const thickness_m = size('thickness', USUAL_SPLASH.thickness_m, 0.15);
    const twice = splashes.findIndex((other) => other.side === splash.side) < index;
    if (twice)
      notes.problem(
        `${path}.side`,
        'splash.twice',
        'This side has a splash already.',
        splash.side,
        'one splash a side',
      );
    const rimmed = outline?.shape === 'round' || outline?.shape === 'ellipse';
    if (rimmed)
      notes.problem(
        `${path}.side`,
        'splash.rim',
        'A round or oval top has no straight side for a splash.',
        splash.side,
        'an outline with straight sides, or no splash',
      );
    return height_m === null || thickness_m === null || twice || rimmed
      ? null
      : { side: splash.side, height_m, thickness_m };
  });
  if (outline === null || checkOutline(outline).length > 0) return [];
  const known = read.filter((splash) => splash !== null);
  const back_m = known.find((splash) => splash.side === 'back')?.thickness_m ?? 0;
  return known.map((splash): SplashPart => {
    const { side, height_m, thickness_m } = splash;
    const length_m = side === 'back' ? alongSide_m(outline, side) : alongSide_m(outline, side) - back_m;
    const end_m2 = side === 'back' ? 0 : height_m * thickness_m;
    return { ...splash, length_m, filmArea_m2: length_m * (height_m + thickness_m) + end_m2 };
  });
}
