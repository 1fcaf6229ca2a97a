/**
 * Who does what when, up to the last wrapped edge: list scheduling without look-ahead. A cup is mixed just in time, so that it
 * stands least: with one person mixing and pouring alternate; a second person mixes while the first pours, and starts so
 * that the cup is ready when the pourer is free; with three there are two mixers. Times in seconds, 0 = the first cup's parts meet.
 */

/** What one cup asks of the crew, s. */
export interface CupWork {
  readonly mix_s: number;
  /** What the crew reckons with when it decides when to start mixing; left out: `mix_s`. */
  readonly reckonedMix_s?: number;
  /** Emptying it onto the piece. */
  readonly empty_s: number;
  readonly spread_s: number;
}

export interface LayOutRequest {
  /** In the order they are poured; at least one. */
  readonly cups: readonly CupWork[];
  /** 1 to 3. */
  readonly crew: number;
  /** 0: nothing to meld. */
  readonly meld_s: number;
  /** For one pair of hands; 0: no edges to wrap. */
  readonly wrap_s: number;
}

export interface PlacedStep {
  readonly kind: 'mix' | 'pour' | 'meld' | 'wrap edges';
  readonly person: number;
  /** Cup number from 1; null for the steps on the whole film. */
  readonly cup: number | null;
  readonly start_s: number;
  readonly end_s: number;
}

export interface LaidOutCup {
  readonly mixed_s: number;
  readonly pour_s: number;
  readonly emptied_s: number;
  readonly spread_s: number;
}

export interface LayOut {
  readonly steps: readonly PlacedStep[];
  readonly cups: readonly LaidOutCup[];
  /** The film is down: the last cup is spread. */
  readonly down_s: number;
  /** Melding is done, so nobody works the top; `down_s` without melding. */
  readonly melded_s: number;
  /** Working the edges starts; null without edges. */
  readonly wrapFrom_s: number | null;
  /** Middle of the time in which the edges are worked; `down_s` without edges. */
  readonly wrapped_s: number;
  /** Melding and edges are done. */
  readonly done_s: number;
}

/** @throws RangeError without cups, for a crew other than 1 to 3, or a time below 0. */
export function layOut({ cups, crew, meld_s, wrap_s }: LayOutRequest): LayOut {
  if (cups.length === 0) throw new RangeError('cups is empty; allowed: one or more');
  if (!(crew === 1 || crew === 2 || crew === 3)) throw new RangeError(`crew is ${crew}; allowed: 1, 2 or 3`);
  const steps: PlacedStep[] = [];
  const placed: LaidOutCup[] = [];
  const add = (
    kind: PlacedStep['kind'],
    person: number,
    cup: number | null,
    start_s: number,
    duration_s: number,
  ) => {
    if (!(duration_s >= 0)) throw new RangeError(`${kind} takes ${duration_s} s; allowed: 0 or more`);
    steps.push({ kind, person, cup, start_s, end_s: start_s + duration_s });
    return start_s + duration_s;
  };
  const mixers = crew === 1 ? [1] : crew === 2 ? [2] : [2, 3];
  const free = new Map(mixers.map((person) => [person, 0]));
  let pourer = 0;
  cups.forEach((work, index) => {
    const wanted = crew === 1 ? pourer : Math.max(0, pourer - (work.reckonedMix_s ?? work.mix_s));
    const mixer = mixers.reduce((best, person) => (free.get(person)! < free.get(best)! ? person : best));
    const mixed_s = Math.max(wanted, free.get(mixer)!);
    const ready = add('mix', mixer, index + 1, mixed_s, work.mix_s);
    free.set(mixer, ready);
    const pour_s = Math.max(ready, pourer);
    pourer = add('pour', 1, index + 1, pour_s, work.empty_s + work.spread_s);
    if (crew === 1) free.set(1, pourer);
    placed.push({ mixed_s, pour_s, emptied_s: pour_s + work.empty_s, spread_s: pourer });
  });
  const down_s = pourer;
  const melded_s = meld_s > 0 ? add('meld', 1, null, down_s, meld_s) : down_s;
  let done_s = melded_s;
  let wrapFrom_s: number | null = null;
  let wrapped_s = down_s;
  if (wrap_s > 0) {
    // One person wraps after melding; helpers wrap meanwhile; without melding everybody takes a length of edge.
    const hands = [1, 2, 3].slice(0, crew).filter((person) => crew === 1 || person !== 1 || meld_s === 0);
    const from = crew === 1 ? melded_s : down_s;
    const to = from + wrap_s / hands.length;
    for (const person of hands) add('wrap edges', person, null, from, wrap_s / hands.length);
    wrapFrom_s = from;
    wrapped_s = (from + to) / 2;
    done_s = Math.max(done_s, to);
  }
  return { steps, cups: placed, down_s, melded_s, wrapFrom_s, wrapped_s, done_s };
}

/** The same with the edges left to stand for a while before they are worked. @throws RangeError for a wait below 0. */
export function withEdgesLater(laid: LayOut, wait_s: number): LayOut {
  if (!(wait_s >= 0)) throw new RangeError(`wait_s is ${wait_s}; allowed: 0 or more`);
  if (laid.wrapFrom_s === null || wait_s === 0) return laid;
  const steps = laid.steps.map((step) =>
    step.kind === 'wrap edges'
      ? { ...step, start_s: step.start_s + wait_s, end_s: step.end_s + wait_s }
      : step,
  );
  return {
    ...laid,
    steps,
    wrapFrom_s: laid.wrapFrom_s + wait_s,
    wrapped_s: laid.wrapped_s + wait_s,
    done_s: Math.max(laid.melded_s, ...steps.map((step) => step.end_s)),
  };
}
