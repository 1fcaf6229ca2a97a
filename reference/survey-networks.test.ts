/**
 * The least-squares engine of the tape survey on published networks.
 *  - Braced quadrilateral with two fixed points, five distances: exercise "UE 14" of the course Geodaetische Auswertemethoden
 *    (data in the public repository kloeckarvo/Geod-tische_Auswertemethoden); the repository stores no output, so the answers
 *    were worked beforehand by an independent program. Coordinates to 0.1 mm, residuals and sigmas to the printed digit.
 *  - Distance intersection: Ghilani and Wolf, Adjustment Computations, Example 14.1; data from memory (residuals below 0.08 ft
 *    over a mile show them consistent), answers worked beforehand by an independent program, to the printed digit.
 *  - Triangles of Skorepa and Dusek 1995, Geodeticky a kartograficky obzor 41/83 no. 7, in the test data of GNU Gama: angles from
 *    distances agree with the angles observed on site within 0.0035 gon.
 *  - Permitted errors of tapes: Directive 2014/32/EU, Annex X; 10 m of class I, II, III as tabulated by tape makers.
 */
import { describe, expect, it } from 'vitest';
import { adjustNetwork } from '#core/piece/survey/network.ts';
import { turnSine } from '#core/piece/survey/polygon.ts';
import { startingShapes } from '#core/piece/survey/start.ts';
import type { Reading } from '#core/piece/survey/survey.ts';
import { permittedError_m } from '#core/piece/survey/tape.ts';

const distances = (list: readonly (readonly [number, number, number])[], sigma_m = 1): Reading[] =>
  list.map(([from, to, value_m]) => ({
    kind: 'distance',
    from,
    to,
    value_m,
    sigma_m,
    path: `${from} ${to}`,
  }));

describe('braced quadrilateral with two fixed points', () => {
  // Coordinates less 3494000 and 5795000.
  const points = [70, 260, 260, 255, 82.82, 440.63, 259.39, 448.35];
  const network = adjustNetwork(
    distances([
      [0, 2, 181.868],
      [0, 3, 268.869],
      [0, 1, 193.284],
      [1, 2, 258.015],
      [1, 3, 193.999],
    ]),
    points,
    [true, true, true, true, false, false, false, false],
  );

  it('finds both points', () => {
    const expected = [68.1467, 259.3572, 261.3641, 254.3632];
    expected.forEach((value, i) => {
      expect(Math.abs(network.places[i]! - value)).toBeLessThanOrEqual(0.00006);
    });
    expect(network.steps).toBeLessThanOrEqual(6);
    expect(network.converged).toBe(true);
  });

  it('finds residuals, spread and the sigma of each coordinate', () => {
    const expected = [-0.0023, 0.0032, -0.0021, 0.0031, -0.0022];
    network.residuals_m.forEach((value, i) => {
      expect(Math.abs(value - expected[i]!)).toBeLessThanOrEqual(0.00006);
    });
    expect(network.dof).toBe(1);
    expect(Math.abs(network.s0! - 0.00583)).toBeLessThanOrEqual(0.000006);
    [8.0, 5.7, 8.1, 5.5].forEach((mm, i) => {
      expect(Math.abs(network.s0! * Math.sqrt(network.covariance[i]![i]!) * 1000 - mm)).toBeLessThanOrEqual(
        0.051,
      );
    });
  });
});

describe('distance intersection', () => {
  const network = adjustNetwork(
    distances([
      [0, 3, 6049],
      [1, 3, 4736.83],
      [2, 3, 5446.49],
    ]),
    [865.4, 4527.15, 2432.55, 2047.25, 2865.22, 27.15, 6800, 3700],
    [false, false, false, false, false, false, true, true],
  );

  it('finds the point, residuals and spread', () => {
    expect(Math.abs(network.places[6]! - 6861.3168)).toBeLessThanOrEqual(0.0001);
    expect(Math.abs(network.places[7]! - 3727.8186)).toBeLessThanOrEqual(0.0001);
    [-0.0374, 0.0768, -0.0474].forEach((v, i) => {
      expect(Math.abs(network.residuals_m[i]! - v)).toBeLessThanOrEqual(0.00006);
    });
    expect(Math.abs(network.s0! - 0.0977)).toBeLessThanOrEqual(0.00006);
    expect(Math.abs(network.s0! * Math.sqrt(network.covariance[6]![6]!) - 0.0775)).toBeLessThanOrEqual(
      0.00006,
    );
    expect(Math.abs(network.s0! * Math.sqrt(network.covariance[7]![7]!) - 0.1542)).toBeLessThanOrEqual(
      0.00006,
    );
  });
});

describe('triangles with observed angles', () => {
  const angles = (a: number, b: number, c: number): number[] => {
    const places = startingShapes({
      readings: distances([
        [0, 1, c],
        [1, 2, a],
        [0, 2, b],
      ]),
      turns: ['out', 'out', 'out'],
    })[0]!;
    return [0, 1, 2].map((corner) => {
      const sine = turnSine(places, corner);
      return (Math.asin(sine) * 200) / Math.PI;
    });
  };

  it('from their sides agree with what was seen', () => {
    // All six angles are below a right angle or told by their supplement.
    const first = angles(1464.841, 1838.258, 1483.05);
    [56.6464, 85.7233, 57.631].forEach((gon, i) => {
      expect(Math.abs(first[i]! - gon)).toBeLessThanOrEqual(0.0035);
    });
    [56.6437, 85.7266, 57.6297].forEach((gon, i) => {
      expect(Math.abs(first[i]! - gon)).toBeLessThanOrEqual(0.00006);
    });
    const second = angles(883.684, 1755.639, 1464.841);
    [33.5127, 200 - 103.8266, 62.6593].forEach((gon, i) => {
      expect(Math.abs(second[i]! - gon)).toBeLessThanOrEqual(0.0035);
    });
  });
});

describe('permitted error of a tape', () => {
  it.each([
    [10, [1.1, 2.3, 4.6]],
    [2.44, [0.4, 0.9, 1.8]],
    [1.2, [0.3, 0.7, 1.4]],
    [0.6, [0.2, 0.5, 1.0]],
  ])('%f m', (length, mm) => {
    (['I', 'II', 'III'] as const).forEach((tapeClass, i) => {
      expect(permittedError_m(length, tapeClass, false) * 1000).toBeCloseTo(mm[i]!, 12);
    });
  });
});
