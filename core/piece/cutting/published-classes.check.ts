/**
 * Draws from the ten published classes of two-dimensional bin packing: I to VI of Berkey and Wang 1987 ("Two-dimensional
 * finite bin-packing algorithms", Journal of the Operational Research Society 38, 423), VII to X of Martello and Vigo
 * 1998 ("Exact solution of the two-dimensional finite bin packing problem", Management Science 44, 388). The rules are
 * from memory. The published files were not at hand: these are our own draws from the published rules, so no figure
 * here can be set against a printed table sheet for sheet.
 */
import { type RandomStream, randomStream } from '#core/numeric/random.ts';
import type { CutPart, StockSheet } from './cutting.ts';

export const CLASSES = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII', 'VIII', 'IX', 'X'] as const;

/** Berkey and Wang: largest side of a part and side of the sheet; sides uniform in 1 to the largest. */
const SIDES: readonly (readonly [number, number])[] = [
  [10, 10],
  [10, 30],
  [35, 40],
  [35, 100],
  [100, 100],
  [100, 300],
];

/** Martello and Vigo, sheet 100 by 100: ranges of the two sides of the four kinds of part. */
const KINDS: readonly (readonly [number, number, number, number])[] = [
  [67, 100, 1, 50],
  [1, 50, 67, 100],
  [50, 100, 50, 100],
  [1, 50, 1, 50],
];

export interface Draw {
  readonly parts: readonly CutPart[];
  readonly stock: readonly StockSheet[];
}

/** One draw of `count` parts; a unit of length is 1 mm. Class from 0 for I to 9 for X. Each sheet costs 1. */
export function drawClass(index: number, count: number, seed: number, grain: CutPart['grain']): Draw {
  const stream = randomStream(1000 * seed + 10 * count + index);
  const between = (least: number, most: number) => least + stream.below(most - least + 1);
  const side = index < 6 ? SIDES[index]![1] : 100;
  const parts = Array.from({ length: count }, (_, i): CutPart => {
    const [length, width] =
      index < 6 ? [between(1, SIDES[index]![0]), between(1, SIDES[index]![0])] : ofKind();
    return { name: `part ${i + 1}`, length_m: length / 1000, width_m: width / 1000, grain };
  });
  return { parts, stock: [{ name: 'sheet', length_m: side / 1000, width_m: side / 1000, price: 1 }] };

  function ofKind(): [number, number] {
    const [a, b, c, d] = KINDS[kindOf(index - 6, stream)]!;
    return [between(a, b), between(c, d)];
  }
}

/** The class's own kind with probability 70 %, each other with 10 %. */
function kindOf(own: number, stream: RandomStream): number {
  const u = stream.uniform();
  if (u < 0.7) return own;
  const others = [0, 1, 2, 3].filter((kind) => kind !== own);
  return others[Math.min(2, Math.floor((u - 0.7) / 0.1))]!;
}
