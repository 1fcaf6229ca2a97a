/**
 * One sweep of the thickness map along all lines of cells in one direction: an implicit step of
 *   h_Theta = d/dx[(rho g/3) h^3 (dh/dx - S)],  S the slope of the bench, downhill positive,
 * with the face mobility (a^3 + a^2 b + a b^2 + b^3)/4 of the film at the start of the step, so that the flux is
 * -(rho g/3)(b^4 - a^4)/(4 dx) there and a front advances over a dry base (an entropy-mean mobility would lock it). The
 * matrix has a positive diagonal, negative neighbours and column sums of one: films stay positive for any step, and what leaves
 * a cell enters its neighbour or is counted at a border face.
 */
import { type LineStore, solveLine, solvePair } from './map-line.ts';

/** Runs of neighbouring cells of the top in one direction. */
export interface Lines {
  /** First cell of each run. */
  readonly start: Int32Array;
  readonly count: Int32Array;
  /** Distance in the array between neighbours of a run. */
  readonly step: number;
  /** Border face before the first and after the last cell. */
  readonly before: Int32Array;
  readonly after: Int32Array;
}

/** Border faces: `open` 0 holds everything back, 1 lets pass; `held_m` is the film that stays on the arris. */
export interface Borders {
  readonly open: Uint8Array;
  readonly held_m: Float64Array;
  /** Lost so far through each face, in thickness of one cell, m. */
  readonly lost_m: Float64Array;
}

/**
 * Factor of (h_new - held) in the outflow of a border face. The film falls to the held one over half a cell:
 * flux (rho g/3)(h^4 - held^4)/4/(dx/2). Nothing flows in.
 */
function sink(borders: Borders, face: number, film_m: number, k: number): number {
  if (borders.open[face] === 0) return 0;
  const held_m = borders.held_m[face]!;
  return film_m > held_m ? 2 * k * (film_m + held_m) * (film_m * film_m + held_m * held_m) : 0;
}

/**
 * Moves the film along every line by one step on a level bench.
 * @param k (rho g/3) dTheta/(4 dx^2), m^-3, from 0
 */
export function sweep(h: Float64Array, lines: Lines, borders: Borders, k: number, store: LineStore): void {
  const { start, count, step, before, after } = lines;
  const { held_m, lost_m } = borders;
  const { ends } = store;
  const all = start.length;
  let line = 0;
  while (line < all) {
    const n = count[line]!;
    const first = start[line]!;
    const reach = (n - 1) * step;
    const faceA = before[line]!;
    const faceB = after[line]!;
    const sinkA = sink(borders, faceA, h[first]!, k);
    const sinkB = sink(borders, faceB, h[first + reach]!, k);
    ends[0] = 1 + sinkA;
    ends[2] = 1 + sinkB;
    ends[4] = sinkA * held_m[faceA]!;
    ends[6] = sinkB * held_m[faceB]!;
    if (n === 1) {
      h[first] = (h[first]! + ends[4]! + ends[6]!) / (1 + sinkA + sinkB);
    } else if (line + 1 < all && count[line + 1] === n) {
      const second = start[line + 1]!;
      const faceC = before[line + 1]!;
      const faceD = after[line + 1]!;
      const sinkC = sink(borders, faceC, h[second]!, k);
      const sinkD = sink(borders, faceD, h[second + reach]!, k);
      ends[1] = 1 + sinkC;
      ends[3] = 1 + sinkD;
      ends[5] = sinkC * held_m[faceC]!;
      ends[7] = sinkD * held_m[faceD]!;
      if (store.pair === undefined) solvePair(h, first, second - first, n, step, k, store);
      else store.pair(first, second - first, n, step, k);
      lost_m[faceC]! += sinkC * (h[second]! - held_m[faceC]!);
      lost_m[faceD]! += sinkD * (h[second + reach]! - held_m[faceD]!);
      line++;
    } else {
      solveLine(h, first, n, step, k, store);
    }
    lost_m[faceA]! += sinkA * (h[first]! - held_m[faceA]!);
    lost_m[faceB]! += sinkB * (h[first + reach]! - held_m[faceB]!);
    line++;
  }
}

/**
 * The same on a slope. The flow down the slope is taken at the middle of a face where that keeps films positive
 * (film above about half of slope times cell), else from the uphill cell.
 * @param drift (rho g/3) dTheta S/dx, 1/m2: positive when the line runs downhill
 */
export function sweepTilted(
  h: Float64Array,
  lines: Lines,
  borders: Borders,
  k: number,
  drift: number,
  store: LineStore,
): void {
  const { start, count, step, before, after } = lines;
  const { held_m, lost_m } = borders;
  const { give, rest } = store;
  for (let line = 0; line < start.length; line++) {
    const n = count[line]!;
    const first = start[line]!;
    const last = first + (n - 1) * step;
    const faceA = before[line]!;
    const faceB = after[line]!;
    const sinkA = sink(borders, faceA, h[first]!, k);
    const sinkB = sink(borders, faceB, h[last]!, k);
    const offA =
      borders.open[faceA] === 1 && h[first]! > held_m[faceA]! ? Math.max(0, -drift) * h[first]! ** 2 : 0;
    const offB =
      borders.open[faceB] === 1 && h[last]! > held_m[faceB]! ? Math.max(0, drift) * h[last]! ** 2 : 0;
    // flux over a face = on h_i - off h_{i+1}; diagonal 1 + on + off of the face before
    let before_off = sinkA + offA;
    let before_on = 0;
    for (let i = 0, p = first; i < n; i++, p += step) {
      const a = h[p]!;
      let on = 0;
      let off = 0;
      let leave = sinkB + offB;
      let right = a;
      if (i === 0) right += sinkA * held_m[faceA]!;
      if (i === n - 1) right += sinkB * held_m[faceB]!;
      if (i < n - 1) {
        const b = h[p + step]!;
        const m = k * (a + b) * (a * a + b * b);
        const half = Math.abs(drift) * Math.max(a * a, b * b) * 0.5;
        if (half <= m) {
          on = m + 0.5 * drift * a * a;
          off = m - 0.5 * drift * b * b;
        } else {
          on = m + Math.max(0, drift) * a * a;
          off = m + Math.max(0, -drift) * b * b;
        }
        leave = on;
      }
      const gave = i === 0 ? 0 : give[i - 1]!;
      const by = 1 / (1 + leave + before_off - before_on * gave);
      rest[i] = (right + (i === 0 ? 0 : before_on * rest[i - 1]!)) * by;
      give[i] = off * by;
      before_on = on;
      before_off = off;
    }
    let film = rest[n - 1]!;
    h[last] = film;
    for (let i = n - 2, p = last - step; i >= 0; i--, p -= step) {
      film = rest[i]! + give[i]! * film;
      h[p] = film;
    }
    lost_m[faceA]! += sinkA * (h[first]! - held_m[faceA]!) + offA * h[first]!;
    lost_m[faceB]! += sinkB * (h[last]! - held_m[faceB]!) + offB * h[last]!;
  }
}
