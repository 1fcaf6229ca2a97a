/**
 * The maps of the wet film against worked values:
 * - Puddle and the half-way rule of a stick: Lu, Jaffer, Jin, Zhao & Mao 2012, "Mathematical Marbling", IEEE Computer Graphics
 *   and Applications 32(6), 26-35, formulas as quoted by others (the paper was not opened). A drop of radius 2 at the origin takes
 *   (3, 4) to (3.231099, 4.308132); one of radius 5 to (4.24264069, 5.65685425).
 * - The drag beside a blade in a film that sticks to its board: surface shares at 0.25, 0.5, 1, 2 and 3 film thicknesses of a
 *   closed form derived here; a finite-difference solution of Laplace's equation, done apart from this project, gives .5447, .2610
 *   and .0550 at 0.5, 1 and 2.
 */
import { expect, test } from 'vitest';
import { carry } from '#core/look/moves/carry.ts';
import { dragShare } from '#core/look/moves/drag-carry.ts';

test.each([
  [2, 3.231099, 4.308132],
  [5, 4.24264069, 5.65685425],
])('a puddle of radius %d pushes (3, 4) to (%d, %d)', (radius_m, x, y) => {
  const speck = Float64Array.of(3, 4);
  carry({ kind: 'puddle', colour: 1, centre: [0, 0], radius_m }).on(speck);
  expect(speck[0]).toBeCloseTo(x, 6);
  expect(speck[1]).toBeCloseTo(y, 6);
});

test.each([
  [0.25, 0.7562],
  [0.5, 0.5447],
  [1, 0.261],
  [2, 0.055],
  [3, 0.0114],
])('%d film thicknesses beside a blade the surface goes %d of its way', (thicknesses, share) => {
  expect(Math.abs(dragShare(thicknesses * 0.002, 0.002) - share)).toBeLessThan(0.5e-4);
});
