/**
 * Looks for a cheaper cutting plan by taking some pieces out and putting them back otherwise, always under a price that would
 * beat the best plan so far, until nothing is left over. After Gardeyn and Wauters 2022, "A goal-driven ruin and
 * recreate heuristic for the 2D variable-sized bin packing problem with guillotine constraints", European Journal of
 * Operational Research 301, 432 (the idea from memory; details here are our own). Late acceptance after Burke and Bykov 2017.
 */
import { type RandomStream, randomStream } from '#core/numeric/random.ts';
import type { Task } from './counts.ts';
import { copyPanel, eachItem, eachRest, type Panel, takeOut } from './panel.ts';
import { type OpenSheet, recreate, type State } from './recreate.ts';

export interface Found {
  readonly open: readonly OpenSheet[];
  readonly price: number;
}

/** Prices this close are one price. */
export const SAME_PRICE = 1e-9;

const HISTORY = 60;

/**
 * @param target stop as soon as the price is no more than this.
 * @param rounds most rounds of taking out and putting back.
 * @returns null when no plan that holds every item was found.
 */
export function searchPlan(task: Task, target: number, rounds: number, seed: number): Found | null {
  const stream = randomStream(seed);
  const area = task.items.map((item) => item.x * item.y);
  const total = area.reduce((sum, each) => sum + each, 0);
  const weight = area.map((each) => each / total);
  const missing = (state: State): number => state.out.reduce((sum, item) => sum + weight[item]! + 1e-3, 0);

  let state: State = { open: [], out: task.items.map((_, i) => i), price: 0 };
  let limit = Number.POSITIVE_INFINITY;
  let best: State | null = null;
  let now = missing(state);
  const history = new Float64Array(HISTORY).fill(now);
  for (let round = 0; round < rounds; round++) {
    const next: State = { open: state.open.slice(), out: state.out.slice(), price: state.price };
    if (round > 0) ruin(next, task, stream);
    recreate(next, task, limit, stream, area);
    const value = missing(next);
    const slot = round % HISTORY;
    if (value <= now || value <= history[slot]!) {
      state = next;
      now = value;
    }
    history[slot] = now;
    if (state.out.length > 0) continue;
    best = state;
    limit = state.price - SAME_PRICE * Math.max(1, state.price);
    if (state.price <= target + SAME_PRICE * Math.max(1, target)) break;
    state = { open: state.open.slice(), out: [], price: state.price };
    while (state.price >= limit && state.open.length > 0) closeOne(state, task, area);
    now = missing(state);
    history.fill(now);
  }
  return best;
}

/** No dearer, larger rests: the sum of the squares of the rests may only grow. */
export function tidyPlan(start: Found, task: Task, rounds: number, seed: number): Found {
  const stream = randomStream(seed);
  const area = task.items.map((item) => item.x * item.y);
  let state: State = { open: start.open.slice(), out: [], price: start.price };
  let worth = restWorth(state);
  const limit = state.price + SAME_PRICE * Math.max(1, state.price);
  for (let round = 0; round < rounds; round++) {
    const next: State = { open: state.open.slice(), out: [], price: state.price };
    ruin(next, task, stream);
    recreate(next, task, limit, stream, area);
    if (next.out.length > 0 || next.price > limit) continue;
    const value = restWorth(next);
    if (next.price < state.price - SAME_PRICE || value >= worth) {
      state = next;
      worth = value;
    }
  }
  return { open: state.open, price: state.price };
}

function restWorth(state: State): number {
  let sum = 0;
  for (const { root } of state.open)
    eachRest(root, (panel) => {
      const size = panel.left * (panel.axis === 0 ? panel.y : panel.x);
      sum += size * size;
    });
  return sum - state.open.length;
}

/** Takes out the sheet that holds least for its price. */
function closeOne(state: State, task: Task, area: readonly number[]): void {
  let worst = 0;
  let least = Number.POSITIVE_INFINITY;
  state.open.forEach(({ root, sheet }, i) => {
    const price = task.sheets[sheet]!.price;
    if (!(price > 0)) return;
    let held = 0;
    eachItem(root, (item) => {
      held += area[item]!;
    });
    if (held / price < least) {
      least = held / price;
      worst = i;
    }
  });
  close(state, worst, task);
}

function close(state: State, index: number, task: Task): void {
  const { root, sheet } = state.open[index]!;
  eachItem(root, (item) => state.out.push(item));
  state.open.splice(index, 1);
  state.price -= task.sheets[sheet]!.price;
  if (state.open.length === 0) state.price = 0;
}

function ruin(state: State, task: Task, stream: RandomStream): void {
  const times = 1 + stream.below(4);
  // Neighbouring removals on few sheets make room; the same over all sheets would only leave holes.
  const few = 1 + stream.below(3);
  const chosen: Panel[] = [];
  for (let i = 0; i < few && state.open.length > 0; i++) {
    const at = stream.below(state.open.length);
    if (chosen.includes(state.open[at]!.root)) continue;
    if (stream.uniform() < 0.06) {
      close(state, at, task);
      continue;
    }
    const { root, sheet } = state.open[at]!;
    const copy = copyPanel(root);
    state.open[at] = { sheet, root: copy };
    chosen.push(copy);
  }
  for (let i = 0; i < times && chosen.length > 0; i++) {
    const root = chosen[stream.below(chosen.length)]!;
    if (root.pieces.length === 0) continue;
    const way = randomWay(root, stream);
    eachItem(way[way.length - 1]!, (item) => state.out.push(item));
    takeOut(way);
  }
  for (let i = state.open.length - 1; i >= 0; i--) {
    if (state.open[i]!.root.pieces.length === 0) close(state, i, task);
  }
}

/** From the root down to a random piece, stopping early now and then so that whole strips go too. */
function randomWay(root: Panel, stream: RandomStream): Panel[] {
  const way = [root];
  let panel = root;
  while (panel.pieces.length > 0) {
    panel = panel.pieces[stream.below(panel.pieces.length)]!;
    way.push(panel);
    if (stream.uniform() < 0.25) break;
  }
  return way;
}
