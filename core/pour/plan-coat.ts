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
import { filmAnswers } from './film-answers.ts';
import { stagesTold } from './film-stages.ts';
import { DRAW_TOLERANCE, type FilmRequest, filmOf, filmTimes } from './film-times.ts';
import type { CoatPlan } from './plan.ts';
import { filmRequestOf, type Settled, settleCoat } from './settle.ts';
import type { ShopRates } from './shop-rates.ts';
import { type LimitedStep, stepsOf } from './steps.ts';
import { judge } from './verdict.ts';
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
 * every draw, which gives the ranges of the stages; steps are placed just in time and judged against the safe ends.
 *
 * @throws RangeError when a figure is outside what quantity, cups or cure allow (film, temperatures, crew 1 to 3, shares, rates).
 */
export function planCoat(request: PlanRequest): CoatPlan {
  const { coat, air, rates, system = 'us' } = request;
  const draws = drawModels(coat.card, request.draws ?? DEFAULT_DRAWS, request.seed ?? 1);
  const [fast, slow] = drawByPourNow({ models: draws, air, start: coat.resin }, [0.05, 0.95]);
  const models: CupModels = { fast: fast!, mid: coat.card.model, slow: slow! };
  const settled = settleCoat(request, models);
  const { laid, cups, quantity } = settled;
  const forecasts = cupForecasts(models, cups, laid.cups, coat.resin, air);
  const oldest = oldestFilm(request, settled);
  const times = filmTimes(draws, oldest.request);
  const film: FilmLimits = {
    cup: oldest.cup,
    workingEnd: times.stages.workingEnd_s,
    torch: times.torch,
    gel: times.stages.gel_s,
  };
  const steps = placeSteps(request, settled, forecasts, film, times.stages.recoatOpens_s);
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
  const judged = judge(steps, rates.tightUnder_s, cups.length);
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
    ...judged,
    waysOut: [],
    cautions: cautionsOf({
      coat,
      quantity,
      cups,
      forecasts,
      answers,
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
  film: FilmLimits,
  recoatOpens: FilmLimits['gel'],
): readonly LimitedStep[] {
  const { coat, measures, rates, system = 'us' } = request;
  const after = layOutAfter({
    down_s: laid.down_s,
    done_s: laid.done_s,
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
  return stepsOf({ laid, after, cups, limits, film, edgeLength_m, recoatOpens, system });
}
