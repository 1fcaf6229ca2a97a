/**
 * Elimination of the lines of one implicit sweep of the thickness map (map-sweep.ts says of which equation). A line is eliminated from
 * both ends towards its middle, and two equal lines go together: four independent chains of divisions keep the processor busy where
 * one would wait. Left of the middle h_i = rest_i + give_i h_{i+1}, right of it h_i = rest_i + give_i h_{i-1}.
 */

/** Working store for two lines: arrays as long as the longest line. */
export interface LineStore {
  readonly give: Float64Array;
  readonly rest: Float64Array;
  readonly give2: Float64Array;
  readonly rest2: Float64Array;
  /** 1 + sink of the first cells of line one and two, of their last cells; then what held films bring to these four, m. */
  readonly ends: Float64Array;
  /** Does what solvePair does, on the film the store was made for; see map-vector.ts. */
  readonly pair?: (first: number, apart: number, n: number, step: number, k: number) => void;
}

export function lineStore(longestLine: number): LineStore {
  const list = (): Float64Array => new Float64Array(longestLine);
  return { give: list(), rest: list(), give2: list(), rest2: list(), ends: new Float64Array(8) };
}

/** One line of two or more cells. `ends` of the store hold its border. */
export function solveLine(
  h: Float64Array,
  first: number,
  n: number,
  step: number,
  k: number,
  store: LineStore,
): void {
  const { give, rest, ends } = store;
  const middle = n >> 1;
  const rights = n - 1 - middle;
  let p = first;
  let q = first + (n - 1) * step;
  // film a, right side r and 1 + m_{i-1} (1 - give_{i-1}) = keep of the left chain; b, s, hold of the right one
  let a = h[p]!;
  let b = h[q]!;
  let r = a + ends[4]!;
  let s = b + ends[6]!;
  let keep = ends[0]!;
  let hold = ends[2]!;
  for (let i = 0, j = n - 1; i < rights; i++, j--) {
    p += step;
    q -= step;
    const nextA = h[p]!;
    const nextB = h[q]!;
    const mA = k * (a + nextA) * (a * a + nextA * nextA);
    const mB = k * (b + nextB) * (b * b + nextB * nextB);
    const byA = 1 / (keep + mA);
    const byB = 1 / (hold + mB);
    r *= byA;
    s *= byB;
    give[i] = mA * byA;
    give[j] = mB * byB;
    rest[i] = r;
    rest[j] = s;
    keep = 1 + mA * keep * byA;
    hold = 1 + mB * hold * byB;
    r = nextA + mA * r;
    s = nextB + mB * s;
    a = nextA;
    b = nextB;
  }
  let film: number;
  if (middle > rights) {
    // an even line: the left chain has one cell more, the right chain stands on the middle
    p += step;
    const m = k * (a + b) * (a * a + b * b);
    const by = 1 / (keep + m);
    r *= by;
    give[middle - 1] = m * by;
    rest[middle - 1] = r;
    film = (m * r + s) / (m * keep * by + hold);
  } else {
    // both chains stand on the middle and count its own film and diagonal once each
    film = (r + s - a) / (keep + hold - 1);
  }
  h[p] = film;
  q = p;
  a = film;
  b = film;
  for (let l = middle - 1, t = middle + 1; t < n; l--, t++) {
    p -= step;
    q += step;
    a = rest[l]! + give[l]! * a;
    b = rest[t]! + give[t]! * b;
    h[p] = a;
    h[q] = b;
  }
  if (middle > rights) h[first] = rest[0]! + give[0]! * a;
}

/** Two lines of the same length, the second `apart` after the first: the same steps as {@link solveLine}, twice. */
export function solvePair(
  h: Float64Array,
  first: number,
  apart: number,
  n: number,
  step: number,
  k: number,
  store: LineStore,
): void {
  const { give, rest, give2, rest2, ends } = store;
  const middle = n >> 1;
  const rights = n - 1 - middle;
  let p = first;
  let q = first + (n - 1) * step;
  let a = h[p]!;
  let b = h[q]!;
  let a2 = h[p + apart]!;
  let b2 = h[q + apart]!;
  let r = a + ends[4]!;
  let r2 = a2 + ends[5]!;
  let s = b + ends[6]!;
  let s2 = b2 + ends[7]!;
  let keep = ends[0]!;
  let keep2 = ends[1]!;
  let hold = ends[2]!;
  let hold2 = ends[3]!;
  for (let i = 0, j = n - 1; i < rights; i++, j--) {
    p += step;
    q -= step;
    const nextA = h[p]!;
    const nextA2 = h[p + apart]!;
    const nextB = h[q]!;
    const nextB2 = h[q + apart]!;
    const mA = k * (a + nextA) * (a * a + nextA * nextA);
    const mA2 = k * (a2 + nextA2) * (a2 * a2 + nextA2 * nextA2);
    const mB = k * (b + nextB) * (b * b + nextB * nextB);
    const mB2 = k * (b2 + nextB2) * (b2 * b2 + nextB2 * nextB2);
    const byA = 1 / (keep + mA);
    const byA2 = 1 / (keep2 + mA2);
    const byB = 1 / (hold + mB);
    const byB2 = 1 / (hold2 + mB2);
    r *= byA;
    rest[i] = r;
    give[i] = mA * byA;
    keep = 1 + mA * keep * byA;
    r = nextA + mA * r;
    a = nextA;
    r2 *= byA2;
    rest2[i] = r2;
    give2[i] = mA2 * byA2;
    keep2 = 1 + mA2 * keep2 * byA2;
    r2 = nextA2 + mA2 * r2;
    a2 = nextA2;
    s *= byB;
    rest[j] = s;
    give[j] = mB * byB;
    hold = 1 + mB * hold * byB;
    s = nextB + mB * s;
    b = nextB;
    s2 *= byB2;
    rest2[j] = s2;
    give2[j] = mB2 * byB2;
    hold2 = 1 + mB2 * hold2 * byB2;
    s2 = nextB2 + mB2 * s2;
    b2 = nextB2;
  }
  let film: number;
  let film2: number;
  if (middle > rights) {
    p += step;
    const m = k * (a + b) * (a * a + b * b);
    const m2 = k * (a2 + b2) * (a2 * a2 + b2 * b2);
    const by = 1 / (keep + m);
    const by2 = 1 / (keep2 + m2);
    r *= by;
    r2 *= by2;
    give[middle - 1] = m * by;
    give2[middle - 1] = m2 * by2;
    rest[middle - 1] = r;
    rest2[middle - 1] = r2;
    film = (m * r + s) / (m * keep * by + hold);
    film2 = (m2 * r2 + s2) / (m2 * keep2 * by2 + hold2);
  } else {
    film = (r + s - a) / (keep + hold - 1);
    film2 = (r2 + s2 - a2) / (keep2 + hold2 - 1);
  }
  h[p] = film;
  h[p + apart] = film2;
  q = p;
  a = film;
  b = film;
  a2 = film2;
  b2 = film2;
  for (let l = middle - 1, t = middle + 1; t < n; l--, t++) {
    p -= step;
    q += step;
    a = rest[l]! + give[l]! * a;
    a2 = rest2[l]! + give2[l]! * a2;
    b = rest[t]! + give[t]! * b;
    b2 = rest2[t]! + give2[t]! * b2;
    h[p] = a;
    h[p + apart] = a2;
    h[q] = b;
    h[q + apart] = b2;
  }
  if (middle > rights) {
    h[first] = rest[0]! + give[0]! * a;
    h[first + apart] = rest2[0]! + give2[0]! * a2;
  }
}
