/**
 * When the cups must be out and the film stops being workable, for one draw of the resin, as a function of how far the shop's
 * temperature is off and how long the first cup stood. A pour is thrown ten thousand times; a cup or a film takes a
 * millisecond to cure. So each draw is cured at a few nodes and read between them: logarithms of times are nearly straight in
 * temperature (Arrhenius), so few nodes are within a percent, 2.5 K off and for a cup that stood up to half as long again (tested
 * against curing anew); a cup left longer is late anyhow.
 */
import { cureCup } from '#core/resin/cup.ts';
import type { AirTemperature, ResinModel } from '#core/resin/model.ts';
import { cupStages, filmStages } from '#core/resin/stages.ts';
import { airFrom } from '../clocks.ts';
import { CUP_SPAN_s } from '../cup-times.ts';
import { DRAW_TOLERANCE, type FilmRequest, filmOf, lastTouch_s, TORCH_PITCH_m } from '../film-times.ts';

/** Nodes stand this far from the temperature read, K. */
export const NODE_K = 3;
/** A cup's pour-now time is the earlier of two criteria, so it has a kink, which more nodes and straight lines follow. */
const CUP_NODES_K = [-5, -2.5, -1.2, 0, 1.2, 2.5, 5] as const;
/** Nodes of the first cup's standing time, over the planned one. */
const LONG = 1.5;
const NODE_STANDS = [0.6, LONG, 2] as const;

/** Film times later than this are told as this; a pour is long over. */
const FILM_SPAN_s = 2 * 86_400;

/** Logarithms of a film's time at the nodes: as planned, cooler, warmer, one for each standing time, cooler and warmer stood long. */
type Nodes = readonly number[];

export interface DrawResponse {
  /** Pour-now time of each distinct cup mass, ln s after its parts meet. */
  readonly pourNow: readonly (readonly number[])[];
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

export function shifted(air: AirTemperature, by_K: number): AirTemperature {
  return by_K === 0
    ? air
    : { time_s: air.time_s, temperature_K: air.temperature_K.map((temperature) => temperature + by_K) };
}

/** The film of a pour whose shop is off by so much, and whose first cup stood so many times as long. */
export function filmMoved(request: FilmRequest, by_K: number, stood: number): FilmRequest {
  return {
    ...request,
    air: shifted(request.air, by_K),
    board_K: request.board_K + by_K,
    resin: { ...request.resin, temperature_K: request.resin.temperature_K + by_K },
    emptied_s: request.mixed_s + (request.emptied_s - request.mixed_s) * stood,
  };
}

const ln = (time_s: number | null, span_s: number) =>
  Math.log(Math.max(1, Math.min(span_s, time_s ?? span_s)));

/** Working end, last touch and gel, s from when the cup's parts meet. */
export function filmEnds(model: ResinModel, request: FilmRequest) {
  const history = filmOf(model, request, { duration_s: FILM_SPAN_s, tolerance: DRAW_TOLERANCE });
  const { workingEnd_s, gel_s } = filmStages(history, model, airFrom(request.air, request.emptied_s));
  const torch_s = lastTouch_s(history, TORCH_PITCH_m, request.thickness_m, model);
  const stood_s = request.emptied_s - request.mixed_s;
  const from = (time_s: number | null) => (time_s === null ? null : time_s + stood_s);
  return { workingEnd_s: from(workingEnd_s), gel_s: from(gel_s), torch_s: from(torch_s) };
}

/** Pour-now time of a cup on its own clock, s; null: not within four hours. */
export function pourNow_s(model: ResinModel, mass_kg: number, request: FilmRequest): number | null {
  const history = cureCup({
    model,
    mass_kg,
    air: airFrom(request.air, request.mixed_s),
    start: request.resin,
    start_s: 0,
    duration_s: CUP_SPAN_s,
    tolerance: DRAW_TOLERANCE,
  });
  return cupStages(history, model).pourNow_s;
}

/** Cures one draw at the nodes. */
export function respond(model: ResinModel, { film, masses_kg }: ResponseRequest): DrawResponse {
  const off = [0, -NODE_K, NODE_K] as const;
  const ends = [
    ...off.map((by_K) => filmMoved(film, by_K, 1)),
    ...NODE_STANDS.map((stood) => filmMoved(film, 0, stood)),
    filmMoved(film, -NODE_K, LONG),
    filmMoved(film, NODE_K, LONG),
  ].map((request) => filmEnds(model, request));
  return {
    pourNow: masses_kg.map((mass_kg) =>
      CUP_NODES_K.map((by_K) => ln(pourNow_s(model, mass_kg, filmMoved(film, by_K, 1)), CUP_SPAN_s)),
    ),
    workingEnd: ends.map(({ workingEnd_s }) => ln(workingEnd_s, FILM_SPAN_s)),
    torch: ends.some(({ torch_s }) => torch_s === null)
      ? null
      : ends.map(({ torch_s }) => ln(torch_s, FILM_SPAN_s)),
    gel: ends.map(({ gel_s }) => ln(gel_s, FILM_SPAN_s)),
  };
}

/** Pour-now time of a cup between its nodes, s from when its parts meet; beyond 5 K off it is read at 5 K. */
export function readCup(nodes: readonly number[], by_K: number): number {
  const last = CUP_NODES_K.length - 1;
  const x = Math.min(CUP_NODES_K[last]!, Math.max(CUP_NODES_K[0], by_K));
  let i = 0;
  while (i < last - 1 && x > CUP_NODES_K[i + 1]!) i++;
  const share = (x - CUP_NODES_K[i]!) / (CUP_NODES_K[i + 1]! - CUP_NODES_K[i]!);
  return Math.exp(nodes[i]! + share * (nodes[i + 1]! - nodes[i]!));
}

/** Time of a film between its nodes, s from when its cup's parts meet. `by_K` beyond three node distances is read at three, `stood` beyond 0.5 to 2 at those. */
export function readFilm(nodes: Nodes, by_K: number, stood: number): number {
  const x = Math.min(3, Math.max(-3, by_K / NODE_K));
  const [at, below, above, ...stands] = nodes as [number, number, number, ...number[]];
  const value = at + bend(x, below - at, above - at);
  const times = Math.min(2, Math.max(0.5, stood));
  const [coolLong, warmLong] = stands.splice(NODE_STANDS.length) as [number, number];
  const long = stands[NODE_STANDS.indexOf(LONG)]!;
  // what cold and warmth change in standing longer; like the heat of a cup it grows ever faster with the standing
  const both = bend(x, coolLong - below - long + at, warmLong - above - long + at);
  return Math.exp(value + cubicThrough(stands, at, times) - at + both * (grown(times) / grown(LONG)));
}

const grown = (times: number) => Math.expm1(3 * (times - 1));

/** Parabola through 0 at 0 and what it is at -1 and 1. */
const bend = (x: number, atMinus: number, atPlus: number) =>
  0.5 * x * (atPlus - atMinus) + 0.5 * x * x * (atPlus + atMinus);

/** Lagrange's cubic through the standing times; a cup that runs away bends faster than a parabola. */
function cubicThrough(stands: readonly number[], at: number, stood: number): number {
  const places = [1, ...NODE_STANDS];
  const values = [at, ...stands];
  let sum = 0;
  for (let i = 0; i < places.length; i++) {
    let term = values[i]!;
    for (let j = 0; j < places.length; j++)
      if (j !== i) term *= (stood - places[j]!) / (places[i]! - places[j]!);
    sum += term;
  }
  return sum;
}
