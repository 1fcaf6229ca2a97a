/**
 * The calendar of a pour read by two programs we did not write: ical.js, and the icalendar package of Python as Debian ships it.
 * RFC 5545: line folding (3.1), UTC times (3.3.5), escaping (3.3.11), what an event must have (3.6.1).
 */
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type CalendarRequest, pourCalendar } from '#core/job/calendar/pour-calendar.ts';
import { instantOf } from '#core/job/calendar/zone-time.ts';
import { planCoat } from '#core/pour/plan-coat.ts';
import { inks, QUICK_20, requestOf } from '#core/pour/sample-request.check.ts';
import { debianTools } from '../scripts/debian-tools.ts';

const plan = planCoat({ ...requestOf({ card: QUICK_20, crew: 2, colours: inks }), draws: 8, waysOut: false });
const ZONE = 'America/Chicago';
/** An hour and a half before the clocks go forward: 2 o'clock is 3 o'clock on 8 March 2026. */
const NIGHT = '2026-03-08T00:30';

const requestAt = (start: string, change: Partial<CalendarRequest> = {}): CalendarRequest => ({
  jobId: '5f0c1de4-8a7e-4a53-b2b0-1d8b6d3c9a10',
  title: 'Bar top',
  version: 3,
  savedAt: '2026-03-01T10:11:12.000Z',
  coats: [{ id: 'c1', name: 'Colour coat', plan, start_ms: instantOf(start, ZONE)! }],
  ...change,
});

const eventsOf = (file: string) =>
  new ICAL.Component(ICAL.parse(file) as never)
    .getAllSubcomponents('vevent')
    .map((each) => new ICAL.Event(each));

const lengthOf = (line: string) => new TextEncoder().encode(line).length;

describe('the calendar of a pour, read by ical.js', () => {
  const file = pourCalendar(requestAt(NIGHT));
  const events = eventsOf(file);

  it('has an event for every step and every stage that comes, each with an id of its own', () => {
    const stages = plan.stages.filter(({ at }) => at !== null);
    expect(events).toHaveLength(plan.steps.length + stages.length);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    for (const { id } of plan.steps)
      expect(
        events.some(({ uid }) => uid === `5f0c1de4-8a7e-4a53-b2b0-1d8b6d3c9a10-c1-${id}@pourwright`),
      ).toBe(true);
  });

  it('has the times of the plan in UTC, to the second, on through the night the clocks go forward', () => {
    const start_ms = Date.UTC(2026, 2, 8, 6, 30); // 00:30 standard time, UTC-6
    for (const step of plan.steps) {
      const event = events.find(({ uid }) => uid.endsWith(`-${step.id}@pourwright`))!;
      expect(event.startDate.zone.tzid).toBe('UTC');
      expect(event.startDate.toUnixTime()).toBe(start_ms / 1000 + Math.round(step.start_s));
      expect(event.endDate.toUnixTime()).toBe(start_ms / 1000 + Math.round(step.end_s));
    }
    const gel = plan.stages.find(({ key }) => key === 'gel')!.at!;
    const event = events.find(({ uid }) => uid.includes('stage-gel'))!;
    expect(event.startDate.toUnixTime()).toBe(start_ms / 1000 + Math.round(gel.low_s));
  });

  it('keeps ids and takes the stamp of the save, so that a later save replaces its events', () => {
    const later = eventsOf(
      pourCalendar(requestAt('2026-03-09T08:00', { version: 4, savedAt: '2026-03-02T08:00:00Z' })),
    );
    expect(later.map(({ uid }) => uid)).toEqual(events.map(({ uid }) => uid));
    expect(later[0]!.sequence).toBeGreaterThan(events[0]!.sequence);
    expect(String(events[0]!.component.getFirstPropertyValue('dtstamp'))).toBe('2026-03-01T10:11:12Z');
    expect(pourCalendar(requestAt(NIGHT))).toBe(file);
  });

  it('gives any title back as it was, in lines of at most 75 octets', () => {
    fc.assert(
      fc.property(
        fc.string({
          unit: fc.oneof(
            fc.constantFrom(',', ';', '\\', '\n', '"', ':', 'ü', '木', '🪵'),
            fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }),
          ),
          maxLength: 200,
        }),
        (title) => {
          const made = pourCalendar(requestAt(NIGHT, { title: `x${title}x` }));
          for (const line of made.split('\r\n')) expect(lengthOf(line)).toBeLessThanOrEqual(75);
          expect(made.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
          const [first] = eventsOf(made);
          // no control characters in a calendar, and one kind of line end
          // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
          const kept = title.replaceAll(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');
          expect(first!.summary).toBe(`x${kept}x: Colour coat: ${plan.steps[0]!.label}`);
        },
      ),
      { numRuns: 60 },
    );
  });
});

const hasIcalendar = () => spawnSync('/usr/bin/python3', ['-c', 'import icalendar']).status === 0;

describe.skipIf(!debianTools(['python3-icalendar'], hasIcalendar))(
  'the calendar of a pour, read by Python',
  () => {
    it('has the same ids, starts and texts', () => {
      const title = 'Top, "wide"; 木 \\ two\nlines';
      const file = pourCalendar(requestAt(NIGHT, { title }));
      const script = `
import sys, json, icalendar
c = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
print(json.dumps([[str(e['UID']), int(e['DTSTART'].dt.timestamp()), str(e['SUMMARY'])] for e in c.walk('VEVENT')]))`;
      const read = spawnSync('/usr/bin/python3', ['-c', script], { input: file, encoding: 'utf8' });
      expect(read.stderr).toBe('');
      const rows = JSON.parse(read.stdout) as [string, number, string][];
      const events = eventsOf(file);
      expect(rows).toEqual(
        events.map(({ uid, startDate, summary }) => [uid, startDate.toUnixTime(), summary]),
      );
      expect(rows[0]![2].startsWith(title)).toBe(true);
    });
  },
);
