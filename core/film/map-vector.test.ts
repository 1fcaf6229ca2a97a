import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Outline } from '#core/piece/piece.ts';
import { filmGrid } from './map-grid.ts';
import { sweep, sweepTilted } from './map-sweep.ts';
import { type MapStore, mapStore, plainStore, vectorStore } from './map-vector.ts';

const outline: fc.Arbitrary<Outline> = fc.oneof(
  fc.record({
    shape: fc.constant('rectangle' as const),
    length_m: fc.double({ min: 0.03, max: 0.2, noNaN: true }),
    width_m: fc.double({ min: 0.03, max: 0.2, noNaN: true }),
  }),
  fc.record({
    shape: fc.constant('round' as const),
    diameter_m: fc.double({ min: 0.05, max: 0.2, noNaN: true }),
  }),
);

describe('the vector store', () => {
  it('is had on this machine', () => {
    expect(vectorStore(100, 10)).toBeDefined();
    expect(mapStore(100, 10).store.pair).toBeDefined();
    expect(plainStore(100, 10).store.pair).toBeUndefined();
  });
  it('gives the same bits as plain arrays: lines of any length, open, held and closed borders', () => {
    fc.assert(
      fc.property(
        outline,
        fc.array(fc.double({ min: 0, max: 0.004, noNaN: true }), { minLength: 5, maxLength: 40 }),
        fc.array(fc.constantFrom(-1, 0, 0.0004), { minLength: 3, maxLength: 12 }),
        fc.double({ min: 1e3, max: 1e12, noNaN: true }),
        (shape, films, faces, k) => {
          const grid = filmGrid({ outline: shape, cutOuts: [] }, 0.01);
          const run = ({ h, store }: MapStore) => {
            for (let i = 0; i < h.length; i++) if (grid.inside[i] === 1) h[i] = films[i % films.length]!;
            const count = grid.faceEdge.length;
            const borders = {
              open: Uint8Array.from({ length: count }, (_, i) => (faces[i % faces.length]! < 0 ? 0 : 1)),
              held_m: Float64Array.from({ length: count }, (_, i) => Math.max(0, faces[i % faces.length]!)),
              lost_m: new Float64Array(count),
            };
            for (let turn = 0; turn < 4; turn++) {
              sweep(h, grid.alongX, borders, k, store);
              sweep(h, grid.alongY, borders, k * 1.1, store);
            }
            return [...h, ...borders.lost_m];
          };
          expect(run(vectorStore(grid.inside.length, grid.longestLine)!)).toEqual(
            run(plainStore(grid.inside.length, grid.longestLine)),
          );
        },
      ),
    );
  });
});

it('a slope of nothing is a level bench: both sweeps agree to rounding', () => {
  const grid = filmGrid({ outline: { shape: 'round', diameter_m: 0.2 }, cutOuts: [] }, 0.007);
  const run = (tilted: boolean) => {
    const { h, store } = mapStore(grid.inside.length, grid.longestLine);
    for (let i = 0; i < h.length; i++) if (grid.inside[i] === 1) h[i] = 0.001 + 0.0005 * Math.sin(i);
    const count = grid.faceEdge.length;
    const borders = {
      open: new Uint8Array(count).fill(1),
      held_m: new Float64Array(count).fill(0.0003),
      lost_m: new Float64Array(count),
    };
    for (const lines of [grid.alongX, grid.alongY])
      if (tilted) sweepTilted(h, lines, borders, 1e8, 0, store);
      else sweep(h, lines, borders, 1e8, store);
    return h;
  };
  const level = run(false);
  for (const [i, film] of run(true).entries()) expect(Math.abs(film - level[i]!)).toBeLessThan(1e-15);
});
