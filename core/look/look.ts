/**
 * A look ready to paint: colours as light, moves as maps of the plane in which the whole film lies flat at its final
 * thickness. In that plane an area times the film is a volume, on the top and on the faces, where the film is thinner.
 */
import type { Move, Place } from './move.ts';
import type { Pattern } from './picture.ts';
import type { LinearRgb } from './srgb.ts';

/** Flakes in a colour: what they send back beside the scattered light, and where. */
export interface Flake {
  /** Share of the surface the flakes cover, 0 to 1. */
  readonly cover: number;
  /** Their own light at the gleam, linear. */
  readonly gleam: LinearRgb;
  /** Spread of their tilt, radians: small for a settled, well laid film. */
  readonly spread_rad: number;
  /** Size of a flake, m. */
  readonly size_m: number;
}

/** How a colour looks in this coat, over this undercoat, under its clear. */
export interface LookColour {
  readonly key: string;
  readonly name: string;
  /** Straight on, without gloss, in the film of the tops. */
  readonly light: LinearRgb;
  /** The same in the thinner film of the faces; `light` when left out. */
  readonly faceLight?: LinearRgb;
  readonly flake: Flake | null;
}

/** One move of the list, in maps done one after another. */
export interface LookMove {
  /** Of the document; a mirrored twin has the same. */
  readonly id: string;
  readonly maps: readonly Move[];
}

/** Sprayed colour that fades inwards from some edges. */
export interface Fog {
  readonly id: string;
  readonly light: LinearRgb;
  readonly reach_m: number;
  readonly strength: number;
  /** Edges it starts from, as chains of places in the plane. */
  readonly lines: readonly (readonly Place[])[];
}

/**
 * A flat drawing that shows part of the look: the top, a face unfolded below its edge, a splash, a further piece. Own
 * coordinates (u to the right, v up, metres) and where a place of it lies in the plane of the look.
 */
export interface Panel {
  readonly name: string;
  readonly kind: 'top' | 'face' | 'splash' | 'piece';
  /** The rectangle of own coordinates it fits in. */
  readonly left_m: number;
  readonly front_m: number;
  readonly width_m: number;
  readonly depth_m: number;
  /** Film here over the film of the look: areas of the plane per area of the panel. */
  readonly film: number;
  /** Its own area without holes, exact but for curved faces, m2. */
  readonly area_m2: number;
  readonly inside: (u_m: number, v_m: number) => boolean;
  readonly toPlane: (u_m: number, v_m: number) => Place;
}

export interface Look {
  readonly seed: number;
  /** Film of the plane, m. */
  readonly film_m: number;
  /** Of all panels together, in the plane, m2: area times film is the volume of the coat that stays on the work. */
  readonly area_m2: number;
  /** About which the pattern grows while the coat is poured. */
  readonly middle: Place;
  readonly colours: readonly LookColour[];
  /** Place in `colours` of the colour poured all over first. */
  readonly ground: number;
  readonly moves: readonly LookMove[];
  readonly fogs: readonly Fog[];
  readonly undercoat: LinearRgb;
  readonly panels: readonly Panel[];
}

/** The look as a pattern of colour numbers (places in `look.colours`), which picture.ts paints. */
export function patternOf(look: Pick<Look, 'ground' | 'moves'>): Pattern {
  return { ground: look.ground, moves: look.moves.flatMap((move) => move.maps) };
}

/**
 * Share of the surface a fog covers at a place of the plane: its strength at the edge, falling smoothly to 0 at its reach.
 * 3 q^2 - 2 q^3 of what is left of the way, a usual soft edge; spray patterns differ.
 */
export function fogShare(fog: Fog, [x, y]: Place): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const line of fog.lines)
    for (let at = 0; at + 1 < line.length; at++)
      nearest = Math.min(nearest, distance2(x, y, line[at]!, line[at + 1]!));
  const left = 1 - Math.sqrt(nearest) / fog.reach_m;
  return left <= 0 ? 0 : fog.strength * left * left * (3 - 2 * left);
}

function distance2(x: number, y: number, [ax, ay]: Place, [bx, by]: Place): number {
  const [dx, dy] = [bx - ax, by - ay];
  const long2 = dx * dx + dy * dy;
  const share = long2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long2));
  return (x - ax - share * dx) ** 2 + (y - ay - share * dy) ** 2;
}
