/**
 * One pour as it might go: drawn durations laid out by the same rules as the plan, against the windows of one drawn resin at a drawn
 * temperature. The crew works by the plan (it starts a cup, waits for the edges' minute, torches by the plan's windows) and is late
 * where a step took longer.
 */
import { layOutAfter } from '../after-pour.ts';
import { layOut, withEdgesLater } from '../lay-out.ts';
import type { PourFrame } from './frame.ts';
import { type DrawResponse, filmWeights, readCup, readFilm } from './response.ts';

/** Factors on the planned durations, and what else is drawn. */
export interface Thrown {
  /** One factor a cup. */
  readonly mix: ArrayLike<number>;
  readonly pour: ArrayLike<number>;
  readonly meld: number;
  readonly wrap: number;
  readonly torch: number;
  readonly scrape: number;
  readonly by_K: number;
  /** An interruption of this many seconds falls into the pouring of this cup (its place); null: none. */
  readonly pause: { readonly cup: number; readonly lasts_s: number } | null;
}

/** Slack of each step that must be done, s; the places are those of `stepIdsOf`. */
export type Slacks = Float64Array;

/** Ids of the steps judged, as the plan names them: pour-1 ..., then meld, wrap, torch-1, scrape-1 where the pour has them. */
export function stepIdsOf(frame: PourFrame): readonly string[] {
  return [
    ...frame.cups.map((_, i) => `pour-${i + 1}`),
    ...(frame.meld_s > 0 ? ['meld'] : []),
    ...(frame.wrap_s > 0 ? ['wrap'] : []),
    ...(frame.torch_s > 0 ? ['torch-1'] : []),
    ...(frame.scrape_s > 0 ? ['scrape-1'] : []),
  ];
}

export function throwPour(frame: PourFrame, response: DrawResponse, thrown: Thrown, into: Slacks): void {
  const { cups, crew, oldest } = frame;
  const soonest = layOut({
    cups: cups.map((cup, i) => {
      const stops_s = thrown.pause?.cup === i ? thrown.pause.lasts_s : 0;
      return {
        mix_s: cup.mix_s * thrown.mix[i]!,
        reckonedMix_s: cup.mix_s,
        empty_s: cup.empty_s * thrown.pour[i]!,
        spread_s: cup.spread_s * thrown.pour[i]! + stops_s,
      };
    }),
    crew,
    meld_s: frame.meld_s * thrown.meld,
    wrap_s: frame.wrap_s * thrown.wrap,
  });
  const wait_s =
    soonest.wrapFrom_s === null || frame.wrapPlanned_s === null
      ? 0
      : Math.max(0, frame.wrapPlanned_s - soonest.wrapFrom_s);
  const laid = withEdgesLater(soonest, wait_s);
  const first = laid.cups[oldest]!;
  const stood = (first.emptied_s - first.mixed_s) / frame.oldestStands_s;
  const weights = filmWeights(thrown.by_K, stood);
  const filmTime_s = (nodes: readonly number[]) => first.mixed_s + readFilm(nodes, weights);
  const working_s = filmTime_s(response.workingEnd);
  let place = 0;
  cups.forEach((cup, i) => {
    const at = laid.cups[i]!;
    const cupCloses_s = at.mixed_s + readCup(response.pourNow[cup.mass]!, thrown.by_K);
    into[place++] = Math.min(cupCloses_s - at.emptied_s, working_s - at.spread_s);
  });
  if (frame.meld_s > 0) into[place++] = working_s - laid.melded_s;
  let wrapped_s = laid.melded_s;
  if (frame.wrap_s > 0) {
    for (const step of laid.steps)
      if (step.kind === 'wrap edges') wrapped_s = Math.max(wrapped_s, step.end_s);
    into[place++] = working_s - wrapped_s;
  }
  if (frame.torch_s === 0 && frame.scrape_s === 0) return;
  const after = layOutAfter({
    down_s: laid.down_s,
    done_s: laid.done_s,
    ...(wait_s > 0 && laid.wrapFrom_s !== null
      ? { wait: { from_s: laid.melded_s, wrapFrom_s: laid.wrapFrom_s } }
      : {}),
    crew,
    torch_s: frame.torch_s * thrown.torch,
    torchCloses_s: frame.torchCloses_s,
    scrape_s: frame.scrape_s * thrown.scrape,
    scrapeEvery_s: frame.scrapeEvery_s,
    gel_s: frame.gel_s,
    spare_s: frame.spare_s,
  });
  if (frame.torch_s > 0) {
    const closes_s = response.torch === null ? working_s : Math.min(working_s, filmTime_s(response.torch));
    into[place++] = closes_s - after.find(({ kind }) => kind === 'torch')!.end_s;
  }
  if (frame.scrape_s > 0)
    into[place] = filmTime_s(response.gel) - after.find(({ kind }) => kind === 'scrape drips')!.end_s;
}
