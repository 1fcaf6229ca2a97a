/** A polygon whose sides may bow: as a polygon while every side is straight, else as a path of lines and arcs. */
import { checkOutline } from '#core/piece/check-outline.ts';
import { outlineCorners } from '#core/piece/corners.ts';
import { filletPath } from '#core/piece/fillet.ts';
import { lengthText } from '#core/piece/length-text.ts';
import { signedArea_m2 } from '#core/piece/path.ts';
import type { Outline, PathStep, PolygonCorner, PolygonOutline, Segment } from '#core/piece/piece.ts';
import type { Notes } from './notes.ts';

export interface BowedCorner extends PolygonCorner {
  readonly radius_m: number;
  /** Rise of the side that leaves this corner over its chord, outwards positive; 0: straight. */
  readonly bow_m: number;
}

/** Less than this is a straight side. */
const STRAIGHT_M = 1e-6;

/**
 * The outline of corners in order, either way round. A side may rise by at most half its chord (a half circle), and the corners at
 * its two ends are sharp: anything else is noted as a problem and answered with null. Corners that make no polygon are handed on
 * as they are, for core/piece to say why. bulge = 2 rise / chord, from bulge = tan(angle / 4).
 */
export function bowedOutline(
  corners: readonly BowedCorner[],
  notes: Notes,
  path = 'piece.outline',
): Outline | null {
  const polygon: PolygonOutline = {
    shape: 'polygon',
    corners: corners.map(({ x_m, y_m, radius_m }) => ({ x_m, y_m, radius_m })),
  };
  if (corners.every(({ bow_m }) => Math.abs(bow_m) < STRAIGHT_M) || checkOutline(polygon).length > 0)
    return polygon;
  let sound = true;
  corners.forEach((corner, i) => {
    if (Math.abs(corner.bow_m) < STRAIGHT_M) return;
    const next = (i + 1) % corners.length;
    const chord_m = Math.hypot(corners[next]!.x_m - corner.x_m, corners[next]!.y_m - corner.y_m);
    if (Math.abs(corner.bow_m) > chord_m / 2 + 1e-9) {
      sound = false;
      notes.problem(
        `${path}.corners.${i}.bow`,
        'outline.bow',
        'The side bows further than a half circle.',
        lengthText(corner.bow_m),
        `up to ${lengthText(chord_m / 2)} either way`,
      );
    }
    for (const end of [i, next])
      if (corners[end]!.radius_m > 0) {
        sound = false;
        notes.problem(
          `${path}.corners.${end}.radius`,
          'outline.bow-radius',
          'A corner at the end of a bowed side cannot be rounded as well.',
          lengthText(corners[end]!.radius_m),
          'no radius, or a straight side on both sides of the corner',
        );
      }
  });
  if (!sound) return null;
  const chords = filletPath(outlineCorners(polygon));
  const outwards = Math.sign(signedArea_m2(chords)) || 1;
  const bows = new Map(corners.map((corner, i) => [`edge ${i + 1}`, corner.bow_m]));
  const step = (s: Segment): PathStep => {
    const rise_m = bows.get(s.edge) ?? 0;
    if (s.kind === 'arc') return { kind: 'arc', to: s.to, bulge: s.bulge, edge: s.edge };
    if (Math.abs(rise_m) < STRAIGHT_M) return { kind: 'line', to: s.to, edge: s.edge };
    const chord_m = Math.hypot(s.to.x_m - s.from.x_m, s.to.y_m - s.from.y_m);
    return { kind: 'arc', to: s.to, bulge: (outwards * 2 * rise_m) / chord_m, edge: s.edge };
  };
  return { shape: 'path', start: chords[0]!.from, segments: chords.map(step) };
}
