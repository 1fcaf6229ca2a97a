/** Sharp corners, roundings and edge names of the outlines that have corners. */

import type { Corner } from './fillet.ts';
import type { EllOutline, Outline } from './piece.ts';

/** Sharp corners with their roundings, of the shapes that have any. */
export function outlineCorners(
  outline: Extract<Outline, { shape: 'rectangle' | 'ell' | 'polygon' }>,
): Corner[] {
  if (outline.shape === 'ell') return ellCorners(outline);
  if (outline.shape === 'polygon')
    return outline.corners.map(({ x_m, y_m, radius_m = 0 }, i) => ({
      x_m,
      y_m,
      radius_m,
      edge: `edge ${i + 1}`,
    }));
  return rectangleCorners(outline.length_m, outline.width_m, outline.cornerRadius_m ?? 0);
}

export function rectangleCorners(length_m: number, width_m: number, radius_m: number): Corner[] {
  return [
    { x_m: 0, y_m: 0, radius_m, edge: 'front' },
    { x_m: length_m, y_m: 0, radius_m, edge: 'right' },
    { x_m: length_m, y_m: width_m, radius_m, edge: 'back' },
    { x_m: 0, y_m: width_m, radius_m, edge: 'left' },
  ];
}

export function ellCorners(outline: EllOutline): Corner[] {
  const { length_m: l, width_m: w, returnLength_m: rl, returnWidth_m: rw } = outline;
  const radius_m = outline.cornerRadius_m ?? 0;
  const inside = outline.insideRadius_m ?? 0;
  if (outline.side === 'left')
    return [
      { x_m: rw, y_m: 0, radius_m: inside, edge: 'front' },
      { x_m: l, y_m: 0, radius_m, edge: 'right' },
      { x_m: l, y_m: w, radius_m, edge: 'back' },
      { x_m: 0, y_m: w, radius_m, edge: 'left' },
      { x_m: 0, y_m: w - rl, radius_m, edge: 'return end' },
      { x_m: rw, y_m: w - rl, radius_m, edge: 'return front' },
    ];
  return [
    { x_m: 0, y_m: 0, radius_m, edge: 'front' },
    { x_m: l - rw, y_m: 0, radius_m: inside, edge: 'return front' },
    { x_m: l - rw, y_m: w - rl, radius_m, edge: 'return end' },
    { x_m: l, y_m: w - rl, radius_m, edge: 'right' },
    { x_m: l, y_m: w, radius_m, edge: 'back' },
    { x_m: 0, y_m: w, radius_m, edge: 'left' },
  ];
}
