/**
 * Which cup first, and who mixes it: the choice with the most slack in the least window, over the cups' pour-now times and the working end
 * of every film. Rules kept: person 1 pours and spreads, one cup after another; anybody mixes, one cup at a time and in the
 * order of pouring; melding and edges follow at once.
 *
 * One person: pours and mixes alternate, a cup's own slack is the same in any order, and the cup whose film lasts longest goes first
 * (the mirror image of the earliest due date rule, Jackson 1955, Management Sciences Research Project report 43). Two or
 * three: depth-first branch and bound over the turns (Land and Doig 1960, Econometrica 28, 497); a branch is cut when its turns, the cups still
 * to come being poured without a wait, cannot keep more slack than is found already. Cups alike in every figure, and the
 * helpers, are told apart only once. Start times of a choice: timing.ts.
 */
import { notNegative, positive, within } from '#core/quantity/domain.ts';
import { canKeep, mostSlack_s, type SearchCup, type Turn } from './timing.ts';

export interface SearchRequest {
  /** 1 to 40, in the order of the plan. */
  readonly cups: readonly SearchCup[];
  /** 1 to 3. */
  readonly crew: number;
  /** Melding and edges after the last cup is spread, s. */
  readonly after_s: number;
  /** Branches looked at, at most; default 60 000. */
  readonly branches?: number;
}

export interface FoundOrder {
  readonly turns: readonly Turn[];
  /** Least slack, s; negative: late. */
  readonly slack_s: number;
  /** No order has more than this, s. */
  readonly bound_s: number;
  /** Whether the search ended by itself: then the bound is the slack found. */
  readonly proven: boolean;
  readonly branches: number;
}

/** A better choice must be better by more than this, s. */
const WORTH_s = 1e-6;

/** @throws RangeError for figures out of range, by name. */
export function searchOrder({ cups, crew, after_s, branches: most = 60_000 }: SearchRequest): FoundOrder {
  check(cups, crew, after_s);
  const limit_s = rootBound_s(cups, crew, after_s);
  const pour_s = cups.map(({ empty_s, spread_s }) => empty_s + spread_s);
  const rest_s = (turns: readonly Turn[]) => {
    const placed = new Set(turns.map(({ cup }) => cup));
    return after_s + pour_s.reduce((sum, each, i) => (placed.has(i) ? sum : sum + each), 0);
  };
  const leaf_s = (turns: readonly Turn[]) => mostSlack_s({ cups, turns, rest_s: after_s }, limit_s);
  const given = cups.map((_, i) => i);
  const longest = [...given].sort((a, b) => cups[b]!.working_s - cups[a]!.working_s);
  let best = plainTurns(given, crew);
  let slack_s = leaf_s(best);
  const take = (turns: readonly Turn[]) => {
    const found_s = leaf_s(turns);
    if (found_s <= slack_s + WORTH_s) return;
    best = turns;
    slack_s = found_s;
  };
  take(plainTurns(longest, crew));
  if (crew === 1) return { turns: best, slack_s, bound_s: slack_s, proven: true, branches: 2 };

  const kinds = cups.map((cup) => cups.findIndex((other) => alike(cup, other)));
  let branches = 0;
  const grow = (turns: readonly Turn[]): void => {
    if (branches >= most || slack_s >= limit_s - WORTH_s) return;
    if (turns.length === cups.length) {
      take(turns);
      return;
    }
    const placed = new Set(turns.map(({ cup }) => cup));
    const helpers = Math.max(1, ...turns.map(({ mixer }) => mixer));
    const mine = turns.reduce((least, { mixer, before }) => (mixer === 1 ? before : least), 0);
    const tried = new Set<number>();
    for (const cup of given) {
      if (placed.has(cup) || tried.has(kinds[cup]!)) continue;
      tried.add(kinds[cup]!);
      const k = turns.length;
      const ways: Turn[] = [];
      for (let mixer = 2; mixer <= Math.min(crew, helpers + 1); mixer++) ways.push({ cup, mixer, before: 0 });
      for (let before = k; before >= mine; before--) ways.push({ cup, mixer: 1, before });
      for (const turn of ways) {
        branches++;
        if (branches > most) return;
        const next = [...turns, turn];
        if (canKeep({ cups, turns: next, rest_s: rest_s(next) }, slack_s + WORTH_s)) grow(next);
      }
    }
  };
  grow([]);
  const proven = branches < most || slack_s >= limit_s - WORTH_s;
  return { turns: best, slack_s, bound_s: proven ? slack_s : limit_s, proven, branches };
}

/** Helpers in turn, or the one person there is. */
function plainTurns(order: readonly number[], crew: number): readonly Turn[] {
  return order.map((cup, k) =>
    crew === 1 ? { cup, mixer: 1, before: k } : { cup, mixer: 2 + (k % (crew - 1)), before: 0 },
  );
}

/**
 * No order leaves more: a cup stands at least while it is mixed and emptied, and the film that is first has to last while all others are poured;
 * with every hand busy, all the mixing and pouring shared out evenly.
 */
function rootBound_s(cups: readonly SearchCup[], crew: number, after_s: number): number {
  const own = Math.min(...cups.map(({ pourNow_s, mix_s, empty_s }) => pourNow_s - mix_s - empty_s));
  const pours_s = cups.reduce((sum, { empty_s, spread_s }) => sum + empty_s + spread_s, 0);
  const work_s = pours_s + cups.reduce((sum, { mix_s }) => sum + mix_s, 0);
  const first = Math.max(
    ...cups.map(({ working_s, mix_s }) => working_s - after_s - Math.max(mix_s + pours_s, work_s / crew)),
  );
  return Math.min(own, first);
}

function alike(a: SearchCup, b: SearchCup): boolean {
  return (
    a.mix_s === b.mix_s &&
    a.empty_s === b.empty_s &&
    a.spread_s === b.spread_s &&
    a.pourNow_s === b.pourNow_s &&
    a.working_s === b.working_s
  );
}

function check(cups: readonly SearchCup[], crew: number, after_s: number): void {
  if (!(crew === 1 || crew === 2 || crew === 3)) throw new RangeError(`crew is ${crew}; allowed: 1, 2 or 3`);
  within('number of cups', cups.length, 1, 40);
  notNegative('after_s', after_s, 's');
  for (const cup of cups) {
    notNegative('mix_s', cup.mix_s, 's');
    notNegative('empty_s', cup.empty_s, 's');
    notNegative('spread_s', cup.spread_s, 's');
    positive('pourNow_s', cup.pourNow_s, 's');
    positive('working_s', cup.working_s, 's');
  }
}
