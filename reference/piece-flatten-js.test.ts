/**
 * Areas, lengths, containment, distances and meetings of outlines made of lines and circular arcs, against an
 * independent computational-geometry library: Flatten-JS (package @flatten-js/core), which handles arcs exactly and
 * shares no code with core/piece. Run on 200 random outlines of every shape, seeded; arcs are handed over as circles
 * through three points, not by our own formula. Agreement: areas and lengths to 1e-9 of themselves, distances to 1e-8 m,
 * the bounding box to 1e-9 m, containment and meetings everywhere further than 1e-6 m from the outline.
 *
 * Net areas with cut-outs are checked against polyclip-ts (Martinez-Rueda polygon clipping on the flattened outline):
 * the flattening's own bound, its tolerance times the length of the arcs.
 */

import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { pathsMeet } from '#core/piece/crossing.ts';
import { measurePiece } from '#core/piece/measure.ts';
import { cutOutPath, edgeNames, outlinePath } from '#core/piece/outline.ts';
import {
  bounds,
  distanceToPath_m,
  flattenPath,
  movePath,
  pathArea_m2,
  pathLength_m,
  pointInside,
} from '#core/piece/path.ts';
import type { CutOut, EdgeSpec, Outline, Path, Piece } from '#core/piece/piece.ts';
import { validatePiece } from '#core/piece/validate.ts';

const { point, segment } = Flatten;

/** The arc of bulge b over a chord passes b/2 chords to the right of the chord's middle. */
function theirs(path: Path): Flatten.Polygon {
  const edges = path.map((s) => {
    const a = point(s.from.x_m, s.from.y_m);
    const b = point(s.to.x_m, s.to.y_m);
    if (s.bulge === 0) return segment(a, b);
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const top = point((a.x + b.x) / 2 + (dy * s.bulge) / 2, (a.y + b.y) / 2 - (dx * s.bulge) / 2);
    const centre = throughThree(a, top, b);
    const r = Math.hypot(a.x - centre.x, a.y - centre.y);
    const angle = (p: Flatten.Point): number => Math.atan2(p.y - centre.y, p.x - centre.x);
    return new Flatten.Arc(centre, r, angle(a), angle(b), s.bulge > 0);
  });
  const polygon = new Flatten.Polygon();
  polygon.addFace(edges);
  return polygon;
}

function throughThree(a: Flatten.Point, b: Flatten.Point, c: Flatten.Point): Flatten.Point {
  const [bx, by, cx, cy] = [b.x - a.x, b.y - a.y, c.x - a.x, c.y - a.y];
  const d = 2 * (bx * cy - by * cx);
  const [bb, cc] = [bx * bx + by * by, cx * cx + cy * cy];
  return point(a.x + (cy * bb - by * cc) / d, a.y + (bx * cc - cx * bb) / d);
}

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const star = fc
  .record({
    reach: fc.array(size(0.5, 1), { minLength: 3, maxLength: 9 }),
    bulges: fc.array(size(-0.35, 0.6), { minLength: 9, maxLength: 9 }),
    scale: size(0.2, 2),
  })
  .map(({ reach, bulges, scale }) => ({
    corners: reach.map((r, i) => ({
      x_m: scale * (1.2 + r * Math.cos((2 * Math.PI * i) / reach.length)),
      y_m: scale * (1.2 + r * Math.sin((2 * Math.PI * i) / reach.length)),
    })),
    bulges,
    scale,
  }));

const outline: fc.Arbitrary<Outline> = fc.oneof(
  fc.record({
    shape: fc.constant('rectangle' as const),
    length_m: size(0.3, 3),
    width_m: size(0.3, 1),
    cornerRadius_m: size(0.001, 0.15),
  }),
  fc.record({
    shape: fc.constant('ell' as const),
    side: fc.constantFrom('left' as const, 'right' as const),
    length_m: size(1.5, 3),
    width_m: size(0.4, 0.7),
    returnLength_m: size(1.2, 2.5),
    returnWidth_m: size(0.4, 0.7),
    cornerRadius_m: size(0.001, 0.1),
    insideRadius_m: size(0.001, 0.2),
  }),
  fc.record({ shape: fc.constant('round' as const), diameter_m: size(0.2, 2) }),
  fc.record({ shape: fc.constant('ellipse' as const), length_m: size(0.5, 2.5), width_m: size(0.3, 1.5) }),
  star.map(({ corners, scale }) => ({
    shape: 'polygon' as const,
    corners: corners.map((c, i) => ({ ...c, radius_m: i % 2 === 0 ? 0.02 * scale : 0 })),
  })),
  star.map(({ corners, bulges }) => ({
    shape: 'path' as const,
    start: corners[0]!,
    segments: corners.map((_, i) => ({
      kind: 'arc' as const,
      to: corners[(i + 1) % corners.length]!,
      bulge: bulges[i]!,
    })),
  })),
);

const spec: EdgeSpec = {
  kind: 'finished',
  faceHeight_m: 0.038,
  profile: { kind: 'square eased', radius_m: 0.003 },
  undersideReturn_m: 0,
};
const pieceOf = (o: Outline, cutOuts: readonly CutOut[] = []): Piece => ({
  outline: o,
  edges: Object.fromEntries(edgeNames(o).map((name) => [name, spec])),
  cutOuts,
  bodyThickness_m: 0.038,
});

const samples = fc
  .sample(outline, { seed: 20260, numRuns: 400 })
  .filter((o) => validatePiece(pieceOf(o)).length === 0)
  .slice(0, 200)
  .map((o) => ({ outline: o, path: outlinePath(o) }));

describe('200 random outlines against an independent arc geometry', () => {
  it('are two hundred, of every shape', () => {
    expect(samples).toHaveLength(200);
    const counts = Map.groupBy(samples, (s) => s.outline.shape);
    for (const shape of ['rectangle', 'ell', 'round', 'ellipse', 'polygon', 'path'] as const)
      expect(counts.get(shape)?.length).toBeGreaterThan(10);
  });

  it('have the same area, length and box', () => {
    for (const { path } of samples) {
      const other = theirs(path);
      expect(Math.abs(pathArea_m2(path) / other.area() - 1)).toBeLessThan(1e-9);
      const perimeter = [...other.faces].reduce((sum, face) => sum + (face as Flatten.Face).perimeter, 0);
      expect(Math.abs(pathLength_m(path) / perimeter - 1)).toBeLessThan(1e-9);
      const box = bounds(path);
      expect(Math.abs(box.minX_m - other.box.xmin)).toBeLessThan(1e-9);
      expect(Math.abs(box.minY_m - other.box.ymin)).toBeLessThan(1e-9);
      expect(Math.abs(box.maxX_m - other.box.xmax)).toBeLessThan(1e-9);
      expect(Math.abs(box.maxY_m - other.box.ymax)).toBeLessThan(1e-9);
    }
  });

  it('contain the same points and lie as far from them', () => {
    for (const { path } of samples) {
      const other = theirs(path);
      const box = bounds(path);
      for (let i = 0; i < 6; i += 1)
        for (let k = 0; k < 6; k += 1) {
          const p = {
            x_m: box.minX_m + (box.maxX_m - box.minX_m) * ((i + 0.37) / 5.6 - 0.05),
            y_m: box.minY_m + (box.maxY_m - box.minY_m) * ((k + 0.61) / 5.6 - 0.05),
          };
          const away = distanceToPath_m(path, p);
          const at = point(p.x_m, p.y_m);
          const edges = [...other.edges] as Flatten.Edge[];
          const theirAway = Math.min(...edges.map((e) => e.shape.distanceTo(at)[0]));
          expect(Math.abs(away - theirAway)).toBeLessThan(1e-8);
          if (away > 1e-6) expect(pointInside(path, p)).toBe(other.contains(at));
        }
    }
  });

  it('meet each other or not alike', () => {
    let met = 0;
    for (let i = 0; i < samples.length; i += 1) {
      const a = samples[i]!.path;
      const b = movePath(samples[(i + 7) % samples.length]!.path, 0.3 * i, { x_m: 0.4, y_m: 0.2 });
      const crossings = theirs(a).intersect(theirs(b)).length;
      expect(pathsMeet(a, b) !== undefined).toBe(crossings > 0);
      if (crossings > 0) met += 1;
    }
    // Both answers occur often, so agreement says something.
    expect(met).toBeGreaterThan(20);
    expect(met).toBeLessThan(180);
  });
});

describe('net areas against polygon clipping', () => {
  it('agree within the bound of the flattening', () => {
    const tolerance_m = 1e-5;
    let checked = 0;
    for (const { outline: o, path } of samples) {
      const box = bounds(path);
      const hole: CutOut = {
        name: 'hole',
        shape: 'rectangle',
        length_m: 0.12,
        width_m: 0.08,
        cornerRadius_m: 0.02,
        rotation_rad: 0.4,
        centre: { x_m: (box.minX_m + box.maxX_m) / 2, y_m: box.maxY_m - 0.2 },
        rim: 'wrapped',
      };
      const ring = (p: Path): polyclip.Geom =>
        [flattenPath(p, tolerance_m).map((q): [number, number] => [q.x_m, q.y_m])] as polyclip.Geom;
      const left = polyclip.difference(ring(path), ring(cutOutPath(hole)));
      const area = left.reduce(
        (sum, polygon) =>
          sum + polygon.reduce((s, r, i) => s + (i === 0 ? 1 : -1) * Math.abs(shoelace(r)), 0),
        0,
      );
      const result = measurePiece(pieceOf(o, [hole]));
      const bound = tolerance_m * (pathLength_m(path) + pathLength_m(cutOutPath(hole)));
      const inside = left.length === 1 && left[0]!.length === 2;
      // A hole the clipping leaves as a hole is one we accept, and the other way round.
      expect(result.ok).toBe(inside);
      if (!result.ok) continue;
      checked += 1;
      expect(Math.abs(result.value.topArea_m2 - area)).toBeLessThan(bound);
    }
    expect(checked).toBeGreaterThan(60);
  }, 60_000);
});

function shoelace(ring: readonly (readonly [number, number])[]): number {
  return ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    return sum + (x * v - u * y) / 2;
  }, 0);
}
