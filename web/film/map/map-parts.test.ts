import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filmMap, filmMapAtOnce } from '#core/film/film-map.ts';
import { SAMPLE_PIECES } from '#web/drawing/sample-pieces.ts';
import { contourLines, filmAt_m } from './contours.ts';
import { driveMap } from './drive-map.ts';
import { layOutPuddles, onTop } from './puddle-layout.ts';
import { rampColour, scaleOf, shareOf } from './ramp.ts';

const cup = (number: number, volume_m3: number) => ({
  number,
  colour: `c${number}`,
  swatch: '#123456',
  volume_m3,
});

describe('the layout of puddles', () => {
  it.each(Object.keys(SAMPLE_PIECES))('keeps the volume of every cup and lies on the top: %s', (name) => {
    const piece = SAMPLE_PIECES[name]!;
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 5e-5, max: 2e-3, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (volumes) => {
          const puddles = layOutPuddles(
            piece,
            volumes.map((volume_m3, i) => cup(i + 1, volume_m3)),
          );
          expect(puddles.every(onTop(piece))).toBe(true);
          expect(new Set(puddles.map(({ key }) => key)).size).toBe(puddles.length);
          for (const [i, volume_m3] of volumes.entries()) {
            const own = puddles.filter((puddle) => puddle.cup === i + 1);
            expect(own.reduce((sum, puddle) => sum + puddle.volume_m3, 0)).toBeCloseTo(volume_m3, 12);
          }
        },
      ),
      { numRuns: 15 },
    );
  });
  it('refuses an empty cup and has no puddles without cups', () => {
    expect(() => layOutPuddles(SAMPLE_PIECES.vanity!, [cup(1, 0)])).toThrow(RangeError);
    expect(layOutPuddles(SAMPLE_PIECES.vanity!, [])).toEqual([]);
  });
});

describe('the scale', () => {
  it('falls in every channel from thin to thick, and stays at its ends', () => {
    for (let i = 1; i <= 100; i++) {
      const [r, g, b] = rampColour(i / 100);
      const [r0, g0, b0] = rampColour((i - 1) / 100);
      expect(r <= r0 && g <= g0 && b <= b0).toBe(true);
    }
    expect(rampColour(-1)).toEqual(rampColour(0));
    expect(rampColour(9)).toEqual(rampColour(1));
  });
  it('has three to seven round levels between its ends, in the unit shown', () => {
    expect(scaleOf(0.0005, 0.0017, 'metric').levels_m.map((v) => Math.round(v * 1e7) / 1e4)).toEqual([
      0.6, 0.8, 1, 1.2, 1.4, 1.6,
    ]);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5e-3, noNaN: true }),
        fc.double({ min: 1e-4, max: 5e-3, noNaN: true }),
        (low, more) => {
          const scale = scaleOf(low, low + more, 'us');
          expect(scale.levels_m.length).toBeGreaterThanOrEqual(2);
          expect(scale.levels_m.length).toBeLessThanOrEqual(7);
          for (const level of scale.levels_m) expect(level > scale.low_m && level < scale.high_m).toBe(true);
        },
      ),
    );
  });
  it('draws no landscape into an even film', () => {
    const scale = scaleOf(0.001, 0.001, 'metric');
    expect(shareOf(scale, 0.001)).toBeCloseTo(0.5, 6);
    expect(() => scaleOf(2, 1, 'us')).toThrow(RangeError);
  });
});

describe('contour lines', () => {
  const n = 81;
  const cone = {
    columns: n,
    rows: n,
    cellX_m: 0.01,
    cellY_m: 0.01,
    originX_m: -0.405,
    originY_m: -0.405,
    inside: new Uint8Array(n * n).fill(1),
    thickness_m: Float32Array.from({ length: n * n }, (_, i) =>
      Math.hypot(((i % n) - 40) * 0.01, (Math.floor(i / n) - 40) * 0.01),
    ),
  };
  it('of a cone is one closed circle', () => {
    const lines = contourLines(cone, 0.253);
    expect(lines).toHaveLength(1);
    const line = lines[0]!;
    expect(line.at(-1)).toEqual(line[0]);
    for (const { x_m, y_m } of line) expect(Math.abs(Math.hypot(x_m, y_m) - 0.253)).toBeLessThan(1e-4);
  });
  it('of a slope is one open line from border to border', () => {
    const slope = { ...cone, thickness_m: Float32Array.from({ length: n * n }, (_, i) => (i % n) * 0.01) };
    const lines = contourLines(slope, 0.305);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toHaveLength(n);
    for (const { x_m } of lines[0]!) expect(x_m).toBeCloseTo(-0.095, 6);
  });
  it('crosses no hole', () => {
    const inside = cone.inside.slice();
    for (let i = 0; i < inside.length; i++) if (i % n > 40) inside[i] = 0;
    const lines = contourLines({ ...cone, inside }, 0.253);
    expect(lines).toHaveLength(1);
    expect(Math.max(...lines[0]!.map(({ x_m }) => x_m))).toBeLessThan(1e-6);
    expect(filmAt_m({ ...cone, inside }, { x_m: 0.2, y_m: 0 })).toBeUndefined();
    expect(filmAt_m(cone, { x_m: 0.2, y_m: 0 })).toBeCloseTo(0.2, 6);
    expect(filmAt_m(cone, { x_m: 5, y_m: 0 })).toBeUndefined();
  });
});

describe('driving a map', () => {
  const request = {
    piece: SAMPLE_PIECES.vanity!,
    cell_m: 0.005,
    theta_per_Pa: 100,
    evenFilm_m: 0.0015,
    slope: { x: 0.002, y: 0 },
    // Small steps, so that there is much to report.
    growth: 0.005,
  };
  const clock = () => {
    let now = 0;
    return () => {
      now += 20;
      return now;
    };
  };
  const pause = () => Promise.resolve();
  it('gives the map that is worked out at once, with shares that rise', async () => {
    const shares: number[] = [];
    const report = (share: number) => void shares.push(share);
    const map = await driveMap(filmMap(request), { report, wanted: () => true, pause, now_ms: clock() });
    expect(map).toEqual(filmMapAtOnce(request));
    expect(shares.length).toBeGreaterThan(2);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
  it('ends after the pause in which it is no longer wanted', async () => {
    let pauses = 0;
    const map = await driveMap(filmMap(request), {
      report: () => {},
      wanted: () => pauses < 2,
      pause: async () => void pauses++,
      now_ms: clock(),
    });
    expect(map).toBeNull();
    expect(pauses).toBe(2);
  });
});
