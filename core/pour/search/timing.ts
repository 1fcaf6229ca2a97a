/**
 * Best start times for a chosen order: the most slack that difference constraints leave. A schedule with slack s exists exactly where
 * the graph of the constraints has no cycle that gains time (Bellman 1958, Q. Appl. Math. 16, 87; Cormen et al. 2009, section
 * 24.4). A slack too large shows such a cycle, whose ratio is the next, smaller slack; the last one is exact (Dinkelbach
 * 1967, Management Science 13, 492, on the ratio of a cycle).
 */

/** What a cup asks, and how long it and its film may take, s, from when its parts meet. */
export interface SearchCup {
  readonly mix_s: number;
  readonly empty_s: number;
  readonly spread_s: number;
  /** It must be empty by then. */
  readonly pourNow_s: number;
  /** Its film can be worked so long; everything on the top must be done by then. */
  readonly working_s: number;
}

/** A cup at its place in the order of pouring. */
export interface Turn {
  /** Place in the list of cups. */
  readonly cup: number;
  /** Who mixes it; person 1 pours and spreads. */
  readonly mixer: number;
  /** Where person 1 mixes: before the pour of this turn, 0 to its own; 0 for others. */
  readonly before: number;
}

/** `to` starts at least `apart_s` (+ slack, where it counts) after `from`. */
interface Edge {
  readonly from: number;
  readonly to: number;
  readonly apart_s: number;
  readonly slack: 0 | 1;
}

export interface TimingRequest {
  readonly cups: readonly SearchCup[];
  /** The first turns, or all. */
  readonly turns: readonly Turn[];
  /** After the last of these turns, until nobody works the top any more, s: cups not placed yet, melding, edges. */
  readonly rest_s: number;
}

/** Nodes: mixing of turn k is 2k, its pouring 2k + 1. */
function edgesOf({ cups, turns, rest_s }: TimingRequest): readonly Edge[] {
  const edges: Edge[] = [];
  const add = (from: number, to: number, apart_s: number, slack: 0 | 1 = 0) =>
    edges.push({ from, to, apart_s, slack });
  const pours_s = turns.map(({ cup }) => cups[cup]!.empty_s + cups[cup]!.spread_s);
  const last = turns.length - 1;
  const lastMix = new Map<number, number>();
  turns.forEach(({ cup, mixer, before }, k) => {
    const { mix_s, empty_s, pourNow_s, working_s } = cups[cup]!;
    add(2 * k, 2 * k + 1, mix_s);
    if (k > 0) add(2 * k - 1, 2 * k + 1, pours_s[k - 1]!);
    const earlier = lastMix.get(mixer);
    if (earlier !== undefined) add(2 * earlier, 2 * k, cups[turns[earlier]!.cup]!.mix_s);
    lastMix.set(mixer, k);
    if (mixer === 1) {
      if (before > 0) add(2 * before - 1, 2 * k, pours_s[before - 1]!);
      add(2 * k, 2 * before + 1, mix_s);
    }
    add(2 * k + 1, 2 * k, empty_s - pourNow_s, 1);
    add(2 * last + 1, 2 * k, pours_s[last]! + rest_s - working_s, 1);
  });
  return edges;
}

/** The cycle that gains most clearly at this slack, as its seconds without slack and how often slack counts in it; null: none. */
function gainingCycle(edges: readonly Edge[], nodes: number, slack_s: number) {
  const at = new Float64Array(nodes);
  const by: (Edge | null)[] = Array(nodes).fill(null);
  let moved = -1;
  for (let round = 0; round <= nodes; round++) {
    moved = -1;
    for (const edge of edges) {
      const then_s = at[edge.from]! + edge.apart_s + edge.slack * slack_s;
      // rounding alone is no gain
      if (then_s > at[edge.to]! + 1e-9) {
        at[edge.to] = then_s;
        by[edge.to] = edge;
        moved = edge.to;
      }
    }
    if (moved === -1) return null;
  }
  let on = moved;
  for (let i = 0; i < nodes; i++) on = by[on]!.from;
  let seconds = 0;
  let count = 0;
  let node = on;
  do {
    const edge = by[node]!;
    seconds += edge.apart_s;
    count += edge.slack;
    node = edge.from;
  } while (node !== on);
  return { seconds, count };
}

/** Whether these turns can be kept with this slack. */
export function canKeep(request: TimingRequest, slack_s: number): boolean {
  return gainingCycle(edgesOf(request), 2 * request.turns.length, slack_s) === null;
}

/** The most slack these turns leave, s, at most `most_s`; negative: late by so much at the best. */
export function mostSlack_s(request: TimingRequest, most_s: number): number {
  const edges = edgesOf(request);
  const nodes = 2 * request.turns.length;
  let slack_s = most_s;
  // each cycle is met once; the count is a guard against rounding
  for (let i = 0; i < 1000; i++) {
    const cycle = gainingCycle(edges, nodes, slack_s);
    if (cycle === null || cycle.count === 0) return slack_s;
    const next_s = -cycle.seconds / cycle.count;
    if (next_s >= slack_s) return slack_s;
    slack_s = next_s;
  }
  return slack_s;
}
