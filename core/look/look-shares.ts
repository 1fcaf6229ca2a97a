/** Colour shares of a look as painted, over everything that is poured on: tops, faces and splashes. */
import { positive } from '#core/quantity/domain.ts';
import { type Look, patternOf } from './look.ts';
import { follower } from './render/follow.ts';

/** Samples in the plane, worked out once for the panels. */
export interface ShareSamples {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** What each stands for, m2 of the plane. */
  readonly weight: Float64Array;
}

/**
 * Samples in the middle of equal cells, about `count` over all, each panel at least 8 by 8. Weighed so that each panel counts
 * with its exact area. Count 100 to 4 million, else RangeError.
 */
export function shareSamples(panels: Look['panels'], count = 12_000): ShareSamples {
  if (!(count >= 100 && count <= 4e6)) throw new RangeError(`count = ${count}: allowed 100 to 4000000`);
  const all_m2 = panels.reduce((sum, panel) => sum + panel.width_m * panel.depth_m * panel.film, 0);
  const cell_m = Math.sqrt(positive('area of the panels', all_m2, 'm2') / count);
  const x: number[] = [];
  const y: number[] = [];
  const weight: number[] = [];
  for (const panel of panels) {
    const columns = Math.max(8, Math.round(panel.width_m / cell_m));
    const rows = Math.max(8, Math.round(panel.depth_m / cell_m));
    const from = x.length;
    // Squares of neighbours lie together in the list: moves that do not reach them are skipped.
    const block = 16;
    for (let r0 = 0; r0 < rows; r0 += block)
      for (let c0 = 0; c0 < columns; c0 += block)
        for (let row = r0; row < Math.min(rows, r0 + block); row++)
          for (let column = c0; column < Math.min(columns, c0 + block); column++) {
            const u = panel.left_m + ((column + 0.5) / columns) * panel.width_m;
            const v = panel.front_m + ((row + 0.5) / rows) * panel.depth_m;
            if (!panel.inside(u, v)) continue;
            const [px, py] = panel.toPlane(u, v);
            x.push(px);
            y.push(py);
          }
    const found = x.length - from;
    for (let i = 0; i < found; i++) weight.push((panel.area_m2 * panel.film) / found);
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y), weight: Float64Array.from(weight) };
}

const BATCH = 256;

/**
 * Share of each colour (by its place in `look.colours`) of what is poured on, summing to 1. With 12,000 samples within about
 * 0.1 % of the work, with 200,000 within about 0.02 %.
 */
export function lookShares(
  look: Pick<Look, 'ground' | 'moves' | 'colours'>,
  samples: ShareSamples,
): Float64Array {
  const follow = follower(patternOf(look), BATCH);
  const shares = new Float64Array(look.colours.length);
  let all = 0;
  for (let from = 0; from < samples.x.length; from += BATCH) {
    const count = Math.min(BATCH, samples.x.length - from);
    follow.x.set(samples.x.subarray(from, from + count));
    follow.y.set(samples.y.subarray(from, from + count));
    const colours = follow.colours(count);
    for (let i = 0; i < count; i++) {
      shares[colours[i]!]! += samples.weight[from + i]!;
      all += samples.weight[from + i]!;
    }
  }
  if (all === 0) throw new RangeError('no sample lies on the work');
  return shares.map((share) => share / all);
}
