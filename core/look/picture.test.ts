import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Move } from './move.ts';
import { colourAt, colourShares, paint, type Raster } from './picture.ts';

const BOARD: Raster = { left_m: -1, front_m: -1, width_m: 2, depth_m: 2, columns: 512, rows: 512 };

const worked: Move[] = [
  { kind: 'puddle', colour: 1, centre: [0, 0], radius_m: 0.3 },
  { kind: 'puddle', colour: 2, centre: [0.1, 0.05], radius_m: 0.2 },
  { kind: 'stroke', from: [-0.3, 0], to: [0.3, 0.1], width_m: 0.05, depth: 0.8 },
  { kind: 'waver', amplitude_m: 0.01, wavelength_m: 0.1, seed: 7 },
  {
    kind: 'drag',
    through: [0, 0],
    heading_rad: 1,
    pull_m: 0.1,
    width_m: 0.01,
    film_m: 0.002,
    teeth: 3,
    pitch_m: 0.05,
  },
  { kind: 'swirl', centre: [0, 0], turn_rad: 2, reach_m: 0.1 },
];

describe('shares of colours', () => {
  test('are the poured areas, whatever was done to the film', () => {
    const shares = colourShares({ ground: 0, moves: worked }, BOARD);
    expect(Math.abs(shares.get(1)! - (Math.PI * 0.3 ** 2) / 4)).toBeLessThan(1e-3);
    expect(Math.abs(shares.get(2)! - (Math.PI * 0.2 ** 2) / 4)).toBeLessThan(1e-3);
    expect([...shares.values()].reduce((a, b) => a + b)).toBeCloseTo(1, 12);
  });

  test('are kept to 0.1 % at 256 samples a side by any one move', () => {
    const puddle: Move = { kind: 'puddle', colour: 1, centre: [0, 0], radius_m: 0.4 };
    const raster = { ...BOARD, columns: 256, rows: 256 };
    const before = colourShares({ ground: 0, moves: [puddle] }, raster).get(1)!;
    for (const move of worked.slice(2)) {
      const after = colourShares({ ground: 0, moves: [puddle, move] }, raster).get(1)!;
      expect(Math.abs(after - before), move.kind).toBeLessThan(1e-3);
    }
  });

  test('need a sample that lies on the piece', () => {
    expect(() => colourShares({ ground: 0, moves: [] }, BOARD, () => false)).toThrow(/no sample/);
  });
});

describe('the picture', () => {
  test('is the same in either order of two strokes that do not reach each other', () => {
    const apart: Move[] = [
      { kind: 'stroke', from: [-0.8, -0.5], to: [-0.4, -0.5], width_m: 0.03, depth: 1 },
      { kind: 'stroke', from: [0.4, 0.5], to: [0.8, 0.5], width_m: 0.03, depth: 1 },
    ];
    const puddles: Move[] = [
      { kind: 'puddle', colour: 1, centre: [-0.5, -0.5], radius_m: 0.2 },
      { kind: 'puddle', colour: 2, centre: [0.5, 0.5], radius_m: 0.2 },
    ];
    const raster = { ...BOARD, columns: 200, rows: 200 };
    expect(paint({ ground: 0, moves: [...puddles, ...apart] }, raster)).toEqual(
      paint({ ground: 0, moves: [...puddles, ...[...apart].reverse()] }, raster),
    );
  });

  test('has its back at the top, and a larger one shows the same colours', () => {
    const pattern = {
      ground: 0,
      moves: [{ kind: 'puddle', colour: 3, centre: [0.6, 0.6], radius_m: 0.3 } as const],
    };
    const small = paint(pattern, { ...BOARD, columns: 3, rows: 3 });
    expect([...small]).toEqual([0, 0, 3, 0, 0, 0, 0, 0, 0]);
    const large = paint(pattern, { ...BOARD, columns: 9, rows: 9 });
    for (const [row, column] of [
      [0, 0],
      [0, 2],
      [2, 1],
    ] as const)
      expect(large[(row * 3 + 1) * 9 + column * 3 + 1]).toBe(small[row * 3 + column]);
  });

  test('away from every move shows the ground', () => {
    const at = colourAt({ ground: 4, moves: worked });
    expect(at(5, 5)).toBe(4);
  });

  test('of no size, or of a broken number of samples, is refused', () => {
    const pattern = { ground: 0, moves: [] };
    fc.assert(
      fc.property(fc.constantFrom(0, -1, 1.5, Number.NaN, 70_000), (columns) => {
        expect(() => paint(pattern, { ...BOARD, columns })).toThrow(/columns/);
      }),
    );
    expect(() => paint(pattern, { ...BOARD, width_m: 0 })).toThrow(/width_m/);
  });
});
