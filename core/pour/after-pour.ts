/**
 * What follows once the film is down and melded: torch passes, rounds of scraping drips, hands off. They are placed by their
 * windows. The waits are common practice, no source; the shop's rates hold the rest.
 */

/** First torch pass this long after the last cup is spread: 3 to 5 min. */
export const FIRST_TORCH_AFTER_s = 180;
/** Second pass this long after the first: 10 to 15 min. */
export const SECOND_TORCH_AFTER_s = 600;

export interface AfterPourRequest {
  readonly down_s: number;
  readonly done_s: number;
  /** The top is left alone until the edges are worked, from then to `done_s`; left out: the edges are worked without a wait. */
  readonly wait?: { readonly from_s: number; readonly wrapFrom_s: number };
  readonly crew: number;
  readonly torch_s: number;
  /** Safe end of torching. */
  readonly torchCloses_s: number;
  /** One round along all wrapped edges; 0: nothing drips. */
  readonly scrape_s: number;
  readonly scrapeEvery_s: number;
  /** Safe gel of the film: drips are liquid until then. */
  readonly gel_s: number;
  /** Kept free before a window closes. */
  readonly spare_s: number;
}

export interface LaterStep {
  readonly kind: 'torch' | 'scrape drips';
  /** 1, 2, ... within the kind. */
  readonly round: number;
  readonly person: number;
  readonly opens_s: number;
  readonly start_s: number;
  readonly end_s: number;
  readonly optional: boolean;
}

/** More rounds than this are not planned: by then they are a matter of looking now and then. */
const MOST_ROUNDS = 24;

/**
 * Torch pass 1 when due, sooner if its window would close, never before hands are off the film; pass 2 only if its window
 * lets it. When the edges wait, a pass that is due in the wait and ends in it is made there. Drips: they count from the start of
 * wrapping when it waited; the first round always, sooner than due if the film gels early; more every `scrapeEvery_s` while they end
 * before gel with the spare left.
 */
export function layOutAfter(request: AfterPourRequest): readonly LaterStep[] {
  const { down_s, done_s, wait, crew, torch_s, torchCloses_s, scrape_s, scrapeEvery_s, gel_s, spare_s } =
    request;
  const steps: LaterStep[] = [];
  const due = down_s + FIRST_TORCH_AFTER_s;
  const latestTorch = torchCloses_s - torch_s - spare_s;
  /** Start of a pass no sooner than wanted, in the wait when it ends there, else when the edges are done. */
  const freeFrom = (wanted_s: number) =>
    wait !== undefined && Math.max(wait.from_s, wanted_s) + torch_s <= wait.wrapFrom_s
      ? Math.max(wait.from_s, wanted_s)
      : Math.max(done_s, wanted_s);
  const first = freeFrom(Math.min(due, latestTorch));
  const torchEnd = first + torch_s;
  steps.push({
    kind: 'torch',
    round: 1,
    person: 1,
    opens_s: Math.min(due, first),
    start_s: first,
    end_s: torchEnd,
    optional: false,
  });
  const second = freeFrom(torchEnd + SECOND_TORCH_AFTER_s);
  if (second + torch_s <= torchCloses_s)
    steps.push({
      kind: 'torch',
      round: 2,
      person: 1,
      opens_s: second,
      start_s: second,
      end_s: second + torch_s,
      optional: true,
    });
  if (scrape_s > 0) {
    const person = crew === 1 ? 1 : 2;
    const clear = (from: number) => {
      let start = from;
      for (const step of steps)
        if (step.person === person && start < step.end_s && step.start_s < start + scrape_s)
          start = step.end_s;
      return start;
    };
    let last_s = wait?.wrapFrom_s ?? down_s;
    for (let round = 1; round <= MOST_ROUNDS; round++) {
      const dueAt = last_s + scrapeEvery_s;
      const latest = gel_s - scrape_s - spare_s;
      if (round > 1 && clear(dueAt) > latest) break;
      const wanted = round === 1 ? Math.max(torchEnd, done_s, Math.min(dueAt, latest)) : dueAt;
      let start_s = clear(wanted);
      // the first round goes before the pass it would otherwise wait for, when drips gel before that is over
      const before_s = second - scrape_s;
      if (round === 1 && start_s > latest && wanted > before_s && before_s >= Math.max(torchEnd, done_s))
        start_s = before_s;
      last_s = start_s;
      steps.push({
        kind: 'scrape drips',
        round,
        person,
        opens_s: Math.min(wanted, start_s),
        start_s,
        end_s: start_s + scrape_s,
        optional: round > 1,
      });
    }
  }
  return steps.sort((a, b) => a.start_s - b.start_s || a.person - b.person);
}
