/**
 * One top as the shop draws it: the words every other room uses for its geometry. Plain data, SI units.
 *
 * Axes: x to the right along the front edge, y to the back; the front edge lies on y = 0 (the customer's side) and
 * the leftmost point on x = 0 for every named shape. Polygons and paths keep the axes they were typed in.
 */

export interface Point {
  readonly x_m: number;
  readonly y_m: number;
}

/** Edges: front, right, back, left. All four corners share one radius. */
export interface RectangleOutline {
  readonly shape: 'rectangle';
  /** Along x. */
  readonly length_m: number;
  /** Along y (the depth of a counter). */
  readonly width_m: number;
  readonly cornerRadius_m?: number;
}

/**
 * L counter: the main leg lies along the back wall, the return comes forward along the left or right wall, so the maker
 * stands in the inside corner. All four sizes are what a tape reads along the walls: both lengths run to the outer
 * corner. The main leg's front edge is y = 0, the return reaches down to y = width - returnLength.
 * Edges: front, right, back, left, return front (facing the inside corner), return end.
 */
export interface EllOutline {
  readonly shape: 'ell';
  readonly side: 'left' | 'right';
  /** Along the back wall, over everything. */
  readonly length_m: number;
  /** Depth of the main leg. */
  readonly width_m: number;
  /** Along the side wall, over everything; more than width_m. */
  readonly returnLength_m: number;
  /** Depth of the return; less than length_m. */
  readonly returnWidth_m: number;
  /** The five outside corners. */
  readonly cornerRadius_m?: number;
  /** The one inside corner. */
  readonly insideRadius_m?: number;
}

/** Edge: rim. Touches y = 0 and x = 0. */
export interface RoundOutline {
  readonly shape: 'round';
  readonly diameter_m: number;
}

/** Edge: rim. A true ellipse drawn with tangent arcs (ellipse.ts says how close). Touches y = 0 and x = 0. */
export interface EllipseOutline {
  readonly shape: 'ellipse';
  readonly length_m: number;
  readonly width_m: number;
}

/** Corners in order, either way round. 'edge 1' runs from the first corner to the second, and so on. */
export interface PolygonOutline {
  readonly shape: 'polygon';
  readonly corners: readonly PolygonCorner[];
}

export interface PolygonCorner extends Point {
  readonly radius_m?: number;
}

/** Anything else: lines and arcs from a start back to the start, either way round. */
export interface PathOutline {
  readonly shape: 'path';
  readonly start: Point;
  readonly segments: readonly PathStep[];
}

/** `edge` names the edge it belongs to (several may share one); left out it is 'edge n', n counting from 1. */
export type PathStep =
  | { readonly kind: 'line'; readonly to: Point; readonly edge?: string }
  | { readonly kind: 'arc'; readonly to: Point; readonly bulge: number; readonly edge?: string };

export type Outline =
  | RectangleOutline
  | EllOutline
  | RoundOutline
  | EllipseOutline
  | PolygonOutline
  | PathOutline;

/**
 * One line or circular arc of a closed path. bulge = tan(included angle / 4): 0 for a line, 1 for a half circle,
 * positive when the arc turns to the left (counter-clockwise).
 */
export interface Segment {
  readonly kind: 'line' | 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  /**
   * The edge it belongs to. A rounded corner is cut at its middle: each half belongs to the straight edge it continues,
   * so the lengths of the edges add up to the perimeter and no corner needs a spec of its own.
   */
  readonly edge: string;
}

/** Closed, counter-clockwise (the top lies to the left of every segment); each segment starts where the last ended. */
export type Path = readonly Segment[];

export type CutOutShape =
  | {
      readonly shape: 'rectangle';
      readonly length_m: number;
      readonly width_m: number;
      readonly cornerRadius_m: number;
    }
  | { readonly shape: 'oval'; readonly length_m: number; readonly width_m: number }
  | { readonly shape: 'round'; readonly diameter_m: number }
  /** Any other hole, as a full-size template gives it: its outline about the middle of the box round it. */
  | { readonly shape: 'template'; readonly outline: PolygonOutline | PathOutline };

/** A hole through the top: bowl, tap, grommet. */
export type CutOut = CutOutShape & {
  readonly name: string;
  readonly centre: Point;
  /** Counter-clockwise; 0 when left out. */
  readonly rotation_rad?: number;
  /** wrapped: the resin runs down the inside of the hole; dammed: it is stopped at the rim. */
  readonly rim: 'wrapped' | 'dammed';
  /** Height of the inside face; the body's thickness when left out. */
  readonly faceHeight_m?: number;
  /** Profile of a wrapped rim; square, eased 3 mm when left out. */
  readonly profile?: EdgeProfile;
};

/** Cross-section of an edge, seen from its end. */
export type EdgeProfile =
  | { readonly kind: 'square eased'; readonly radius_m: number }
  | { readonly kind: 'round-over'; readonly radius_m: number }
  /** A full half round over the face height. */
  | { readonly kind: 'bullnose' }
  /** 45 degrees at the top arris. */
  | { readonly kind: 'bevel'; readonly leg_m: number }
  /** Broken "stone" edge; factor = surface over plain face height, 1.3 to 1.6 (common practice, no source). */
  | { readonly kind: 'chiselled'; readonly factor: number };

export interface EdgeSpec {
  /** finished: coated and seen; wall: against a wall or appliance; seam: joined to another piece. */
  readonly kind: 'finished' | 'wall' | 'seam';
  /** From the top surface to the lowest point of the face (body with its build-up). */
  readonly faceHeight_m: number;
  readonly profile: EdgeProfile;
  /** How far the coating turns back under the piece; 0 for none. */
  readonly undersideReturn_m: number;
  /** Which edge of a counter it is to the shop's rules, where neither its name nor the side it looks to says so. */
  readonly countsAs?: CountedEdge;
}

export const COUNTED_EDGES = ['front', 'right', 'back', 'left', 'return front', 'return end'] as const;
export type CountedEdge = (typeof COUNTED_EDGES)[number];

export interface Piece {
  readonly outline: Outline;
  /** One spec for each edge name of the outline (`edgeNames`). */
  readonly edges: Readonly<Record<string, EdgeSpec>>;
  readonly cutOuts: readonly CutOut[];
  /** The body as it stands, field sheet with its build-up: the height of an edge nobody says otherwise about. */
  readonly bodyThickness_m: number;
}

/** Radius a "square" edge is eased to before coating (1/8 in; common practice, no source). */
export const EASED_RADIUS_M = 0.003;

/** Standard MDF between 700 and 800 kg/m3 (from memory); the shop's own figure replaces it. */
export const BODY_DENSITY_KG_M3 = 740;

export interface EdgeMeasures {
  /** Edge name, or the cut-out's name for a rim. */
  readonly name: string;
  /** dammed: the rim of a cut-out the resin is kept out of. */
  readonly kind: EdgeSpec['kind'] | 'dammed';
  readonly length_m: number;
  readonly faceHeight_m: number;
  /** Surface across the profile from the end of the flat top to the bottom of the face, per metre of edge. */
  readonly developedHeight_m: number;
  /** How much of that lies inside the outline seen from above, and so is already in the top area. */
  readonly planOverlap_m: number;
  /** Surface to add to the top area for this face (nothing counted twice); worth coating when finished. */
  readonly faceArea_m2: number;
  readonly undersideReturnArea_m2: number;
  /** Radius of the upper arris, for the film on it. */
  readonly arrisRadius_m: number;
  /** true for the outline, false for the rim of a cut-out. */
  readonly outer: boolean;
  /** Place in piece.cutOuts when it is a rim. */
  readonly cutOut?: number;
}

export interface Bounds {
  readonly minX_m: number;
  readonly minY_m: number;
  readonly maxX_m: number;
  readonly maxY_m: number;
}

export interface PieceMeasures {
  /** Plan area without the cut-outs. */
  readonly topArea_m2: number;
  /** Plan area inside the outline. */
  readonly grossArea_m2: number;
  /** Outline edges in the order they run, then the rim of each cut-out. */
  readonly edges: readonly EdgeMeasures[];
  /** Sum of faceArea_m2 over finished edges (outline and wrapped rims). */
  readonly finishedFaceArea_m2: number;
  /** Sum of undersideReturnArea_m2 over finished edges. */
  readonly undersideReturnArea_m2: number;
  /** Finished edges of the outline only. */
  readonly finishedEdgeLength_m: number;
  /** Wrapped rims of cut-outs. */
  readonly wrappedRimLength_m: number;
  /** Of the outline. */
  readonly perimeter_m: number;
  readonly bounds: Bounds;
  readonly centroid: Point;
  /** Largest distance between two points of the outline: what has to go round a stair or through a door. */
  readonly longestDiagonal_m: number;
  /** Half the short side of the bounding box. */
  readonly halfShortSide_m: number;
  /** Radius of the largest circle inside the outline (cut-outs ignored), to 0.5 mm. */
  readonly inscribedRadius_m: number;
  readonly bodyMass_kg: number;
  /** Where several pieces are told together (together.ts): each on its own. A single piece has none. */
  readonly parts?: readonly Pick<PieceMeasures, 'topArea_m2' | 'edges'>[];
}
