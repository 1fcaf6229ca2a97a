import { describe, expect, it } from 'vitest';
import { forecastRun } from '#core/pour/run/forecast-run.ts';
import { freezePour } from '#core/pour/run/frozen-pour.ts';
import type { ClockSample, ClockState } from '#core/pour/run/run-clock.ts';
import { plan, request, uuid } from '#core/pour/run/sample-run.check.ts';
import { AnswerError } from '#web/api/http.ts';
import { type EventLog, memoryLog } from './event-log.ts';
import type { Exchanger } from './exchange.ts';
import type { RunEngine } from './run-engine.ts';
import { type PageLine, type PageNews, RunSession } from './run-session.ts';

const RUN = uuid(0xffff);
const pour = freezePour(request, plan, '1');

/** A device: two clocks that can be moved apart, a store that outlives its pages. */
function device(number = 1) {
  let wall_ms = 1_790_000_000_000;
  let mono_ms = 1000;
  let page = 'first page';
  let ids = 0;
  let online = false;
  let server: Exchanger = async () => {
    throw new Error('no network');
  };
  const log: EventLog = memoryLog();
  const clocks = new Map<string, ClockState>();
  const lines = new Set<(news: PageNews) => void>();
  const counts = { asked: 0, offers: 0 };
  const idle: RunEngine = {
    ask: () => {
      counts.asked += 1;
    },
    close: () => {},
  };
  const real: RunEngine = { ask: (ask, take) => take(forecastRun({ ...ask, draws: 2 })), close: () => {} };
  let asked: (() => void) | null = null;
  const slow: RunEngine = {
    ask: (ask, take) => {
      asked = () => take(forecastRun({ ...ask, draws: 2 }));
    },
    close: () => {},
  };
  return {
    log,
    lines,
    counts,
    pass(time_s: number) {
      wall_ms += time_s * 1000;
      mono_ms += time_s * 1000;
    },
    setWall(by_s: number) {
      wall_ms += by_s * 1000;
    },
    connect(to: Exchanger | null) {
      online = to !== null;
      if (to !== null) server = to;
    },
    newPage(name: string) {
      page = name;
      mono_ms = 0;
    },
    /** The slow engine answers what it was asked last. */
    answer: () => asked?.(),
    open: (engine: 'real' | 'idle' | 'slow' = 'idle') =>
      RunSession.open(RUN, pour, {
        log,
        keep: {
          read: (run) => clocks.get(run) ?? null,
          write: (run, state) => void clocks.set(run, structuredClone(state)),
        },
        engine: { real, idle, slow }[engine],
        server: (run, body) => (online ? server(run, body) : Promise.reject(new Error('no network'))),
        offer: async () => {
          if (!online) throw new Error('no network');
          counts.offers += 1;
        },
        line(hear): PageLine {
          lines.add(hear);
          return {
            tell: (news) => {
              for (const other of lines) if (other !== hear) other(news);
            },
            close: () => void lines.delete(hear),
          };
        },
        sample: (): ClockSample => ({ wall_ms, mono_ms, page, awake: false }),
        newId: () => uuid(number * 0x10000 + ++ids),
        device: uuid(0xff00 + number),
      }),
  };
}

/** The shop's server, as small as it can be. */
function shop(now_ms: () => number): Exchanger {
  const kept: Awaited<ReturnType<Exchanger>>['events'][number][] = [];
  return async (_run, { after, now_ms: device_ms, events }) => {
    for (const event of events)
      if (!kept.some((each) => each.event.id === event.id))
        kept.push({
          number: kept.length + 1,
          happened_ms: now_ms() - (device_ms - event.wall_ms),
          event,
        });
    return { last: kept.length, now_ms: now_ms(), events: kept.slice(after) };
  };
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 5));

describe('a pour under way', () => {
  it('counts from the start and shows whole seconds', async () => {
    const phone = device();
    const session = await phone.open();
    expect(session.view().now_s).toBeNull();
    await session.start();
    phone.pass(61.4);
    session.tick();
    expect(session.view().now_s).toBe(61);
  });

  it('keeps what was done with no network, and says so', async () => {
    const phone = device();
    const session = await phone.open();
    await session.start();
    await session.did({ kind: 'done', step: plan.steps[0]!.id });
    await session.exchange();
    expect(session.view().carried).toBe('offline');
    expect((await phone.log.unsent(RUN)).length).toBe(2);
  });

  it('goes on after a reload: same events, same clock', async () => {
    const phone = device();
    const before = await phone.open();
    await before.start();
    phone.pass(100);
    await before.did({ kind: 'done', step: plan.steps[0]!.id });
    before.close();
    phone.pass(20);
    phone.newPage('second page');
    const after = await phone.open();
    expect(after.view().now_s).toBe(120);
    expect(after.view().state.steps.get(plan.steps[0]!.id)?.state).toBe('done');
    expect(after.view().doubt).toBeNull();
  });

  it('takes its time from its events when the kept clock is lost', async () => {
    const phone = device();
    const session = await phone.open();
    await session.start();
    phone.pass(300);
    await session.did({ kind: 'done', step: plan.steps[0]!.id });
    phone.pass(30);
    const lost = device();
    for (const event of await phone.log.events(RUN)) await lost.log.add(event);
    lost.pass(330);
    expect((await lost.open()).view().now_s).toBe(330);
  });

  it('asks when the clock of the device went ahead, and takes the answer', async () => {
    const phone = device();
    const session = await phone.open();
    await session.start();
    phone.pass(60);
    session.tick();
    phone.setWall(3600);
    phone.pass(1);
    session.tick();
    expect(session.view().doubt?.kind).toBe('slept or set forward');
    await session.settle(-3600);
    expect(session.view().now_s).toBe(61);
    expect(session.view().doubt).toBeNull();
  });

  it('takes the last thing back', async () => {
    const phone = device();
    const session = await phone.open();
    await session.start();
    const [first] = plan.steps;
    await session.did({ kind: 'done', step: first!.id });
    phone.pass(1);
    await session.undo();
    expect(session.view().state.steps.get(first!.id)?.state).toBe('to do');
  });

  it('is the same on two pages of one browser', async () => {
    const phone = device();
    const one = await phone.open();
    const two = await phone.open();
    await one.start();
    phone.pass(5);
    await one.did({ kind: 'done', step: plan.steps[0]!.id });
    two.tick();
    expect(two.view().state).toEqual(one.view().state);
    expect(two.view().now_s).toBe(5);
  });

  it('gives a phone that joins later the same zero, whatever its own clock says', async () => {
    const first = device(1);
    const second = device(2);
    second.setWall(-7200);
    let passed_s = 0;
    const server = shop(() => 1_800_000_000_000 + passed_s * 1000);
    const pass = (time_s: number) => {
      passed_s += time_s;
      first.pass(time_s);
      second.pass(time_s);
    };
    first.connect(server);
    second.connect(server);
    const one = await first.open();
    await one.start();
    await settled();
    pass(240);
    const two = await second.open();
    await two.exchange();
    await settled();
    two.tick();
    expect(two.view().now_s).toBe(240);
    await two.did({ kind: 'done', step: plan.steps[0]!.id });
    await settled();
    await one.exchange();
    expect(one.view().state.steps.get(plan.steps[0]!.id)?.state).toBe('done');
    expect(one.view().carried).toBe('shared');
  });

  it('hands in everything once the network is back', async () => {
    const phone = device();
    const session = await phone.open();
    await session.start();
    await session.exchange();
    const handed: string[] = [];
    phone.connect(async (_run, { events }) => {
      handed.push(...events.map(({ kind }) => kind));
      return { last: 1, now_ms: 0, events: [] };
    });
    session.hurry();
    await settled();
    expect(handed).toEqual(['started']);
    expect(phone.counts.offers).toBe(1);
    expect(session.view().carried).toBe('shared');
  });

  it('sends what another page wrote and did not live to send, and does not call it shared before', async () => {
    const phone = device();
    const one = await phone.open();
    const two = await phone.open();
    await settled();
    const handed: string[] = [];
    phone.connect(async (_run, { events }) => {
      handed.push(...events.map(({ kind }) => kind));
      return { last: 1, now_ms: 0, events: [] };
    });
    await one.exchange();
    expect(one.view().carried).toBe('shared');
    const last = two.did({ kind: 'ticked', item: 'level', on: true });
    two.close();
    await last;
    expect(one.view().carried).toBe('sending');
    phone.pass(5);
    one.tick();
    await settled();
    expect(handed).toContain('ticked');
    expect(one.view().carried).toBe('shared');
  });

  it('tells a server that refuses from one that does not answer', async () => {
    const phone = device();
    const session = await phone.open();
    await session.exchange();
    phone.connect(() => Promise.reject(new AnswerError(422, 'no')));
    await settled();
    await session.exchange();
    expect(session.view().carried).toBe('refused');
  });

  it('waits longer after each failure, and tries at once when the network is back', async () => {
    const phone = device();
    const session = await phone.open();
    await settled();
    let tries = 0;
    phone.connect(() => {
      tries += 1;
      return Promise.reject(new Error('still no answer'));
    });
    for (let i = 0; i < 600; i++) {
      phone.pass(0.5);
      session.tick();
      await Promise.resolve();
      if (i % 4 === 0) await settled();
    }
    expect(tries).toBeGreaterThan(3);
    expect(tries).toBeLessThan(12);
    session.hurry();
    await settled();
    expect(session.view().carried).toBe('offline');
  });

  it('stands still once it is finished, and goes on when that is taken back', async () => {
    const phone = device();
    const session = await phone.open();
    await session.start();
    phone.pass(60);
    await session.did({ kind: 'finished' });
    phone.pass(30);
    session.tick();
    expect(session.view().now_s).toBe(60);
    await session.undo();
    session.tick();
    expect(session.view().now_s).toBe(90);
  });

  it('computes windows anew after an event', async () => {
    const phone = device();
    const session = await phone.open('real');
    await session.start();
    expect(session.view().forecast?.steps.length).toBe(plan.steps.length);
    phone.pass(30);
    await session.did({ kind: 'reading', of: 'air', cup: null, temperature_K: 305 });
    expect(session.view().forecast?.air.temperature_K).toContain(305);
  });
});

describe('four hours of a pour', () => {
  it('never asks again for a step that is done while its windows are computed, and asks again for one taken back', async () => {
    const phone = device();
    const session = await phone.open('slow');
    await session.start();
    phone.answer();
    const stateOf = () => session.view().forecast!.steps.find(({ step }) => step.id === 'mix-1')!.state;
    expect(stateOf()).toBe('in hand');
    await session.did({ kind: 'done', step: 'mix-1' });
    expect(stateOf()).toBe('done');
    phone.answer();
    expect(stateOf()).toBe('done');
    await session.undo();
    expect(stateOf()).toBe('to do');
    session.close();
  });

  it('ask for windows every ten seconds and leave nothing behind', async () => {
    const phone = device();
    const session = await phone.open();
    let told = 0;
    const stop = session.subscribe(() => {
      told += 1;
    });
    await session.start();
    const started = session.view().events.length;
    phone.counts.asked = 0;
    const ticks = 4 * 3600 * 2;
    for (let i = 0; i < ticks; i++) {
      phone.pass(0.5);
      session.tick();
      if (i % 240 === 0) await settled();
    }
    expect(session.view().now_s).toBe(4 * 3600);
    expect(session.view().events.length).toBe(started);
    expect((await phone.log.events(RUN)).length).toBe(started);
    expect(phone.lines.size).toBe(1);
    expect(phone.counts.asked).toBeLessThanOrEqual(1 + (4 * 3600) / 10);
    // once a second the time, and now and then that the server is away
    expect(told).toBeLessThan(4 * 3600 * 1.2);
    stop();
    session.close();
    expect(phone.lines.size).toBe(0);
  });
});
