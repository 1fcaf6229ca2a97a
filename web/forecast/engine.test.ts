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

const rates = {};
const [a, b, c] = [emptyJob('a'), emptyJob('b'), emptyJob('c')];

describe('the forecast engine', () => {
  it('sends one question at a time and skips those overtaken meanwhile', () => {
    const t = bench();
    t.engine.want('job', a, rates);
    t.engine.want('job', b, rates);
    t.engine.want('job', c, rates);
    expect(t.asked.map((q) => q.document.title)).toEqual(['a']);
    t.answer('of a');
    expect(t.engine.read('job')).toMatchObject({ of: a, behind: true });
    expect(t.asked.map((q) => q.document.title)).toEqual(['a', 'c']);
    t.answer('of c');
    expect(t.engine.read('job')).toMatchObject({ of: c, behind: false, forecast: { modelVersion: 'of c' } });
  });

  it('computes the newest question of several jobs first', () => {
    const t = bench();
    t.engine.want('one', a, rates);
    t.engine.want('two', b, rates);
    t.engine.want('three', c, rates);
    t.answer('a');
    expect(t.asked.at(-1)!.document.title).toBe('c');
  });

  it('asks nothing twice', () => {
    const t = bench();
    t.engine.want('job', a, rates);
    t.engine.want('job', a, rates);
    t.answer('a');
    expect(t.asked).toHaveLength(1);
  });

  it('keeps the last forecast and says why when the model gives up', () => {
    const t = bench();
    t.engine.want('job', a, rates);
    t.answer('of a');
    t.engine.want('job', b, rates);
    t.fail('film_m is 9');
    expect(t.engine.read('job')).toMatchObject({
      forecast: { modelVersion: 'of a' },
      failed: 'film_m is 9',
      behind: false,
    });
  });

  it('goes on after the worker crashed', () => {
    const t = bench();
    t.engine.want('job', a, rates);
    t.engine.want('other', b, rates);
    t.crash('out of memory');
    expect(t.engine.read('job').failed).toBe('out of memory');
    t.answer('of b');
    expect(t.engine.read('other').forecast).toMatchObject({ modelVersion: 'of b' });
  });
});
