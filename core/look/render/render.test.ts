import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { patternOf } from '../look.ts';
import { carry } from '../moves/carry.ts';
import { paint } from '../picture.ts';
import { encodeSrgb, type LinearRgb, linearOfHex } from '../srgb.ts';
import { anyLook, VANITY } from './any-look.ts';
import { anyPattern } from './any-pattern.ts';
import { topDrawing, unfoldedDrawing } from './drawing.ts';
import { atPixel, fitInto, type Window } from './grid.ts';
import { renderRows, renderScene } from './render.ts';
import { type Scene, sceneOf } from './scene.ts';
import { sparkle, spotOf } from './sparkle.ts';

const look = anyLook(3, 60);
const drawing = unfoldedDrawing(look.panels);

function windowOf(window: Window, pixel_m: number, gloss = 0.5): Scene {
  const { grid } = atPixel(drawing, pixel_m);
  return sceneOf({ look, drawing, sheet: { grid, window }, gloss });
}

describe('places followed together', () => {
  test('have the colours they have when each is followed alone, move by move', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), (seed) => {
        const pattern = anyPattern(seed, 40, 1.2, 0.9);
        const raster = { left_m: 0.1, front_m: 0, width_m: 0.9, depth_m: 0.9, columns: 70, rows: 37 };
        const together = paint(pattern, raster);
        const ways = pattern.moves.map((move) => ({ way: carry(move), move })).reverse();
        for (let k = 0; k < 60; k++) {
          const [column, row] = [(k * 13) % 70, (k * 17) % 37];
          const speck = Float64Array.of(0.1 + ((column + 0.5) / 70) * 0.9, ((37 - row - 0.5) / 37) * 0.9);
          const hit = ways.find(({ way }) => !way.back(speck))?.move;
          expect(together[row * 70 + column]).toBe(hit?.kind === 'puddle' ? hit.colour : 0);
        }
      }),
      { numRuns: 15 },
    );
  });
});

describe('a large picture', () => {
  test('put together from windows and bands of any size is the picture rendered whole, byte for byte', () => {
    const whole = atPixel(drawing, 0.007).window;
    const once = renderScene(windowOf(whole, 0.007));
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: whole.columns - 2 }),
        fc.integer({ min: 0, max: whole.rows - 2 }),
        fc.integer({ min: 1, max: 90 }),
        fc.integer({ min: 1, max: 60 }),
        (column, row, wide, high) => {
          const columns = Math.min(wide, whole.columns - column);
          const rows = Math.min(high, whole.rows - row);
          const part = windowOf({ column, row, columns, rows }, 0.007);
          const middle = Math.max(1, Math.floor(rows / 2));
          const bands = [
            renderRows(part, 0, middle),
            ...(middle < rows ? [renderRows(part, middle, rows)] : []),
          ];
          const joined = Uint8ClampedArray.from(bands.flatMap((band) => [...band]));
          for (let r = 0; r < rows; r++) {
            const from = 4 * ((row + r) * whole.columns + column);
            expect(joined.subarray(4 * r * columns, 4 * (r + 1) * columns)).toEqual(
              once.subarray(from, from + 4 * columns),
            );
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  test('is refused rows that it does not have', () => {
    const scene = windowOf({ column: 0, row: 0, columns: 4, rows: 4 }, 0.1);
    for (const [from, to] of [
      [0, 5],
      [-1, 2],
      [2, 2],
      [0.5, 2],
    ] as const)
      expect(() => renderRows(scene, from, to)).toThrow(RangeError);
    expect(() => fitInto(drawing, 0, 10)).toThrow(/columns/);
    expect(() => atPixel(drawing, -1)).toThrow(/pixel_m/);
  });
});

describe('a picture', () => {
  test('at any size shows the colour of the pattern in every pixel that holds but one', () => {
    const flat = {
      ...look,
      fogs: [],
      colours: look.colours.map((colour) => ({ ...colour, flake: null })),
    };
    const top = topDrawing(flat.panels);
    for (const pixel_m of [0.012, 0.004]) {
      const sheet = atPixel(top, pixel_m);
      const { columns, rows } = sheet.window;
      const bytes = renderScene(sceneOf({ look: flat, drawing: top, sheet }));
      const side = 4;
      const painted = paint(patternOf(flat), {
        left_m: sheet.grid.left_m,
        front_m: sheet.grid.back_m - rows * pixel_m,
        width_m: columns * pixel_m,
        depth_m: rows * pixel_m,
        columns: columns * side,
        rows: rows * side,
      });
      let [looked, wrong] = [0, 0];
      for (let i = 0; i < columns * rows; i++) {
        if (bytes[4 * i + 3] !== 255) continue;
        const [row, column] = [Math.floor(i / columns), i % columns];
        const ids = new Set<number>();
        for (let k = 0; k < side * side; k++)
          ids.add(painted[(row * side + (k >> 2)) * columns * side + column * side + (k & 3)]!);
        if (ids.size > 1) continue;
        const light: LinearRgb = flat.colours[[...ids][0]!]!.light;
        const expected = light.map((c) => Math.round(encodeSrgb(c) * 255));
        looked++;
        if (![0, 1, 2].every((c) => Math.abs(bytes[4 * i + c]! - expected[c]!) <= 1)) wrong++;
      }
      expect(looked / (columns * rows)).toBeGreaterThan(0.3);
      // The first four places lie between the sixteen looked at here: threads thinner than a quarter of a pixel.
      expect(wrong / looked).toBeLessThan(0.002);
    }
  });

  test('has the light of the poured areas, whatever its size', () => {
    const plain = {
      ...look,
      fogs: [],
      colours: look.colours.map((colour, at) => ({
        ...colour,
        flake: null,
        light: (at === 1 ? [1, 1, 1] : [0, 0, 0]) as LinearRgb,
      })),
    };
    const top = topDrawing(plain.panels);
    const share = (pixel_m: number): number => {
      const bytes = renderScene(sceneOf({ look: plain, drawing: top, sheet: atPixel(top, pixel_m) }));
      let [light, all] = [0, 0];
      for (let i = 0; i < bytes.length; i += 4) {
        const code = bytes[i]! / 255;
        light += (code <= 0.04045 ? code / 12.92 : ((code + 0.055) / 1.055) ** 2.4) * bytes[i + 3]!;
        all += bytes[i + 3]!;
      }
      return light / all;
    };
    const fine = share(0.002);
    expect(Math.abs(share(0.0047) - fine)).toBeLessThan(1e-3);
    expect(Math.abs(share(0.01) - fine)).toBeLessThan(3e-3);
  });

  test('is clear where the piece is cut out and beside it, and half clear along its rim', () => {
    const top = topDrawing(look.panels);
    const sheet = atPixel(top, 0.0025);
    const bytes = renderScene(sceneOf({ look, drawing: top, sheet }));
    const alpha = (x_m: number, y_m: number) => {
      const column = Math.floor((x_m - sheet.grid.left_m) / 0.0025);
      const row = Math.floor((sheet.grid.back_m - y_m) / 0.0025);
      return bytes[4 * (row * sheet.window.columns + column) + 3]!;
    };
    expect(alpha(0.6, 0.28)).toBe(0);
    expect(alpha(0.6, 0.52)).toBe(0);
    expect(alpha(0.002, 0.002)).toBe(0);
    expect(alpha(0.3, 0.3)).toBe(255);
    let covered = 0;
    for (let i = 3; i < bytes.length; i += 4) covered += (bytes[i]! / 255) * 0.0025 ** 2;
    const corners = (4 - Math.PI) * 0.03 ** 2;
    const holes = Math.PI * (0.21 * 0.17 + 0.0175 ** 2);
    expect(Math.abs(covered / (1.2 * 0.6 - corners - holes) - 1)).toBeLessThan(1e-3);
  });

  test('shows faces beside the edges they hang on, and goes on over the arris', () => {
    const names = drawing.panels.map(({ panel }) => panel.name);
    expect(names).toEqual(['Top', 'Top, front face', 'Top, right face', 'Top, left face']);
    const front = drawing.panels[1]!;
    expect(front.turn_rad).toBeCloseTo(0, 9);
    // Below the front edge by the gap between them, its left end where the edge begins.
    expect(front.at[1] + front.panel.depth_m).toBeCloseTo(-0.004, 9);
    expect(drawing.panels[2]!.at[0]).toBeGreaterThan(1.2);
    expect(drawing.panels[3]!.at[0]).toBeLessThan(0);
  });

  test('of a round top has its rim in strips no longer than the top', () => {
    const edge = VANITY.edges.front!;
    const round = anyLook(1, 5, {
      outline: { shape: 'round', diameter_m: 0.8 },
      edges: { rim: edge },
      cutOuts: [],
      bodyThickness_m: 0.038,
    });
    const { panels, width_m } = unfoldedDrawing(round.panels);
    expect(panels.length).toBe(5);
    expect(width_m).toBeCloseTo(0.8, 9);
    expect(panels.slice(1).reduce((sum, { panel }) => sum + panel.width_m, 0)).toBeCloseTo(Math.PI * 0.8, 9);
  });
});

describe('glitter', () => {
  test('is as bright on average as the flakes are, the weaker the more of them a pixel holds', () => {
    for (const strength of [1, 0.25]) {
      let [sum, squares] = [0, 0];
      const side = 300;
      for (let i = 0; i < side * side; i++) {
        const bright = sparkle(i % side, Math.floor(i / side) - 150, 7, strength);
        sum += bright;
        squares += (bright - 1) ** 2;
      }
      expect(Math.abs(sum / side ** 2 - 1)).toBeLessThan(0.05 * strength);
      // Of (n + 1) h^n: variance (n + 1)^2 / (2 n + 1) - 1.
      expect(Math.sqrt(squares / side ** 2) / strength / Math.sqrt(256 / 31 - 1)).toBeCloseTo(1, 1);
    }
    expect(spotOf(4e-5, 0.001)).toEqual({ side_m: 4e-5 * 32, strength: 1 / 32 });
  });

  test('is another with another seed, and the same again with the same', () => {
    const made = [1, 2, 1].map((seed) => Array.from({ length: 50 }, (_, at) => sparkle(at, 3, seed, 1)));
    expect(made[0]).toEqual(made[2]);
    expect(made[0]).not.toEqual(made[1]);
  });
});

test('faces show their colour in the thinner film they carry', () => {
  const bare = { ...look, moves: [], fogs: [] };
  const sheet = atPixel(drawing, 0.005);
  const bytes = renderScene(sceneOf({ look: bare, drawing, sheet }));
  const at = (x_m: number, y_m: number) => {
    const column = Math.floor((x_m - sheet.grid.left_m) / 0.005);
    const row = Math.floor((sheet.grid.back_m - y_m) / 0.005);
    return bytes[4 * (row * sheet.window.columns + column)]!;
  };
  const { light, faceLight } = look.colours[0]!;
  expect(at(0.3, 0.3)).toBe(Math.round(encodeSrgb(light[0]) * 255));
  expect(at(0.3, -0.02)).toBe(Math.round(encodeSrgb(faceLight![0]) * 255));
});

test('a fogged edge is the colour of the fog at its strength, and nothing of it is left one reach in', () => {
  const bare = { ...look, moves: [] };
  const top = topDrawing(bare.panels);
  const sheet = atPixel(top, 0.005);
  const { columns, rows } = sheet.window;
  const bytes = renderScene(sceneOf({ look: bare, drawing: top, sheet }));
  const at = (column: number, row: number) => bytes[4 * (row * columns + column)]!;
  const [ground, fog] = [look.colours[0]!.light[0], linearOfHex('#1c1410')[0]];
  expect(at(60, rows - 20)).toBe(Math.round(encodeSrgb(ground) * 255));
  expect(at(60, rows - 1)).toBeCloseTo(encodeSrgb(0.4 * ground + 0.6 * fog) * 255, -0.5);
});
