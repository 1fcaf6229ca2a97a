/** Where the charts of a card are computed: round figures in the units on screen. */
import type { System } from '#core/quantity/units.ts';

/** Temperatures of the chart to hang up, in °F or °C. */
export function hangUpTemperatures(system: System): readonly number[] {
  return system === 'us' ? [60, 65, 70, 75, 80, 85, 90, 95] : [16, 18, 20, 22, 24, 26, 28, 30, 32, 34];
}

/** Cups are weighed in grams either way. */
export const CUP_MASSES_kg: readonly number[] = [0.05, 0.1, 0.2, 0.3, 0.5, 0.75, 1, 1.5, 2, 3];
