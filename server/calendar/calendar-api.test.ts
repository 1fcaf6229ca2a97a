import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { JOB_FORMAT } from '#core/job/document.ts';
import { testApp } from '../test-app.ts';

const uuid = () => crypto.randomUUID();
const piece = { outline: { shape: 'round', diameter: '12 in' }, bodyThickness: '3/4 in' };
const coat = {
  id: 'c',
  resin: 'regular-50',
  film: '3 mm',
  faceFilm: '0.5 mm',
  edges: 'dammed',
  startsAt: '2026-11-01T01:30',
};
const whole = { format: JOB_FORMAT, title: 'Bar top', piece, room: { air: '21 C' }, coats: [coat] };

async function withJob(document: object) {
  const { call } = await testApp();
  const id = uuid();
  const made = await call('POST', '/api/jobs', { id, saveId: uuid(), document });
  expect([made.status, made.text]).toEqual([201, made.text]);
  return { call, path: `/api/jobs/${id}/calendar.ics`, id };
}

describe('the calendar of a job', () => {
  it('is made for the zone of the shop, a start that comes twice being the first', async () => {
    const { call, path, id } = await withJob(whole);
    const shop = { timeZone: 'America/New_York' };
    await call('PUT', '/api/shop', { baseVersion: 0, saveId: uuid(), shop });
    const answer = await call('GET', path);
    expect([answer.status, answer.status === 200 ? '' : answer.text]).toEqual([200, '']);
    expect(answer.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
    expect(answer.headers.get('content-disposition')).toContain('Bar-top-pour.ics');
    const events = new ICAL.Component(ICAL.parse(answer.text) as never).getAllSubcomponents('vevent');
    const mix = events
      .map((each) => new ICAL.Event(each))
      .find(({ uid }) => uid.startsWith(`${id}-c-mix-1`))!;
    expect(mix.startDate.toString()).toBe('2026-11-01T05:30:00Z');
    const winter = await call('GET', `${path}?coat=c&zone=Europe/Berlin`);
    expect(winter.text).toContain('DTSTART:20261101T003000Z');
  });

  it('says what is missing: the zone, the start, the plan, the coat', async () => {
    const { call, path } = await withJob(whole);
    const zone = await call('GET', path);
    expect([zone.status, zone.body.problems[0].path]).toEqual([422, 'shop.timeZone']);
    expect((await call('GET', `${path}?coat=z&zone=UTC`)).body.error.message).toContain('Allowed: c');
    expect((await call('GET', `${path}?zone=Mars`)).status).toBe(400);
    const later = await withJob({ ...whole, coats: [{ ...coat, startsAt: '' }] });
    const start = await later.call('GET', `${later.path}?zone=UTC`);
    expect([start.status, start.body.problems[0].path]).toEqual([422, 'coats.0.startsAt']);
    const bare = await withJob({ ...whole, room: {} });
    const plan = await bare.call('GET', `${bare.path}?zone=UTC`);
    expect([plan.status, plan.body.problems[0].code]).toEqual([422, 'calendar.plan']);
  });
});
