import { describe, expect, it } from 'vitest';
import { computeJob } from '#core/job/compute-job.ts';
import { vanityVesselSink } from '#examples/jobs.ts';
import { localTime_ms } from '#web/units/dates.ts';
import { jobMoments, nowAndNext, onTheGo, SPAN_MS } from './job-moments.ts';

const starts = ['2026-05-14T09:00', '2026-05-15T13:00'];
const document = {
  ...vanityVesselSink,
  coats: vanityVesselSink.coats.map((coat, i) => ({ ...coat, startsAt: starts[i] ?? '' })),
};
const job = jobMoments(document, computeJob(document));
const at = (text: string) => localTime_ms(text)!;

describe('what happens on a job', () => {
  it('stands in the order of time, with both pours', () => {
    const times = job.moments.map((moment) => moment.at_ms);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(job.moments.filter((moment) => moment.key === 'pour').map((moment) => moment.at_ms)).toEqual(
      starts.map(at),
    );
  });

  it('leaves out stages of a coat that is covered by the next one', () => {
    const first = document.coats[0]!.name;
    expect(job.moments.filter((m) => m.coat === first).every((m) => m.at_ms <= at(starts[1]!))).toBe(true);
  });

  it('says hands off after a pour, until the next coat or until it can be handled', () => {
    const { now, next } = nowAndNext(job, at('2026-05-14T20:00'));
    expect(now.map((span) => span.kind)).toContain('hands off');
    expect(next!.at_ms).toBeGreaterThan(at('2026-05-14T20:00'));
  });

  it('is on the strip from three days before the first pour until the last stage has passed', () => {
    expect(onTheGo(job, at(starts[0]!) - SPAN_MS - 1)).toBe(false);
    expect(onTheGo(job, at(starts[0]!) - SPAN_MS)).toBe(true);
    expect(onTheGo(job, at('2026-05-14T12:00'))).toBe(true);
    expect(onTheGo(job, at('2026-08-01'))).toBe(false);
  });

  it('is nothing without a start', () => {
    const undated = { ...document, coats: document.coats.map((coat) => ({ ...coat, startsAt: '' })) };
    expect(jobMoments(undated, computeJob(undated))).toEqual({ moments: [], spans: [] });
  });
});
