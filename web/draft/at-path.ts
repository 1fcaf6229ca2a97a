/** Reading and changing one place in a plain document without touching the rest (unchanged parts are shared). */

export type Path = readonly (string | number)[];

/** What stands at a path, or undefined where the path leads nowhere. */
export function getAt(document: unknown, path: Path): unknown {
  let at: unknown = document;
  for (const key of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Record<string | number, unknown>)[key];
  }
  return at;
}

/** The document with one place changed. Throws RangeError when the path runs through something that is not there. */
export function setAt<T>(document: T, path: Path, value: unknown): T {
  const [key, ...rest] = path;
  if (key === undefined) return value as T;
  if (typeof document !== 'object' || document === null)
    throw new RangeError(
      `path ${path.join('.')} runs through ${String(document)}; allowed: an object or a list`,
    );
  const inner = setAt((document as Record<string | number, unknown>)[key], rest, value);
  if (Object.is(inner, (document as Record<string | number, unknown>)[key])) return document;
  if (Array.isArray(document)) {
    const copy: unknown[] = document.slice();
    copy[Number(key)] = inner;
    return copy as T;
  }
  return { ...document, [key]: inner } as T;
}

/** The list without one item. */
export function without<T>(list: readonly T[], index: number): T[] {
  return list.filter((_, i) => i !== index);
}

/** The list with one item moved; indexes outside the list leave it as it is. */
export function moved<T>(list: readonly T[], from: number, to: number): T[] {
  const copy = list.slice();
  if (from < 0 || from >= copy.length || to < 0 || to >= copy.length) return copy;
  const [item] = copy.splice(from, 1);
  copy.splice(to, 0, item as T);
  return copy;
}

/** Same plain data, whatever the order of keys. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keysA = Object.keys(a);
  const keysB = Object.keys(b);
  if (keysA.length !== keysB.length) return false;
  return keysA.every(
    (key) =>
      Object.hasOwn(b, key) && same((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}
