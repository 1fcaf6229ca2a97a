/**
 * Three versions of one document put side by side: what both started from (base), mine, and what someone else saved
 * meanwhile (theirs). Every difference is one field with a choice; nothing is chosen silently where both changed it.
 */
import { type Path, same } from './at-path.ts';

export type Side = 'mine' | 'theirs';

export interface Difference {
  /** `coats.0.film` in the words of the document; list items are named by their place in my list, or theirs when only they have it. */
  readonly path: Path;
  /** Stable name of the choice. */
  readonly key: string;
  readonly base: unknown;
  readonly mine: unknown;
  readonly theirs: unknown;
  /** Who changed it; 'both' needs a decision. */
  readonly changedBy: 'me' | 'them' | 'both';
  readonly what: 'value' | 'item' | 'order';
}

type Choose = (difference: Difference) => Side;
type Plain = Record<string, unknown>;

/** Lists whose items have a name of their own, so that they can be matched when the list changes. */
const nameOf: Readonly<Record<string, string>> = {
  coats: 'id',
  edges: 'edge',
  observations: 'id',
  otherPieces: 'id',
};

/** Every difference between mine and theirs, in the order of the document. */
export function differences(base: unknown, mine: unknown, theirs: unknown): Difference[] {
  const found: Difference[] = [];
  walk(base, mine, theirs, [], '', (difference) => {
    found.push(difference);
    return 'mine';
  });
  return found;
}

/** What each difference comes to when nobody has decided: the side that changed it; mine where both did. */
export function suggested(difference: Difference): Side {
  return difference.changedBy === 'them' ? 'theirs' : 'mine';
}

/** The merged document. `choices` by `Difference.key`; what is not in it follows `suggested`. */
export function merge<T>(base: T, mine: T, theirs: T, choices: Readonly<Record<string, Side>> = {}): T {
  return walk(base, mine, theirs, [], '', (d) => choices[d.key] ?? suggested(d)) as T;
}

function walk(
  base: unknown,
  mine: unknown,
  theirs: unknown,
  path: Path,
  key: string,
  choose: Choose,
): unknown {
  if (same(mine, theirs)) return mine;
  if (isPlain(mine) && isPlain(theirs) && sameShape(mine, theirs)) {
    const from = isPlain(base) && sameShape(base, mine) ? base : {};
    const out: Plain = {};
    for (const name of Object.keys({ ...theirs, ...mine }))
      out[name] = walk(from[name], mine[name], theirs[name], [...path, name], join(key, name), choose);
    return out;
  }
  if (Array.isArray(mine) && Array.isArray(theirs)) {
    const id = nameOf[String(path.at(-1) ?? '')];
    if (id !== undefined)
      return walkNamed(Array.isArray(base) ? base : [], mine, theirs, path, key, id, choose);
    if (mine.length === theirs.length && Array.isArray(base) && base.length === mine.length)
      return mine.map((item, i) =>
        walk(base[i], item, theirs[i], [...path, i], join(key, String(i)), choose),
      );
  }
  return decide({ path, key, base, mine, theirs, what: 'value' }, choose) === 'mine' ? mine : theirs;
}

function walkNamed(
  base: readonly unknown[],
  mine: readonly unknown[],
  theirs: readonly unknown[],
  path: Path,
  key: string,
  id: string,
  choose: Choose,
): unknown[] {
  const name = (item: unknown) => String((item as Plain)[id]);
  const find = (list: readonly unknown[], wanted: string) => list.find((item) => name(item) === wanted);
  const names = [...new Set([...mine, ...theirs].map(name))];
  const kept = new Map<string, unknown>();
  for (const each of names) {
    const a = find(mine, each);
    const b = find(theirs, each);
    const place = a === undefined ? theirs.indexOf(b) : mine.indexOf(a);
    const at = [...path, place];
    const itemKey = join(key, `#${each}`);
    const was = find(base, each);
    if (a !== undefined && b !== undefined) kept.set(each, walk(was, a, b, at, itemKey, choose));
    else {
      const side = decide({ path: at, key: itemKey, base: was, mine: a, theirs: b, what: 'item' }, choose);
      const chosen = side === 'mine' ? a : b;
      if (chosen !== undefined) kept.set(each, chosen);
    }
  }
  const common = (list: readonly unknown[]) =>
    list.map(name).filter((n) => find(mine, n) !== undefined && find(theirs, n) !== undefined);
  let lead = mine;
  let follow = theirs;
  if (!same(common(mine), common(theirs))) {
    const wanted = new Set(common(mine));
    const order = (list: readonly unknown[]) => list.map(name).filter((n) => wanted.has(n));
    const side = decide(
      {
        path,
        key: join(key, '#order'),
        base: order(base),
        mine: order(mine),
        theirs: order(theirs),
        what: 'order',
      },
      choose,
    );
    if (side === 'theirs') [lead, follow] = [theirs, mine];
  }
  const order = lead.map(name);
  follow.map(name).forEach((each, i, all) => {
    if (order.includes(each)) return;
    const before = i === 0 ? -1 : order.indexOf(all[i - 1]!);
    order.splice(before + 1, 0, each);
  });
  return order.filter((each) => kept.has(each)).map((each) => kept.get(each));
}

function decide(difference: Omit<Difference, 'changedBy'>, choose: Choose): Side {
  const { base, mine, theirs } = difference;
  const changedBy = same(base, mine) ? 'them' : same(base, theirs) ? 'me' : 'both';
  return choose({ ...difference, changedBy });
}

function join(key: string, name: string): string {
  return key === '' ? name : `${key}.${name}`;
}

function isPlain(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** An outline of another shape has other fields: it is another thing, chosen whole. */
function sameShape(a: Plain, b: Plain): boolean {
  return same(Object.keys(a).sort(), Object.keys(b).sort());
}
