/**
 * What a photograph of a finished top holds: its colours and their shares by k-means in L*a*b* (Lloyd 1982, IEEE Trans. Inf.
 * Theory 28, 129; first middles by k-means++, Arthur & Vassilvitskii 2007; both from memory), seeded, so the same picture gives the same
 * answer. Distances are those of L*a*b* (CIE 1976): k-means needs a mean, which Delta E 2000 does not have.
 */
import { randomStream } from '#core/numeric/random.ts';
import { within } from '#core/quantity/domain.ts';
import { colourDifference } from './colour-difference.ts';
import { type Lab, labOfLinear, linearOfXyz, xyzOfLab } from './lab.ts';
import { decodeSrgb, hexOfLinear, type LinearRgb } from './srgb.ts';

/** A picture, row by row from the top, three bytes a pixel (sRGB), and which pixels are of the top. */
export interface Photo {
  readonly columns: number;
  readonly rows: number;
  readonly rgb: Uint8Array | Uint8ClampedArray;
  /** Led through a grey card or white first, where there is one. */
  readonly correct?: (light: LinearRgb) => LinearRgb;
  readonly inside?: (column: number, row: number) => boolean;
}

export interface PhotoColour {
  readonly lab: Lab;
  readonly hex: string;
  readonly share: number;
}

export interface PhotoColours {
  /** Largest first, unless middles were given: then in their order. */
  readonly colours: readonly PhotoColour[];
  /** For every pixel the place of its colour, 255 outside the top. */
  readonly labels: Uint8Array;
}

const ROUNDS = 40;
/** Pixels the middles are learnt from; all pixels are counted. */
const LEARN = 20_000;

/**
 * Colours of a picture. With `middles` (the colours of the plan) as many as there are of them, each starting there; else `count`.
 * @throws RangeError unless 1 to 40 colours are asked for, the bytes are three a pixel, and a pixel lies on the top.
 */
export function photoColours(
  photo: Photo,
  ask: { readonly count: number; readonly seed: number } | { readonly middles: readonly Lab[] },
): PhotoColours {
  const count = within('colours', 'middles' in ask ? ask.middles.length : ask.count, 1, 40);
  const { columns, rows, rgb } = photo;
  if (rgb.length !== columns * rows * 3)
    throw new RangeError(
      `${rgb.length} bytes: allowed ${columns * rows * 3} for ${columns} by ${rows} pixels`,
    );
  const decode = Float64Array.from({ length: 256 }, (_, code) => decodeSrgb(code / 255));
  const pixels: number[] = [];
  const lab: number[] = [];
  for (let at = 0; at < columns * rows; at++) {
    if (photo.inside?.(at % columns, Math.floor(at / columns)) === false) continue;
    const light: LinearRgb = [decode[rgb[at * 3]!]!, decode[rgb[at * 3 + 1]!]!, decode[rgb[at * 3 + 2]!]!];
    pixels.push(at);
    lab.push(...labOfLinear(photo.correct?.(light) ?? light));
  }
  if (pixels.length === 0) throw new RangeError('no pixel of the picture lies on the top');
  const points = Float64Array.from(lab);
  const step = Math.max(1, Math.floor(pixels.length / LEARN));
  const middles =
    'middles' in ask ? ask.middles.map((m) => [...m]) : firstMiddles(points, step, count, ask.seed);
  for (let round = 0; round < ROUNDS; round++) {
    const sums = middles.map(() => [0, 0, 0, 0]);
    for (let at = 0; at < pixels.length; at += step) {
      const sum = sums[nearest(points, at, middles)]!;
      for (const i of [0, 1, 2] as const) sum[i]! += points[at * 3 + i]!;
      sum[3]! += 1;
    }
    let moved = 0;
    sums.forEach(([l, a, b, n], k) => {
      // A colour nobody has keeps its place: its share is nothing.
      if (n === 0) return;
      const next = [l! / n!, a! / n!, b! / n!];
      moved = Math.max(moved, ...next.map((value, i) => Math.abs(value - middles[k]![i]!)));
      middles[k] = next;
    });
    if (moved < 1e-6) break;
  }
  const counts = new Array<number>(count).fill(0);
  const labels = new Uint8Array(columns * rows).fill(255);
  pixels.forEach((pixel, at) => {
    const label = nearest(points, at, middles);
    labels[pixel] = label;
    counts[label]!++;
  });
  const order = middles.map((_, at) => at);
  if (!('middles' in ask)) order.sort((p, q) => counts[q]! - counts[p]! || p - q);
  const place = order.reduce<number[]>((list, was, now) => {
    list[was] = now;
    return list;
  }, []);
  return {
    colours: order.map((at) => {
      const middle = middles[at] as unknown as Lab;
      return {
        lab: middle,
        hex: hexOfLinear(linearOfXyz(xyzOfLab(middle))),
        share: counts[at]! / pixels.length,
      };
    }),
    labels: labels.map((label) => (label === 255 ? 255 : place[label]!)),
  };
}

function nearest(points: Float64Array, at: number, middles: readonly (readonly number[])[]): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < middles.length; k++) {
    const [l, a, b] = middles[k]!;
    const far =
      (points[at * 3]! - l!) ** 2 + (points[at * 3 + 1]! - a!) ** 2 + (points[at * 3 + 2]! - b!) ** 2;
    if (far < least) [best, least] = [k, far];
  }
  return best;
}

function firstMiddles(points: Float64Array, step: number, count: number, seed: number): number[][] {
  const stream = randomStream(seed);
  const learnt = Math.ceil(points.length / 3 / step);
  const point = (at: number) => [
    points[at * step * 3]!,
    points[at * step * 3 + 1]!,
    points[at * step * 3 + 2]!,
  ];
  const middles = [point(stream.below(learnt))];
  const far = new Float64Array(learnt).fill(Number.POSITIVE_INFINITY);
  while (middles.length < count) {
    const last = middles.at(-1)!;
    let sum = 0;
    for (let at = 0; at < learnt; at++) {
      const p = point(at);
      far[at] = Math.min(
        far[at]!,
        (p[0]! - last[0]!) ** 2 + (p[1]! - last[1]!) ** 2 + (p[2]! - last[2]!) ** 2,
      );
      sum += far[at]!;
    }
    let pick = stream.uniform() * sum;
    let at = 0;
    while (at < learnt - 1 && pick > far[at]!) pick -= far[at++]!;
    middles.push(point(at));
  }
  return middles;
}

/** A colour of the plan beside what the picture shows of it. */
export interface PlanDifference {
  readonly key: string;
  readonly planned: number;
  readonly found: number;
  /** Delta E 2000 of the colour itself. */
  readonly difference: number;
}

/** Planned colours and shares beside those of a picture whose middles started from the planned ones, in the same order. */
export function differencesToPlan(
  plan: readonly { readonly key: string; readonly lab: Lab; readonly share: number }[],
  found: readonly PhotoColour[],
): readonly PlanDifference[] {
  if (plan.length !== found.length)
    throw new RangeError(
      `${found.length} colours found for ${plan.length} planned: start from the planned ones`,
    );
  return plan.map(({ key, lab, share }, at) => ({
    key,
    planned: share,
    found: found[at]!.share,
    difference: found[at]!.share === 0 ? 0 : colourDifference(lab, found[at]!.lab),
  }));
}
