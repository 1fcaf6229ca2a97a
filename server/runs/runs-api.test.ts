import { describe, expect, it } from 'vitest';
import { freezePour, frozenText } from '#core/pour/run/frozen-pour.ts';
import { plan, request } from '#core/pour/run/sample-run.check.ts';
import { AT, testApp } from '../test-app.ts';

const uuid = () => `0192f0c0-0000-7${crypto.randomUUID().slice(15)}`;
const pour = JSON.parse(frozenText(freezePour(request, plan, '1')));

async function opened() {
  const { call } = await testApp();
  const [id, jobId] = [uuid(), crypto.randomUUID()];
  const body = { jobId, title: 'Vanity', pour };
  expect((await call('PUT', `/api/runs/${id}`, body)).body).toEqual({ openedAt: AT });
  return { call, id, jobId, body };
}
const done = (run: string, step: string, wall_ms: number) => ({
  ...{ id: uuid(), run, device: uuid(), at_s: 1, wall_ms, kind: 'done', step },
});

describe('the API of runs', () => {
  it('answers with the frozen pour as it was handed in', async () => {
    const { call, id, jobId } = await opened();
    const run = await call('GET', `/api/runs/${id}`);
    expect(run.body).toMatchObject({ id, jobId, title: 'Vanity', lastEvent: 0 });
    expect(run.body.pour).toEqual(pour);
    expect((await call('GET', `/api/runs?job=${jobId}`)).body.runs).toHaveLength(1);
    expect((await call('GET', `/api/runs?job=${crypto.randomUUID()}`)).body.runs).toEqual([]);
  });

  it('refuses a pour that was changed, and says where', async () => {
    const { call, body } = await opened();
    const changed = { ...body, pour: { ...pour, plan: { ...pour.plan, slack_s: 1e6 } } };
    const answer = await call('PUT', `/api/runs/${uuid()}`, changed);
    expect(answer.status).toBe(422);
    expect(answer.body.error.message).toMatch(/hash does not belong to this pour/);
  });

  it('exchanges events: takes each once and gives those the device lacks', async () => {
    const { call, id } = await opened();
    const [a, b] = [done(id, 'mix-1', 1000), done(id, 'pour-1', 2000)];
    const send = (after: number, ...events: readonly object[]) =>
      call('POST', `/api/runs/${id}/events`, { after, now_ms: 3000, events });
    expect((await send(0, a)).body).toMatchObject({ last: 1, events: [{ number: 1, event: a }] });
    expect((await send(1, a, b)).body).toMatchObject({ last: 2, events: [{ number: 2, event: b }] });
    expect((await send(2, a, b)).body).toMatchObject({ last: 2, events: [] });
  });

  it('tells when an event happened by its own clock, however wrong the clock of the device', async () => {
    const { call, id } = await opened();
    const far_ms = 4_000_000_000_000;
    const answer = await call('POST', `/api/runs/${id}/events`, {
      after: 0,
      now_ms: far_ms,
      events: [done(id, 'mix-1', far_ms - 90_000), done(id, 'pour-1', far_ms + 5000)],
    });
    const happened = answer.body.events.map((each: { happened_ms: number }) => each.happened_ms);
    expect(happened).toEqual([Date.parse(AT) - 90_000, Date.parse(AT)]);
  });

  it('refuses an event that is not one by field, and stores nothing of the lot', async () => {
    const { call, id } = await opened();
    const good = done(id, 'mix-1', 1);
    const bad = { ...done(id, 'mix-2', 1), at_s: 'soon' };
    const answer = await call('POST', `/api/runs/${id}/events`, { after: 0, now_ms: 1, events: [good, bad] });
    expect(answer.status).toBe(400);
    expect(answer.body.error.message).toMatch(/events\.1\.at_s/);
    expect((await call('GET', `/api/runs/${id}`)).body.lastEvent).toBe(0);
  });
});
