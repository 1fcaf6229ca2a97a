import { describe, expect, it } from 'vitest';
import { ResinCardDocument } from '#core/resin/card-document.ts';
import { FitClient } from './fit-client.ts';
import type { Fit, Question, Reply } from './fit-messages.ts';

function bench() {
  const asked: Question[] = [];
  let reply: (reply: Reply) => void = () => {};
  let crash: (reason: string) => void = () => {};
  const client = new FitClient({
    postMessage: (question) => void asked.push(question),
    onReply: (listen) => {
      reply = listen;
    },
    onCrash: (listen) => {
      crash = listen;
    },
  });
  const card = (name: string) => ResinCardDocument.parse({ format: 'pourwright resin 1', id: 'a', name });
  return {
    asked,
    ask: (name: string, slot = 'fit') =>
      client.ask(slot, { kind: 'fit', document: card(name), system: 'us' }),
    names: () => asked.map(({ ask }) => ('document' in ask ? ask.document.name : '')),
    answer: (name: string) => reply({ number: asked.length, answer: { name } as unknown as Fit }),
    fail: (why: string) => reply({ number: asked.length, failed: why }),
    crash: (why: string) => crash(why),
  };
}

describe('the fit client', () => {
  it('sends one question at a time, skips those overtaken, and answers them with null', async () => {
    const t = bench();
    const [a, b, c] = [t.ask('a'), t.ask('b'), t.ask('c')];
    t.answer('a');
    t.answer('c');
    expect(t.names()).toEqual(['a', 'c']);
    expect(await Promise.all([a, b, c])).toEqual([null, null, { name: 'c' }]);
  });

  it('keeps questions of different slots', async () => {
    const t = bench();
    const [a, b] = [t.ask('a', 'one'), t.ask('b', 'two')];
    t.answer('a');
    t.answer('b');
    expect(await Promise.all([a, b])).toEqual([{ name: 'a' }, { name: 'b' }]);
  });

  it('says why when the model gives up or the worker crashes, and goes on', async () => {
    const t = bench();
    const [a, b, c] = [t.ask('a', 'one'), t.ask('b', 'two'), t.ask('c', 'three')];
    const refused = Promise.allSettled([a, b]);
    t.fail('no resin');
    t.crash('out of memory');
    t.answer('c');
    expect((await refused).map((each) => (each.status === 'rejected' ? each.reason.message : ''))).toEqual([
      'no resin',
      'out of memory',
    ]);
    expect(await c).toEqual({ name: 'c' });
  });
});
