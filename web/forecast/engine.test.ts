import { describe, expect, it } from 'vitest';
import { emptyJob } from '#core/job/document.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import { ForecastEngine } from './engine.ts';
import type { Question, Reply } from './messages.ts';

function bench() {
  const asked: Question[] = [];
  let reply: (reply: Reply) => void = () => {};
  let crash: (reason: string) => void = () => {};
  const engine = new ForecastEngine({
    postMessage: (question) => void asked.push(question),
    onReply: (listen) => {
      reply = listen;
    },
    onCrash: (listen) => {
      crash = listen;
    },
  });
  const forecast = (modelVersion: string) => ({ modelVersion }) as JobForecast;
  return {
    engine,
    asked,
    answer: (name: string) => reply({ number: asked.at(-1)!.number, forecast: forecast(name) }),
    fail: (why: string) => reply({ number: asked.at(-1)!.number, failed: why }),
    crash: (why: string) => crash(why),
  };
}

const shop = { rates: {}, system: 'us' } as const;
const [a, b, c] = [emptyJob('a'), emptyJob('b'), emptyJob('c')];

describe('the forecast engine', () => {
  it('sends one question at a time and skips those overtaken meanwhile', () => {
    const t = bench();
    t.engine.want('job', a, shop);
    t.engine.want('job', b, shop);
    t.engine.want('job', c, shop);
    expect(t.asked.map((q) => q.document.title)).toEqual(['a']);
    t.answer('of a');
    expect(t.engine.read('job')).toMatchObject({ of: a, behind: true });
    expect(t.asked.map((q) => q.document.title)).toEqual(['a', 'c']);
    t.answer('of c');
    expect(t.engine.read('job')).toMatchObject({ of: c, behind: false, forecast: { modelVersion: 'of c' } });
  });

  it('computes the newest question of several jobs first', () => {
    const t = bench();
    t.engine.want('one', a, shop);
    t.engine.want('two', b, shop);
    t.engine.want('three', c, shop);
    t.answer('a');
    expect(t.asked.at(-1)!.document.title).toBe('c');
  });

  it('asks nothing twice', () => {
    const t = bench();
    t.engine.want('job', a, shop);
    t.engine.want('job', a, shop);
    t.answer('a');
    expect(t.asked).toHaveLength(1);
  });

  it('asks again when the shop changes its units', () => {
    const t = bench();
    t.engine.want('job', a, shop);
    t.answer('in feet');
    t.engine.want('job', a, { ...shop, system: 'metric' });
    expect(t.asked.map((q) => q.system)).toEqual(['us', 'metric']);
    expect(t.engine.read('job').behind).toBe(true);
    t.answer('in metres');
    expect(t.engine.read('job')).toMatchObject({ behind: false, forecast: { modelVersion: 'in metres' } });
  });

  it('keeps the last forecast and says why when the model gives up', () => {
    const t = bench();
    t.engine.want('job', a, shop);
    t.answer('of a');
    t.engine.want('job', b, shop);
    t.fail('film_m is 9');
    expect(t.engine.read('job')).toMatchObject({
      forecast: { modelVersion: 'of a' },
      failed: 'film_m is 9',
      behind: false,
    });
  });

  it('goes on after the worker crashed', () => {
    const t = bench();
    t.engine.want('job', a, shop);
    t.engine.want('other', b, shop);
    t.crash('out of memory');
    expect(t.engine.read('job').failed).toBe('out of memory');
    t.answer('of b');
    expect(t.engine.read('other').forecast).toMatchObject({ modelVersion: 'of b' });
  });
});
