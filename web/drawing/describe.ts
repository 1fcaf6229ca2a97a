/** A piece in words: what a drawing says to someone who does not see it. */
import { segmentLength_m } from '#core/piece/arc.ts';
import { cutOutSize as sizeOf } from '#core/piece/cut-out-size.ts';
import type { Drawing, DrawnSegment, EdgeStyle } from '#core/piece/drawing.ts';
import { facings } from '#core/piece/facing.ts';
import type { CutOut, Outline, Piece } from '#core/piece/piece.ts';
import type { SplashStrip } from '#core/piece/splash-strips.ts';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';

export const STYLE_WORDS: Readonly<Record<EdgeStyle, string>> = {
  finished: 'finished',
  wall: 'wall',
  seam: 'seam',
  dammed: 'dammed',
  unknown: 'not yet said',
};

/** "Rectangle 42 in by 21 1/2 in. Edges: front, finished, 42 in; ... Cut-outs: ..." */
export function describePiece(
  piece: Piece,
  drawing: Drawing,
  system: System,
  splashes: readonly SplashStrip[] = [],
): string {
  const say = (length_m: number): string => formatLength(length_m, system);
  const edges = edgesDrawn(piece, drawing).map(
    ({ label, style, length_m }) => `${label}, ${STYLE_WORDS[style]}, ${say(length_m)}`,
  );
  const radii = drawing.leaders
    .filter((l) => l.label !== 'edge length')
    .map((l) => `${l.count} ${l.count === 1 ? 'corner' : 'corners'} of ${l.label} ${say(l.value_m)}`);
  const holes = drawing.cutOuts.flatMap(({ name, centre }) => {
    const cutOut = piece.cutOuts.find((c) => c.name === name && c.centre === centre);
    return cutOut === undefined ? [] : [describeCutOut(cutOut, drawing, system)];
  });
  return [
    shapeWords(piece.outline, drawing, say),
    ...(radii.length > 0 ? [radii.join(', ')] : []),
    `Edges, with their length along the edge: ${edges.join('; ')}`,
    holes.length > 0 ? `Cut-outs: ${holes.join('; ')}` : 'No cut-outs',
    ...(splashes.length > 0
      ? [`On it: ${splashes.map(({ name, height_m }) => `${name} ${say(height_m)} high`).join('; ')}`]
      : []),
  ]
    .map((sentence) => `${sentence}.`)
    .join(' ');
}

function shapeWords(outline: Outline, drawing: Drawing, say: (m: number) => string): string {
  const b = drawing.bounds;
  const over = `${say(b.maxX_m - b.minX_m)} by ${say(b.maxY_m - b.minY_m)}`;
  switch (outline.shape) {
    case 'rectangle':
      return `Rectangle ${over}`;
    case 'ell':
      return `L counter, ${outline.side}-hand return: ${say(outline.length_m)} long, ${say(outline.width_m)} deep, return ${say(outline.returnLength_m)} long and ${say(outline.returnWidth_m)} deep`;
    case 'round':
      return `Round, ${say(outline.diameter_m)} across`;
    case 'ellipse':
      return `Oval ${over}`;
    case 'polygon':
      return `Shape with ${outline.corners.length} corners, ${over} overall`;
    case 'path':
      return `Free shape, ${over} overall`;
  }
}

function describeCutOut(cutOut: CutOut, drawing: Drawing, system: System): string {
  const say = (length_m: number): string => formatLength(length_m, system);
  const b = drawing.bounds;
  const { x_m, y_m } = cutOut.centre;
  // As the dimension lines measure it: from the front edge, or from the end of a return for a hole in the return.
  const front_m = y_m >= 0 && b.minY_m <= 0 ? 0 : b.minY_m;
  return `${cutOut.name}, ${cutOutSize(cutOut, system)}, centre ${say(x_m - b.minX_m)} from the left and ${say(y_m - front_m)} from the front, rim ${cutOut.rim}`;
}

/** "round 1 3/4 in", "oval 16 in x 13 in". */
export function cutOutSize(cutOut: CutOut, system: System): string {
  if (cutOut.shape === 'round') return `round ${formatLength(cutOut.diameter_m, system)}`;
  const { length_m, width_m } = sizeOf(cutOut);
  const degrees = Number((((cutOut.rotation_rad ?? 0) * 180) / Math.PI).toFixed(2));
  const turned = degrees === 0 ? '' : `, turned ${degrees} degrees`;
  return `${cutOut.shape} ${formatLength(length_m, system)} x ${formatLength(width_m, system)}${turned}`;
}

export interface EdgeDrawn {
  readonly name: string;
  /** "edge 3, back": with the side it looks to, or the edge it counts as, where its name does not say so. */
  readonly label: string;
  readonly style: EdgeStyle;
  readonly length_m: number;
  readonly segments: readonly DrawnSegment[];
}

/** The outline gathered by edge, in the order it runs. */
export function edgesDrawn(piece: Piece, drawing: Drawing): EdgeDrawn[] {
  const looks = new Map<string, string>(facings(piece.outline));
  for (const [name, { countsAs }] of Object.entries(piece.edges))
    if (countsAs !== undefined) looks.set(name, countsAs);
  const edges = new Map<string, DrawnSegment[]>();
  for (const s of drawing.outline) edges.set(s.edge, [...(edges.get(s.edge) ?? []), s]);
  return [...edges].map(([name, segments]) => ({
    name,
    label: looks.has(name) ? `${name}, ${looks.get(name)}` : name,
    style: segments[0]!.style,
    length_m: segments.reduce((sum, s) => sum + segmentLength_m(s), 0),
    segments,
  }));
}
