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
  /** Straight on, without gloss. */
  readonly light: LinearRgb;
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
  /** Edges it starts from; none: every finished edge. */
  readonly edges: readonly string[];
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
  readonly inside: (u_m: number, v_m: number) => boolean;
  readonly toPlane: (u_m: number, v_m: number) => Place;
}

export interface Look {
  readonly seed: number;
  /** Film of the plane, m. */
  readonly film_m: number;
  /** Of all panels together, in the plane, m2: area times film is the volume of the coat that stays on the work. */
  readonly area_m2: number;
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
