/**
 * The shapes of DXF entities, in the drawing's own units (Autodesk, DXF Reference for AutoCAD 2000, ENTITIES section).
 * What is drawn facing down (extrusion 0,0,-1) is mirrored to face up; what is tilted is left out by the caller.
 */

import type { Affine, Spot } from './affine.ts';
import { stretch, UNMOVED } from './affine.ts';
import { type Entity, needNumber, numberAt, numberOf } from './dxf-tags.ts';
import { refuse } from './imported-drawing.ts';
import { bulgeShape, circleArc, type Shape } from './shape.ts';
import { type Spline, splineFault } from './spline.ts';

export interface DxfRun {
  readonly shapes: readonly Shape[];
  readonly closed: boolean;
  /** How many vertices of the file it took. */
  readonly vertices: number;
}

const DEGREE = Math.PI / 180;
const TURN = 2 * Math.PI;

/** 1 facing up, -1 facing down, 0 tilted. */
export function facing(entity: Entity): 1 | 0 | -1 {
  const x = numberAt(entity, 210) ?? 0;
  const y = numberAt(entity, 220) ?? 0;
  const z = numberAt(entity, 230) ?? 1;
  if (Math.hypot(x, y) > 1e-9 * Math.abs(z)) return 0;
  return z > 0 ? 1 : z < 0 ? -1 : 0;
}

/** Where the entity's own axes lie in the drawing: entities facing down are drawn mirrored in x. */
export function ownAxes(entity: Entity): Affine {
  const own = ['LWPOLYLINE', 'POLYLINE', 'ARC', 'CIRCLE', 'INSERT'].includes(entity.type);
  return own && facing(entity) < 0 ? stretch(-1, 1) : UNMOVED;
}

/** undefined for kinds that are no lines of a shape. A POLYLINE needs its VERTEX entities. */
export function dxfRun(entity: Entity, vertices: readonly Entity[]): DxfRun | undefined {
  switch (entity.type) {
    case 'LINE':
      return one({ kind: 'line', from: spot(entity, 10), to: spot(entity, 11) }, 2);
    case 'ARC': {
      const start = needNumber(entity, 50) * DEGREE;
      return one(
        circleArc(
          spot(entity, 10),
          radius(entity),
          start,
          start + sweep(start, needNumber(entity, 51) * DEGREE),
        ),
        2,
      );
    }
    case 'CIRCLE':
      return { ...one(circleArc(spot(entity, 10), radius(entity), 0, TURN), 1), closed: true };
    case 'ELLIPSE':
      return ellipse(entity);
    case 'SPLINE':
      return spline(entity);
    case 'LWPOLYLINE':
      return polyline(lightVertices(entity), ((numberAt(entity, 70) ?? 0) & 1) !== 0);
    case 'POLYLINE': {
      const flags = numberAt(entity, 70) ?? 0;
      // Meshes are bodies, not outlines.
      if ((flags & (16 | 64)) !== 0) return undefined;
      return polyline(
        vertices
          .filter((v) => ((numberAt(v, 70) ?? 0) & 16) === 0)
          .map((v) => ({ ...spot(v, 10), bulge: numberAt(v, 42) ?? 0 })),
        (flags & 1) !== 0,
      );
    }
    default:
      return undefined;
  }
}

function one(shape: Shape, vertices: number): DxfRun {
  return { shapes: [shape], closed: false, vertices };
}

function spot(entity: Entity, code: number): Spot {
  return { x: needNumber(entity, code), y: needNumber(entity, code + 10) };
}

function radius(entity: Entity): number {
  const r = needNumber(entity, 40);
  if (!(r > 0))
    refuse(
      'file.radius',
      `The ${entity.type} at line ${entity.line} has no size.`,
      String(r),
      'a radius above 0',
    );
  return r;
}

/** Counter-clockwise from start to end, above 0 to a whole turn. */
function sweep(start: number, end: number): number {
  const turn = (end - start) % TURN;
  return turn <= 1e-12 ? turn + TURN : turn;
}

function ellipse(entity: Entity): DxfRun {
  const u = spot(entity, 11);
  const ratio = needNumber(entity, 40);
  if (!(Math.hypot(u.x, u.y) > 0 && ratio > 0 && ratio <= 1 + 1e-9))
    refuse(
      'file.radius',
      `The ELLIPSE at line ${entity.line} has no size.`,
      `major axis ${u.x}, ${u.y}; ratio ${ratio}`,
      'a major axis above 0, a ratio above 0 to 1',
    );
  // The minor axis is the extrusion direction crossed with the major one.
  const up = facing(entity);
  const start = numberAt(entity, 41) ?? 0;
  const end = start + sweep(start, numberAt(entity, 42) ?? TURN);
  const shape: Shape = {
    kind: 'conic',
    centre: spot(entity, 10),
    u,
    v: { x: -u.y * ratio * up, y: u.x * ratio * up },
    start,
    end,
  };
  return { shapes: [shape], closed: end - start > TURN - 1e-6, vertices: 2 };
}

function spline(entity: Entity): DxfRun {
  const xs = numbers(entity, 10);
  const ys = numbers(entity, 20);
  const made: Spline = {
    degree: needNumber(entity, 71),
    knots: numbers(entity, 40),
    controls: xs.map((x, i) => ({ x, y: ys[i] ?? Number.NaN })),
    weights: numbers(entity, 41),
  };
  if (xs.length === 0 && entity.tags.some((t) => t.code === 11))
    refuse(
      'file.spline',
      `The SPLINE at line ${entity.line} is given by points to pass through alone.`,
      undefined,
      'splines saved with their control points and knots',
    );
  const fault = ys.length === xs.length ? splineFault(made) : 'points without a y';
  if (fault !== undefined)
    refuse('file.spline', `The SPLINE at line ${entity.line} does not add up.`, fault, undefined);
  return { shapes: [{ kind: 'spline', spline: made }], closed: false, vertices: xs.length };
}

function numbers(entity: Entity, code: number): number[] {
  return entity.tags.filter((t) => t.code === code).map(numberOf);
}

interface Vertex extends Spot {
  readonly bulge: number;
}

function lightVertices(entity: Entity): Vertex[] {
  const made: { x: number; y: number; bulge: number }[] = [];
  for (const tag of entity.tags) {
    const last = made[made.length - 1];
    if (tag.code === 10) made.push({ x: numberOf(tag), y: Number.NaN, bulge: 0 });
    else if (tag.code === 20 && last !== undefined) last.y = numberOf(tag);
    else if (tag.code === 42 && last !== undefined) last.bulge = numberOf(tag);
  }
  if (made.some((v) => Number.isNaN(v.y)))
    refuse(
      'file.incomplete',
      `A vertex of the LWPOLYLINE at line ${entity.line} has no y.`,
      undefined,
      'group code 20',
    );
  return made;
}

function polyline(vertices: readonly Vertex[], closed: boolean): DxfRun {
  const shapes: Shape[] = [];
  const last = closed ? vertices.length : vertices.length - 1;
  for (let i = 0; i < last; i += 1) {
    const from = vertices[i]!;
    const to = vertices[(i + 1) % vertices.length]!;
    if (from.x === to.x && from.y === to.y) continue;
    shapes.push(bulgeShape(from, to, from.bulge));
  }
  return { shapes, closed, vertices: vertices.length };
}
