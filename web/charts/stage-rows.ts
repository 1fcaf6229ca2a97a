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
    if (begins !== null && start_ms !== null) {
      const from_ms = start_ms + begins.high_s * 1000;
      values.push(`safe from ${dayAndTime(from_ms, system)}`);
      if (ends !== null) values.push(`until ${endOf(from_ms, start_ms + ends.low_s * 1000, system)}`);
    }
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
  return start_ms === null ? after : `${after}; ${dayAndTime(start_ms + range.mid_s * 1000, system)}`;
}

/** The time alone when it is the same day; "abrade first" when the safe window is empty. */
function endOf(from_ms: number, to_ms: number, system: System): string {
  if (to_ms <= from_ms) return 'then it may be closed already: abrade first';
  return dayText(from_ms, system) === dayText(to_ms, system)
    ? timeOfDay(to_ms, system)
    : dayAndTime(to_ms, system);
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
