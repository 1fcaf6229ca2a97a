/** How finely things are moved: by the tape's own marks, by finer ones, or freely. */
import type { System } from '#core/quantity/units.ts';
import type { Grid } from './grid.ts';

export type GridChoice = 'tape' | 'fine' | 'free';

export const GRID_CHOICES: readonly GridChoice[] = ['tape', 'fine', 'free'];

export function gridOf(choice: GridChoice, system: System): Grid {
  return { system, snaps: choice === 'tape', ...(choice === 'free' ? { exact: true } : {}) };
}

export function gridWords(choice: GridChoice, system: System): string {
  if (choice === 'free') return 'free';
  if (system === 'us') return choice === 'tape' ? '1/16 in' : '1/64 in';
  return choice === 'tape' ? '1 mm' : '0.1 mm';
}
