import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlinePath } from '#core/piece/outline.ts';
import { bounds } from '#core/piece/path.ts';
import { alongEdge, edgeMiddle, type Frame, pathOf, px, toPixel } from './frame.ts';
import { SAMPLE_PIECES } from './sample-pieces.ts';

const frame = (name: string): Frame => ({
  left: 10,
  top: 20,
  pxPerMetre: 100,
  bounds: bounds(outlinePath(SAMPLE_PIECES[name]!.outline)),
});

describe('frame of a drawing', () => {
  it('puts the back of the piece at the top', () => {
    const f: Frame = {
      left: 10,
      top: 20,
      pxPerMetre: 100,
      bounds: { minX_m: 0, minY_m: 0, maxX_m: 2, maxY_m: 1 },
    };
    expect(toPixel(f, { x_m: 0, y_m: 1 })).toEqual({ x: 10, y: 20 });
    expect(toPixel(f, { x_m: 2, y_m: 0 })).toEqual({ x: 210, y: 120 });
  });

  it('draws a round top as four true arcs, counter-clockwise', () => {
    const path = outlinePath({ shape: 'round', diameter_m: 1 });
    const f: Frame = { left: 0, top: 0, pxPerMetre: 100, bounds: bounds(path) };
    expect(pathOf(f, path, true)).toBe(
      'M50 100A50 50 0 0 0 100 50A50 50 0 0 0 50 0A50 50 0 0 0 0 50A50 50 0 0 0 50 100Z',
    );
  });

  it('draws an arc of more than half a circle the long way, and a clockwise one clockwise', () => {
    const f: Frame = {
      left: 0,
      top: 0,
      pxPerMetre: 1,
      bounds: { minX_m: 0, minY_m: 0, maxX_m: 10, maxY_m: 10 },
    };
    const arc = { kind: 'arc', from: { x_m: 0, y_m: 0 }, to: { x_m: 10, y_m: 0 }, edge: '' } as const;
    expect(pathOf(f, [{ ...arc, bulge: 2 }], false)).toMatch(/^M0 10A6\.25 6\.25 0 1 0 10 10$/);
    expect(pathOf(f, [{ ...arc, bulge: -0.5 }], false)).toMatch(/0 0 1 10 10$/);
  });

  it('lifts the pen where segments do not meet', () => {
    const f = frame('vanity');
    const [a, , c] = outlinePath({ shape: 'rectangle', length_m: 1, width_m: 0.5 });
    expect(pathOf(f, [a!, c!], false).match(/M/g)).toHaveLength(2);
  });

  it('knows which way is out', () => {
    const f = frame('bar');
    const path = outlinePath(SAMPLE_PIECES.bar!.outline);
    const out = (edge: string) =>
      edgeMiddle(
        f,
        path.filter((s) => s.edge === edge),
      ).out;
    expect(out('front').y).toBeCloseTo(1, 9);
    expect(out('back').y).toBeCloseTo(-1, 9);
    expect(out('left').x).toBeCloseTo(-1, 9);
    expect(out('right').x).toBeCloseTo(1, 9);
    expect(() => edgeMiddle(f, [])).toThrow(RangeError);
  });

  it('walks an edge in even steps, pointing away from the middle of a round top', () => {
    const path = outlinePath({ shape: 'round', diameter_m: 2 });
    const f: Frame = { left: 0, top: 0, pxPerMetre: 100, bounds: bounds(path) };
    const points = alongEdge(f, path, 10);
    expect(points.length).toBe(4 * Math.round((Math.PI * 50) / 10));
    for (const { at, out } of points) {
      expect(Math.hypot(at.x - 100, at.y - 100)).toBeCloseTo(100, 6);
      expect(out.x).toBeCloseTo((at.x - 100) / 100, 6);
      expect(out.y).toBeCloseTo((at.y - 100) / 100, 6);
    }
  });

  it('writes pixels to a hundredth, never minus nothing', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e4, max: 1e4, noNaN: true }), (v) => {
        expect(Math.abs(Number(px(v)) - v)).toBeLessThanOrEqual(0.005 + 1e-9);
        expect(px(v)).not.toBe('-0');
      }),
    );
  });
});
