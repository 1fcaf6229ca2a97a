/** Puts parts that lie loose back into the open sheets, each where it spoils least, and opens a sheet when none has room. */
import type { RandomStream } from '#core/numeric/random.ts';
import { fits, type Task } from './counts.ts';
import { copyPanel, eachRest, emptyPanel, type Panel, type Place, putIn } from './panel.ts';

export interface OpenSheet {
  /** Place in task.sheets. */
  readonly sheet: number;
  readonly root: Panel;
}

/** A plan under way: sheets begun, items that lie loose. */
export interface State {
  open: OpenSheet[];
  out: number[];
  price: number;
}

/** Fills `state.out` into the sheets as far as the price limit lets it; changes copies of the trees, never the trees themselves. */
export function recreate(
  state: State,
  task: Task,
  limit: number,
  stream: RandomStream,
  area: readonly number[],
): void {
  const { items } = task;
  const way = stream.below(4);
  const key = new Map<number, number>();
  for (const item of state.out) {
    const { x, y } = items[item]!;
    const size = way === 0 ? area[item]! : way === 1 ? Math.max(x, y) : way === 2 ? x : y;
    key.set(item, size * (0.75 + 0.5 * stream.uniform()));
  }
  const order = [...key.keys()].sort((a, b) => key.get(b)! - key.get(a)!);
  const fresh = new Set<Panel>();
  state.out = [];
  for (const index of order) {
    const item = items[index]!;
    let bestCost = Number.POSITIVE_INFINITY;
    let bestSheet = -1;
    let place: Place | null = null;
    for (let s = 0; s < state.open.length; s++) {
      if (stream.uniform() < 0.02) continue;
      eachRest(state.open[s]!.root, (panel) => {
        const found = bestPlace(panel, item.x, item.y, item.turns);
        if (found !== null && found.cost < bestCost) {
          bestCost = found.cost;
          place = found;
          bestSheet = s;
        }
      });
    }
    if (place === null) {
      const opened = openFor(state, task, index, limit, stream);
      if (opened === null) {
        state.out.push(index);
        continue;
      }
      fresh.add(opened);
      place = bestPlace(opened, item.x, item.y, item.turns)!;
    } else if (!fresh.has(state.open[bestSheet]!.root)) {
      const { root, sheet } = state.open[bestSheet]!;
      const copy = copyPanel(root);
      fresh.add(copy);
      state.open[bestSheet] = { sheet, root: copy };
      place = { ...(place as Place), panel: twin(root, copy, (place as Place).panel)! };
    }
    putIn(place as Place, item, index);
  }
}

/** The panel of the copy that stands where `wanted` stands in the original. */
function twin(original: Panel, copy: Panel, wanted: Panel): Panel | null {
  if (original === wanted) return copy;
  for (let i = 0; i < original.pieces.length; i++) {
    const found = twin(original.pieces[i]!, copy.pieces[i]!, wanted);
    if (found !== null) return found;
  }
  return null;
}

function openFor(state: State, task: Task, index: number, limit: number, stream: RandomStream): Panel | null {
  let chosen = -1;
  let best = Number.POSITIVE_INFINITY;
  task.sheets.forEach((sheet, i) => {
    if (!fits(task.items[index]!, sheet) || state.price + sheet.price > limit) return;
    if (sheet.count !== Number.POSITIVE_INFINITY) {
      let used = 0;
      for (const each of state.open) if (each.sheet === i) used++;
      if (used >= sheet.count) return;
    }
    const cost = (sheet.price / (sheet.x * sheet.y) + 1e-30) * (0.5 + stream.uniform());
    if (cost < best) {
      best = cost;
      chosen = i;
    }
  });
  if (chosen < 0) return null;
  const sheet = task.sheets[chosen]!;
  const root = emptyPanel(sheet.x, sheet.y, 0);
  state.open.push({ sheet: chosen, root });
  state.price += sheet.price;
  return root;
}

function bestPlace(panel: Panel, x: number, y: number, turns: boolean): Place | null {
  const restX = panel.axis === 0 ? panel.left : panel.x;
  const restY = panel.axis === 0 ? panel.y : panel.left;
  let best: Place | null = null;
  for (let turned = 0; turned < (turns ? 2 : 1); turned++) {
    const w = turned === 1 ? y : x;
    const h = turned === 1 ? x : y;
    if (w > restX || h > restY) continue;
    const whole = worth(restX * restY);
    // First cut parallel to y: full-height rest beside the item, the rest above it as wide as the item.
    const beside = whole - worth((restX - w) * restY) - worth(w * (restY - h));
    // First cut parallel to x.
    const above = whole - worth(restX * (restY - h)) - worth((restX - w) * h);
    const across = panel.axis === 0 ? beside <= above : above <= beside;
    const cost = Math.min(beside, above);
    if (best === null || cost < best.cost) best = { panel, turned: turned === 1, across, cost };
  }
  return best;
}

const worth = (area: number): number => area * Math.sqrt(area);
