/**
 * How large a puddle of the look gets with this resin before it gels: what the picture takes for granted (level film, radius
 * sqrt(V / (pi h))) beside how far it flows by itself, on the dry board or in a coat that is already wet (film model). The difference is
 * hand work, or a puddle that stands proud.
 */
import type { Liquid } from '#core/film/constants.ts';
import { puddleRadius_m as flowRadius_m, puddleStopRadius_m } from '#core/film/puddle.ts';
import { wetPuddle } from '#core/film/wet-puddle.ts';
import { positive, within } from '#core/quantity/domain.ts';
import { puddleRadius_m as levelRadius_m } from './moves/puddle-carry.ts';

export interface SpreadRequest {
  readonly volume_m3: number;
  /** Film of the finished coat, m. */
  readonly film_m: number;
  /** Flow budget from the pour to gel, 1/Pa. */
  readonly theta_per_Pa: number;
  /** Film on the board when it is poured, m; 0: a dry board. */
  readonly under_m: number;
  readonly liquid?: Liquid;
}

export interface PuddleSpread {
  /** What the look shows: all of it level in the finished film. */
  readonly level_m: number;
  readonly area_m2: number;
  /** How far it gets by itself. */
  readonly reached_m: number;
  /** Reached over level; 1 or more: it levels by itself. */
  readonly share: number;
}

/** Below this it has to be helped with a tool, or it shows thick in the middle (shop default, no source). */
export const HELP_BELOW = 0.85;
/** Advancing angle of a wet resin on a dry undercoat, degrees (common practice, no source). */
const ANGLE_DEG = 20;

/**
 * Worked: 30 mL in a film of 1.3 mm level at 85.7 mm; on a dry board with a budget of 240 1/Pa it flows to 99 mm, but stops at
 * the wetting limit, 123 mm at the most.
 * @throws RangeError unless volume, film and budget are above 0 and the film under it 0 to 20 mm.
 */
export function puddleSpread({
  volume_m3,
  film_m,
  theta_per_Pa,
  under_m,
  liquid,
}: SpreadRequest): PuddleSpread {
  const level_m = levelRadius_m(volume_m3, film_m);
  positive('theta_per_Pa', theta_per_Pa, '1/Pa');
  within('under_m', under_m, 0, 0.02, 'm');
  // Poured from a cup it starts as a column about a third of its last width.
  const start_m = level_m / 3;
  const reached_m =
    under_m < 0.02 * (volume_m3 / (Math.PI * start_m ** 2))
      ? Math.min(
          flowRadius_m(volume_m3, theta_per_Pa, liquid),
          puddleStopRadius_m(volume_m3, ANGLE_DEG, liquid),
        )
      : wetPuddle({
          volume_m3,
          startRadius_m: start_m,
          coat_m: under_m,
          theta_per_Pa,
          ...(liquid === undefined ? {} : { liquid }),
        }).ownRadius_m;
  return { level_m, area_m2: volumeArea_m2(volume_m3, film_m), reached_m, share: reached_m / level_m };
}

/** Square metres of the finished film a volume is, and back: what an ounce is in square inches. Both above 0. */
export function volumeArea_m2(volume_m3: number, film_m: number): number {
  return positive('volume_m3', volume_m3, 'm3') / positive('film_m', film_m, 'm');
}

export function areaVolume_m3(area_m2: number, film_m: number): number {
  return positive('area_m2', area_m2, 'm2') * positive('film_m', film_m, 'm');
}
