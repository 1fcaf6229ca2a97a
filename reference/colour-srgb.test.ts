/**
 * sRGB (IEC 61966-2-1) to XYZ and L*a*b* (ISO/CIE 11664-3, -4; D65, 2 degrees). Values computed with the standard's seven-digit matrix,
 * cross-checked elsewhere with two general colour libraries, which derive the matrix from the primaries and differ by up to
 * 0.009: agreement 1e-4 with the first, 0.01 with the libraries. Neither standard was opened (from memory).
 */
import { expect, test } from 'vitest';
import { labOfLinear, xyzOfLinear } from '#core/look/lab.ts';
import { linearOfHex } from '#core/look/srgb.ts';

const ROWS = [
  ['#ffffff', [0.95047, 1, 1.08883], [100, 0, 0]],
  ['#000000', [0, 0, 0], [0, 0, 0]],
  ['#808080', [0.205169, 0.215861, 0.235035], [53.585, 0, 0]],
  ['#ff0000', [0.412456, 0.212673, 0.019334], [53.2408, 80.0925, 67.2032]],
  ['#00ff00', [0.357576, 0.715152, 0.119192], [87.7347, -86.1827, 83.1793]],
  ['#0000ff', [0.180438, 0.072175, 0.950304], [32.297, 79.1875, -107.8602]],
  ['#c0392b', [0.236401, 0.143107, 0.038025], [44.6753, 52.9105, 39.2394]],
  ['#1f3a5f', [0.041429, 0.041433, 0.114057], [24.1395, 2.9503, -25.0734]],
  ['#d4af37', [0.431734, 0.449355, 0.100131], [72.8494, 1.3806, 62.9138]],
  ['#2e8b57', [0.120786, 0.197329, 0.121873], [51.5339, -39.7153, 20.0522]],
] as const;

test.each(ROWS)('%s', (hex, xyz, lab) => {
  const light = linearOfHex(hex);
  xyzOfLinear(light).forEach((value, at) => {
    expect(Math.abs(value - xyz[at]!)).toBeLessThan(1e-6);
  });
  labOfLinear(light).forEach((value, at) => {
    expect(Math.abs(value - lab[at]!)).toBeLessThan(1e-4);
  });
});
