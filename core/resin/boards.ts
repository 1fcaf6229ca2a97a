import type { Board } from './model.ts';

/**
 * Boards a top is commonly poured on. MDF: conductivity 0.12 W/m/K (published range 0.10-0.15 at 600-740 kg/m3), heat
 * capacity 1500 J/kg/K. Plywood: design values 0.13 W/m/K, 500 kg/m3, 1600 J/kg/K (EN ISO 10456, from memory). Solid wood: conductivity
 * across the grain by `woodConductivity` at specific gravity 0.5 and 10 % moisture (Wood Handbook eq. 4-15).
 */
export const BOARDS = {
  'mdf-18': {
    thickness_m: 0.018,
    conductivity_W_mK: 0.12,
    density_kg_m3: 740,
    heatCapacity_J_kgK: 1500,
  },
  'mdf-19': {
    thickness_m: 0.01905,
    conductivity_W_mK: 0.12,
    density_kg_m3: 740,
    heatCapacity_J_kgK: 1500,
  },
  'plywood-18': {
    thickness_m: 0.018,
    conductivity_W_mK: 0.13,
    density_kg_m3: 500,
    heatCapacity_J_kgK: 1600,
  },
  'solid-38': {
    thickness_m: 0.038,
    conductivity_W_mK: 0.136,
    density_kg_m3: 550,
    heatCapacity_J_kgK: 1530,
  },
} as const satisfies Record<string, Board>;

export type BoardName = keyof typeof BOARDS;

/**
 * Thermal conductivity of solid wood across the grain, W/m/K, +-20 %: G (B + C M) + A (Wood Handbook, Forest Products
 * Laboratory 2010, eq. 4-15). Not for fibreboard, which it over-predicts.
 *
 * @param specificGravity G, ovendry mass and volume at moisture, 0.3 to 1.
 * @param moisture_percent M, 0 to 25.
 * @throws RangeError outside.
 */
export function woodConductivity(specificGravity: number, moisture_percent: number): number {
  if (!(specificGravity >= 0.3 && specificGravity <= 1)) {
    throw new RangeError(`specificGravity is ${specificGravity}; allowed 0.3 to 1`);
  }
  if (!(moisture_percent >= 0 && moisture_percent <= 25)) {
    throw new RangeError(`moisture_percent is ${moisture_percent}; allowed 0 to 25`);
  }
  return specificGravity * (0.1941 + 0.004064 * moisture_percent) + 0.01864;
}
