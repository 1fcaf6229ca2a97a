/** The rows of bands under a coat's forecast: what is planned, when it may be done, when it closes, in words and figures. */
import type { FilmBand, WorkBand } from '#core/pour/film-outlook-bands.ts';
import type { CoatPlan, CupForecast, StageForecast, Step, Window } from '#core/pour/plan.ts';
import { minutesRange, minutesSpan, minutesText, minutesWithUnit } from './time-text.ts';

export interface Span {
  readonly start_s: number;
  readonly end_s: number;
}

/** One band. Times in seconds on the plan's clock. */
export interface Bar {
  readonly key: string;
  /** The whole of it in one sentence: the reading a screen reader or a hovering pointer gets. */
  readonly says: string;
  readonly opens_s: number;
  /** Start of the hatched end: the safe (5 %) figure. */
  readonly closes_s: number;
  readonly closesHigh_s: number;
  /** The planned work, in order; empty for something that happens by itself (gel). */
  readonly planned: readonly Span[];
  /** A mark inside the band: the middle of a range. */
  readonly mark_s: number | null;
  /** Waiting rather than work: hands off. */
  readonly wait: boolean;
  readonly late: boolean;
  /** What closes it, in words. */
  readonly limit: string;
}

/** What a row tells of: a cup, a kind of work, a stage of the film. */
export type BandOf =
  | { readonly kind: 'cup'; readonly number: number }
  | { readonly kind: 'work'; readonly work: WorkBand }
  | { readonly kind: 'film'; readonly stage: FilmBand };

export interface Row {
  readonly key: string;
  readonly of: BandOf;
  readonly name: string;
  /** The figures, for the eye. */
  readonly values: string;
  readonly limit: string;
  readonly swatch: string | null;
  readonly late: boolean;
  /** The step with the least slack lies in this row. */
  readonly tightest: boolean;
  /** Bars that overlap in time lie on different lanes. */
  readonly lanes: readonly (readonly Bar[])[];
}

const WORK_ROWS: readonly { readonly name: string; readonly work: WorkBand }[] = [
  { name: 'Meld', work: 'meld' },
  { name: 'Wrap edges', work: 'wrap edges' },
  { name: 'Torch', work: 'torch' },
  { name: 'Scrape drips', work: 'scrape drips' },
  { name: 'Hands off', work: 'hands off' },
];

const FILM_ROWS: readonly { readonly key: FilmBand; readonly name: string }[] = [
  { key: 'working end', name: 'Working time ends' },
  { key: 'no more levelling', name: 'Stops levelling' },
  { key: 'gel', name: 'Gel' },
];

export function forecastRows(plan: CoatPlan): Row[] {
  const rows: Row[] = plan.cupForecasts.map((cup) => cupRow(cup, plan.steps, plan.slackStep));
  for (const { name, work } of WORK_ROWS) {
    const steps = plan.steps.filter((s) => s.kind === work);
    if (steps.length > 0) rows.push(workRow(name, work, steps, plan.slackStep));
  }
  for (const { key, name } of FILM_ROWS) {
    const stage = plan.stages.find((s) => s.key === key);
    if (stage !== undefined) rows.push(stageRow(name, key, stage));
  }
  return rows;
}

/** "closes at 18 (16 to 22) min"; a hands-off step and the like may have a window without end. */
export function closingText(window: Window): string {
  if (!Number.isFinite(window.closes_s)) return '';
  return `closes at ${minutesRange({ low_s: window.closes_s, mid_s: window.closesMid_s, high_s: window.closesHigh_s })}`;
}

/** "Wrap edges: 9 to 14 min, closes at 18 (16 to 22) min, film of cup 1 stops flowing". */
export function stepSays(step: Step): string {
  const late = step.slack_s < 0 ? `too late by ${minutesWithUnit(-step.slack_s)}` : '';
  const parts = [minutesSpan(step.start_s, step.end_s), closingText(step.window), step.window.limit, late];
  return `${step.label}: ${parts.filter((p) => p !== '').join(', ')}`;
}

function stepBar(step: Step): Bar {
  return {
    key: step.id,
    says: stepSays(step),
    opens_s: step.window.opens_s,
    closes_s: step.window.closes_s,
    closesHigh_s: step.window.closesHigh_s,
    planned: [{ start_s: step.start_s, end_s: step.end_s }],
    mark_s: null,
    wait: step.kind === 'hands off',
    late: step.slack_s < 0,
    limit: step.window.limit,
  };
}

function workRow(name: string, work: WorkBand, steps: readonly Step[], slackStep: string): Row {
  const ordered = [...steps].sort((a, b) => a.start_s - b.start_s);
  const tightest = ordered.reduce((a, b) => (b.slack_s < a.slack_s ? b : a));
  const last = ordered.reduce((a, b) => (b.end_s > a.end_s ? b : a));
  const values =
    ordered.length > 2 && work === 'scrape drips'
      ? [`at ${ordered.map((s) => minutesText(s.start_s)).join(', ')} min`]
      : [minutesSpan(ordered[0]!.start_s, last.end_s)];
  const closing = closingText(tightest.window);
  if (closing !== '' && tightest.kind !== 'hands off') values.push(closing);
  if (tightest.slack_s < 0) values.push(`too late by ${minutesWithUnit(-tightest.slack_s)}`);
  return {
    key: name,
    of: { kind: 'work', work },
    name,
    values: values.join('; '),
    limit: tightest.window.limit,
    swatch: null,
    late: tightest.slack_s < 0,
    tightest: ordered.some((s) => s.id === slackStep || s.label === slackStep),
    lanes: inLanes(ordered.map(stepBar)),
  };
}

function cupRow(cup: CupForecast, steps: readonly Step[], slackStep: string): Row {
  const own = steps.filter((s) => s.cup === cup.number && (s.kind === 'mix' || s.kind === 'pour'));
  const pour = own.find((s) => s.kind === 'pour');
  const safe = cup.pourNow;
  const late = safe !== null && cup.emptied_s > safe.low_s;
  const planned =
    own.length > 0
      ? own.map((s) => `${s.kind} ${minutesSpan(s.start_s, s.end_s)}`).join(', ')
      : `mixed at ${minutesText(cup.mixed_s)}, empty at ${minutesWithUnit(cup.emptied_s)}`;
  const until = safe === null ? 'does not get hot in the time computed' : `pour by ${minutesRange(safe)}`;
  const limit = pour?.window.limit ?? '';
  const end_s = safe?.low_s ?? cup.gel?.low_s ?? Number.POSITIVE_INFINITY;
  const bar: Bar = {
    key: `cup ${cup.number}`,
    says: `Cup ${cup.number}, ${cup.colour}: ${[planned, until, limit].filter((p) => p !== '').join(', ')}`,
    opens_s: cup.mixed_s,
    closes_s: end_s,
    closesHigh_s: safe?.high_s ?? end_s,
    planned:
      own.length > 0
        ? own.map(({ start_s, end_s }) => ({ start_s, end_s }))
        : [{ start_s: cup.mixed_s, end_s: cup.emptied_s }],
    mark_s: null,
    wait: false,
    late,
    limit,
  };
  return {
    key: `cup ${cup.number}`,
    of: { kind: 'cup', number: cup.number },
    name: `Cup ${cup.number}: ${cup.colour}`,
    values: `${planned}; ${until}${late ? '; too late' : ''}`,
    limit,
    swatch: cup.swatch,
    late,
    tightest: own.some((s) => s.id === slackStep || s.label === slackStep),
    lanes: [[bar]],
  };
}

function stageRow(name: string, key: FilmBand, stage: StageForecast): Row {
  const at = stage.at;
  const values = at === null ? 'not within the time computed' : minutesRange(at);
  return {
    key,
    of: { kind: 'film', stage: key },
    name,
    values: stage.basis === 'model' ? values : `${values}, ${stage.basis}`,
    limit: '',
    swatch: null,
    late: false,
    tightest: false,
    lanes:
      at === null
        ? [[]]
        : [
            [
              {
                key,
                says: `${name}: ${values}, ${stage.criterion}`,
                opens_s: at.low_s,
                closes_s: at.low_s,
                closesHigh_s: at.high_s,
                planned: [],
                mark_s: at.mid_s,
                wait: false,
                late: false,
                limit: stage.criterion,
              },
            ],
          ],
  };
}

/** Windows that overlap go on lanes of their own; where that makes more than four, only planned work is kept apart. */
function inLanes(bars: readonly Bar[]): Bar[][] {
  const byWindow = laid(bars, (b) => ({ start_s: b.opens_s, end_s: b.closesHigh_s }));
  if (byWindow.length <= 4) return byWindow;
  return laid(bars, (b) => b.planned[0] ?? { start_s: b.opens_s, end_s: b.closesHigh_s });
}

function laid(bars: readonly Bar[], spanOf: (bar: Bar) => Span): Bar[][] {
  const lanes: Bar[][] = [];
  for (const bar of bars) {
    const free = lanes.find((lane) => spanOf(lane.at(-1)!).end_s <= spanOf(bar).start_s);
    if (free === undefined) lanes.push([bar]);
    else free.push(bar);
  }
  return lanes;
}
