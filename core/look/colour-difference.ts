/**
 * CIEDE2000 colour difference (ISO/CIE 11664-6; Sharma, Wu & Dalal 2005, Color Research and Application 30(1), 21-30, whose
 * steps 1 to 3 these are), with all three weights 1. About 1 can just be seen side by side; a screen is off by 3 at best.
 */
import type { Lab } from './lab.ts';

const DEGREE = Math.PI / 180;
const POWER = 25 ** 7;

/**
 * Difference of two colours. Symmetric, 0 for equal ones; throws RangeError unless all six numbers are finite.
 *
 * colourDifference([50, 2.6772, -79.7751], [50, 0, -82.7485]) is 2.0425.
 */
export function colourDifference(one: Lab, other: Lab): number {
  if (![...one, ...other].every(Number.isFinite))
    throw new RangeError(`finite L*a*b* values are needed, not ${[...one, ...other].join(', ')}`);
  const meanC7 = ((Math.hypot(one[1], one[2]) + Math.hypot(other[1], other[2])) / 2) ** 7;
  const stretch = 1.5 - 0.5 * Math.sqrt(meanC7 / (meanC7 + POWER));
  const [p, q] = [polar(one, stretch), polar(other, stretch)];
  const grey = p.c * q.c === 0;

  let turn = q.h - p.h;
  if (turn > 180) turn -= 360;
  else if (turn < -180) turn += 360;
  if (grey) turn = 0;
  const dL = q.l - p.l;
  const dC = q.c - p.c;
  const dH = 2 * Math.sqrt(p.c * q.c) * Math.sin((turn / 2) * DEGREE);

  const l = (p.l + q.l) / 2;
  const c = (p.c + q.c) / 2;
  const h = grey ? p.h + q.h : meanHue(p.h, q.h);
  const t =
    1 -
    0.17 * Math.cos((h - 30) * DEGREE) +
    0.24 * Math.cos(2 * h * DEGREE) +
    0.32 * Math.cos((3 * h + 6) * DEGREE) -
    0.2 * Math.cos((4 * h - 63) * DEGREE);
  const off50 = (l - 50) ** 2;
  const byL = dL / (1 + (0.015 * off50) / Math.sqrt(20 + off50));
  const byC = dC / (1 + 0.045 * c);
  const byH = dH / (1 + 0.015 * c * t);
  const c7 = c ** 7;
  const blueTurn = 60 * Math.exp(-(((h - 275) / 25) ** 2)) * DEGREE;
  const rotation = -2 * Math.sqrt(c7 / (c7 + POWER)) * Math.sin(blueTurn);
  // Rounding can leave the sum a hair below 0 for two nearly equal blues.
  return Math.sqrt(Math.max(0, byL ** 2 + byC ** 2 + byH ** 2 + rotation * byC * byH));
}

function polar([l, a, b]: Lab, stretch: number) {
  const hue = Math.atan2(b, a * stretch) / DEGREE;
  return { l, c: Math.hypot(a * stretch, b), h: hue < 0 ? hue + 360 : hue };
}

/** Mean of two hues, degrees, taken over the shorter way round. */
function meanHue(h1: number, h2: number): number {
  const sum = h1 + h2;
  if (Math.abs(h1 - h2) <= 180) return sum / 2;
  return (sum < 360 ? sum + 360 : sum - 360) / 2;
}
