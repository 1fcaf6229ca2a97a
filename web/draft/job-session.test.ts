import { describe, expect, it } from 'vitest';
import { emptyJob, type JobDocument } from '#core/job/document.ts';
import { setAt } from './at-path.ts';
import { loadDraft, type Sent } from './draft-store.ts';
import { JobSession, type SaveAnswer } from './job-session.ts';

/** A server kept in hand: every save waits until the test answers it. */
function bench() {
  const kept = new Map<string, string>();
  const timers: { run: () => void; delay_ms: number; off: boolean }[] = [];
  const asked: { sent: Sent; answer: (answer: SaveAnswer) => void }[] = [];
  let ids = 0;
  let now = 0;
  const ports = {
    storage: {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
      removeItem: (key: string) => void kept.delete(key),
    },
    save: (_id: string, sent: Sent) =>
      new Promise<SaveAnswer>((resolve) => void asked.push({ sent, answer: resolve })),
    newId: () => `save-${++ids}`,
    now_ms: () => (now += 2000),
    later: (run: () => void, delay_ms: number) => {
      const timer = { run, delay_ms, off: false };
      timers.push(timer);
      return () => {
        timer.off = true;
      };
    },
  };
  return {
    ports,
    kept,
    asked,
    /** Lets the newest timer that is still wanted run. */
    tick: () => {
      const timer = timers.findLast((each) => !each.off);
      if (timer === undefined) throw new Error('no timer is set');
      timer.off = true;
      timer.run();
    },
    waiting: () => timers.filter((timer) => !timer.off).map((timer) => timer.delay_ms),
    settle: () => new Promise((resolve) => setTimeout(resolve, 0)),
  };
}

const type = (session: JobSession, title: string) =>
  session.edit('Title', 'title', (d: JobDocument) => setAt(d, ['title'], title));

describe('an open job', () => {
  it('is saved after a pause with the version it was read at, and its draft is gone', async () => {
    const b = bench();
    const session = new JobSession('j', { version: 3, document: emptyJob('a') }, b.ports);
    type(session, 'b');
    expect(loadDraft(b.ports.storage, 'j')?.document.title).toBe('b');
    b.tick();
    expect(b.asked[0]!.sent).toMatchObject({ saveId: 'save-1', baseVersion: 3, document: { title: 'b' } });
    b.asked[0]!.answer({ kind: 'saved', version: 4 });
    await b.settle();
    expect(session.state()).toMatchObject({ save: 'saved', version: 4 });
    expect(b.kept.size).toBe(0);
  });

  it('sends a save whose answer never came again under the same id, then what was typed since', async () => {
    const b = bench();
    const session = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    type(session, 'b');
    b.tick();
    type(session, 'c');
    b.asked[0]!.answer({ kind: 'unreachable', reason: 'no network' });
    await b.settle();
    expect(session.state().save).toBe('offline');
    b.tick();
    expect(b.asked[1]!.sent).toEqual(b.asked[0]!.sent);
    b.asked[1]!.answer({ kind: 'saved', version: 2 });
    await b.settle();
    b.tick();
    expect(b.asked[2]!.sent).toMatchObject({ saveId: 'save-2', baseVersion: 2, document: { title: 'c' } });
  });

  it('waits longer after each failure, but never longer than half a minute', async () => {
    const b = bench();
    const session = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    type(session, 'b');
    const delays: number[] = [];
    for (let i = 0; i < 7; i++) {
      b.tick();
      b.asked[i]!.answer({ kind: 'unreachable', reason: '' });
      await b.settle();
      delays.push(...b.waiting());
    }
    expect(delays).toEqual([2000, 4000, 8000, 16000, 30000, 30000, 30000]);
  });

  it('takes up the draft after a reload, with the version it was based on', async () => {
    const b = bench();
    const before = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    type(before, '48 inx');
    const after = new JobSession('j', { version: 5, document: emptyJob('other') }, b.ports);
    expect(after.state()).toMatchObject({ document: { title: '48 inx' }, version: 1, resumed: true });
    b.tick();
    expect(b.asked.at(-1)!.sent.baseVersion).toBe(1);
  });

  it('stops at a conflict and overwrites nothing until every choice is made', async () => {
    const b = bench();
    const session = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    type(session, 'mine');
    b.tick();
    b.asked[0]!.answer({ kind: 'conflict', version: 2, document: emptyJob('theirs') });
    await b.settle();
    expect(session.state()).toMatchObject({ save: 'conflict', document: { title: 'mine' } });
    type(session, 'mine still');
    expect(b.waiting()).toEqual([]);
    session.settle({ title: 'theirs' });
    expect(session.state().document.title).toBe('theirs');
    expect(b.kept.size).toBe(0);
  });

  it('saves the merged job on top of theirs', async () => {
    const b = bench();
    const session = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    type(session, 'mine');
    b.tick();
    const theirs = setAt(emptyJob('a'), ['record'], 'They wrote this');
    b.asked[0]!.answer({ kind: 'conflict', version: 2, document: theirs });
    await b.settle();
    session.settle({});
    b.tick();
    expect(b.asked[1]!.sent).toMatchObject({
      baseVersion: 2,
      document: { title: 'mine', record: 'They wrote this' },
    });
    expect(b.asked[1]!.sent.saveId).not.toBe(b.asked[0]!.sent.saveId);
  });

  it('knows its own save in a conflict when the answer was lost', async () => {
    const b = bench();
    const session = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    type(session, 'b');
    b.tick();
    b.asked[0]!.answer({ kind: 'conflict', version: 2, document: setAt(emptyJob('a'), ['title'], 'b') });
    await b.settle();
    expect(session.state()).toMatchObject({ save: 'saved', version: 2, conflict: null });
  });

  it('keeps the draft when the server refuses it, and sends again after a change', async () => {
    const b = bench();
    const session = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    type(session, 'b');
    b.tick();
    b.asked[0]!.answer({ kind: 'refused', problems: [{ path: 'title', code: 'x', message: 'No.' }] });
    await b.settle();
    expect(session.state()).toMatchObject({ save: 'refused', problems: [{ path: 'title' }] });
    expect(b.kept.size).toBe(1);
    type(session, 'c');
    b.tick();
    expect(b.asked[1]!.sent).toMatchObject({ saveId: 'save-2', document: { title: 'c' } });
  });

  it('says when the device cannot keep what is typed', () => {
    const b = bench();
    b.ports.storage.setItem = () => {
      throw new Error('full');
    };
    const session = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    type(session, 'b');
    expect(session.state()).toMatchObject({ kept: false, document: { title: 'b' } });
  });

  it('takes a newer version from the server only when nothing typed would be lost', () => {
    const b = bench();
    const session = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    session.refresh({ version: 2, document: emptyJob('newer') });
    expect(session.state().document.title).toBe('newer');
    type(session, 'mine');
    session.refresh({ version: 3, document: emptyJob('newest') });
    expect(session.state().document.title).toBe('mine');
  });

  it('moves a draft it cannot read aside instead of deleting it', () => {
    const b = bench();
    b.kept.set('pourwright.draft.j', '{"broken');
    const session = new JobSession('j', { version: 1, document: emptyJob('a') }, b.ports);
    expect(session.state().document.title).toBe('a');
    expect(b.kept.get('pourwright.draft.j.unreadable')).toBe('{"broken');
  });
});
