/** The calendar of a job, for the table of all routes. */
import type { Route } from '../routes.ts';
import { ErrorAnswer, ProblemsAnswer } from '../schemas.ts';
import { CALENDAR_TYPE, CalendarFile, CalendarQuery } from './queries.ts';

export const calendarRoutes = {
  calendar: {
    method: 'get',
    path: '/api/jobs/:id/calendar.ics',
    what: 'Steps of the pours and stages of their cure as an iCalendar file (RFC 5545), times in UTC',
    query: CalendarQuery,
    answers: {
      200: { what: 'The calendar', schema: CalendarFile, type: CALENDAR_TYPE },
      404: { what: 'There is no such job, or no such coat in it', schema: ErrorAnswer },
      422: {
        what: 'A start, a plan or the time zone of the shop is missing; the problems name it',
        schema: ProblemsAnswer,
      },
    },
  },
} as const satisfies Record<string, Route>;
