/** What may be asked of the calendar of a job. */
import { z } from 'zod';
import { isTimeZone } from '#core/job/calendar/zone-time.ts';

export const CalendarQuery = z.strictObject({
  coat: z
    .string()
    .min(1)
    .max(60)
    .optional()
    .describe('Id of the coat. Left out: every coat with a plan and a start'),
  zone: z
    .string()
    .max(64)
    .refine(isTimeZone, 'the zone is a name of the IANA data base, as America/Chicago')
    .optional()
    .describe('IANA time zone the starts are meant in. Left out: that of the shop'),
});

export const CalendarFile = z.string().meta({ contentMediaType: 'text/calendar' });
export const CALENDAR_TYPE = 'text/calendar; charset=utf-8';
