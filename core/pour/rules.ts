/** The trade's rule of thumb beside each step. Common practice, no source, unless it says otherwise. */
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import type { StepKind } from './plan.ts';

const practice = (rule: string) => `${rule} (Common practice, no source.)`;

const TORCH_NEAR_m = 0.1;
const TORCH_FAR_m = 0.2;

const rules: Readonly<Record<StepKind, (system: System) => string>> = {
  mix: () =>
    practice(
      'Three minutes slow, scrape sides and bottom twice, then a clean cup and a minute or two more; colour only what is mixed.',
    ),
  pour: () =>
    practice(
      'Out of the cup as soon as it is mixed, spread within 5 minutes; mix, pour and spread within half of the pot life. Never scrape the cup walls onto the work.',
    ),
  meld: () => practice('Stop when the wet edge no longer closes; worked longer, colours turn to mud.'),
  'wrap edges': () =>
    practice(
      'Push field resin over each edge by hand and feed bare spots again every 5 to 8 minutes; an edge worked late holds more.',
    ),
  torch: (system) =>
    practice(
      `First pass 3 to 5 minutes after spreading, the second 10 to 15 minutes later; flame ${formatLength(TORCH_NEAR_m, system, { fraction: 2 })} to ${formatLength(TORCH_FAR_m, system, { fraction: 2 })} off, always moving, never longer than a second in one place, never after a skin.`,
    ),
  'scrape drips': () =>
    practice(
      'A gloved finger or stick under the lower arris at 20, 40, 60 and 90 minutes, then every half hour until gel.',
    ),
  'hands off': () => practice('Fans off, dust settled, cover over it, nobody leans on the bench.'),
};

/** The rule beside a step, its figures in the shop's units. */
export function stepRule(kind: StepKind, system: System): string {
  return rules[kind](system);
}

export const STAGE_RULES = {
  working: practice('When the wet edge stops closing, stop.'),
  levelling: practice('A comb mark that stays has told you.'),
  gel: practice('Strings between glove and film turn to rubber.'),
  recoat: practice(
    'Tacky, prints lightly, nothing comes off on the glove: the next coat bonds without sanding.',
  ),
  late: practice(
    'Too late to recoat wet on tacky: wash with warm water, dry, abrade P220 to P320 evenly matt, wipe, then coat.',
  ),
  hard: practice('A thumb turned on it leaves no mark.'),
  sand: practice('Sands to dust; if the paper gums up, wait.'),
  use: practice('A day to handle, three days for light use, a week for normal use, up to a month for heat.'),
} as const;
