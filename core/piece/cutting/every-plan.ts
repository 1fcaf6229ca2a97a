/**
 * The cheapest plan of a handful of parts by looking at every guillotine layout: for every set of parts the smallest
 * rectangles it can be cut from (each is two such rectangles of complementary subsets side by side or one above the
 * other), then the cheapest way to share the parts out over sheets.
 */
import type { Task } from './counts.ts';
import { emptyPanel, type Panel } from './panel.ts';
import { type Found, SAME_PRICE } from './search.ts';

/** More parts than this take too long. */
export const MOST_FOR_EVERY_PLAN = 8;

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly item: number;
  readonly turned: boolean;
  readonly axis: 0 | 1;
  readonly first: Rectangle | null;
  readonly second: Rectangle | null;
}

/**
 * @returns null when the sheets there are cannot hold all parts.
 * @throws RangeError for more than MOST_FOR_EVERY_PLAN parts.
 */
export function cheapestOfAll(task: Task): Found | null {
  const count = task.items.length;
  if (count > MOST_FOR_EVERY_PLAN)
    throw new RangeError(`${count} parts; allowed: up to ${MOST_FOR_EVERY_PLAN}`);
  const rectangles = smallestRectangles(task);
  const full = 2 ** count - 1;
  const inSheet = rectangles.map((list) =>
    task.sheets.map((sheet) => list.find((each) => each.x <= sheet.x && each.y <= sheet.y) ?? null),
  );
  const used = task.sheets.map(() => 0);
  const chosen: { sheet: number; rectangle: Rectangle }[] = [];
  const reached = new Map<string, number>();
  let best: { sheet: number; rectangle: Rectangle }[] | null = null;
  let bestPrice = Number.POSITIVE_INFINITY;
  const share = (open: number, price: number): void => {
    if (price >= bestPrice - SAME_PRICE * Math.max(1, price)) return;
    if (open === 0) {
      best = chosen.slice();
      bestPrice = price;
      return;
    }
    const key = `${open}/${used.join(',')}`;
    if ((reached.get(key) ?? Number.POSITIVE_INFINITY) <= price) return;
    reached.set(key, price);
    const lowest = open & -open;
    // Larger sets first: they leave less to share out.
    for (let set = open; set > 0; set = (set - 1) & open) {
      if ((set & lowest) === 0) continue;
      task.sheets.forEach((sheet, s) => {
        const rectangle = inSheet[set]![s]!;
        if (rectangle === null || used[s]! >= sheet.count) return;
        used[s]!++;
        chosen.push({ sheet: s, rectangle });
        share(open & ~set, price + sheet.price);
        chosen.pop();
        used[s]!--;
      });
    }
  };
  share(full, 0);
  const kept = best as { sheet: number; rectangle: Rectangle }[] | null;
  if (kept === null) return null;
  return {
    price: bestPrice,
    open: kept.map(({ sheet, rectangle }) => {
      const { x, y } = task.sheets[sheet]!;
      const root = build(rectangle, x, y);
      return { sheet, root: root.item < 0 ? root : { ...emptyPanel(x, y, 0), pieces: [root], left: 0 } };
    }),
  };
}

/** For every set of items (bits) the rectangles that hold it and none of which holds another. */
function smallestRectangles(task: Task): Rectangle[][] {
  const full = 2 ** task.items.length - 1;
  const found: Rectangle[][] = [[]];
  const useful = (x: number, y: number) => task.sheets.some((sheet) => x <= sheet.x && y <= sheet.y);
  for (let set = 1; set <= full; set++) {
    const list: Rectangle[] = [];
    const offer = (rectangle: Rectangle): void => {
      const { x, y } = rectangle;
      if (!useful(x, y) || list.some((each) => each.x <= x && each.y <= y)) return;
      for (let i = list.length - 1; i >= 0; i--) if (list[i]!.x >= x && list[i]!.y >= y) list.splice(i, 1);
      list.push(rectangle);
    };
    if ((set & (set - 1)) === 0) {
      const index = 31 - Math.clz32(set);
      const item = task.items[index]!;
      const alone = { item: index, axis: 0, first: null, second: null } as const;
      offer({ ...alone, x: item.x, y: item.y, turned: false });
      if (item.turns) offer({ ...alone, x: item.y, y: item.x, turned: true });
    } else {
      const lowest = set & -set;
      for (let part = (set - 1) & set; part > 0; part = (part - 1) & set) {
        if ((part & lowest) === 0) continue;
        for (const first of found[part]!) {
          for (const second of found[set & ~part]!) {
            const pair = { item: -1, turned: false, first, second } as const;
            offer({ ...pair, axis: 0, x: first.x + second.x, y: Math.max(first.y, second.y) });
            offer({ ...pair, axis: 1, x: Math.max(first.x, second.x), y: first.y + second.y });
          }
        }
      }
    }
    found.push(list);
  }
  return found;
}

/** The rectangle's cuts in a panel of x by y that is at least as large. */
function build(rectangle: Rectangle, x: number, y: number): Panel {
  if (rectangle.item >= 0) {
    if (rectangle.x === x && rectangle.y === y)
      return { x, y, axis: 0, item: rectangle.item, turned: rectangle.turned, pieces: [], left: 0 };
    const axis = rectangle.x < x ? 0 : 1;
    const panel = emptyPanel(x, y, axis);
    panel.pieces.push(axis === 0 ? build(rectangle, rectangle.x, y) : build(rectangle, x, rectangle.y));
    panel.left = axis === 0 ? x - rectangle.x : y - rectangle.y;
    return panel;
  }
  const panel = emptyPanel(x, y, rectangle.axis);
  for (const piece of [rectangle.first!, rectangle.second!]) {
    if (rectangle.axis === 0) {
      panel.pieces.push(build(piece, piece.x, y));
      panel.left -= piece.x;
    } else {
      panel.pieces.push(build(piece, x, piece.y));
      panel.left -= piece.y;
    }
  }
  return panel;
}
