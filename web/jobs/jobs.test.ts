import { describe, expect, it } from 'vitest';
import { emptyJob } from '#core/job/document.ts';
import { ellCounter, roundTable, vanityVesselSink } from '#examples/jobs.ts';
import type { JobSummary } from '#web/api/types.ts';
import { localTime_ms } from '#web/units/dates.ts';
import { speaker } from '#web/units/speak.ts';
import { fileNameOf } from './download.ts';
import { filterJobs } from './filter-jobs.ts';
import { nextPour_ms } from './next-pour.ts';
import { sayPieceSize } from './piece-size.ts';
import { readJobText } from './read-file.ts';

const job = (part: Partial<JobSummary>): JobSummary => ({
  id: 'x',
  title: '',
  customerName: '',
  stage: 'enquiry',
  handOver: '',
  firstPourAt: '',
  version: 1,
  updatedAt: '',
  archived: false,
  ...part,
});

describe('the ledger of jobs', () => {
  const all = [
    job({ title: 'Bar top', customerName: 'Zoë Brandt', handOver: '2026-06-01' }),
    job({ title: 'Vanity', customerName: 'Ann', handOver: '2026-05-01', stage: 'curing' }),
    job({ title: 'Table' }),
    job({ title: 'Old', archived: true }),
  ];
  const everything = { words: '', stage: '', archived: false };

  it('puts what is due first on top and leaves the archive out', () => {
    expect(filterJobs(all, everything).map((j) => j.title)).toEqual(['Vanity', 'Bar top', 'Table']);
    expect(filterJobs(all, { ...everything, archived: true }).map((j) => j.title)).toEqual(['Old']);
  });

  it('finds every word in title or customer, with or without accents', () => {
    expect(filterJobs(all, { ...everything, words: 'zoe BAR' }).map((j) => j.title)).toEqual(['Bar top']);
    expect(filterJobs(all, { ...everything, words: 'zoe vanity' })).toEqual([]);
    expect(filterJobs(all, { ...everything, stage: 'curing' }).map((j) => j.title)).toEqual(['Vanity']);
  });
});

describe('the next pour', () => {
  const document = {
    ...vanityVesselSink,
    coats: vanityVesselSink.coats.map((coat, i) => ({
      ...coat,
      startsAt: ['2026-05-14T09:00', '2026-05-15T13:00'][i] ?? '',
    })),
  };
  const at = (text: string) => localTime_ms(text)!;

  it('is the first that has not begun three hours ago', () => {
    expect(nextPour_ms(document, '', at('2026-05-14T08:00'))).toBe(at('2026-05-14T09:00'));
    expect(nextPour_ms(document, '', at('2026-05-14T11:59'))).toBe(at('2026-05-14T09:00'));
    expect(nextPour_ms(document, '', at('2026-05-14T12:00'))).toBe(at('2026-05-15T13:00'));
    expect(nextPour_ms(document, '', at('2026-05-16T00:00'))).toBeNull();
  });
});

describe('the size of a piece in a line', () => {
  it('is said for each shape in the system on screen', () => {
    expect(sayPieceSize(vanityVesselSink, speaker('us'))).toBe('42 in x 21 1/2 in');
    expect(sayPieceSize(vanityVesselSink, speaker('metric'))).toBe('1067 mm x 546 mm');
    expect(sayPieceSize(roundTable, speaker('metric'))).toMatch(/ mm round$/);
    expect(sayPieceSize(ellCounter, speaker('us'))).toMatch(/ by .* L$/);
    expect(sayPieceSize(emptyJob(), speaker('us'))).toBeNull();
  });
});

describe('job files', () => {
  it('go out and come in the same', () => {
    const text = JSON.stringify(vanityVesselSink);
    expect(readJobText(text, text.length)).toMatchObject({ ok: true, value: vanityVesselSink });
    expect(readJobText(`\uFEFF${text}`, text.length).ok).toBe(true);
  });

  it('are refused with what was read and what is allowed', () => {
    expect(readJobText('not json', 8)).toMatchObject({ ok: false, problems: [{ code: 'file.not-json' }] });
    expect(readJobText('{}', 5_000_000)).toMatchObject({ ok: false, problems: [{ code: 'file.too-large' }] });
    const wrong = JSON.stringify({ ...vanityVesselSink, format: 'something else' });
    expect(readJobText(wrong, wrong.length)).toMatchObject({
      ok: false,
      problems: [{ path: 'format', read: 'something else' }],
    });
  });

  it('get a name every computer takes', () => {
    expect(fileNameOf(emptyJob('Über: bar/top?'))).toBe('uber-bar-top.job.json');
    expect(fileNameOf(emptyJob('///'))).toBe('job.job.json');
  });
});
