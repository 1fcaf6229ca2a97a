/**
 * How far a step takes longer or shorter than planned. Shop defaults until the shop's own runs have taught better: common practice,
 * no source. A duration is planned x exp(normal x ln): half the pours take longer than planned, half shorter.
 */
import { within } from '#core/quantity/domain.ts';
import type { StepKind } from '../plan.ts';

export type TimedKind = Exclude<StepKind, 'hands off'>;

/** What a shop knows of one kind of step. */
export interface StepSpread {
  /** What the step really takes over what is planned, in the middle; 1: as planned. 0.1 to 10. */
  readonly factor: number;
  /** Standard deviation of the logarithm of the duration, 0 to 1.5. */
  readonly ln: number;
  /** Runs it rests on; 0: the shop default. */
  readonly runs: number;
}

export interface PourSpreads {
  readonly steps: Readonly<Record<TimedKind, StepSpread>>;
  /** Share of a step's variance that a whole pour has in common (a slow day, an awkward piece), 0 to 1. */
  readonly common: number;
  /** Standard deviation of the shop's temperature against what was read, K, 0 to 10. Air, board and resin go together. */
  readonly temperature_K: number;
  /** Something stops the work once (telephone, a glove torn): its chance a pour, and how long it takes. */
  readonly pause: { readonly chance: number; readonly mid_s: number; readonly ln: number };
}

const unlearned = (ln: number): StepSpread => ({ factor: 1, ln, runs: 0 });

export const DEFAULT_SPREADS: PourSpreads = {
  steps: {
    mix: unlearned(0.15),
    pour: unlearned(0.25),
    meld: unlearned(0.3),
    'wrap edges': unlearned(0.3),
    torch: unlearned(0.25),
    'scrape drips': unlearned(0.3),
  },
  common: 0.4,
  temperature_K: 0.7,
  pause: { chance: 0.08, mid_s: 120, ln: 0.6 },
};

/** @throws RangeError naming the figure that is out of range. */
export function checkSpreads(spreads: PourSpreads): void {
  for (const [kind, { factor, ln }] of Object.entries(spreads.steps)) {
    within(`factor of "${kind}"`, factor, 0.1, 10);
    within(`ln of "${kind}"`, ln, 0, 1.5);
  }
  within('common', spreads.common, 0, 1);
  within('temperature_K', spreads.temperature_K, 0, 10, 'K');
  within('pause.chance', spreads.pause.chance, 0, 1);
  within('pause.mid_s', spreads.pause.mid_s, 1, 7200, 's');
  within('pause.ln', spreads.pause.ln, 0, 1.5);
}
