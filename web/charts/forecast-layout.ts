/** How much of the time a forecast chart shows, and where its parts stand on the page. */
import type { CoatPlan } from '#core/pour/plan.ts';
import type { Row } from './forecast-rows.ts';
import { textWidth, wrapped } from './label-places.ts';

/** pour: the work of the hands; gel: on to the end of the flow. */
export type ForecastSpan = 'pour' | 'gel';

const LEAST_S = 600;
const MOST_S = 48 * 3600;

/** End of the time axis, s: of the work and the cups, or with the gel of the film. Between 10 min and 48 h. */
export function spanEnd_s(plan: CoatPlan, span: ForecastSpan): number {
  const times: number[] = [];
  for (const cup of plan.cupForecasts) {
    times.push(cup.emptied_s);
    times.push((cup.danger ?? cup.pourNow)?.mid_s ?? 0);
  }
  for (const step of plan.steps) {
    // Waits and drips go on for hours: they belong to the longer span.
    if (step.kind === 'hands off') continue;
    if (step.kind !== 'scrape drips')
      times.push(step.end_s, Math.min(step.window.closesHigh_s, step.end_s * 2));
    else if (span === 'gel') times.push(step.end_s);
  }
  if (span === 'gel') times.push(plan.stages.find((s) => s.key === 'gel')?.at?.high_s ?? 0);
  const latest = times.reduce((most, t) => (Number.isFinite(t) && t > most ? t : most), LEAST_S);
  return Math.min(MOST_S, latest * 1.04);
}

/** Whether the two spans differ enough to offer both. */
export function spansDiffer(plan: CoatPlan): boolean {
  return spanEnd_s(plan, 'gel') > 1.4 * spanEnd_s(plan, 'pour');
}

export interface PlacedRow {
  readonly row: Row;
  readonly y: number;
  readonly height: number;
  /** Lines of figures under the name. */
  readonly lines: readonly string[];
  /** On one line with the name, where there is no column for labels. */
  readonly inline: boolean;
  /** Top of the first lane. */
  readonly barY: number;
  readonly barHeight: number;
}

export interface ForecastLayout {
  readonly width: number;
  readonly height: number;
  readonly narrow: boolean;
  /** Sizes of text, px. */
  readonly size: number;
  readonly small: number;
  readonly left: number;
  readonly right: number;
  readonly viscosityTop: number;
  readonly viscosityBottom: number;
  readonly temperatureTop: number;
  readonly temperatureBottom: number;
  readonly axisY: number;
  readonly rows: readonly PlacedRow[];
  readonly clock: boolean;
  /** Kept free at the right end of each row, for the sign that says it opens. */
  readonly mark: number;
}

const BAR_PX = 16;
/** Least height of a row that can be tapped, with gloves on. */
const TAP_PX = 44;
const LANE_GAP_PX = 3;

export interface LayoutWishes {
  readonly clock: boolean;
  readonly temperature: boolean;
  /** On paper text may be smaller (8 point), and the figures of each row stand in the run sheet beside the chart. */
  readonly paper?: boolean;
  /** Rows are buttons: high enough for a finger. */
  readonly tapped?: boolean;
}

export function forecastLayout(width: number, rows: readonly Row[], wishes: LayoutWishes): ForecastLayout {
  const { clock, temperature, paper = false, tapped = false } = wishes;
  const narrow = width < 660;
  const size = paper ? 12 : width >= 1500 ? 16 : 13.5;
  const small = paper ? 11 : width >= 1500 ? 14.5 : 12.5;
  const left = narrow ? 40 : Math.round(size * (width < 900 ? 16.5 : 18));
  const mark = tapped ? Math.round(small * 3.6) : 0;
  const right = width - (narrow ? 14 : Math.round(size * 6));
  const viscosityTop = size + 16;
  const viscosityBottom =
    viscosityTop + Math.round(Math.min(360, Math.max(paper ? 136 : 190, width * (paper ? 0.19 : 0.24))));
  const temperatureTop = viscosityBottom + (temperature ? size + 22 : 0);
  const temperatureBottom =
    temperatureTop + (temperature ? Math.round(Math.min(160, Math.max(paper ? 62 : 100, width * 0.09))) : 0);
  const axisY = temperatureBottom;
  let y = axisY + small * (clock ? 2 : 1) + 22;
  const placed = rows.map((row): PlacedRow => {
    const lanes = Math.max(1, row.lanes.length);
    const bars = lanes * (BAR_PX + LANE_GAP_PX) - LANE_GAP_PX;
    const label = row.swatch === null ? row.name : `${row.name}____`;
    const inline =
      narrow && textWidth(label, size) * 1.08 + 14 + textWidth(row.values, small) <= width - 6 - mark;
    const lines = paper
      ? []
      : inline
        ? [row.values]
        : row.values.split('; ').flatMap((part) => wrapped(part, (narrow ? width - mark : left) - 20, small));
    const lineHeight = small + 3;
    const pad = paper ? 6 : 10;
    const text = size + 5 + (inline || paper ? 0 : lines.length * lineHeight);
    const height = Math.max(tapped ? TAP_PX : 0, narrow ? text + bars + 14 : Math.max(text, bars) + pad);
    const barY = narrow ? y + text + 3 : y + (height - pad - bars) / 2 + 1;
    const at = { row, y, height, lines, inline, barY, barHeight: BAR_PX };
    y += height;
    return at;
  });
  return {
    width,
    height: Math.ceil(y + 4),
    narrow,
    size,
    small,
    left,
    right,
    viscosityTop,
    viscosityBottom,
    temperatureTop,
    temperatureBottom,
    axisY,
    rows: placed,
    clock,
    mark,
  };
}

/** Top of a lane of a placed row. */
export function laneY(placed: PlacedRow, lane: number): number {
  return placed.barY + lane * (BAR_PX + LANE_GAP_PX);
}
