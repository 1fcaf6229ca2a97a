/**
 * The steps of a pour and the stages of its cure as an iCalendar file (RFC 5545), so that a phone tells when. Times are UTC: the
 * local start in the shop's zone is an instant, and from there on the plan counts seconds, whatever the clocks do that night.
 */
import ical, {
  ICalAlarmType,
  type ICalCalendar,
  ICalCalendarMethod,
  ICalEventTransparency,
} from 'ical-generator';
import type { CoatPlan, StageForecast, Step } from '#core/pour/plan.ts';
import { formatDuration } from '#core/quantity/format.ts';
import { utcText } from './zone-time.ts';

export interface CalendarCoat {
  readonly id: string;
  readonly name: string;
  readonly plan: CoatPlan;
  /** When the first cup's parts meet, ms since 1970-01-01T00:00Z. */
  readonly start_ms: number;
}

export interface CalendarRequest {
  readonly jobId: string;
  readonly title: string;
  /** Of the job as saved: a calendar that has an event of a lower one takes the new times. */
  readonly version: number;
  /** ISO 8601 in UTC. */
  readonly savedAt: string;
  readonly coats: readonly CalendarCoat[];
}

/** A stage is told this long before it comes, s. Our own choice. */
const TOLD_BEFORE_s = 600;

const UTC = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?Z$/;

/** Text a calendar may hold: no control characters but tab and line end (RFC 5545, 3.1), no half characters. */
function text(from: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
  return from.toWellFormed().replaceAll(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');
}

/** The name of a calendar on one line; the library writes it as it is given, so it is escaped here (RFC 5545, 3.3.11). */
function written(name: string): string {
  return text(name)
    .replaceAll(/\n/g, ' ')
    .replaceAll(/[\\;,]/g, (mark) => `\\${mark}`);
}

/**
 * The file, lines ended by CR LF and folded at 75 octets. The same request gives the same file; ids of events hang on job, coat and
 * step alone, so a file of a later save replaces the events of an earlier one.
 *
 * @throws RangeError for a save time that is none.
 */
export function pourCalendar({ jobId, title, version, savedAt, coats }: CalendarRequest): string {
  if (!UTC.test(savedAt))
    throw new RangeError(`savedAt is "${savedAt}"; allowed: a time in UTC as 2026-05-14T09:00:00Z`);
  const calendar = ical({
    name: written(title),
    prodId: { company: 'Pourwright', product: 'pour calendar', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  for (const coat of coats) {
    const common = {
      calendar,
      savedAt,
      version,
      coat,
      uid: `${jobId}-${encodeURIComponent(text(coat.id))}`,
      title,
    };
    for (const step of coat.plan.steps) addStep(common, step);
    for (const stage of coat.plan.stages) addStage(common, stage);
  }
  return calendar.toString();
}

interface Common {
  readonly calendar: ICalCalendar;
  readonly savedAt: string;
  readonly version: number;
  readonly coat: CalendarCoat;
  readonly uid: string;
  readonly title: string;
}

interface Told {
  readonly id: string;
  readonly summary: string;
  readonly lines: readonly string[];
  readonly start_s: number;
  readonly end_s: number;
  readonly busy: boolean;
}

function add({ calendar, savedAt, version, coat, uid, title }: Common, told: Told) {
  const at = (time_s: number) => utcText(coat.start_ms + 1000 * Math.round(time_s));
  return calendar.createEvent({
    id: `${uid}-${told.id}@pourwright`,
    sequence: version,
    stamp: savedAt,
    lastModified: savedAt,
    start: at(told.start_s),
    // an event that lasts no time has a start alone (RFC 5545, 3.6.1)
    ...(Math.round(told.end_s) > Math.round(told.start_s) ? { end: at(told.end_s) } : {}),
    summary: text([title, coat.name, told.summary].filter((part) => part !== '').join(': ')),
    description: text(told.lines.join('\n')),
    transparency: told.busy ? ICalEventTransparency.OPAQUE : ICalEventTransparency.TRANSPARENT,
  });
}

function addStep(common: Common, step: Step): void {
  const { window, slack_s } = step;
  const margin = slack_s < 0 ? `${formatDuration(-slack_s)} too late` : `${formatDuration(slack_s)} to spare`;
  add(common, {
    id: step.id,
    summary: step.label,
    lines: [
      `Person ${step.person}.`,
      `Must be done ${formatDuration(window.closes_s - step.start_s)} after it starts: ${window.limit} (${window.basis}). As planned: ${margin}.`,
      ...(step.optional ? ['May be left out when there is no time.'] : []),
    ],
    start_s: step.start_s,
    end_s: step.end_s,
    busy: step.kind !== 'hands off',
  });
}

function addStage(common: Common, stage: StageForecast): void {
  if (stage.at === null) return;
  const { low_s, mid_s, high_s } = stage.at;
  const event = add(common, {
    id: `stage-${stage.key.replaceAll(' ', '-')}`,
    summary: stage.label,
    lines: [
      `Between the start and the end of this entry, most likely ${formatDuration(mid_s - low_s)} after its start (${stage.basis}; 5 to 95 %).`,
      stage.criterion,
    ],
    start_s: low_s,
    end_s: high_s,
    busy: false,
  });
  event.createAlarm({
    type: ICalAlarmType.display,
    triggerBefore: TOLD_BEFORE_s,
    description: text(stage.label),
  });
}
