/** A chance in words: of a hundred pours, how many; and what durations are assumed to do. Pure. */
import type { Chance } from '#core/pour/chance/chance.ts';
import { DEFAULT_SPREADS, type StepSpread, type TimedKind } from '#core/pour/chance/spreads.ts';
import type { WayCost } from '#core/pour/chance/ways-chance.ts';
import { formatDuration, formatMass } from '#core/quantity/format.ts';
import { fixed } from '#core/quantity/rounding.ts';

/** Two-sided 95 % of a normal. */
const SURE_z = 1.96;

/** "84 in 100"; one that never, or always, came is told as fewer, or more, than what so few pours can tell. */
export function inHundred(chance: number): string {
  if (chance > 0.995) return 'more than 99 in 100';
  if (chance < 0.005) return 'fewer than 1 in 100';
  return `${Math.round(100 * chance)} in 100`;
}

/** "about 84 in 100 (± 5)". */
export function chanceSays({ chance, standardError }: Pick<Chance, 'chance' | 'standardError'>): string {
  if (chance > 0.995 || chance < 0.005) return inHundred(chance);
  return `about ${inHundred(chance)} (± ${Math.max(1, Math.ceil(100 * SURE_z * standardError))})`;
}

/** "2 min short" or "40 s spare": how the strip's ends are said. */
export function spareOrShort(slack_s: number): string {
  return slack_s < 0 ? `${formatDuration(-slack_s)} short` : `${formatDuration(slack_s)} spare`;
}

/** The three figures of the slack in one sentence. */
export function slackSays({ low_s, mid_s, high_s }: Chance['slack']): string {
  return `The middle pour has ${spareOrShort(mid_s)}. One in twenty does worse than ${spareOrShort(low_s)}, one in twenty better than ${spareOrShort(high_s)}.`;
}

export function weakestSays({ steps, weakest }: Chance): string {
  const step = steps.find(({ id }) => id === weakest);
  return step === undefined
    ? 'No step was late in any of the pours thrown.'
    : `Most often breaks: ${step.label} (${inHundred(step.breaks)} pours).`;
}

/** What a way asks for, each on its own: "40 g more resin", "2 min more work", "one person more", "recoat 2 h later". */
export function costWords(cost: WayCost): string[] {
  const words: string[] = [];
  const amount = (value: number, least: number, say: (of: number) => string, more: string, less: string) => {
    if (Math.abs(value) >= least) words.push(`${say(Math.abs(value))} ${value > 0 ? more : less}`);
  };
  if (cost.people !== 0) words.push(`${cost.people === 1 ? 'one person' : `${cost.people} people`} more`);
  amount(
    cost.resin_kg,
    0.0005,
    (kg) => formatMass(kg, 'metric', { decimals: 0 }),
    'more resin',
    'less resin',
  );
  amount(cost.hands_s, 5, formatDuration, 'more work', 'less work');
  if (cost.recoat_s !== null) amount(cost.recoat_s, 60, formatDuration, 'later recoat', 'sooner recoat');
  return words.length === 0 ? ['nothing to speak of'] : words;
}

export const KIND_WORDS: Readonly<Record<TimedKind, string>> = {
  mix: 'Mixing a cup',
  pour: 'Pouring and spreading a cup',
  meld: 'Melding',
  'wrap edges': 'Working the edges',
  torch: 'Torching',
  'scrape drips': 'Scraping drips',
};

/** "two times in three 0.86 to 1.16 times as planned". */
export function spreadSays({ factor, ln }: StepSpread): string {
  if (ln === 0) return `always ${fixed(factor, 2)} times as planned`;
  return `${fixed(factor * Math.exp(-ln), 2)} to ${fixed(factor * Math.exp(ln), 2)} times as planned`;
}

/** What a spread rests on. */
export function restsOn(kind: TimedKind, spread: StepSpread): string {
  if (spread.runs > 0) return `${spread.runs} ${spread.runs === 1 ? 'run' : 'runs'} of this shop`;
  const plain = DEFAULT_SPREADS.steps[kind];
  return plain.factor === spread.factor && plain.ln === spread.ln
    ? 'shop default: common practice, no source'
    : 'typed in by the shop';
}
