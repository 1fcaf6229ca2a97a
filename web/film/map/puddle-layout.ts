/** Where the cups of a coat are poured when nobody says: puddles on a triangular lattice over the top, the cups spread among them. */
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { bounds, distanceToPath_m, pathArea_m2, pointInside } from '#core/piece/path.ts';
import type { Piece, Point } from '#core/piece/piece.ts';

/** Ground of one puddle, m2: about 200 mm from one to the next (a rule of judgement; a hand's reach between puddles). */
const GROUND_m2 = 0.035;

/** Most puddles laid out by themselves, whatever the size of the top: more cannot be told apart on a phone. */
const MOST_PUDDLES = 20;

/** Mean depth of a puddle just poured, m (a rule of judgement; it spreads within seconds, so the map hardly feels it). */
export const FRESH_DEPTH_m = 0.01;

export interface PouredCup {
  readonly number: number;
  readonly colour: string;
  readonly swatch: string;
  /** Above 0. */
  readonly volume_m3: number;
}

export interface CupPuddle extends Point {
  /** "cup.place", stable while the cups and the piece stay. */
  readonly key: string;
  readonly cup: number;
  readonly colour: string;
  readonly swatch: string;
  readonly volume_m3: number;
  readonly radius_m: number;
}

type Top = Pick<Piece, 'outline' | 'cutOuts'>;

/** Whether a point lies on the top: inside the outline, in no cut-out. */
export function onTop(piece: Top): (at: Point) => boolean {
  const outline = outlinePath(piece.outline);
  const holes = piece.cutOuts.map(cutOutPath);
  return (at) => pointInside(outline, at) && !holes.some((hole) => pointInside(hole, at));
}

/**
 * Puddles of all cups. Every cup has at least one, the others go by volume; the puddles of a cup are equal and hold all of it.
 * Deterministic. An empty list when there are no cups.
 * @throws RangeError when the piece cannot be built or a volume is not above 0.
 */
export function layOutPuddles(piece: Top, cups: readonly PouredCup[]): CupPuddle[] {
  if (cups.length === 0) return [];
  for (const cup of cups)
    if (!(cup.volume_m3 > 0))
      throw new RangeError(`volume_m3 of cup ${cup.number} = ${cup.volume_m3}: allowed above 0`);
  const outline = outlinePath(piece.outline);
  const holes = piece.cutOuts.map(cutOutPath);
  const area_m2 = pathArea_m2(outline) - holes.reduce((sum, hole) => sum + pathArea_m2(hole), 0);
  const wanted = Math.max(cups.length, Math.min(MOST_PUDDLES, Math.round(area_m2 / GROUND_m2)));
  const whole_m3 = cups.reduce((sum, cup) => sum + cup.volume_m3, 0);
  const typical_m = freshRadius_m(whole_m3 / wanted);
  const places = latticePlaces(piece, area_m2, wanted, typical_m);
  const order = dealOut(cups, places.length, whole_m3);
  const counts = cups.map((_, cup) => order.filter((one) => one === cup).length);
  const placed = cups.map(() => 0);
  return places.map((at, i) => {
    const which = order[i]!;
    const cup = cups[which]!;
    const volume_m3 = cup.volume_m3 / counts[which]!;
    placed[which]! += 1;
    return {
      key: `${cup.number}.${placed[which]}`,
      cup: cup.number,
      colour: cup.colour,
      swatch: cup.swatch,
      volume_m3,
      radius_m: freshRadius_m(volume_m3),
      ...at,
    };
  });
}

/** Radius of a puddle that has just been poured, m. */
export function freshRadius_m(volume_m3: number): number {
  return Math.sqrt(volume_m3 / (Math.PI * FRESH_DEPTH_m));
}

/** At least `wanted` places, row by row; clear of borders by a puddle's radius where the top is wide enough, else by less. */
function latticePlaces(piece: Top, area_m2: number, wanted: number, radius_m: number): Point[] {
  const on = onTop(piece);
  const outline = outlinePath(piece.outline);
  const paths = [outline, ...piece.cutOuts.map(cutOutPath)];
  const box = bounds(outline);
  const clear = (at: Point, by_m: number): boolean =>
    on(at) && paths.every((path) => distanceToPath_m(path, at) >= by_m);
  let pitch_m = Math.sqrt((2 / Math.sqrt(3)) * (area_m2 / wanted));
  for (let clearance_m = radius_m; ; pitch_m *= 0.94, clearance_m *= 0.94) {
    const rowPitch_m = (pitch_m * Math.sqrt(3)) / 2;
    const rows = Math.max(1, Math.round((box.maxY_m - box.minY_m) / rowPitch_m));
    const columns = Math.max(1, Math.round((box.maxX_m - box.minX_m) / pitch_m));
    const found: Point[] = [];
    for (let row = 0; row < rows; row++) {
      // Every other row stands half a pitch aside, with one place less, so that the lattice stays in the middle.
      const aside = row % 2 === 1 && columns > 1;
      const count = aside ? columns - 1 : columns;
      const y_m = box.minY_m + ((row + 0.5) * (box.maxY_m - box.minY_m)) / rows;
      for (let i = 0; i < count; i++) {
        const x_m = box.minX_m + ((i + (aside ? 1 : 0.5)) * (box.maxX_m - box.minX_m)) / columns;
        if (clear({ x_m, y_m }, clearance_m)) found.push({ x_m, y_m });
      }
    }
    if (found.length >= wanted) return found;
  }
}

/** Which cup each place gets: always the one furthest behind its share, so that the cups mingle. Every cup gets one. */
function dealOut(cups: readonly PouredCup[], places: number, whole_m3: number): number[] {
  const given = cups.map(() => 0);
  const order: number[] = [];
  for (let i = 0; i < places; i++) {
    const empty = given.filter((count) => count === 0).length;
    let best = -1;
    let most = Number.NEGATIVE_INFINITY;
    for (const [cup, { volume_m3 }] of cups.entries()) {
      // The last places are kept for cups that have none yet.
      if (places - i <= empty && given[cup]! > 0) continue;
      const behind = (volume_m3 / whole_m3) * (i + 1) - given[cup]!;
      if (behind > most + 1e-12) {
        most = behind;
        best = cup;
      }
    }
    given[best]! += 1;
    order.push(best);
  }
  return order;
}
