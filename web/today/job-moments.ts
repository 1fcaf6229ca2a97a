/** What opens, closes and happens on one job around now, read off its forecast. Pure: the time is passed in. */
import type { JobDocument } from '#core/job/document.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import type { CoatPlan, StageKey } from '#core/pour/plan.ts';
import { localTime_ms } from '#web/units/dates.ts';

export const HOURS_SHOWN = 72;
export const SPAN_MS = HOURS_SHOWN * 3_600_000;

export interface Moment {
  readonly coat: string;
  readonly key: StageKey | 'pour' | 'poured';
  readonly label: string;
  readonly at_ms: number;
  readonly low_ms: number;
  readonly high_ms: number;
}

export interface Span {
  readonly coat: string;
  readonly kind: 'pour' | 'hands off' | 'recoat';
  readonly label: string;
  readonly from_ms: number;
  /** The safe end: early for a window that closes, late for a wait that ends. */
  readonly to_ms: number;
}

export interface JobMoments {
  readonly moments: readonly Moment[];
  readonly spans: readonly Span[];
}

const TOLD: readonly StageKey[] = ['recoat opens', 'recoat closes', 'handle', 'in use'];

/** Every moment and span of a job's coats that have a start and a plan, in time order, past ones too. */
export function jobMoments(document: JobDocument, forecast: JobForecast): JobMoments {
  const moments: Moment[] = [];
  const spans: Span[] = [];
  const coats = document.coats.map((coat) => ({
    start_ms: localTime_ms(coat.startsAt),
    found: forecast.coats.find((each) => each.id === coat.id),
  }));
  coats.forEach(({ start_ms, found }, i) => {
    if (start_ms === null || found === undefined) return;
    const at = (time_s: number) => start_ms + time_s * 1000;
    const fixed = (key: Moment['key'], label: string, time_s: number): Moment => ({
      coat: found.name,
      key,
      label,
      at_ms: at(time_s),
      low_ms: at(time_s),
      high_ms: at(time_s),
    });
    moments.push(fixed('pour', `${found.name}: mix the first cup`, 0));
    const plan = found.plan;
    if (plan === null) return;
    const end_s = workEnds_s(plan);
    spans.push({
      coat: found.name,
      kind: 'pour',
      label: `${found.name} is poured`,
      from_ms: at(0),
      to_ms: at(end_s),
    });
    // Once the next coat is on, the stages of this one no longer steer anything.
    const next_ms = coats.slice(i + 1).find((later) => later.start_ms !== null)?.start_ms ?? Infinity;
    for (const stage of plan.stages) {
      if (stage.at === null || !TOLD.includes(stage.key) || at(stage.at.mid_s) > next_ms) continue;
      moments.push({
        coat: found.name,
        key: stage.key,
        label: `${found.name}: ${lowered(stage.label)}`,
        at_ms: at(stage.at.mid_s),
        low_ms: at(stage.at.low_s),
        high_ms: at(stage.at.high_s),
      });
    }
    spans.push(...waits(found.name, plan, at, end_s, next_ms));
  });
  moments.sort((a, b) => a.at_ms - b.at_ms);
  spans.sort((a, b) => a.from_ms - b.from_ms);
  return { moments, spans };
}

/** End of the last step somebody has a hand in. */
function workEnds_s(plan: CoatPlan): number {
  return Math.max(0, ...plan.steps.filter((step) => step.kind !== 'hands off').map((step) => step.end_s));
}

const lowered = (label: string) => label.charAt(0).toLowerCase() + label.slice(1);

function waits(
  coat: string,
  plan: CoatPlan,
  at: (time_s: number) => number,
  end_s: number,
  next_ms: number,
): Span[] {
  const stage = (key: StageKey) => plan.stages.find((each) => each.key === key)?.at ?? null;
  const found: Span[] = [];
  const opens = stage('recoat opens');
  const closes = stage('recoat closes');
  const handle = stage('handle');
  const until_ms = Math.min(next_ms, handle === null ? Infinity : at(handle.high_s));
  if (Number.isFinite(until_ms) && until_ms > at(end_s))
    found.push({ coat, kind: 'hands off', label: `${coat}: hands off`, from_ms: at(end_s), to_ms: until_ms });
  if (opens !== null && closes !== null && closes.low_s > opens.high_s && at(opens.high_s) < next_ms)
    found.push({
      coat,
      kind: 'recoat',
      label: `${coat}: next coat without sanding`,
      from_ms: at(opens.high_s),
      to_ms: at(closes.low_s),
    });
  return found;
}

export interface NowAndNext {
  readonly now: readonly Span[];
  readonly next: Moment | null;
}

export function nowAndNext(job: JobMoments, now_ms: number): NowAndNext {
  return {
    now: job.spans.filter((span) => span.from_ms <= now_ms && now_ms < span.to_ms),
    next: job.moments.find((moment) => moment.at_ms > now_ms) ?? null,
  };
}

/** Is there anything on this job between now and the end of the strip? */
export function onTheGo(job: JobMoments, now_ms: number): boolean {
  const end_ms = now_ms + SPAN_MS;
  return (
    job.moments.some((moment) => moment.at_ms >= now_ms && moment.at_ms <= end_ms) ||
    job.spans.some((span) => span.to_ms > now_ms && span.from_ms < end_ms)
  );
}
