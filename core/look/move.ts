/**
 * What a maker does to the wet film, as maps of the plane. Each one keeps areas (its Jacobian is 1), and the film keeps its
 * thickness, so an ounce of a colour stays its square inches whatever is done after it: colour shares are poured volumes.
 * Lengths in metres on the piece, x to the right, y away from the front edge; angles in radians, counter-clockwise from x.
 */

export type Place = readonly [x_m: number, y_m: number];

/** A colour poured on one spot. The wet film makes room for it on all sides. Radius above 0. */
export interface Puddle {
  readonly kind: 'puddle';
  readonly colour: number;
  readonly centre: Place;
  readonly radius_m: number;
}

/**
 * A thin tool drawn right across the film along a line. The film beside it sticks to the board, so it is dragged on for
 * about one film thickness to each side only (`dragShare`).
 */
export interface Drag {
  readonly kind: 'drag';
  readonly through: Place;
  readonly heading_rad: number;
  /** How far the film at the tool goes along; either sign. */
  readonly pull_m: number;
  /** Width of one tooth, 0 or more. */
  readonly width_m: number;
  /** Film the tool stands in, above 0. */
  readonly film_m: number;
  /** Teeth of a comb, 1 for a stick, and their pitch; they stand on both sides of the line alike. */
  readonly teeth: number;
  readonly pitch_m: number;
}

/** A tool set down at one place, pulled to another and lifted: film goes on with it and comes back round both sides. */
export interface Stroke {
  readonly kind: 'stroke';
  readonly from: Place;
  readonly to: Place;
  /** Width of the tool, above 0; film further than about twice this from the path stays where it was. */
  readonly width_m: number;
  /** Share of the tool's way the film under it goes along, 0 to 1. */
  readonly depth: number;
}

/** A stick turned about a place: the middle goes round by `turn_rad`, less and less further out. */
export interface Swirl {
  readonly kind: 'swirl';
  readonly centre: Place;
  readonly turn_rad: number;
  readonly reach_m: number;
}

/** The unsteady flow that gives natural edges: shears of several headings with seeded waves. */
export interface Waver {
  readonly kind: 'waver';
  readonly amplitude_m: number;
  readonly wavelength_m: number;
  readonly seed: number;
}

/** The board tilted and set level again: the film is drawn out along a heading and narrowed across it about a place. */
export interface Tilt {
  readonly kind: 'tilt';
  readonly centre: Place;
  readonly heading_rad: number;
  /** Lengths along the heading grow by this factor, lengths across shrink by it. Above 0. */
  readonly draw: number;
}

export type Move = Puddle | Drag | Stroke | Swirl | Waver | Tilt;
