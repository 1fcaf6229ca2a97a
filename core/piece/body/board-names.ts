/** The boards a body is built of, and what they weigh. */

export const BOARD_NAMES = ['MDF', 'moisture-resistant MDF', 'plywood', 'solid wood'] as const;
export type BoardName = (typeof BOARD_NAMES)[number];

export interface BoardWeight {
  readonly density_kg_m3: number;
  /** How far one board may be from it, as a fraction. */
  readonly spread: number;
  readonly grained: boolean;
}

/**
 * For lifting, so rather heavy. MDF 700 to 800 kg/m3 (from memory); plywood 510 to 690, softwood to birch, and solid wood 450 to
 * 850, pine to oak (common practice, no source).
 */
export const BOARD_WEIGHTS: Readonly<Record<BoardName, BoardWeight>> = {
  MDF: { density_kg_m3: 740, spread: 0.08, grained: false },
  'moisture-resistant MDF': { density_kg_m3: 740, spread: 0.08, grained: false },
  plywood: { density_kg_m3: 600, spread: 0.15, grained: true },
  'solid wood': { density_kg_m3: 650, spread: 0.3, grained: true },
};

/** Boards are the same thickness when no further apart than this, m: 3/4 in and a nominal 19 mm are, 18 mm is not. */
export const SAME_THICKNESS_M = 0.0005;
