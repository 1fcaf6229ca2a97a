/** The route for the calendar of a job. */
import { type Context, Hono } from 'hono';
import { pourCalendar } from '#core/job/calendar/pour-calendar.ts';
import { instantOf } from '#core/job/calendar/zone-time.ts';
import { computeJob } from '#core/job/compute-job.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { newShop } from '#store/shop.ts';
import type { Store } from '#store/store.ts';
import { type AppEnv, errorOf } from '../context.ts';
import { attachment } from '../job-file-name.ts';
import { idOf, query } from '../read-request.ts';
import type { ShopCards } from '../shop-cards.ts';
import { CALENDAR_TYPE, CalendarQuery } from './queries.ts';
import { calendarRoutes } from './routes.ts';

export function calendarApi(store: Store, cards: ShopCards) {
  return new Hono<AppEnv>().get(calendarRoutes.calendar.path, query(CalendarQuery), async (c) => {
    const { coat: wanted, zone: asked } = c.req.valid('query');
    const job = await store.getJob(idOf(c));
    if (job === null) return c.json({ error: errorOf(c, 'job.missing', 'There is no such job.') }, 404);
    const { coats } = job.document;
    if (wanted !== undefined && !coats.some(({ id }) => id === wanted)) {
      const names = coats.map(({ id, name }) => `${id}${name === '' ? '' : ` (${name})`}`).join(', ');
      const message = `The job has no coat "${wanted}". Allowed: ${names || 'none, it has no coats'}.`;
      return c.json({ error: errorOf(c, 'coat.missing', message) }, 404);
    }
    const shop = (await store.getShop())?.shop ?? newShop();
    const zone = asked ?? shop.timeZone;
    if (zone === '')
      return refuse(c, [
        {
          path: 'shop.timeZone',
          code: 'calendar.zone',
          message: 'The time zone of the shop is not chosen yet; without it a start is no point in time.',
          allowed: 'a name of the IANA data base on the shop page, or in the query as zone=America/Chicago',
        },
      ]);
    const starts = coats.map(({ startsAt }) => instantOf(startsAt, zone));
    const known = (await cards.all()).map(({ card }) => card);
    const { system, rates } = shop;
    const { coats: planned } = computeJob(job.document, { system, rates, cards: known, waysOut: false });
    const told: Parameters<typeof pourCalendar>[0]['coats'][number][] = [];
    const problems: Problem[] = [];
    coats.forEach(({ id, name, kind }, i) => {
      if (wanted !== undefined && id !== wanted) return;
      const [start_ms, plan] = [starts[i] ?? null, planned[i]?.plan ?? null];
      const called = name || kind;
      if (start_ms !== null && plan !== null) told.push({ id, name: called, plan, start_ms });
      else if (start_ms === null)
        problems.push({
          path: `coats.${i}.startsAt`,
          code: 'calendar.start',
          message: `${called} has no day and hour yet.`,
        });
      else
        problems.push({
          path: `coats.${i}`,
          code: 'calendar.plan',
          message: `${called} cannot be planned yet; the job sheet says what it needs.`,
        });
    });
    if (told.length === 0)
      return refuse(
        c,
        problems.length > 0
          ? problems
          : [{ path: 'coats', code: 'calendar.coats', message: 'The job has no coat.' }],
      );
    const { title } = job.document;
    const file = pourCalendar({
      jobId: job.id,
      title,
      version: job.version,
      savedAt: job.savedAt,
      coats: told,
    });
    return c.body(file, 200, {
      'Content-Type': CALENDAR_TYPE,
      'Content-Disposition': attachment(title, '-pour.ics'),
    });
  });
}

function refuse(c: Context<AppEnv>, problems: readonly Problem[]) {
  const message = 'There is nothing to put into a calendar yet; the problems say what is missing.';
  return c.json({ error: errorOf(c, 'calendar.job', message), problems: [...problems] }, 422);
}
