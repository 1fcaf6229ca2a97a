/** What requests about runs carry and answers hold. */
import { z } from 'zod';
import { RunEvent } from '#core/pour/run/run-event.ts';

const Id = z.uuid().toLowerCase();

/** More than a pour has: a phone that was away for hours sends in pieces of this. */
export const MOST_EVENTS = 500;

/** Checked with its hash after the rest of the body. */
const Pour = z
  .looseObject({ format: z.string() })
  .describe('A frozen pour: the plan with its inputs and their hash');

export const RunsQuery = z.strictObject({
  job: Id.optional().describe('Only runs of this job; left out: all'),
});

export const OpenRunBody = z.strictObject({
  jobId: Id,
  title: z.string().max(300),
  pour: Pour,
});

export const RunSummary = z.strictObject({
  id: Id,
  jobId: Id,
  coatId: z.string(),
  title: z.string(),
  openedAt: z.iso.datetime(),
  lastEvent: z.number().int().min(0),
});
export const RunList = z.strictObject({ runs: z.array(RunSummary) });
export const Run = RunSummary.extend({ pour: Pour });
export const RunOpened = z.strictObject({ openedAt: z.iso.datetime() });

export const ExchangeBody = z.strictObject({
  after: z.number().int().min(0).max(2_147_483_647).describe('Number of the newest event the device has'),
  now_ms: z.number().int().min(0).max(8.64e15).describe('Clock of the device now, ms since 1970'),
  events: z
    .array(RunEvent)
    .max(MOST_EVENTS)
    .describe('Events made on the device; sending them again is harmless'),
});
export const Exchange = z.strictObject({
  last: z.number().int().min(0).describe('Number of the newest event'),
  now_ms: z.number().int().describe('Clock of the server, ms since 1970'),
  events: z.array(
    z.strictObject({
      number: z.number().int().min(1),
      happened_ms: z.number().int().describe('When it happened, on the clock of the server'),
      event: RunEvent,
    }),
  ),
});
