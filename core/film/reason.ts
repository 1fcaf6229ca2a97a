/** Why an answer is what it is: what a screen shows when somebody asks. Plain data; lengths m, times s, flow budgets 1/Pa. */
import type { Spread } from './ranges.ts';

export interface Reason {
  /** One plain sentence. */
  readonly says: string;
  /** The formula or table behind it, as text. */
  readonly formula: string;
  /** Numbers that went in, by name with unit. */
  readonly numbers: Readonly<Record<string, number>>;
  /** Who published it, or "own solution", "common practice, no source". */
  readonly source: string;
  /** Range when the viscosity is off by the usual factor; left out where it does not matter. */
  readonly range?: Spread;
  /** What the trade says. */
  readonly rule?: string;
}
