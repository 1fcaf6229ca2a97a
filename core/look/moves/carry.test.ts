import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Move, Place } from '../move.ts';
import { carry } from './carry.ts';
import { dragShare } from './drag-carry.ts';
import { puddleRadius_m } from './puddle-carry.ts';

const metres = fc.double({ min: -0.6, max: 0.6, noNaN: true });
const place: fc.Arbitrary<Place> = fc.tuple(metres, metres);
const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const smooth: fc.Arbitrary<Move> = fc.oneof(
  fc.record({
    kind: fc.constant('stroke' as const),
    from: place,
    to: place,
    width_m: size(0.01, 0.08),
    depth: size(0, 1),
  }),
  fc.record({
    kind: fc.constant('swirl' as const),
    centre: place,
    turn_rad: angle,
    reach_m: size(0.02, 0.2),
  }),
  fc.record({
    kind: fc.constant('waver' as const),
    amplitude_m: size(0, 0.02),
    wavelength_m: size(0.04, 0.3),
    seed: fc.integer({ min: 0, max: 1e6 }),
  }),
  fc.record({ kind: fc.constant('tilt' as const), centre: place, heading_rad: angle, draw: size(0.7, 1.5) }),
);
const drag: fc.Arbitrary<Move> = fc.record({
  kind: fc.constant('drag' as const),
  through: place,
  heading_rad: angle,
  pull_m: size(-0.2, 0.2),
  width_m: size(0, 0.03),
  film_m: size(0.0005, 0.003),
  teeth: fc.integer({ min: 1, max: 8 }),
  pitch_m: size(0.01, 0.05),
});
const puddle: fc.Arbitrary<Move> = fc.record({
  kind: fc.constant('puddle' as const),
  colour: fc.integer({ min: 0, max: 9 }),
  centre: place,
  radius_m: size(0.005, 0.2),
});

/** Area of a ring of places, metres squared, counter-clockwise positive. */
function area_m2(ring: readonly Float64Array[]): number {
  return ring.reduce((sum, p, at) => {
    const q = ring[(at + 1) % ring.length]!;
    return sum + (p[0]! * q[1]! - q[0]! * p[1]!) / 2;
  }, 0);
}

function circle(centre: Place, radius_m: number, count: number): Float64Array[] {
  return Array.from({ length: count }, (_, at) => {
    const turn = (2 * Math.PI * at) / count;
    return Float64Array.of(centre[0] + radius_m * Math.cos(turn), centre[1] + radius_m * Math.sin(turn));
  });
}

describe('every move', () => {
  test('can be followed back to where the film came from', () => {
    fc.assert(
      fc.property(fc.oneof(smooth, drag, puddle), place, (move, at) => {
        const speck = Float64Array.from(at);
        const way = carry(move);
        way.on(speck);
        const shown = `${move.kind} of ${at.join(', ')}`;
        // Film right under the spout lands on the rim itself, where rounding may count it to either side.
        if (move.kind === 'puddle' && Math.hypot(at[0] - move.centre[0], at[1] - move.centre[1]) < 1e-3)
          return;
        expect(way.back(speck), shown).toBe(true);
        expect(Math.hypot(speck[0]! - at[0], speck[1]! - at[1]), shown).toBeLessThan(1e-9);
      }),
    );
  });

  test('keeps the area of a patch of film', () => {
    fc.assert(
      fc.property(smooth, place, size(0.02, 0.2), (move, centre, radius_m) => {
        const way = carry(move);
        const before = circle(centre, radius_m, 8192);
        const was = area_m2(before);
        for (const speck of before) way.on(speck);
        expect(Math.abs(area_m2(before) / was - 1)).toBeLessThan(1e-3);
      }),
      { numRuns: 40 },
    );
  });

  test('of the smooth ones has a Jacobian of 1, by differences over a micrometre', () => {
    fc.assert(
      fc.property(smooth, place, (move, at) => {
        const way = carry(move);
        const h = 1e-6;
        const image = (dx: number, dy: number) => {
          const speck = Float64Array.of(at[0] + dx, at[1] + dy);
          way.on(speck);
          return speck;
        };
        const [e, w, n, s] = [image(h, 0), image(-h, 0), image(0, h), image(0, -h)];
        const det = ((e[0]! - w[0]!) * (n[1]! - s[1]!) - (e[1]! - w[1]!) * (n[0]! - s[0]!)) / (4 * h * h);
        expect(Math.abs(det - 1)).toBeLessThan(2e-4);
      }),
    );
  });
});

describe('a puddle', () => {
  test('takes its own area, and what lay there is outside it afterwards', () => {
    fc.assert(
      fc.property(size(0.01, 0.1), size(0.15, 0.4), (radius_m, patch_m) => {
        const way = carry({ kind: 'puddle', colour: 1, centre: [0, 0], radius_m });
        const rim = circle([0.003, -0.002], patch_m, 4096);
        const was = area_m2(rim);
        for (const speck of rim) way.on(speck);
        expect((area_m2(rim) - was) / (Math.PI * radius_m ** 2)).toBeCloseTo(1, 3);
      }),
    );
  });

  test('of 50 mL in a film of 3 mm is 72.8 mm in radius', () => {
    expect(puddleRadius_m(50e-6, 0.003)).toBeCloseTo(0.0728366, 7);
  });
});

describe('a drag', () => {
  test('moves film by the whole pull under the tool and by nothing ten thicknesses off', () => {
    const way = carry({
      kind: 'drag',
      through: [0, 0],
      heading_rad: 0,
      pull_m: 0.1,
      width_m: 0.01,
      film_m: 0.0015,
      teeth: 1,
      pitch_m: 0,
    });
    const under = Float64Array.of(0, 0.004);
    const far = Float64Array.of(0, 0.03);
    way.on(under);
    way.on(far);
    expect([...under]).toEqual([0.1, 0.004]);
    expect([...far]).toEqual([0, 0.03]);
  });

  test('is felt less the further off, and half as much at 0.5611 film thicknesses', () => {
    fc.assert(
      fc.property(size(0, 0.02), size(0, 0.02), (near, far) => {
        expect(dragShare(Math.max(near, far), 0.0015)).toBeLessThanOrEqual(
          dragShare(Math.min(near, far), 0.0015),
        );
      }),
    );
    expect(dragShare(0.5611 * 0.0015, 0.0015)).toBeCloseTo(0.5, 4);
  });

  test('of a comb of three moves film at three lines', () => {
    const way = carry({
      kind: 'drag',
      through: [0, 0],
      heading_rad: Math.PI / 2,
      pull_m: 0.05,
      width_m: 0.002,
      film_m: 0.001,
      teeth: 3,
      pitch_m: 0.04,
    });
    const moved = [-0.04, -0.02, 0, 0.02, 0.04].map((x) => {
      const speck = Float64Array.of(x, 0);
      way.on(speck);
      return Math.round(speck[1]! * 1000);
    });
    expect(moved).toEqual([50, 0, 50, 0, 50]);
  });
});

describe('a stroke', () => {
  test('takes film on its path along and leaves film two widths off alone', () => {
    const way = carry({ kind: 'stroke', from: [0, 0], to: [0.2, 0], width_m: 0.03, depth: 1 });
    const on = Float64Array.of(0.05, 0);
    const off = Float64Array.of(0.1, 0.0601);
    way.on(on);
    way.on(off);
    expect(on[0]).toBeGreaterThan(0.15);
    expect(on[1]).toBeCloseTo(0, 12);
    expect([...off]).toEqual([0.1, 0.0601]);
  });
});

test.each([
  [{ kind: 'puddle', colour: 1, centre: [0, 0], radius_m: 0 }, /radius_m/],
  [{ kind: 'swirl', centre: [0, 0], turn_rad: Number.NaN, reach_m: 1 }, /turn_rad/],
  [{ kind: 'swirl', centre: [0, Number.POSITIVE_INFINITY], turn_rad: 1, reach_m: 1 }, /centre/],
  [{ kind: 'tilt', centre: [0, 0], heading_rad: 0, draw: -1 }, /draw/],
  [{ kind: 'waver', amplitude_m: 1, wavelength_m: 0, seed: 1 }, /wavelength_m/],
  [{ kind: 'stroke', from: [0, 0], to: [1, 0], width_m: 0.1, depth: 2 }, /depth/],
] as [Move, RegExp][])('a figure out of its range is named: %o', (move, named) => {
  expect(() => carry(move)).toThrow(named);
});
