/** What a shop may say of how evenly it works, in figures a person can judge. Pure. */
import { DEFAULT_SPREADS, type PourSpreads, type TimedKind } from '#core/pour/chance/spreads.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { settle, trimmed } from '#core/quantity/rounding.ts';
import { readDecimal } from '#core/quantity/typed.ts';
import type { System } from '#core/quantity/units.ts';
import { KIND_WORDS } from '#web/chance/chance-words.ts';

export interface SpreadRow {
  readonly key: string;
  readonly label: string;
  readonly unit: (system: System) => string;
  /** In the unit shown. */
  readonly min: (system: System) => number;
  readonly max: (system: System) => number;
  readonly show: (spreads: PourSpreads, system: System) => number;
  readonly put: (spreads: PourSpreads, shown: number, system: System) => PourSpreads;
}

const always =
  <T>(value: T) =>
  () =>
    value;

function stepRows(kind: TimedKind): readonly SpreadRow[] {
  // A figure that was typed rests on no runs.
  const put = (spreads: PourSpreads, part: { factor?: number; ln?: number }): PourSpreads => ({
    ...spreads,
    steps: { ...spreads.steps, [kind]: { ...spreads.steps[kind], ...part, runs: 0 } },
  });
  return [
    {
      key: `${kind} middle`,
      label: `${KIND_WORDS[kind]}: really takes`,
      unit: always('times as planned'),
      min: always(0.1),
      max: always(10),
      show: ({ steps }) => steps[kind].factor,
      put: (spreads, factor) => put(spreads, { factor }),
    },
    {
      key: `${kind} spread`,
      label: `${KIND_WORDS[kind]}: two in three within`,
      unit: always('times more or less'),
      min: always(1),
      max: always(Math.exp(1.5)),
      show: ({ steps }) => Math.exp(steps[kind].ln),
      put: (spreads, times) => put(spreads, { ln: Math.min(1.5, Math.log(times)) }),
    },
  ];
}

const kelvin = (system: System) => (system === 'us' ? 1.8 : 1);

export const SPREAD_ROWS: readonly SpreadRow[] = [
  ...(Object.keys(KIND_WORDS) as TimedKind[]).flatMap(stepRows),
  {
    key: 'common',
    label: 'Of that, what a whole day has in common',
    unit: always('%'),
    min: always(0),
    max: always(100),
    show: ({ common }) => 100 * common,
    put: (spreads, percent) => ({ ...spreads, common: percent / 100 }),
  },
  {
    key: 'temperature',
    label: 'Shop against the thermometer: two in three within',
    unit: (system) => (system === 'us' ? '°F' : '°C'),
    min: always(0),
    max: (system) => 10 * kelvin(system),
    show: ({ temperature_K }, system) => temperature_K * kelvin(system),
    put: (spreads, shown, system) => ({ ...spreads, temperature_K: Math.min(10, shown / kelvin(system)) }),
  },
  {
    key: 'pause chance',
    label: 'Pours in which something stops the work',
    unit: always('%'),
    min: always(0),
    max: always(100),
    show: ({ pause }) => 100 * pause.chance,
    put: (spreads, percent) => ({ ...spreads, pause: { ...spreads.pause, chance: percent / 100 } }),
  },
  {
    key: 'pause length',
    label: 'It stops the work for about',
    unit: always('s'),
    min: always(1),
    max: always(7200),
    show: ({ pause }) => pause.mid_s,
    put: (spreads, mid_s) => ({ ...spreads, pause: { ...spreads.pause, mid_s } }),
  },
  {
    key: 'pause spread',
    label: 'A stop is two in three within',
    unit: always('times more or less'),
    min: always(1),
    max: always(Math.exp(1.5)),
    show: ({ pause }) => Math.exp(pause.ln),
    put: (spreads, times) => ({
      ...spreads,
      pause: { ...spreads.pause, ln: Math.min(1.5, Math.log(times)) },
    }),
  },
];

export function showSpread(row: SpreadRow, spreads: PourSpreads, system: System): string {
  return trimmed(settle(row.show(spreads, system)), 2);
}

/** Whether the figure is another than the shop default, as far as it is shown. */
export function isOwn(row: SpreadRow, spreads: PourSpreads, system: System): boolean {
  return showSpread(row, spreads, system) !== showSpread(row, DEFAULT_SPREADS, system);
}

export function backToDefault(row: SpreadRow, spreads: PourSpreads, system: System): PourSpreads {
  return row.put(spreads, row.show(DEFAULT_SPREADS, system), system);
}

/** A plain number in the unit of the row. */
export function readSpread(
  row: SpreadRow,
  spreads: PourSpreads,
  text: string,
  system: System,
): Result<PourSpreads> {
  const unit = row.unit(system);
  const [min, max] = [row.min(system), row.max(system)];
  const allowed = `${trimmed(min, 2)} to ${trimmed(max, 2)} ${unit}`;
  const refuse = (code: string, message: string) =>
    bad<PourSpreads>({ path: `spreads.${row.key}`, code, message, read: text, allowed });
  const bare = text.trim().endsWith(unit) ? text.trim().slice(0, -unit.length).trim() : text.trim();
  const read = readDecimal(bare);
  if ('why' in read) return refuse('spread.unreadable', `${row.label}: a number is needed.`);
  // The bound is shown rounded; a hair beyond it is the bound.
  if (read.value < min - 0.005 || read.value > max + 0.005)
    return refuse('spread.range', `${row.label}: outside what makes sense.`);
  return good(row.put(spreads, Math.min(max, Math.max(min, read.value)), system));
}
