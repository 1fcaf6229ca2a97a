/** The shapes of SVG elements, in user units (W3C, Scalable Vector Graphics 1.1, chapter 9). */

import type { Spot } from './affine.ts';
import { refuse } from './imported-drawing.ts';
import { type Conic, circleArc, type Shape } from './shape.ts';
import { svgLength, svgNumbers } from './svg-number.ts';
import { pathShapes, type SubPath } from './svg-path.ts';

const PER_USER_UNIT: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  pt: 96 / 72,
  pc: 16,
};
const TURN = 2 * Math.PI;

/** undefined for elements that are no lines of a shape. */
export function elementShapes(
  name: string,
  attributes: Readonly<Record<string, string>>,
): readonly SubPath[] | undefined {
  const number = (key: string): number | undefined => {
    const length = svgLength(attributes[key]);
    if (length === undefined) return undefined;
    const per = PER_USER_UNIT[length.unit];
    if (per === undefined)
      refuse(
        'file.number',
        `The ${key} of a ${name} is in a unit that has no fixed length.`,
        attributes[key]!.slice(0, 40),
        'user units, px, mm, cm, in, pt, pc',
      );
    return length.value * per;
  };
  const at = (x: string, y: string): Spot => ({ x: number(x) ?? 0, y: number(y) ?? 0 });
  switch (name) {
    case 'path':
      return pathShapes(attributes.d ?? '');
    case 'line':
      return [{ shapes: [{ kind: 'line', from: at('x1', 'y1'), to: at('x2', 'y2') }], closed: false }];
    case 'polyline':
    case 'polygon':
      return points(svgNumbers(attributes.points ?? ''), name === 'polygon');
    case 'circle': {
      const r = number('r') ?? 0;
      return r > 0 ? [{ shapes: [circleArc(at('cx', 'cy'), r, 0, TURN)], closed: true }] : [];
    }
    case 'ellipse': {
      const rx = number('rx') ?? number('ry') ?? 0;
      const ry = number('ry') ?? rx;
      if (!(rx > 0 && ry > 0)) return [];
      return [{ shapes: [oval(at('cx', 'cy'), rx, ry, 0, TURN)], closed: true }];
    }
    case 'rect':
      return rectangle(at('x', 'y'), number('width') ?? 0, number('height') ?? 0, number('rx'), number('ry'));
    default:
      return undefined;
  }
}

function oval(centre: Spot, rx: number, ry: number, start: number, end: number): Conic {
  return { kind: 'conic', centre, u: { x: rx, y: 0 }, v: { x: 0, y: ry }, start, end };
}

function points(n: readonly number[], closed: boolean): SubPath[] {
  const shapes: Shape[] = [];
  for (let i = 3; i < n.length; i += 2)
    shapes.push({ kind: 'line', from: { x: n[i - 3]!, y: n[i - 2]! }, to: { x: n[i - 1]!, y: n[i]! } });
  return shapes.length === 0 ? [] : [{ shapes, closed }];
}

function rectangle(
  { x, y }: Spot,
  w: number,
  h: number,
  rx: number | undefined,
  ry: number | undefined,
): SubPath[] {
  if (!(w > 0 && h > 0)) return [];
  const a = Math.min(Math.max(0, rx ?? ry ?? 0), w / 2);
  const b = Math.min(Math.max(0, ry ?? rx ?? 0), h / 2);
  if (a === 0 || b === 0) return points([x, y, x + w, y, x + w, y + h, x, y + h], true);
  const q = TURN / 4;
  const line = (x1: number, y1: number, x2: number, y2: number): Shape => ({
    kind: 'line',
    from: { x: x1, y: y1 },
    to: { x: x2, y: y2 },
  });
  return [
    {
      closed: true,
      shapes: [
        line(x + a, y, x + w - a, y),
        oval({ x: x + w - a, y: y + b }, a, b, -q, 0),
        line(x + w, y + b, x + w, y + h - b),
        oval({ x: x + w - a, y: y + h - b }, a, b, 0, q),
        line(x + w - a, y + h, x + a, y + h),
        oval({ x: x + a, y: y + h - b }, a, b, q, 2 * q),
        line(x, y + h - b, x, y + b),
        oval({ x: x + a, y: y + b }, a, b, 2 * q, 3 * q),
      ],
    },
  ];
}
