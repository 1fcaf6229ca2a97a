import { expect, it } from 'vitest';
import { workerPort } from './port.ts';

/** Workers that keep what they are asked, and the test speaks for them. */
function shop() {
  const made: {
    asked: string[];
    ended: boolean;
    onmessage: Worker['onmessage'];
    onerror: Worker['onerror'];
    postMessage: (ask: string) => void;
    terminate: () => void;
  }[] = [];
  const heard: string[] = [];
  const port = workerPort<string, string>(() => {
    const one: (typeof made)[number] = {
      asked: [],
      ended: false,
      onmessage: null,
      onerror: null,
      postMessage: (ask) => void one.asked.push(ask),
      terminate: () => {
        one.ended = true;
      },
    };
    made.push(one);
    return one as Worker & typeof one;
  }, 'it could not be started');
  port.onReply((reply) => heard.push(reply));
  port.onCrash((reason) => heard.push(`crash: ${reason}`));
  const say = (n: number, data: string) => made[n]!.onmessage!.call({} as Worker, { data } as MessageEvent);
  const fall = (n: number, message: string) =>
    made[n]!.onerror!.call({} as Worker, { message } as ErrorEvent);
  return { made, heard, port, say, fall };
}

it('starts a worker with the first question, and asks the same one on', () => {
  const { made, heard, port, say } = shop();
  expect(made).toHaveLength(0);
  port.postMessage('one');
  port.postMessage('two');
  expect(made.map(({ asked }) => asked)).toEqual([['one', 'two']]);
  say(0, 'yes');
  expect(heard).toEqual(['yes']);
});

it('tells of a crash with its words or its own, ends that worker, and asks a new one', () => {
  const { made, heard, port, fall, say } = shop();
  port.postMessage('one');
  fall(0, 'out of memory');
  expect(made[0]!.ended).toBe(true);
  port.postMessage('two');
  fall(1, '');
  port.postMessage('three');
  expect(made.map(({ asked }) => asked)).toEqual([['one'], ['two'], ['three']]);
  say(2, 'well');
  expect(heard).toEqual(['crash: out of memory', 'crash: it could not be started', 'well']);
});

it('does not hear a worker that was ended, and starts another when asked again', () => {
  const { made, heard, port, say, fall } = shop();
  port.close();
  port.postMessage('one');
  port.close();
  expect(made[0]!.ended).toBe(true);
  say(0, 'too late');
  fall(0, 'too late');
  expect(heard).toEqual([]);
  port.postMessage('two');
  say(1, 'in time');
  expect(made[1]!.asked).toEqual(['two']);
  expect(heard).toEqual(['in time']);
});
