/**
 * When the cups must be out and the film stops being workable, for one draw of the resin, as a function of how far the shop's
 * temperature is off and how long the first cup stood. A pour is thrown ten thousand times; a cup or a film takes a
 * millisecond to cure. So each draw is cured at a few nodes and read between them: logarithms of times are nearly straight in
 * temperature (Arrhenius), so few nodes are within a percent, 2.5 K off and for a cup that stood up to half as long again (tested
 * against curing anew); a cup left longer is late anyhow.
 */
import type { ResinModel } from '#core/resin/model.ts';
import { CUP_SPAN_s } from '../cup-times.ts';
import type { FilmRequest } from '../film-times.ts';
import {
  COARSE,
  FILM_SPAN_s,
  FINE,
  type FilmEnds,
  filmEnds,
  filmMoved,
  type LossOf,
  lossesKept,
  pourNow_s,
} from './cure-ends.ts';

/** Nodes stand this far from the temperature read, K. */
export const NODE_K = 3;
/** A cup's pour-now time is the earlier of two criteria, so it has a kink, which more nodes and straight lines follow. */
const CUP_NODES_K = [-5, -2.5, -1.2, 0, 1.2, 2.5, 5] as const;
/** Nodes of the first cup's standing time, over the planned one. */
const LONG = 1.5;
const NODE_STANDS = [0.6, LONG, 2] as const;

/** Logarithms of a film's time at the nodes: as planned, cooler, warmer, one for each standing time, cooler and warmer stood long. */
type Nodes = readonly number[];

/** Where following starts: a quick resin's gel and a cup's pour-now time, s; slow ones are followed longer. */
const FIRST_GUESS_s = 2 * 3600;
const FIRST_CUP_s = 1500;
/** Cooler by a kelvin is later by about this much, in the logarithm: the usual activation at room temperature. */
const SLOWER_ln_K = 0.07;
const LATEST_ln = Math.log(FILM_SPAN_s);

/** Logarithms of a cup's pour-now time, ln s after its parts meet, so far off the temperature read, coolest first. */
export interface CupNodes {
  readonly by_K: readonly number[];
  readonly ln_s: readonly number[];
}

export interface DrawResponse {
  /** Pour-now time of each distinct cup mass. */
  readonly pourNow: readonly CupNodes[];
  /** The first cup's film, from when that cup's parts meet: so counted, it hardly hangs on how long the cup stood. */
  readonly workingEnd: Nodes;
  /** Last touch that levels, likewise; null: marks stay whenever they are made, and working end decides alone. */
  readonly torch: Nodes | null;
  readonly gel: Nodes;
}

export interface ResponseRequest {
  readonly film: FilmRequest;
  /** Distinct cup masses, kg. */
  readonly masses_kg: readonly number[];
}

const ln = (time_s: number | null, span_s: number) =>
  Math.log(Math.max(1, Math.min(span_s, time_s ?? span_s)));

/**
 * Cures one draw at the nodes.
 *
 * @param reach_K so far off the cups are read at most; nodes beyond the one that covers it are left out. Default: all.
 * @param lossOf pass one `lossesKept` for all draws of a card.
 */
export function respond(
  model: ResinModel,
  { film, masses_kg }: ResponseRequest,
  reach_K: number = CUP_NODES_K[CUP_NODES_K.length - 1]!,
  lossOf: LossOf = lossesKept(),
): DrawResponse {
  const outermost_K = CUP_NODES_K.find((by_K) => by_K >= reach_K) ?? CUP_NODES_K[CUP_NODES_K.length - 1]!;
  const cups_K = CUP_NODES_K.filter((by_K) => Math.abs(by_K) <= outermost_K);
  const asPlanned = filmEnds(model, film, FIRST_GUESS_s, FINE, lossOf);
  const gels_s = asPlanned.gel_s ?? FILM_SPAN_s;
  const coarse = (by_K: number, stood: number) =>
    filmEnds(model, filmMoved(film, by_K, stood), gels_s * Math.exp(-SLOWER_ln_K * by_K), COARSE, lossOf);
  const middle = coarse(0, 1);
  const moved = [
    coarse(-NODE_K, 1),
    coarse(NODE_K, 1),
    ...NODE_STANDS.map((stood) => coarse(0, stood)),
    coarse(-NODE_K, LONG),
    coarse(NODE_K, LONG),
  ];
  const nodes = (key: keyof FilmEnds): Nodes => {
    const at = ln(asPlanned[key], FILM_SPAN_s);
    const correction = at - ln(middle[key], FILM_SPAN_s);
    return [at, ...moved.map((ends) => Math.min(LATEST_ln, ln(ends[key], FILM_SPAN_s) + correction))];
  };
  return {
    pourNow: masses_kg.map((mass_kg) => {
      let expected_s = FIRST_CUP_s;
      const ln_s = cups_K.map((by_K) => {
        const time_s = pourNow_s(model, mass_kg, filmMoved(film, by_K, 1), expected_s, lossOf);
        // from the coolest to the warmest: the next is no later
        expected_s = time_s ?? CUP_SPAN_s;
        return ln(time_s, CUP_SPAN_s);
      });
      return { by_K: cups_K, ln_s };
    }),
    workingEnd: nodes('workingEnd_s'),
    torch: [asPlanned, middle, ...moved].some(({ torch_s }) => torch_s === null) ? null : nodes('torch_s'),
    gel: nodes('gel_s'),
  };
}

/** Pour-now time of a cup between its nodes, s from when its parts meet; beyond the outermost node it is read there. */
export function readCup({ by_K: places, ln_s }: CupNodes, by_K: number): number {
  const last = places.length - 1;
  if (last === 0) return Math.exp(ln_s[0]!);
  const x = Math.min(places[last]!, Math.max(places[0]!, by_K));
  let i = 0;
  while (i < last - 1 && x > places[i + 1]!) i++;
  const share = (x - places[i]!) / (places[i + 1]! - places[i]!);
  return Math.exp(ln_s[i]! + share * (ln_s[i + 1]! - ln_s[i]!));
}

/**
 * What each node of a film counts for, `by_K` off and with a cup that stood `stood` times as long: a parabola in temperature, Lagrange's
 * cubic in the standing (a cup that runs away bends faster than a parabola), and what cold and warmth change in standing longer,
 * which like the heat of a cup grows ever faster with the standing. One set serves every time of a pour. `by_K` beyond three node
 * distances is read at three, `stood` beyond 0.5 to 2 at those.
 */
export function filmWeights(by_K: number, stood: number, into = new Float64Array(8)): Float64Array {
  const x = Math.min(3, Math.max(-3, by_K / NODE_K));
  const times = Math.min(2, Math.max(0.5, stood));
  const cooler = 0.5 * x * (x - 1);
  const warmer = 0.5 * x * (x + 1);
  const both = Math.expm1(3 * (times - 1)) / GROWN_LONG;
  into[0] = -cooler - warmer + both * (cooler + warmer);
  for (let i = 0; i < STANDS.length; i++) {
    let term = 1;
    for (let j = 0; j < STANDS.length; j++)
      if (j !== i) term *= (times - STANDS[j]!) / (STANDS[i]! - STANDS[j]!);
    // the first is as planned, the others are nodes 3, 4 and 5
    into[i === 0 ? 0 : 2 + i] = i === 0 ? into[0] + term : term;
  }
  into[1] = cooler * (1 - both);
  into[2] = warmer * (1 - both);
  into[LONG_AT]! -= both * (cooler + warmer);
  into[6] = cooler * both;
  into[7] = warmer * both;
  return into;
}

const STANDS = [1, ...NODE_STANDS];
const LONG_AT = 3 + NODE_STANDS.indexOf(LONG);
const GROWN_LONG = Math.expm1(3 * (LONG - 1));

/** Time of a film between its nodes, s from when its cup's parts meet. */
export function readFilm(nodes: Nodes, weights: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) sum += weights[i]! * nodes[i]!;
  return Math.exp(sum);
}
