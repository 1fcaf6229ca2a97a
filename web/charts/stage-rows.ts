/** Hours and days after a pour as rows: when the next coat may go on, and from when the film is hard, handled, used. */
import type { StageForecast, StageKey } from '#core/pour/plan.ts';
import type { System } from '#core/quantity/units.ts';
import type { TimeRange } from '#core/resin/model.ts';
import { dayAndTime, dayText, timeOfDay } from './clock.ts';
import { afterPourRange, afterPourText } from './time-text.ts';

/** What a label prints for a stage, to be marked where the model disagrees. */
export interface LabelTime {
  readonly key: StageKey;
  readonly at_s: number;
  /** As printed: "recoat 4 to 6 h". */
  readonly text: string;
}

export interface StageRow {
  readonly key: string;
  readonly name: string;
  /** Lines of figures: how long after, and on which day. */
  readonly values: readonly string[];
  /** What has begun: somewhere in this range. null: not within the time computed. */
  readonly begins: TimeRange | null;
  /** When it ends; null: it stays so. */
  readonly ends: TimeRange | null;
  readonly best: { readonly from_s: number; readonly to_s: number } | null;
  /** Label figures outside the range of the model. */
  readonly disagrees: readonly LabelTime[];
  readonly criterion: string;
  readonly basis: string;
}

const HELD: readonly StageKey[] = ['dry hard', 'sandable', 'handle', 'in use', 'full cure'];

export function stageRows(
  stages: readonly StageForecast[],
  labels: readonly LabelTime[],
  start_ms: number | null,
  system: System,
): StageRow[] {
  const find = (key: StageKey): StageForecast | undefined => stages.find((s) => s.key === key);
  const rows: StageRow[] = [];
  const opens = find('recoat opens');
  const closes = find('recoat closes');
  const from = usable(find('recoat best from')?.at);
  const to = usable(find('recoat best to')?.at);
  if (opens !== undefined) {
    const begins = usable(opens.at);
    const ends = usable(closes?.at);
    const values = [`opens ${told(begins, null, system)}`];
    if (from !== null && to !== null)
      values.push(`best ${afterPourText(from.mid_s)} to ${afterPourText(to.mid_s)}`);
    values.push(closes === undefined ? 'stays open' : `closes ${told(ends, null, system)}`);
    if (begins !== null) values.push(...safeWindow(begins, ends, start_ms, system));
    rows.push({
      key: 'recoat',
      name: 'Next coat without sanding',
      values,
      begins,
      ends,
      best:
        from === null || to === null || !(to.mid_s > from.mid_s)
          ? null
          : { from_s: from.mid_s, to_s: to.mid_s },
      disagrees: [...outside(labels, 'recoat opens', begins), ...outside(labels, 'recoat closes', ends)],
      criterion: [opens.criterion, closes?.criterion].filter(Boolean).join('; '),
      basis: opens.basis,
    });
  }
  for (const key of HELD) {
    const stage = find(key);
    if (stage === undefined) continue;
    const begins = usable(stage.at);
    rows.push({
      key,
      name: stage.label,
      values: told(begins, start_ms, system).split('; '),
      begins,
      ends: null,
      best: null,
      disagrees: outside(labels, key, begins),
      criterion: stage.criterion,
      basis: stage.basis,
    });
  }
  return rows;
}

/** Ends of the time axis, s: a little before the first and after the last; at least 1 h to 1 d. */
export function stageSpan_s(rows: readonly StageRow[]): readonly [number, number] {
  const times = rows.flatMap((r) => [
    ...[r.begins, r.ends].flatMap((t) => (t === null ? [] : [t.low_s, t.high_s])),
    ...r.disagrees.map((l) => l.at_s),
  ]);
  const low = Math.min(3600, ...times);
  const high = Math.max(86_400, ...times);
  return [Math.max(300, low / 1.15), Math.min(400 * 86_400, Math.max(high * 1.3, 2 * low))];
}

/** The row in one sentence. */
export function stageSays(row: StageRow): string {
  const labels = row.disagrees.map((l) => `the label says ${l.text}`);
  return `${row.name}: ${[...row.values, ...labels].join('; ')}`;
}

/** Negative, endless or unordered times are no range to draw. */
function usable(range: TimeRange | null | undefined): TimeRange | null {
  if (range === null || range === undefined) return null;
  const { low_s, mid_s, high_s } = range;
  return low_s > 0 && low_s <= mid_s && mid_s <= high_s && Number.isFinite(high_s) ? range : null;
}

function told(range: TimeRange | null, start_ms: number | null, system: System): string {
  if (range === null) return 'not within the time computed';
  const after = afterPourRange(range);
  return start_ms === null ? after : `${after}; ${roughly(range, start_ms, system)}`;
}

/** The middle of a range on the clock, as finely as its width allows: "about Thu Mar 5, 5:00 am", "about Thu Mar 5". */
function roughly({ low_s, mid_s, high_s }: TimeRange, start_ms: number, system: System): string {
  const width_s = high_s - low_s;
  const at_ms = start_ms + mid_s * 1000;
  if (width_s > 48 * 3600) return `about ${dayText(at_ms, system)}`;
  const step_ms = (width_s > 12 * 3600 ? 60 : width_s > 2 * 3600 ? 15 : 5) * 60_000;
  return `about ${dayAndTime(Math.round(at_ms / step_ms) * step_ms, system)}`;
}

/** When the coat is surely open and not yet closed (5 and 95 % figures), held inwards to five minutes. */
function safeWindow(
  begins: TimeRange,
  ends: TimeRange | null,
  start_ms: number | null,
  system: System,
): string[] {
  if (ends !== null && ends.low_s <= begins.high_s) return ['no time is sure: test, or abrade first'];
  if (start_ms === null) return [];
  const step_ms = 5 * 60_000;
  const from_ms = Math.ceil((start_ms + begins.high_s * 1000) / step_ms) * step_ms;
  const from = `sure from ${dayAndTime(from_ms, system)}`;
  if (ends === null) return [from];
  const to_ms = Math.floor((start_ms + ends.low_s * 1000) / step_ms) * step_ms;
  const sameDay = dayText(from_ms, system) === dayText(to_ms, system);
  return [from, `until ${sameDay ? timeOfDay(to_ms, system) : dayAndTime(to_ms, system)}`];
}

function outside(labels: readonly LabelTime[], key: StageKey, range: TimeRange | null): LabelTime[] {
  return labels.filter(
    (l) =>
      l.key === key &&
      l.at_s > 0 &&
      Number.isFinite(l.at_s) &&
      (range === null || l.at_s < range.low_s || l.at_s > range.high_s),
  );
}
