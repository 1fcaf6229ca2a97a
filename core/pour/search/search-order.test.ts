import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { searchOrder } from './search-order.ts';
import type { SearchCup } from './timing.ts';

const seconds = (min: number, max: number) => fc.integer({ min, max });
const cup = fc.record({
  mix_s: seconds(30, 300),
  empty_s: seconds(5, 60),
  spread_s: seconds(0, 240),
  pourNow_s: seconds(200, 900),
  working_s: seconds(400, 2400),
});

/** Every order of 0 to n - 1. */
function orders(n: number): number[][] {
  if (n === 0) return [[]];
  return orders(n - 1).flatMap((order) =>
    Array.from({ length: n }, (_, at) => [...order.slice(0, at), n - 1, ...order.slice(at)]),
  );
}

interface Task {
  readonly person: number;
  readonly kind: 'mix' | 'pour';
  readonly cup: number;
}

/** Every way to write the tasks down that keeps the rules: mixes in the order of pouring for each person, each before its pour. */
function* lists(order: readonly number[], crew: number): Generator<readonly Task[][]> {
  const n = order.length;
  for (let code = 0; code < crew ** n; code++) {
    const mixers = order.map((_, k) => 1 + (Math.floor(code / crew ** k) % crew));
    const byHelper = Array.from({ length: crew - 1 }, (_, h) =>
      order.flatMap((c, k): Task[] => (mixers[k] === h + 2 ? [{ person: h + 2, kind: 'mix', cup: c }] : [])),
    );
    const own = order.filter((_, k) => mixers[k] === 1);
    for (const mine of merged(own, order)) yield [mine, ...byHelper];
  }
}

/** Ways for person 1 to weave the own mixes into the pours. */
function merged(mixes: readonly number[], pours: readonly number[]): Task[][] {
  if (pours.length === 0) return [[]];
  const found: Task[][] = [];
  if (mixes.length > 0)
    for (const rest of merged(mixes.slice(1), pours))
      found.push([{ person: 1, kind: 'mix', cup: mixes[0]! }, ...rest]);
  if (!mixes.includes(pours[0]!))
    for (const rest of merged(mixes, pours.slice(1)))
      found.push([{ person: 1, kind: 'pour', cup: pours[0]! }, ...rest]);
  return found;
}

/** Whether starts exist that keep every rule with this slack: pushed later until nothing moves, or longer than there are tasks to push. */
function holds(
  people: readonly (readonly Task[])[],
  order: readonly number[],
  cups: readonly SearchCup[],
  after_s: number,
  slack_s: number,
) {
  const mix = cups.map(() => 0);
  const pour = cups.map(() => 0);
  const last = order.at(-1)!;
  for (let round = 0; ; round++) {
    let moved = false;
    const push = (list: number[], at: number, to: number) => {
      if (to <= list[at]! + 1e-9) return;
      list[at] = to;
      moved = true;
    };
    for (const tasks of people)
      tasks.forEach((task, i) => {
        const next = tasks[i + 1];
        if (next === undefined) return;
        const { mix_s, empty_s, spread_s } = cups[task.cup]!;
        const end = task.kind === 'mix' ? mix[task.cup]! + mix_s : pour[task.cup]! + empty_s + spread_s;
        push(next.kind === 'mix' ? mix : pour, next.cup, end);
      });
    cups.forEach((c, i) => {
      push(pour, i, mix[i]! + c.mix_s);
      push(mix, i, pour[i]! + c.empty_s - c.pourNow_s + slack_s);
      const done = pour[last]! + cups[last]!.empty_s + cups[last]!.spread_s + after_s;
      push(mix, i, done - c.working_s + slack_s);
    });
    if (!moved) return true;
    if (round > 4 * cups.length + 4) return false;
  }
}

/** The most slack of all, by halving, over every order and every way to share the work. */
function bruteForce(cups: readonly SearchCup[], crew: number, after_s: number): number {
  let best = -6000;
  for (const order of orders(cups.length))
    for (const people of lists(order, crew)) {
      if (!holds(people, order, cups, after_s, best + 0.01)) continue;
      let [low, high] = [best, 3000];
      while (high - low > 0.005) {
        const middle = (low + high) / 2;
        if (holds(people, order, cups, after_s, middle)) low = middle;
        else high = middle;
      }
      best = low;
    }
  return best;
}

describe('the order of cups with the most slack', () => {
  it('is what trying everything finds, for up to three cups and three people', () => {
    fc.assert(
      fc.property(
        fc.array(cup, { minLength: 1, maxLength: 3 }),
        fc.integer({ min: 1, max: 3 }),
        seconds(0, 300),
        (cups, crew, after_s) => {
          const found = searchOrder({ cups, crew, after_s });
          expect(found.proven).toBe(true);
          expect(Math.abs(found.slack_s - bruteForce(cups, crew, after_s))).toBeLessThan(0.05);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('is what trying everything finds for four cups', () => {
    fc.assert(
      fc.property(
        fc.array(cup, { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 1, max: 2 }),
        (cups, crew) => {
          const found = searchOrder({ cups, crew, after_s: 120 });
          expect(Math.abs(found.slack_s - bruteForce(cups, crew, 120))).toBeLessThan(0.05);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('has every cup once, is never beyond its bound, and more hands or a shorter meld never take slack away', () => {
    fc.assert(
      fc.property(
        fc.array(cup, { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 1, max: 2 }),
        seconds(0, 300),
        (cups, crew, after_s) => {
          const found = searchOrder({ cups, crew, after_s });
          expect(found.turns.map((turn) => turn.cup).sort()).toEqual(cups.map((_, i) => i));
          expect(found.slack_s).toBeLessThanOrEqual(found.bound_s + 1e-6);
          const helped = searchOrder({ cups, crew: crew + 1, after_s });
          if (found.proven && helped.proven)
            expect(helped.slack_s).toBeGreaterThanOrEqual(found.slack_s - 1e-5);
          const shorter = searchOrder({ cups, crew, after_s: after_s / 2 });
          if (shorter.proven) expect(shorter.slack_s).toBeGreaterThanOrEqual(found.slack_s - 1e-5);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('tells how far off it may be when it may not search to the end', () => {
    const cups = Array.from({ length: 9 }, (_, i) => ({
      mix_s: 90 + 7 * i,
      empty_s: 20,
      spread_s: 60 + ((i * 37) % 50),
      pourNow_s: 700,
      working_s: 2200 - 31 * ((i * 5) % 9),
    }));
    const found = searchOrder({ cups, crew: 3, after_s: 200, branches: 50 });
    expect(found.branches).toBeLessThanOrEqual(51);
    expect(found.bound_s).toBeGreaterThanOrEqual(searchOrder({ cups, crew: 3, after_s: 200 }).slack_s - 1e-6);
  });

  it('refuses figures out of range by name', () => {
    expect(() => searchOrder({ cups: [], crew: 1, after_s: 0 })).toThrow(/number of cups = 0/);
    const one = { mix_s: -1, empty_s: 1, spread_s: 1, pourNow_s: 1, working_s: 1 };
    expect(() => searchOrder({ cups: [one], crew: 1, after_s: 0 })).toThrow(/mix_s = -1/);
    expect(() => searchOrder({ cups: [one], crew: 4, after_s: 0 })).toThrow(/crew is 4/);
  });
});
