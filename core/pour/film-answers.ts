/** What the film can still do, read off its flow budget. */
import { capillaryLength_m } from '#core/film/constants.ts';
import { edgeTaper_m } from '#core/film/edge-profile.ts';
import { faceFilm } from '#core/film/face.ts';
import { longestLevellingWave, ORDERED_THICKNESS_CAPILLARY_LENGTHS } from '#core/film/levelling.ts';
import type { Coat } from '#core/mix/coat.ts';
import { wrappedEdges } from '#core/mix/quantity.ts';
import type { PieceMeasures } from '#core/piece/piece.ts';
import type { CureHistory } from '#core/resin/model.ts';
import { filmStages } from '#core/resin/stages.ts';
import { lastTouch_s } from './film-times.ts';
import type { FilmAnswers } from './plan.ts';
import { THETA_FACTOR, thetaAt } from './settle.ts';

/** Pitches told: comb or trowel, fingers, torch, uneven spreading. */
export const PITCHES_m: readonly number[] = [0.01, 0.02, 0.05, 0.15];

export interface AnswersRequest {
  readonly coat: Coat;
  readonly measures: PieceMeasures;
  readonly film: CureHistory;
  readonly filmStart_s: number;
  /** The last cup is spread, on the plan's clock. */
  readonly down_s: number;
  readonly thetaWhenWrapped_per_Pa: number;
  readonly air_K: number;
}

/**
 * Answers on the plan's clock. Faces: Jeffreys' draining of the face film from the moment the edges are worked, averaged over the
 * wrapped edges by length; low and high by viscosity 1.5 times off either way. Without wrapped edges faces and taper are 0.
 */
export function filmAnswers(request: AnswersRequest): FilmAnswers {
  const { coat, measures, film, filmStart_s, down_s, thetaWhenWrapped_per_Pa: theta } = request;
  const { model } = coat.card;
  const thetaTotal_per_Pa = thetaAt(film, down_s - filmStart_s);
  const deepest_m = ORDERED_THICKNESS_CAPILLARY_LENGTHS * capillaryLength_m(model);
  const length_m = wrappedEdges(coat, measures).reduce((sum, edge) => sum + edge.length_m, 0);
  const holds = (left: number) => facesHold_m(coat, measures, left);
  return {
    thetaTotal_per_Pa,
    lastTouch: PITCHES_m.map((pitch_m) => {
      const at_s = lastTouch_s(film, pitch_m, coat.film_m, model);
      return { pitch_m, at_s: at_s === null ? null : at_s + filmStart_s };
    }),
    longestWave_m:
      thetaTotal_per_Pa > 0
        ? longestLevellingWave(Math.min(coat.film_m, deepest_m * 0.999999), thetaTotal_per_Pa, 0.01, model)
        : 0,
    faceHolds_m: holds(theta),
    faceHoldsLow_m: holds(theta * THETA_FACTOR),
    faceHoldsHigh_m: holds(theta / THETA_FACTOR),
    taper_m: length_m > 0 && theta > 0 ? edgeTaper_m(coat.film_m, theta, 0.9, model) : 0,
    peak_K: filmStages(film, model, { time_s: [0], temperature_K: [request.air_K] }).peak_K,
  };
}

/** Mean film on the wrapped faces at gel, m, by length, when they are worked with a flow budget left, 1/Pa; 0 without faces. */
export function facesHold_m(coat: Coat, measures: PieceMeasures, thetaLeft_per_Pa: number): number {
  const edges = wrappedEdges(coat, measures);
  const length_m = edges.reduce((sum, edge) => sum + edge.length_m, 0);
  if (length_m === 0 || coat.faceFilm_m === 0) return 0;
  const held = edges.map(
    (edge) =>
      edge.length_m *
      faceFilm({
        height_m: edge.faceHeight_m,
        appliedThickness_m: coat.faceFilm_m,
        thetaLeft_per_Pa,
        liquid: coat.card.model,
      }).mean_m,
  );
  return held.reduce((sum, each) => sum + each, 0) / length_m;
}
