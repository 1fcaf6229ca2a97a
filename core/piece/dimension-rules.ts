/** Which sizes a drawing of each outline and cut-out shows, before they are given a place. */

import { circleOf, heading_rad, pointAlong } from './arc.ts';
import { outlineCorners } from './corners.ts';
import { cutOutSize } from './cut-out-size.ts';
import type { DimensionLabel, Leader } from './drawing.ts';
import { trims } from './fillet.ts';
import { bounds } from './path.ts';
import type { Bounds, CutOut, Outline, Path, Point } from './piece.ts';

/** front = below the piece, back = above; along = beside a slanted edge; inside = within a hole. */
export type Side = 'front' | 'back' | 'left' | 'right' | 'along' | 'inside';

export interface WantedDimension {
  readonly label: DimensionLabel;
  readonly of?: string;
  readonly value_m: number;
  readonly from: Point;
  readonly to: Point;
  readonly side: Side;
  /** Of a size drawn inside a hole: the hole's size the other way. */
  readonly across_m?: number;
  /** Overall sizes stand outside everything else. */
  readonly overall: boolean;
}

/** Straight edges of a free shape are dimensioned one by one up to this many; beyond, a table reads better. */
const MOST_EDGES = 24;

export function outlineDimensions(outline: Outline, path: Path, box: Bounds): WantedDimension[] {
  const length = overall('length', box, 'front');
  const width = overall('width', box, 'left');
  switch (outline.shape) {
    case 'rectangle':
    case 'ellipse':
      return [length, width];
    case 'round':
      return [{ ...length, label: 'diameter', value_m: outline.diameter_m }];
    case 'ell': {
      const { side, length_m: l, width_m: w, returnWidth_m: rw, returnLength_m: rl } = outline;
      const end = w - rl;
      const left = side === 'left' ? 0 : l - rw;
      const free = side === 'left' ? l : 0;
      const walled = l - free;
      return [
        {
          ...length,
          side: 'back',
          from: { x_m: box.minX_m, y_m: box.maxY_m },
          to: { x_m: box.maxX_m, y_m: box.maxY_m },
        },
        part('width', w, { x_m: free, y_m: 0 }, { x_m: free, y_m: w }, side === 'left' ? 'right' : 'left'),
        {
          ...part('return length', rl, { x_m: walled, y_m: end }, { x_m: walled, y_m: w }, side),
          overall: true,
        },
        part('return width', rw, { x_m: left, y_m: end }, { x_m: left + rw, y_m: end }, 'front'),
      ];
    }
    case 'polygon': {
      // As a tape reads them, to where the rounded corners would meet.
      const corners = outlineCorners(outline);
      const sides = corners.map((from, i) => ({
        from,
        to: corners[(i + 1) % corners.length]!,
        edge: from.edge,
      }));
      return [length, width, ...straightEdges(sides, box)];
    }
    case 'path':
      return [
        length,
        width,
        ...straightEdges(
          path.filter((s) => s.kind === 'line'),
          box,
        ),
      ];
  }
}

function overall(label: DimensionLabel, box: Bounds, side: Side): WantedDimension {
  const flat = label === 'length';
  return {
    label,
    value_m: flat ? box.maxX_m - box.minX_m : box.maxY_m - box.minY_m,
    from: { x_m: box.minX_m, y_m: box.minY_m },
    to: flat ? { x_m: box.maxX_m, y_m: box.minY_m } : { x_m: box.minX_m, y_m: box.maxY_m },
    side,
    overall: true,
  };
}

function part(label: DimensionLabel, value_m: number, from: Point, to: Point, side: Side): WantedDimension {
  return { label, value_m, from, to, side, overall: false };
}

/** Each straight side of a free shape, unless it is the whole length or width already given. */
function straightEdges(
  lines: readonly { readonly from: Point; readonly to: Point; readonly edge: string }[],
  box: Bounds,
): WantedDimension[] {
  if (lines.length > MOST_EDGES) return [];
  return lines.flatMap(({ from, to, edge }) => {
    const size = Math.hypot(to.x_m - from.x_m, to.y_m - from.y_m);
    const flat = Math.abs(to.y_m - from.y_m) < 1e-9 && size > box.maxX_m - box.minX_m - 1e-9;
    const upright = Math.abs(to.x_m - from.x_m) < 1e-9 && size > box.maxY_m - box.minY_m - 1e-9;
    if (flat || upright) return [];
    return [{ ...part('edge length', size, from, to, 'along'), of: edge }];
  });
}

/** Centre from the left and from the front edge (from the end of a return for a hole in it), and the size of the hole. */
export function cutOutDimensions(cutOut: CutOut, rim: Path, box: Bounds): WantedDimension[] {
  const { centre, name: of } = cutOut;
  const front = centre.y_m >= 0 && box.minY_m <= 0 ? 0 : box.minY_m;
  const place: WantedDimension[] = [
    {
      ...part(
        'cut-out from left',
        centre.x_m - box.minX_m,
        { x_m: box.minX_m, y_m: centre.y_m },
        centre,
        'front',
      ),
      of,
    },
    {
      ...part('cut-out from front', centre.y_m - front, { x_m: centre.x_m, y_m: front }, centre, 'left'),
      of,
    },
  ];
  if (cutOut.shape === 'round') {
    const r = cutOut.diameter_m / 2;
    const { x_m, y_m } = centre;
    const ends = [
      { x_m: x_m - r, y_m },
      { x_m: x_m + r, y_m },
    ] as const;
    return [...place, { ...part('cut-out diameter', cutOut.diameter_m, ends[0], ends[1], 'back'), of }];
  }
  const { length_m, width_m } = cutOutSize(cutOut);
  const turn = cutOut.rotation_rad ?? 0;
  const upright = Math.abs(Math.sin(turn)) < 1e-9;
  if (!upright) {
    // A turned hole carries its sizes inside, along its own axes.
    const along = (size: number, angle: number): readonly [Point, Point] => {
      const dx = (Math.cos(angle) * size) / 2;
      const dy = (Math.sin(angle) * size) / 2;
      return [
        { x_m: centre.x_m - dx, y_m: centre.y_m - dy },
        { x_m: centre.x_m + dx, y_m: centre.y_m + dy },
      ];
    };
    const [a, b] = along(length_m, turn);
    const [c, d] = along(width_m, turn + Math.PI / 2);
    return [
      ...place,
      { ...part('cut-out length', length_m, a, b, 'inside'), of, across_m: width_m },
      { ...part('cut-out width', width_m, c, d, 'inside'), of, across_m: length_m },
    ];
  }
  const hole = bounds(rim);
  return [
    ...place,
    {
      ...part(
        'cut-out length',
        length_m,
        { x_m: hole.minX_m, y_m: hole.maxY_m },
        { x_m: hole.maxX_m, y_m: hole.maxY_m },
        'back',
      ),
      of,
    },
    {
      ...part(
        'cut-out width',
        width_m,
        { x_m: hole.maxX_m, y_m: hole.minY_m },
        { x_m: hole.maxX_m, y_m: hole.maxY_m },
        'right',
      ),
      of,
    },
  ];
}

/** One note for each different radius, at the rounding nearest the back right, where fewest dimension lines run. */
export function radiusLeaders(outline: Outline, path: Path, box: Bounds, spacing_m: number): Leader[] {
  if (outline.shape === 'round' || outline.shape === 'ellipse') return [];
  const groups = new Map<string, { label: DimensionLabel; radius_m: number; at: Point[]; out: number[] }>();
  const add = (label: DimensionLabel, radius_m: number, at: Point, outward: number): void => {
    const key = `${label} ${Math.round(radius_m * 1e7)}`;
    const group = groups.get(key) ?? { label, radius_m, at: [], out: [] };
    group.at.push(at);
    group.out.push(outward);
    groups.set(key, group);
  };
  if (outline.shape === 'path') {
    for (const s of path) {
      const circle = circleOf(s);
      if (circle === undefined) continue;
      const chord = (heading_rad(s, 'start') + heading_rad(s, 'end')) / 2;
      add(
        s.bulge > 0 ? 'corner radius' : 'inside radius',
        circle.radius_m,
        pointAlong(s, 0.5),
        chord - Math.PI / 2,
      );
    }
  } else {
    const corners = outlineCorners(outline);
    const cut = trims(corners);
    const round = Math.sign(cut.reduce((sum, t) => sum + t.turn_rad, 0));
    corners.forEach((corner, i) => {
      const { turn_rad, trim_m } = cut[i]!;
      if (trim_m === 0) return;
      const before = corners[(i + corners.length - 1) % corners.length]!;
      const heading = Math.atan2(corner.y_m - before.y_m, corner.x_m - before.x_m) + turn_rad / 2;
      // From the corner to the middle of its rounding, towards the arc's centre.
      const inwards = heading + (Math.sign(turn_rad) * Math.PI) / 2;
      const depth = corner.radius_m * (1 / Math.cos(turn_rad / 2) - 1);
      const at = {
        x_m: corner.x_m + Math.cos(inwards) * depth,
        y_m: corner.y_m + Math.sin(inwards) * depth,
      };
      const convex = turn_rad * round > 0;
      add(convex ? 'corner radius' : 'inside radius', corner.radius_m, at, heading - (round * Math.PI) / 2);
    });
  }
  return [...groups.values()].map(({ label, radius_m, at, out }) => {
    const score = (p: Point): number => p.x_m - box.minX_m + (p.y_m - box.minY_m);
    let best = 0;
    for (let i = 1; i < at.length; i += 1) if (score(at[i]!) > score(at[best]!)) best = i;
    const tip = at[best]!;
    const away = out[best]!;
    return {
      label,
      value_m: radius_m,
      at: tip,
      text: {
        x_m: tip.x_m + Math.cos(away) * spacing_m * 0.8,
        y_m: tip.y_m + Math.sin(away) * spacing_m * 0.8,
      },
      count: at.length,
    };
  });
}
