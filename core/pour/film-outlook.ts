/** Everything the film of one planned coat does between pouring and gel, as answers with their reasons. On demand: about 0.2 s. */
import type { BubbleAnswers } from '#core/film/bubble-answers.ts';
import type { Liquid } from '#core/film/constants.ts';
import { type FlowBudget, thetaAt, thetaLeftAt, thetaTotal } from '#core/film/flow-budget.ts';
import { longestLevellingWave } from '#core/film/levelling.ts';
import {
  type LevellingAnswers,
  levellingAnswers,
  MARK_GONE,
  type Tool,
} from '#core/film/levelling-answers.ts';
import { type PuddleAnswers, puddleAnswers } from '#core/film/puddle-answers.ts';
import { VISCOSITY_FACTOR } from '#core/film/ranges.ts';
import type { Coat } from '#core/mix/coat.ts';
import type { PieceMeasures } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import type { AirTemperature, Board } from '#core/resin/model.ts';
import { edgesWorked_s, spreadEnd_s } from './film-moments.ts';
import { type ColoursOutlook, coloursOutlook } from './film-outlook-colours.ts';
import { type EdgeOutlook, edgesOutlook, FACE_WANTED_SHARE } from './film-outlook-edges.ts';
import { type EdgesLeftOut, edgesLeftOut } from './film-outlook-left-out.ts';
import {
  bubblesOutlook,
  levelledFilm_m,
  type ResinSide,
  resinSides,
  toolsWith,
} from './film-outlook-resins.ts';
import { filmSeries } from './film-outlook-series.ts';
import { type SurfaceOutlook, surfaceOutlook } from './film-outlook-surface.ts';
import type { CoatPlan } from './plan.ts';

export interface FilmOutlookRequest {
  readonly coat: Coat;
  /** The plan of this coat. */
  readonly plan: CoatPlan;
  readonly measures: PieceMeasures;
  /** Board and air the plan was made with: other resins and other days are cured on them. */
  readonly board: Board;
  readonly air: AirTemperature;
  /** Units of the figures in sentences. */
  readonly system: System;
  /** Film wanted on the faces in the end, m, above 0; left out: 0.6 of what is put on. */
  readonly faceWanted_m?: number | undefined;
  /** Distance between the marks of the maker's own tool, m, above 0; left out: the usual tools only. */
  readonly toolPitch_m?: number | undefined;
  /** Fall over run of the bench, 0 to 0.05; left out: 0.5 mm a metre. */
  readonly tilt?: number | undefined;
  /** Radius of the worst spot, m, from 0; left out: 1 mm. */
  readonly spot?: number | undefined;
  /** Deepest divot, m, from 0; left out: 0.3 mm. */
  readonly divot?: number | undefined;
}

export interface FilmOutlook {
  readonly coatId: string;
  /** On the plan's clock, s: the film lies, the last cup is spread, the edges are worked, nothing flows any more. */
  readonly filmStart_s: number;
  readonly down_s: number;
  readonly wrapped_s: number;
  readonly gel_s: number;
  /** Flow budget from the pour to gel, and what of it is spent when the last cup is spread, 1/Pa. */
  readonly thetaTotal_per_Pa: number;
  readonly thetaDown_per_Pa: number;
  readonly faceWanted_m: number;
  /** Longest side of the piece, m. */
  readonly length_m: number;
  /** Every kind of edge the film is worked over; empty when there is none. */
  readonly edges: readonly EdgeOutlook[];
  readonly leftOut: EdgesLeftOut;
  readonly levelling: LevellingAnswers;
  readonly resins: readonly ResinSide[];
  readonly puddles: PuddleAnswers;
  readonly colours: ColoursOutlook;
  readonly bubbles: BubbleAnswers;
  readonly surface: SurfaceOutlook;
}

/**
 * All film answers of a coat, from the film of its plan (of the cup whose film stops flowing first: the safe one). Edge answers and drips
 * by core/film/edge-answers.ts and drip-answers.ts; levelling, puddles, cells, bubbles, craters and tilt by their rooms there.
 * @returns undefined when the film is gelled as it lands: the plan says why and nothing here applies.
 * @throws RangeError when a figure asked with is out of its range.
 */
export function filmOutlook(request: FilmOutlookRequest): FilmOutlook | undefined {
  const { coat, plan, measures, system } = request;
  const { model } = coat.card;
  const series = filmSeries(plan.film, plan.filmStart_s);
  if (series === undefined) return undefined;
  const gel_s = series.time_s.at(-1)!;
  const filmStart_s = series.time_s[0]!;
  const held = (time_s: number) => Math.min(gel_s, Math.max(filmStart_s, time_s));
  const down_s = held(spreadEnd_s(plan) ?? filmStart_s);
  const wrapped_s = held(edgesWorked_s(plan) ?? down_s);
  const thetaTotal_per_Pa = thetaTotal(series);
  const faceWanted_m = request.faceWanted_m ?? coat.faceFilm_m * FACE_WANTED_SHARE;
  const tools = toolsWith(request.toolPitch_m);
  const { bounds } = measures;
  const length_m = Math.max(bounds.maxX_m - bounds.minX_m, bounds.maxY_m - bounds.minY_m);
  return {
    coatId: coat.id,
    filmStart_s,
    down_s,
    wrapped_s,
    gel_s,
    thetaTotal_per_Pa,
    thetaDown_per_Pa: thetaAt(series, down_s),
    faceWanted_m,
    length_m,
    edges: edgesOutlook({ coat, measures, series, down_s, wrapped_s, wanted_m: faceWanted_m }),
    leftOut: edgesLeftOut(coat, measures),
    levelling: levellingOutlook(series, levelledFilm_m(coat.film_m, model), down_s, tools, model),
    resins: resinSides(request, down_s, tools),
    puddles: puddleAnswers({
      cups_m3: plan.cups.map((cup) => cup.mass_kg / model.density_kg_m3),
      area_m2: measures.topArea_m2,
      film_m: coat.film_m,
      theta_per_Pa: thetaTotal_per_Pa,
      liquid: model,
    }),
    colours: coloursOutlook(coat, thetaTotal_per_Pa),
    bubbles: bubblesOutlook(request, series, system),
    surface: surfaceOutlook({
      film_m: coat.film_m,
      theta_per_Pa: thetaTotal_per_Pa,
      length_m,
      liquid: model,
      slope: request.tilt,
      spotRadius_m: request.spot,
      divotDepth_m: request.divot,
    }),
  };
}

/** Levelling, with the range of its longest wave when the viscosity is off by the usual factor. */
function levellingOutlook(
  series: FlowBudget,
  film_m: number,
  down_s: number,
  tools: readonly Tool[],
  liquid: Liquid,
): LevellingAnswers {
  const found = levellingAnswers(series, film_m, down_s, tools, liquid);
  const { longestWave_m: value } = found;
  if (value === undefined) return found;
  const left = thetaLeftAt(series, down_s);
  const wave = (theta: number) => longestLevellingWave(film_m, theta, MARK_GONE, liquid);
  const range = { low: wave(left / VISCOSITY_FACTOR), value, high: wave(left * VISCOSITY_FACTOR) };
  return { ...found, reasons: found.reasons.map((reason) => ({ ...reason, range })) };
}
