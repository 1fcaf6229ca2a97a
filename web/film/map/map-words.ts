/** A thickness map in words. */
import type { FilmMapResult, MapPlace } from '#core/film/map-result.ts';
import type { Coat } from '#core/mix/coat.ts';
import type { Bounds, Point } from '#core/piece/piece.ts';
import { edgesWorked_s } from '#core/pour/film-moments.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { System } from '#core/quantity/units.ts';
import { speaker } from '#web/units/speak.ts';
import type { CupPuddle } from './puddle-layout.ts';

/** "3 in from the left and 2 in from the front". */
export function sayPlace(at: Point, box: Bounds, system: System): string {
  const { length } = speaker(system);
  return `${length(Math.max(0, at.x_m - box.minX_m))} from the left and ${length(Math.max(0, at.y_m - box.minY_m))} from the front`;
}

export function sayFilmAt(place: MapPlace, box: Bounds, system: System): string {
  return `${speaker(system).thickness(place.thickness_m)}, ${sayPlace(place, box, system)}`;
}

/** "Puddle 1.2 of cup 1, white, 1.5 fl oz, 3 in from the left and 2 in from the front". */
export function sayPuddle(puddle: CupPuddle, box: Bounds, system: System): string {
  return `Puddle ${puddle.key} of cup ${puddle.cup}, ${puddle.colour}, ${speaker(system).volume(puddle.volume_m3)}, ${sayPlace(puddle, box, system)}`;
}

/** What someone who does not see the picture is told of it. */
export function describeMap(map: FilmMapResult, box: Bounds, system: System): string {
  const speak = speaker(system);
  return [
    `Film thickness over the top, ${speak.thickness(map.mean_m)} on average`,
    `Thinnest ${sayFilmAt(map.thinnest, box, system)}`,
    `Thickest ${sayFilmAt(map.thickest, box, system)}`,
    map.bareShare > 0 ? `${sayBare(map.bareShare, system)} of the top is bare` : 'No part of the top is bare',
  ]
    .map((sentence) => `${sentence}.`)
    .join(' ');
}

/** How the map treats finished edges and wrapped rims. */
export function sayEdges(coat: Pick<Coat, 'wrapEdges'>, plan: Pick<CoatPlan, 'steps'>): string {
  if (!coat.wrapEdges) return 'Edges stay dry.';
  const worked_s = edgesWorked_s(plan);
  return worked_s === undefined
    ? 'Edges are wiped over from the start.'
    : `Edges are dry until they are worked, minute ${Math.round(worked_s / 60)}.`;
}

/**
 * "Dry edges let resin over: front from minute 3, bowl from minute 12.": those that hold too little until they are worked; empty when all hold.
 * @param minuteOf minute of the plan at which a part of the map's budget is spent
 */
export function sayLetGo(letGo: FilmMapResult['letGo'], minuteOf: (theta_per_Pa: number) => number): string {
  if (letGo.length === 0) return '';
  const each = letGo.map(
    ({ edge, theta_per_Pa }) => `${edge} from minute ${Math.floor(minuteOf(theta_per_Pa))}`,
  );
  return `Dry edges let resin over: ${each.join(', ')}.`;
}

/** "none", "under 0.1%", "12%". */
export function sayBare(share: number, system: System): string {
  if (share === 0) return 'none';
  return share < 0.001
    ? 'under 0.1%'
    : share < 0.01
      ? `${(100 * share).toFixed(1)}%`
      : speaker(system).percent(share);
}

/** A share of the resin: "12.3%", "none", "under 0.1%". */
export function sayPart(share: number): string {
  if (share <= 0) return 'none';
  return share < 0.001 ? 'under 0.1%' : `${(100 * share).toFixed(1)}%`;
}
