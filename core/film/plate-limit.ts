/**
 * What stays on a whole top whose edges are all wetted and free. Near each edge it is the edge solution; corners and the
 * middle share their losses; in the long run thickness no longer depends on what was poured:
 * h = f (3 a^2/(rho g Theta))^(1/3), a half the short side. Own solutions of h_Theta = (rho g/3) div(h^3 grad h).
 */

import { positive } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';
import { EDGE_LOSS_CONSTANT } from './edge-profile.ts';
import { interpolate, type MonotoneTable, monotoneTable } from './monotone-table.ts';
import { levelSpread_m2 } from './tilt.ts';

/** Outline of a top for these tables: long side over short side (Infinity for a strip), or a disc. */
export type PlateShape = { readonly aspect: number } | 'disc';

/** Short side over long side of the tabulated rectangles; 0 is the strip. */
const narrowness = [0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 1] as const;
const centreFactor = monotoneTable(narrowness, [0.8575, 0.8555, 0.8496, 0.8252, 0.7901, 0.7106]);
const meanFactor = monotoneTable(narrowness, [0.7459, 0.6967, 0.6802, 0.647, 0.6134, 0.5489]);
const DISC = { centre: 0.6729, mean: 0.5314 } as const;

/** sqrt(D)/a of the columns below; the share kept goes from 1 at 0. */
const reach = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 6, 10] as const;
/** Up to 0.4 the two edges of a strip do not feel each other: exactly the edge formula. */
const keptStrip = [
  ...[0.1, 0.2, 0.3, 0.4].map((at) => 1 - EDGE_LOSS_CONSTANT * at),
  0.8159,
  0.7796,
  0.7106,
  0.6492,
  0.5844,
  0.5313,
  0.4512,
  0.3944,
  0.352,
  0.2929,
  0.2249,
  0.1605,
];
const keptDisc = [
  0.9285, 0.8613, 0.7987, 0.7407, 0.6878, 0.6402, 0.5605, 0.4984, 0.4389, 0.3936, 0.3291, 0.2853, 0.2535,
  0.21, 0.1607, 0.1145,
];
const keptRectangles: readonly (readonly number[])[] = [
  keptStrip,
  // aspect 4
  [
    0.9547, 0.9105, 0.8677, 0.8261, 0.7858, 0.747, 0.6758, 0.6145, 0.551, 0.4997, 0.4232, 0.3694, 0.3294,
    0.2739, 0.2102, 0.15,
  ],
  // aspect 3
  [
    0.9518, 0.9053, 0.8604, 0.8171, 0.7757, 0.7361, 0.6643, 0.6029, 0.5398, 0.4891, 0.4139, 0.361, 0.3219,
    0.2676, 0.2053, 0.1465,
  ],
  // aspect 2
  [
    0.9461, 0.8947, 0.8457, 0.7993, 0.7555, 0.7144, 0.6411, 0.5796, 0.5175, 0.468, 0.3951, 0.3442, 0.3067,
    0.2548, 0.1953, 0.1393,
  ],
  // aspect 1.5
  [
    0.9404, 0.8841, 0.8311, 0.7815, 0.7353, 0.6926, 0.6178, 0.5564, 0.495, 0.4466, 0.3761, 0.3272, 0.2913,
    0.2418, 0.1853, 0.1321,
  ],
  // square
  [
    0.929, 0.8629, 0.8019, 0.7459, 0.695, 0.6491, 0.5715, 0.51, 0.4505, 0.4047, 0.339, 0.2942, 0.2616, 0.2168,
    0.1659, 0.1183,
  ],
];
const curve = (kept: readonly number[]): MonotoneTable => monotoneTable([0, ...reach], [1, ...kept]);
const rectangles = keptRectangles.map(curve);
const disc = curve(keptDisc);
const FAR = reach[reach.length - 1]!;

/** Short over long side; throws for an aspect below 1. */
function narrow(aspect: number): number {
  if (!(aspect >= 1)) throw new RangeError(`aspect = ${aspect}: allowed 1 (square) to Infinity (strip)`);
  return 1 / aspect;
}

export interface PlateLimit {
  /** Thickness in the middle, m. */
  readonly centre_m: number;
  /** Mean thickness over the top, m. */
  readonly mean_m: number;
}

/**
 * Most that a top with free wetted edges can still carry when a flow budget is spent, however much was poured:
 * f (3 a^2/(rho g Theta))^(1/3). Factors f for strip, rectangles and disc, exact to their four digits at the
 * tabulated aspects (1, 1.5, 2, 3, 4, strip) and within 0.3 % between them.
 * Worked: half short side 0.3 m, aspect 2, Theta 240 -> centre 3.88 mm, mean 3.05 mm.
 * @param halfShortSide_m above 0 (the radius of a disc) @param theta_per_Pa above 0
 * @throws RangeError outside these, or for an aspect below 1.
 */
export function plateLimit(
  halfShortSide_m: number,
  theta_per_Pa: number,
  shape: PlateShape,
  liquid: Liquid = DEFAULT_LIQUID,
): PlateLimit {
  const scale_m = plateScale_m(halfShortSide_m, theta_per_Pa, liquid);
  const factor = limitFactor(shape);
  return { centre_m: factor.centre * scale_m, mean_m: factor.mean * scale_m };
}

/**
 * The thickness (3 a^2/(rho g Theta))^(1/3) that measures what a free-edged top can carry, m. Worked: 0.3 m, Theta 240 -> 4.707 mm.
 * @param halfShortSide_m above 0 @param theta_per_Pa above 0
 * @throws RangeError outside these.
 */
export function plateScale_m(
  halfShortSide_m: number,
  theta_per_Pa: number,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  positive('halfShortSide_m', halfShortSide_m, 'm');
  positive('theta_per_Pa', theta_per_Pa, '1/Pa');
  return Math.cbrt((3 * halfShortSide_m ** 2) / (specificWeight_N_m3(liquid) * theta_per_Pa));
}

function limitFactor(shape: PlateShape): { readonly centre: number; readonly mean: number } {
  if (shape === 'disc') return DISC;
  const at = narrow(shape.aspect);
  return { centre: interpolate(centreFactor, at), mean: interpolate(meanFactor, at) };
}

/**
 * Share of a pour that stays on a top with all edges wetted and free, 0 to 1. From tables of the full solution against
 * sqrt(D)/a, within 0.002 of it. Later
 * than sqrt(D) = 10 a it follows the long-time law with a shifted start.
 * Worked: 0.6 by 1.2 m, 3 mm, Theta 240 -> 0.752 stays (the perimeter formula says 0.719).
 * @param thickness_m poured, above 0 @param theta_per_Pa from 0 @param halfShortSide_m above 0 (radius of a disc)
 * @throws RangeError outside these, or for an aspect below 1.
 */
export function plateKeptShare(
  thickness_m: number,
  theta_per_Pa: number,
  halfShortSide_m: number,
  shape: PlateShape,
  liquid: Liquid = DEFAULT_LIQUID,
): number {
  positive('thickness_m', thickness_m, 'm');
  const spread =
    levelSpread_m2(thickness_m, theta_per_Pa, liquid) /
    positive('halfShortSide_m', halfShortSide_m, 'm') ** 2;
  const at = Math.sqrt(spread);
  if (at === 0) return 1;
  const factor = limitFactor(shape).mean;
  if (at > FAR) {
    const last = keptAt(FAR, shape);
    return factor / Math.cbrt(spread + Math.max(0, (factor / last) ** 3 - FAR * FAR));
  }
  return keptAt(at, shape);
}

function keptAt(at: number, shape: PlateShape): number {
  const kept =
    shape === 'disc'
      ? interpolate(disc, at)
      : interpolate(
          monotoneTable(
            narrowness,
            rectangles.map((t) => interpolate(t, at)),
          ),
          narrow(shape.aspect),
        );
  // never less than edges that know nothing of each other would leave
  return Math.max(kept, 1 - EDGE_LOSS_CONSTANT * at * edgesPerHalfSide(shape));
}

/** Perimeter times half short side over area. */
function edgesPerHalfSide(shape: PlateShape): number {
  return shape === 'disc' ? 2 : 1 + narrow(shape.aspect);
}
