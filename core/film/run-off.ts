/** Run-off of a flood or colour coat over edges that have been wiped over, so that resin may leave the top. */

import { notNegative, positive } from '#core/quantity/domain.ts';
import { arrisShare } from './arris.ts';
import { DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { EDGE_LOSS_CONSTANT, edgeLossConstant, edgeTaper_m, freeEdgeLoss_m2 } from './edge-profile.ts';
import { type PlateShape, plateKeptShare } from './plate-limit.ts';

export interface RunOffInput {
  /** Mean thickness poured on the top, m, above 0. */
  readonly thickness_m: number;
  /** Flow budget still to come when the film is even and the edges are wetted, 1/Pa, from 0. */
  readonly thetaLeft_per_Pa: number;
  /** Length of wetted free edge, m, from 0; dammed, taped and wall edges do not count. */
  readonly edgeLength_m: number;
  /** Radius of the top arris, m, from 0. */
  readonly arrisRadius_m: number;
  /** Area of the top, m2, above 0. */
  readonly area_m2: number;
  /** Film known to stay on the arris, m, from 0 (a brushed or thickened edge); counted as the whole film if above it. */
  readonly filmOnArris_m?: number;
  /** Half the short side of a rectangle, or the radius of a disc, m: with a shape it brings in the corners. */
  readonly halfShortSide_m?: number;
  /** Long side over short side, from 1; or `disc`. */
  readonly aspect?: number;
  readonly disc?: boolean;
  readonly liquid?: Liquid;
}

export interface RunOff {
  /** Lost per metre of wetted edge after all limits, m2 (m3/m); 0 when no edge is wetted. */
  readonly lossPerMetre_m2: number;
  /** Lost in all, m3; never more than was poured. */
  readonly volume_m3: number;
  /** Whether the size of the top made the loss smaller, by 1 % or more, than edge length times the loss of a wide top. */
  readonly capped: boolean;
  /** Distance from a free edge at which the film has 90 % of the poured thickness, m, without the hold of the arris. */
  readonly taperDepth_m: number;
  /** Mean thickness that stays, m. */
  readonly remainingMean_m: number;
  /** Share of the free-edge loss that arris or film on the arris lets pass, 0 to 1. */
  readonly passes: number;
}

/**
 * How much of a pour leaves over its wetted edges by the time the flow budget is spent.
 *
 * Wide top: 0.36832 h0 sqrt(D) per metre, D = rho g h0^3 Theta/3, times what the arris passes. The arris acts through its
 * radius (surface tension) and through the film it keeps; both describe one hold, so the stronger one counts, not the product.
 * Size of the top: edges that have met share what is left. Each metre of edge drains area/edgeLength, so the loss is held to
 * that of a strip of this half-width, and with a shape given to that of the full solution for it, in which corners are not
 * counted twice. Losing over part of the perimeter never loses more than over all of it.
 *
 * Valid for level tops 0.5 to 5 mm thick with a free drip below; expected accuracy 2 % of the free-edge loss, 10 to 15 % of
 * it through the arris, and +22/-18 % from the viscosity ({@link rangeFromViscosity} with power 1/2).
 * Worked: 0.6 by 1.2 m, Theta 240, arris of no hold: 1.5 mm loses 9.5 % of the pour, 3 mm 24.8 %; an arris of 3 mm lets
 * 0.68 and 0.90 of that pass.
 * Source: own solutions (see edge-profile.ts, arris.ts, plate-limit.ts).
 * @throws RangeError outside the ranges of {@link RunOffInput}, or when a shape comes without halfShortSide_m or the reverse.
 */
export function runOff(input: RunOffInput): RunOff {
  const thickness_m = positive('thickness_m', input.thickness_m, 'm');
  const theta = notNegative('thetaLeft_per_Pa', input.thetaLeft_per_Pa, '1/Pa');
  const edge_m = notNegative('edgeLength_m', input.edgeLength_m, 'm');
  const area_m2 = positive('area_m2', input.area_m2, 'm2');
  const liquid = input.liquid ?? DEFAULT_LIQUID;
  const poured_m3 = thickness_m * area_m2;
  const passes = sharePassing(input, liquid);
  const taperDepth_m = edgeTaper_m(thickness_m, theta, 0.9, liquid);
  const shape = shapeOf(input);
  if (edge_m === 0) {
    return {
      lossPerMetre_m2: 0,
      volume_m3: 0,
      capped: false,
      taperDepth_m,
      remainingMean_m: thickness_m,
      passes,
    };
  }
  const wide_m3 = freeEdgeLoss_m2(thickness_m, theta, liquid) * edge_m;
  const lost = (half_m: number, of: PlateShape): number =>
    poured_m3 * (1 - plateKeptShare(thickness_m, theta, half_m, of, liquid));
  let free_m3 = Math.min(wide_m3, lost(area_m2 / edge_m, { aspect: Number.POSITIVE_INFINITY }));
  if (shape !== undefined) free_m3 = Math.min(free_m3, lost(shape.half_m, shape.of));
  const volume_m3 = free_m3 * passes;
  return {
    lossPerMetre_m2: volume_m3 / edge_m,
    volume_m3,
    capped: free_m3 < 0.99 * wide_m3,
    taperDepth_m,
    remainingMean_m: thickness_m - volume_m3 / area_m2,
    passes,
  };
}

function sharePassing(input: RunOffInput, liquid: Liquid): number {
  const byRadius = arrisShare(input.thickness_m, input.arrisRadius_m, liquid, input.thetaLeft_per_Pa);
  if (input.filmOnArris_m === undefined) return byRadius;
  const held = Math.min(1, notNegative('filmOnArris_m', input.filmOnArris_m, 'm') / input.thickness_m);
  return Math.min(byRadius, edgeLossConstant(held) / EDGE_LOSS_CONSTANT);
}

function shapeOf(input: RunOffInput): { readonly half_m: number; readonly of: PlateShape } | undefined {
  const { halfShortSide_m, aspect } = input;
  const disc = input.disc === true;
  if (halfShortSide_m === undefined && aspect === undefined && !disc) return undefined;
  if (halfShortSide_m === undefined || disc === (aspect !== undefined))
    throw new RangeError(
      `halfShortSide_m = ${halfShortSide_m}, aspect = ${aspect}, disc = ${disc}: allowed halfShortSide_m with either aspect or disc`,
    );
  return {
    half_m: positive('halfShortSide_m', halfShortSide_m, 'm'),
    of: disc ? 'disc' : { aspect: aspect! },
  };
}
