/** The shop's working speeds in words and in units a person times them in; the store keeps SI. Pure. */
import type { PieceRules } from '#core/piece/piece-rules.ts';
import type { ShopRates } from '#core/pour/shop-rates.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { settle, trimmed } from '#core/quantity/rounding.ts';
import { readDecimal } from '#core/quantity/typed.ts';
import type { System } from '#core/quantity/units.ts';

export interface RateUnit {
  readonly unit: string;
  /** Shown value = SI value x this. */
  readonly times: number;
}

export interface RateRow {
  readonly key: keyof ShopRates;
  readonly label: string;
  readonly us: RateUnit;
  readonly metric: RateUnit;
  /** SI, inclusive: what the store takes. */
  readonly min: number;
  readonly max: number;
}

const SQ_FT_M2 = 0.09290304;
const FT_M = 0.3048;
const both = (unit: string, times: number) => ({ us: { unit, times }, metric: { unit, times } });

const LENGTH = { us: { unit: 'in', times: 1 / 0.0254 }, metric: { unit: 'mm', times: 1000 } };
const wood = (key: keyof PieceRules, label: string, max = 0.5): RateRow => ({
  key,
  label,
  ...LENGTH,
  min: 0,
  max,
});

/** How much wood is left beside what is cut out. */
export const WOOD_ROWS: readonly RateRow[] = [
  wood('frontRail_m', 'Rim of a bowl to a front edge'),
  wood('sideRail_m', 'Rim of a bowl to a side'),
  wood('backRail_m', 'Rim of a bowl to the back'),
  wood('seamRail_m', 'Rim of a bowl to a seam'),
  wood('betweenBowls_m', 'Between the rims of two bowls'),
  wood('tapCentre_m', 'Centre of a tap hole to an edge, a rim or the next'),
  wood('insideRadius_m', 'Radius of an inside corner', 0.2),
];

/** How fast the work goes. */
export const PACE_ROWS: readonly RateRow[] = [
  { key: 'mix_s', label: 'Mixing one cup up to 2 kg', ...both('s', 1), min: 1, max: 3600 },
  { key: 'mixExtra_s_per_kg', label: 'More for each kg beyond', ...both('s/kg', 1), min: 0, max: 3600 },
  { key: 'tint_s', label: 'Tinting a cup', ...both('s', 1), min: 0, max: 3600 },
  { key: 'pour_kg_per_s', label: 'Getting it out of the cup', ...both('g/s', 1000), min: 0.0001, max: 10 },
  {
    key: 'spread_m2_per_s',
    label: 'Spreading',
    us: { unit: 'sq ft/min', times: 60 / SQ_FT_M2 },
    metric: { unit: 'm²/min', times: 60 },
    min: 0.00001,
    max: 1,
  },
  {
    key: 'meld_s_per_m2',
    label: 'Melding',
    us: { unit: 's/sq ft', times: SQ_FT_M2 },
    metric: { unit: 's/m²', times: 1 },
    min: 0,
    max: 36_000,
  },
  { key: 'leastMeld_s', label: 'Melding at the least', ...both('s', 1), min: 0, max: 3600 },
  {
    key: 'wrap_m_per_s',
    label: 'Working the edges',
    us: { unit: 'ft/min', times: 60 / FT_M },
    metric: { unit: 'm/min', times: 60 },
    min: 0.0001,
    max: 10,
  },
  {
    key: 'wrapPatience_s',
    label: 'Longest wait for the edges',
    ...both('min', 1 / 60),
    min: 0,
    max: 14_400,
  },
  {
    key: 'torch_m2_per_s',
    label: 'Torching',
    us: { unit: 'sq ft/min', times: 60 / SQ_FT_M2 },
    metric: { unit: 'm²/min', times: 60 },
    min: 0.00001,
    max: 1,
  },
  { key: 'leastTorch_s', label: 'Torching at the least', ...both('s', 1), min: 0, max: 3600 },
  { key: 'scrapeEvery_s', label: 'Drips are scraped every', ...both('min', 1 / 60), min: 60, max: 86_400 },
  {
    key: 'scrape_m_per_s',
    label: 'Scraping drips',
    us: { unit: 'ft/min', times: 60 / FT_M },
    metric: { unit: 'm/min', times: 60 },
    min: 0.0001,
    max: 10,
  },
  { key: 'scaleStep_kg', label: 'Step of the scale', ...both('g', 1000), min: 0.000001, max: 1 },
  { key: 'cupFilmShare', label: 'Left behind in a cup', ...both('%', 100), min: 0, max: 0.5 },
  { key: 'leastCupFilm_kg', label: 'Left behind at the least', ...both('g', 1000), min: 0, max: 1 },
  { key: 'tightUnder_s', label: 'A pour is tight under a slack of', ...both('s', 1), min: 0, max: 86_400 },
];

export const RATE_ROWS: readonly RateRow[] = [...PACE_ROWS, ...WOOD_ROWS];

/** At most four digits after the point, none that say nothing. */
export function showRate(row: RateRow, system: System, value: number): string {
  const shown = settle(value * row[system].times);
  return trimmed(shown, shown >= 100 ? 0 : shown >= 10 ? 1 : shown >= 1 ? 2 : 4);
}

/** A plain number in the unit of the row, as SI. */
export function readRate(row: RateRow, system: System, text: string): Result<number> {
  const { unit, times } = row[system];
  const allowed = `${trimmed(row.min * times, 4)} to ${trimmed(row.max * times, 2)} ${unit}`;
  const bare = text.trim().endsWith(unit) ? text.trim().slice(0, -unit.length).trim() : text.trim();
  const refuse = (code: string, message: string) =>
    bad<number>({ path: `rates.${row.key}`, code, message, read: text, allowed });
  const read = readDecimal(bare);
  if ('why' in read) return refuse('rate.unreadable', `${row.label}: a number in ${unit} is needed.`);
  const value = settle(read.value / times);
  // The bound may be shown rounded; a hair beyond it is the bound.
  const slack = 1e-6;
  if (value < row.min * (1 - slack) || value > row.max * (1 + slack))
    return refuse('rate.range', `${row.label}: outside what makes sense.`);
  return good(Math.min(row.max, Math.max(row.min, value)));
}
