/**
 * What no cutting plan can beat. Every length is replaced by a function of it that keeps "fits side by side" true (dual feasible
 * functions); the area in the new lengths must still go into the sheets. The plain area bound is the member
 * with both functions the identity. Functions: Fekete and Schepers 2001, "New classes of fast lower bounds for bin
 * packing problems", Mathematical Programming 91, 11; Carlier, Clautiaux and Moukrim 2007, "New reduction procedures
 * and lower bounds for the two-dimensional bin packing problem with fixed orientation", Computers & Operations Research 34,
 * 2223; the classes of Martello and Vigo 1998 are bounded with them in both (from memory).
 */
import type { Task } from './counts.ts';

/** From a length of 0 to `whole` to a share of 0 to 1: superadditive, 1 at `whole`. */
export type Share = (length: number) => number;

const TINY = 1e-9;

/** Lengths below k vanish, lengths above whole - k become the whole. 0 < k <= whole / 2. */
export function cutSmall(whole: number, k: number): Share {
  return (length) => (length > whole - k ? 1 : length >= k ? length / whole : 0);
}

/** Counts in steps of whole / (k + 1). k a whole number from 1. */
export function countSteps(whole: number, k: number): Share {
  return (length) => {
    const steps = ((k + 1) * length) / whole;
    const near = Math.round(steps);
    if (Math.abs(steps - near) < TINY) return near / (k + 1);
    return Math.floor(steps) / k;
  };
}

/** Counts how many lengths k go in, from both ends. 0 < k <= whole / 2. */
export function countUnits(whole: number, k: number): Share {
  const most = Math.floor(whole / k + TINY);
  return (length) => {
    if (2 * length > whole) return 1 - Math.floor((whole - length) / k + TINY) / most;
    if (2 * length === whole) return 0.5;
    return Math.floor(length / k + TINY) / most;
  };
}

/** Least sum of prices of sheets that any plan needs. */
export function lowerBound(task: Task): number {
  if (task.items.length === 0) return 0;
  const wholeX = Math.max(...task.sheets.map((sheet) => sheet.x));
  const wholeY = Math.max(...task.sheets.map((sheet) => sheet.y));
  const turning = task.items.some((item) => item.turns);
  const lengthsX = new Set<number>();
  const lengthsY = new Set<number>();
  for (const item of task.items) {
    lengthsX.add(item.x);
    lengthsY.add(item.y);
    if (item.turns) {
      lengthsX.add(item.y);
      lengthsY.add(item.x);
    }
  }
  const alongX = shares(wholeX, lengthsX);
  const alongY = turning && wholeX === wholeY ? alongX : shares(wholeY, lengthsY);
  const { items, sheets } = task;
  const tableOf = (list: readonly Share[], get: (i: number) => number) =>
    list.map((share) => Float64Array.from(items, (_, i) => share(get(i))));
  const xx = tableOf(alongX, (i) => items[i]!.x);
  const yy = tableOf(alongY, (i) => items[i]!.y);
  const xy = turning ? tableOf(alongX, (i) => Math.min(items[i]!.y, wholeX)) : xx;
  const yx = turning ? tableOf(alongY, (i) => Math.min(items[i]!.x, wholeY)) : yy;
  const lies = items.map((item) => sheets.some((sheet) => item.x <= sheet.x && item.y <= sheet.y));
  const stands = items.map(
    (item) => item.turns && sheets.some((sheet) => item.y <= sheet.x && item.x <= sheet.y),
  );
  let best = 0;
  for (let a = 0; a < alongX.length; a++) {
    for (let b = 0; b < alongY.length; b++) {
      let volume = 0;
      for (let i = 0; i < items.length; i++) {
        const lying = lies[i] ? xx[a]![i]! * yy[b]![i]! : Number.POSITIVE_INFINITY;
        const standing = stands[i] ? xy[a]![i]! * yx[b]![i]! : Number.POSITIVE_INFINITY;
        const least = Math.min(lying, standing);
        if (least !== Number.POSITIVE_INFINITY) volume += least;
      }
      best = Math.max(
        best,
        cheapestCover(
          volume,
          sheets.map((sheet) => ({
            price: sheet.price,
            count: sheet.count,
            holds: alongX[a]!(sheet.x) * alongY[b]!(sheet.y),
          })),
        ),
      );
    }
  }
  return best;
}

function shares(whole: number, lengths: ReadonlySet<number>): Share[] {
  const found: Share[] = [(length) => length / whole];
  for (let k = 1; k <= 8; k++) found.push(countSteps(whole, k));
  const steps = new Set<number>();
  for (const length of lengths) {
    for (const k of [length, whole - length]) if (k > 0 && 2 * k <= whole) steps.add(k);
    // Just above a length: it vanishes too.
    if (2 * (length + 1) <= whole) steps.add(length + 1);
  }
  steps.add(whole / 2);
  for (const k of steps) found.push(cutSmall(whole, k));
  for (const k of steps) found.push(countUnits(whole, k));
  return found;
}

/** Free sheets first; then whole sheets when only one kind costs something, parts of sheets when several do. */
function cheapestCover(
  volume: number,
  sheets: readonly { readonly price: number; readonly count: number; readonly holds: number }[],
): number {
  let open = volume;
  for (const sheet of sheets) if (!(sheet.price > 0) && sheet.holds > 0) open -= sheet.holds * sheet.count;
  if (!(open > TINY)) return 0;
  const paid = sheets
    .filter((sheet) => sheet.price > 0 && sheet.holds > 0)
    .sort((a, b) => a.price / a.holds - b.price / b.holds);
  const costing = sheets.filter((sheet) => sheet.price > 0);
  if (costing.length === 1 && paid.length === 1)
    return paid[0]!.price * Math.ceil(open / paid[0]!.holds - 1e-7);
  let price = 0;
  for (const sheet of paid) {
    const used = Math.min(sheet.count, open / sheet.holds);
    price += used * sheet.price;
    open -= used * sheet.holds;
    if (!(open > TINY)) break;
  }
  // At least one sheet that costs something is bought.
  return Math.max(
    price * (1 - 1e-7),
    costing.length > 0 ? Math.min(...costing.map((sheet) => sheet.price)) : 0,
  );
}
