/**
 * The film and working store of a thickness map, with the pair of lines solved by WebAssembly vectors where the machine has them: the same
 * operations in the same order as solvePair, so the same bits, in half the instructions. Falls back to plain typed arrays when
 * WebAssembly, its vectors or the permission to compile (a page's content policy) are missing.
 */
import { type LineStore, lineStore } from './map-line.ts';
import { MAP_LINE_BYTES } from './map-line-bytes.ts';

export interface MapStore {
  /** Film of every cell, m, all 0. */
  readonly h: Float64Array;
  readonly store: LineStore;
}

type Pair = (
  first: number,
  apart: number,
  n: number,
  step: number,
  k: number,
  ends: number,
  give: number,
  rest: number,
) => void;

const PAGE = 65536;

/** Store of plain typed arrays. */
export function plainStore(cells: number, longestLine: number): MapStore {
  return { h: new Float64Array(cells), store: lineStore(longestLine) };
}

/** Store in WebAssembly memory, or undefined where that cannot be had. */
export function vectorStore(cells: number, longestLine: number): MapStore | undefined {
  if (typeof WebAssembly === 'undefined') return undefined;
  let memory: WebAssembly.Memory;
  let near: Pair;
  let far: Pair;
  // film, ends, give, rest one after the other, each at a multiple of 16 bytes
  const ends = 16 * Math.ceil(cells / 2);
  const give = ends + 64;
  const rest = give + 16 * longestLine;
  try {
    memory = new WebAssembly.Memory({ initial: Math.ceil((rest + 16 * longestLine) / PAGE) });
    const code = Uint8Array.from(atob(MAP_LINE_BYTES), (letter) => letter.charCodeAt(0));
    const { exports } = new WebAssembly.Instance(new WebAssembly.Module(code), { film: { memory } });
    near = exports.near as unknown as Pair;
    far = exports.far as unknown as Pair;
  } catch {
    return undefined;
  }
  return {
    h: new Float64Array(memory.buffer, 0, cells),
    store: {
      ...lineStore(longestLine),
      ends: new Float64Array(memory.buffer, ends, 8),
      pair: (first, apart, n, step, k) =>
        (apart === 1 ? near : far)(8 * first, 8 * apart, n, 8 * step, k, ends, give, rest),
    },
  };
}

/** The faster of the two. */
export function mapStore(cells: number, longestLine: number): MapStore {
  return vectorStore(cells, longestLine) ?? plainStore(cells, longestLine);
}
