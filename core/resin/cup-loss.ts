import type { EndLoss } from '#core/numeric/column.ts';
import { requirePositive, requireRange } from './check.ts';
import { surfaceCoefficient } from './convection.ts';
import { tabulatedLoss } from './loss-table.ts';

/** Wall of a thin plastic cup (1 mm, 0.2 W/m/K), m2 K/W. */
export const CUP_WALL_m2K_W = 0.005;
/** Base of a cup standing on a wooden bench, W/m2/K. */
export const CUP_BASE_W_m2K = 3.5;

/** A filled cup taken as a cylinder. */
export interface CupShape {
  readonly diameter_m: number;
  readonly depth_m: number;
}

/**
 * Cylinder of a volume; without a diameter its height equals its diameter. Throws RangeError unless both are positive.
 */
export function cupShape(volume_m3: number, diameter_m?: number): CupShape {
  requirePositive('volume_m3', volume_m3);
  if (diameter_m !== undefined) requireRange('diameter_m', diameter_m, 1e-3, 2);
  const diameter = diameter_m ?? ((4 * volume_m3) / Math.PI) ** (1 / 3);
  return { diameter_m: diameter, depth_m: (4 * volume_m3) / (Math.PI * diameter * diameter) };
}

/** Surface of the liquid in a cup, m2: wall, top and base. */
export function cupSurfaces(shape: CupShape): { wall_m2: number; top_m2: number; base_m2: number } {
  const base = (Math.PI * shape.diameter_m ** 2) / 4;
  return { wall_m2: Math.PI * shape.diameter_m * shape.depth_m, top_m2: base, base_m2: base };
}

/**
 * Resistance between the mean of the liquid and its surface, K/W: L/(5 k S), L = 3V/S. Exact for a sphere that generates heat
 * evenly and loses it evenly (mean excess q R^2/15k); within a few percent of axisymmetric runs for a cup.
 */
export function innerResistance(shape: CupShape, conductivity_W_mK: number): number {
  requirePositive('conductivity_W_mK', conductivity_W_mK);
  const { wall_m2, top_m2, base_m2 } = cupSurfaces(shape);
  const surface = wall_m2 + top_m2 + base_m2;
  const volume = base_m2 * shape.depth_m;
  return (3 * volume) / (5 * conductivity_W_mK * surface * surface);
}

/**
 * Heat a cup loses to the air against the excess of its mean temperature: convection and radiation of wall and top at their
 * own temperature, wall in series, base to the bench, all in series with the liquid's inner resistance. Tabulated
 * once with air at `air_K`, cubic between the points, odd in the excess and straight beyond 320 K.
 */
export function cupLoss(shape: CupShape, conductivity_W_mK: number, air_K: number): EndLoss {
  const inner = innerResistance(shape, conductivity_W_mK);
  const { wall_m2, top_m2, base_m2 } = cupSurfaces(shape);
  const acrossTop = shape.diameter_m / 4;
  let wall = 8;
  let top = 8;
  return tabulatedLoss((excess) => {
    // Both coefficients belong to the outside of their face, whose excess follows from the power: a few rounds settle it.
    let power = 0;
    for (let pass = 0; pass < 30; pass++) {
      const throughWall = 1 / (1 / wall + CUP_WALL_m2K_W);
      const conductance = throughWall * wall_m2 + top * top_m2 + CUP_BASE_W_m2K * base_m2;
      const next = excess / (1 / conductance + inner);
      const skin = excess - next * inner;
      wall = surfaceCoefficient('side', air_K + skin / (1 + CUP_WALL_m2K_W * wall), air_K, shape.depth_m);
      top = surfaceCoefficient('up', air_K + skin, air_K, acrossTop);
      if (Math.abs(next - power) <= 1e-7 * next) return next;
      power = next;
    }
    return power;
  });
}

/** A loss times a factor, 0.1 to 10. Throws RangeError outside. */
export function scaledLoss(loss: EndLoss, factor: number): EndLoss {
  requireRange('factor', factor, 0.1, 10);
  if (factor === 1) return loss;
  return { flow: (excess) => factor * loss.flow(excess), slope: (excess) => factor * loss.slope(excess) };
}
