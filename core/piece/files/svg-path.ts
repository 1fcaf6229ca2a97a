/** The shapes of SVG path data; arcs by their centre (W3C, Scalable Vector Graphics 1.1, appendix F.6.5). */

import svgpath from 'svgpath';
import type { Spot } from './affine.ts';
import { refuse } from './imported-drawing.ts';
import type { Conic, Shape } from './shape.ts';
import { bezier } from './spline.ts';

export interface SubPath {
  readonly shapes: Shape[];
  closed: boolean;
}

export function pathShapes(data: string): SubPath[] {
  const read = svgpath(data);
  const { err } = read as unknown as { readonly err: string };
  if (err !== '')
    refuse(
      'file.path',
      'Path data in the file cannot be read.',
      `${err}; ${data.slice(0, 40)}`,
      'SVG path data',
    );
  const made: SubPath[] = [];
  let current: SubPath = { shapes: [], closed: false };
  let start: Spot = { x: 0, y: 0 };
  const open = (at: Spot): void => {
    current = { shapes: [], closed: false };
    made.push(current);
    start = at;
  };
  read
    .abs()
    .unshort()
    .iterate((segment, _, x, y) => {
      const from = { x, y };
      const [letter, ...n] = segment as [string, ...number[]];
      if (n.some((value) => !Number.isFinite(value)))
        refuse(
          'file.number',
          'Path data hold something that is no number.',
          data.slice(0, 40),
          'finite decimal numbers',
        );
      if (letter === 'M') {
        open({ x: n[0]!, y: n[1]! });
        return;
      }
      // What follows a Z without a new M starts where the last one started.
      if (current.closed) open(start);
      if (letter === 'Z' || letter === 'z') {
        current.closed = true;
        return;
      }
      current.shapes.push(shapeOf(letter, n, from));
    });
  return made.filter((sub) => sub.shapes.length > 0);
}

function shapeOf(letter: string, n: readonly number[], from: Spot): Shape {
  const at = (i: number): Spot => ({ x: n[i]!, y: n[i + 1]! });
  switch (letter) {
    case 'H':
      return { kind: 'line', from, to: { x: n[0]!, y: from.y } };
    case 'V':
      return { kind: 'line', from, to: { x: from.x, y: n[0]! } };
    case 'Q':
      return { kind: 'spline', spline: bezier(from, at(0), at(2)) };
    case 'C':
      return { kind: 'spline', spline: bezier(from, at(0), at(2), at(4)) };
    case 'A':
      return arc(from, n);
    default:
      return { kind: 'line', from, to: at(0) };
  }
}

function arc(from: Spot, [rx, ry, turned, large, positive, x, y]: readonly number[]): Shape {
  const to = { x: x!, y: y! };
  let a = Math.abs(rx!);
  let b = Math.abs(ry!);
  if (a === 0 || b === 0 || (from.x === to.x && from.y === to.y)) return { kind: 'line', from, to };
  const phi = (turned! * Math.PI) / 180;
  const cos = Math.cos(phi);
  const sin = Math.sin(phi);
  const dx = (from.x - to.x) / 2;
  const dy = (from.y - to.y) / 2;
  const px = cos * dx + sin * dy;
  const py = -sin * dx + cos * dy;
  // Radii too small to span the ends are enlarged until they do.
  const need = Math.hypot(px / a, py / b);
  if (need > 1) {
    a *= need;
    b *= need;
  }
  const square = (px / a) ** 2 + (py / b) ** 2;
  const off = (large === positive ? -1 : 1) * Math.sqrt(Math.max(0, 1 / square - 1));
  const cx = (off * a * py) / b;
  const cy = (-off * b * px) / a;
  const start = Math.atan2((py - cy) / b, (px - cx) / a);
  let sweep = Math.atan2((-py - cy) / b, (-px - cx) / a) - start;
  if (positive !== 0 && sweep < 0) sweep += 2 * Math.PI;
  if (positive === 0 && sweep > 0) sweep -= 2 * Math.PI;
  const conic: Conic = {
    kind: 'conic',
    centre: { x: cos * cx - sin * cy + (from.x + to.x) / 2, y: sin * cx + cos * cy + (from.y + to.y) / 2 },
    u: { x: a * cos, y: a * sin },
    v: { x: -b * sin, y: b * cos },
    start,
    end: start + sweep,
  };
  return conic;
}
