/** One coat planned: quantity, cups, steps with their windows, stages, verdict and ways out. */
import type { Coat } from '#core/mix/coat.ts';
import { drawByPourNow } from '#core/mix/largest-cup.ts';
import { surroundingsAt } from '#core/numeric/column.ts';
import type { PieceMeasures } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { drawModels } from '#core/resin/ensemble.ts';
import { surroundingsOf } from '#core/resin/film.ts';
import type { AirTemperature, Board, CureHistory, ResinCard, ResinModel } from '#core/resin/model.ts';
import { filmStages } from '#core/resin/stages.ts';
import { layOutAfter } from './after-pour.ts';
import { cautionsOf } from './cautions.ts';
import { airFrom } from './clocks.ts';
import { type CupModels, cupForecasts } from './cup-times.ts';
import { adviseWrap, longestWait_s } from './edge-wait.ts';
import { filmAnswers } from './film-answers.ts';
import { stagesTold } from './film-stages.ts';
import {
  DRAW_TOLERANCE,
  type FilmRequest,
  type FilmTimes,
  filmOf,
  filmTimes,
  filmTimesLater,
} from './film-times.ts';
import { withEdgesLater } from './lay-out.ts';
import type { CoatPlan } from './plan.ts';
import { filmRequestOf, type Settled, settleCoat } from './settle.ts';
import type { ShopRates } from './shop-rates.ts';
import { type LimitedStep, stepsOf } from './steps.ts';
import { type Judged, judge } from './verdict.ts';
import { waysOutOf } from './ways-out.ts';
import { type CupLimits, type FilmLimits, torchWindow } from './windows.ts';

export interface PlanRequest {
  readonly coat: Coat;
  readonly measures: PieceMeasures;
  readonly board: Board;
  /** On the plan's clock: 0 = the first cup's parts meet. */
  readonly air: AirTemperature;
  readonly rates: ShopRates;
  /** Of the draws; the same seed gives the same plan. Default 1. */
  readonly seed?: number;
  /** Resins drawn for the ranges, 1 to 1000; default 32. One: no ranges. */
  readonly draws?: number;
  /** Slower resins of the shop, for the ways out. */
  readonly slowerCards?: readonly ResinCard[];
  /** Whether to look for ways out when it does not fit; default true. */
  readonly waysOut?: boolean;
  /** Units of the figures in sentences (labels, limits, cautions, criteria); US when left out. Changes no number. */
  readonly system?: System;
}

export const DEFAULT_DRAWS = 32;

/**
 * Plans a coat. Pure: the same request gives the same plan. All times of the plan are seconds on one clock, 0 = the first
 * cup's parts meet; the histories of cups and film run on their own from 0.
 *
 * How: quantity, cups and timing are settled together (settle.ts); the cups' pour-now times come from the draws at 5 and 95 % and
 * the card's own model; the film that stops flowing first, started in the state its cup had when empty, is cured to 30 days for
 * every draw, which gives the ranges of the stages; steps are placed just in time and judged against the safe ends. Then the edges
 * are moved to the best minute the plan allows (edge-wait.ts) and the quantity is settled anew for it; the ranges of the film move with the
 * seconds by which its cup is then empty sooner, which leaves them right to well within their tolerance.
 *
 * @throws RangeError when a figure is outside what quantity, cups or cure allow (film, temperatures, crew 1 to 3, shares, rates).
 */
export function planCoat(request: PlanRequest): CoatPlan {
  const { coat, air, rates, system = 'us' } = request;
  const draws = drawModels(coat.card, request.draws ?? DEFAULT_DRAWS, request.seed ?? 1);
  const [fast, slow] = drawByPourNow({ models: draws, air, start: coat.resin }, [0.05, 0.95]);
  const models: CupModels = { fast: fast!, mid: coat.card.model, slow: slow! };
  const { placed, wrap } = placeEdges(request, models, draws);
  const { settled, forecasts, oldest, times, steps, judged } = placed;
  const { laid, cups, quantity } = settled;
  const filmStart_s = oldest.request.emptied_s;
  const told = stagesTold(coat.card, times.stages, oldest.history, filmStart_s, system);
  const answers = filmAnswers({
    coat,
    measures: request.measures,
    film: oldest.history,
    filmStart_s,
    down_s: laid.down_s,
    thetaWhenWrapped_per_Pa: settled.thetaWhenWrapped_per_Pa,
    air_K: surroundingsAt(surroundingsOf(air), filmStart_s),
  });
  const plan: CoatPlan = {
    coatId: coat.id,
    quantity,
    cups,
    cupForecasts: forecasts,
    steps: steps.map(({ hard_s: _hard, ...step }) => step),
    stages: told.stages,
    film: oldest.history,
    filmStart_s,
    answers,
    wrap,
    ...judged,
    waysOut: [],
    cautions: cautionsOf({
      coat,
      quantity,
      cups,
      forecasts,
      answers,
      wrap: wrap?.says ?? null,
      scaleStep_kg: rates.scaleStep_kg,
      recoat: told.disagreement,
      noSafeCup: settled.largest.possible ? null : settled.largest.why,
      allowed_kg: settled.allowed_kg,
      system,
    }),
  };
  if (plan.verdict === 'fits' || request.waysOut === false) return plan;
  return { ...plan, waysOut: waysOutOf(request, plan, planCoat) };
}

/** A settled coat with everything that says whether it fits. */
interface PlacedCoat {
  readonly settled: Settled;
  readonly forecasts: CoatPlan['cupForecasts'];
  readonly oldest: OldestFilm;
  readonly times: FilmTimes;
  readonly steps: readonly LimitedStep[];
  readonly judged: Judged;
}

/** The coat with its edges worked at once, and from it the one with them at the best minute allowed, if that is worth the wait. */
function placeEdges(request: PlanRequest, models: CupModels, draws: readonly ResinModel[]) {
  const { coat, measures, rates, system = 'us' } = request;
  const atOnce = placeCoat(request, models, settleCoat(request, models), (oldest) =>
    filmTimes(draws, oldest.request),
  );
  const { settled, forecasts, oldest, times, judged } = atOnce;
  const judgedWith = (wait_s: number) => {
    const laid = withEdgesLater(settled.laid, wait_s);
    const steps = placeSteps(request, { ...settled, laid }, forecasts, oldest.cup, times);
    return judge(steps, rates.tightUnder_s, settled.cups.length);
  };
  const wait_s =
    settled.laid.wrapFrom_s === null ? 0 : longestWait_s(rates.wrapPatience_s, judged, judgedWith);
  const waited = wait_s > 0 ? settleCoat(request, models, { from: settled, wait_s }) : null;
  const wrap = adviseWrap({
    coat,
    measures,
    patience_s: rates.wrapPatience_s,
    atOnce: settled,
    verdictAtOnce: judged.verdict,
    waited: waited === null ? null : { wait_s, settled: waited },
    system,
  });
  if (waited === null || wrap === null || wrap.wait_s === 0) return { placed: atOnce, wrap };
  const placed = placeCoat(request, models, waited, (now) =>
    now.cup === oldest.cup
      ? filmTimesLater(times, now.request.emptied_s - oldest.request.emptied_s)
      : filmTimes(draws, now.request),
  );
  return { placed, wrap };
}

function placeCoat(
  request: PlanRequest,
  models: CupModels,
  settled: Settled,
  timesOf: (oldest: OldestFilm) => FilmTimes,
): PlacedCoat {
  const { coat, air, rates } = request;
  const forecasts = cupForecasts(models, settled.cups, settled.laid.cups, coat.resin, air);
  const oldest = oldestFilm(request, settled);
  const times = timesOf(oldest);
  const steps = placeSteps(request, settled, forecasts, oldest.cup, times);
  const judged = judge(steps, rates.tightUnder_s, settled.cups.length);
  return { settled, forecasts, oldest, times, steps, judged };
}

interface OldestFilm {
  readonly cup: number;
  readonly request: FilmRequest;
  readonly history: CureHistory;
}

/** Span in which a film's working time is looked for when films are compared. */
const COMPARE_SPAN_s = 86_400;

/** The film whose working time ends first: the first cup's, unless a later one stood much longer or hotter. */
function oldestFilm(request: PlanRequest, settled: Settled): OldestFilm {
  const { model } = request.coat.card;
  const requests = settled.cups.map((cup, i) => filmRequestOf(request, cup.mass_kg, settled.laid.cups[i]!));
  let oldest = 0;
  if (requests.length > 1) {
    const ends = requests.map((each) => workingEnd_s(model, each));
    for (let i = 1; i < ends.length; i++) if (ends[i]! < ends[oldest]! - 1) oldest = i;
  }
  const of = requests[oldest]!;
  return { cup: oldest + 1, request: of, history: oldest === 0 ? settled.firstFilm : filmOf(model, of) };
}

function workingEnd_s(model: ResinModel, request: FilmRequest): number {
  const history = filmOf(model, request, { duration_s: COMPARE_SPAN_s, tolerance: DRAW_TOLERANCE });
  const end = filmStages(history, model, airFrom(request.air, request.emptied_s)).workingEnd_s;
  return request.emptied_s + (end ?? COMPARE_SPAN_s);
}

function placeSteps(
  request: PlanRequest,
  { laid, cups, edgeLength_m }: Settled,
  forecasts: CoatPlan['cupForecasts'],
  cup: number,
  { stages, torch }: FilmTimes,
): readonly LimitedStep[] {
  const { coat, measures, rates, system = 'us' } = request;
  const film: FilmLimits = { cup, workingEnd: stages.workingEnd_s, torch, gel: stages.gel_s };
  const { melded_s, wrapFrom_s } = laid;
  const waits = wrapFrom_s !== null && wrapFrom_s > (coat.crew === 1 ? melded_s : laid.down_s) + 1e-6;
  const after = layOutAfter({
    down_s: laid.down_s,
    done_s: laid.done_s,
    ...(waits && wrapFrom_s !== null ? { wait: { from_s: melded_s, wrapFrom_s } } : {}),
    crew: coat.crew,
    torch_s: Math.max(rates.leastTorch_s, measures.topArea_m2 / rates.torch_m2_per_s),
    torchCloses_s: torchWindow(laid.down_s, film).window.closes_s,
    scrape_s: edgeLength_m / rates.scrape_m_per_s,
    scrapeEvery_s: rates.scrapeEvery_s,
    gel_s: film.gel?.low_s ?? COMPARE_SPAN_s,
    spare_s: rates.tightUnder_s,
  });
  const limits = forecasts.map(
    (cup, i): CupLimits => ({
      number: cup.number,
      pourNow: cup.pourNow,
      empty_s: laid.cups[i]!.emptied_s - laid.cups[i]!.pour_s,
      spread_s: laid.cups[i]!.spread_s - laid.cups[i]!.emptied_s,
    }),
  );
  return stepsOf({
    laid,
    after,
    cups,
    limits,
    film,
    edgeLength_m,
    recoatOpens: stages.recoatOpens_s,
    system,
  });
}
