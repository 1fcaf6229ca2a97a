/** The forecast by the functions the app calls. */
import { cureCup } from '#core/resin/cup.ts';
import { cureFilm } from '#core/resin/film.ts';
import { spanOf } from '#core/resin/history.ts';
import type { CureHistory } from '#core/resin/model.ts';
import { cupStages, filmStages } from '#core/resin/stages.ts';
import {
  airOf,
  BOARD,
  BOARD_NODES,
  CUP_kg,
  FILM_m,
  FILM_NODES,
  type ForecastCase,
  SPAN_s,
  startOf,
} from './problem.ts';
import type { Answer, BodyAnswer } from './solution.ts';

/** One forecast at a relative tolerance; the absolute ones keep the proportions of the default (1e-5, 1e-6, 1e-3 K). */
function forecast(problem: ForecastCase, relative: number) {
  const { model } = problem;
  const air = airOf(problem);
  const common = {
    model,
    air,
    start: startOf(problem),
    start_s: 0,
    duration_s: SPAN_s,
    tolerance: { relative, conversion: 0.1 * relative, temperature: 100 * relative },
  };
  const cup = cureCup({ ...common, mass_kg: CUP_kg });
  const film = cureFilm({
    ...common,
    thickness_m: FILM_m,
    board: BOARD,
    filmNodes: FILM_NODES,
    boardNodes: BOARD_NODES,
  });
  return { cup, film, cupStages: cupStages(cup, model), filmStages: filmStages(film, model, air) };
}

/** Runs it `repeats` times and answers the mean CPU time; the caller warms up. */
export function solveOurs(problem: ForecastCase, relative: number, repeats: number): Answer {
  let last = forecast(problem, relative);
  const before = process.cpuUsage();
  for (let i = 0; i < repeats; i++) last = forecast(problem, relative);
  const { user, system } = process.cpuUsage(before);
  const { cupStages: c, filmStages: f } = last;
  return {
    tolerance: relative,
    cpu_s: ((user + system) * 1e-6) / repeats,
    // A cup's stages come composed; the second of each pair of events is left open.
    cup: answer(last.cup, [c.warm_s, null, c.pourNow_s, null, c.danger_s, null, c.gel_s, c.peak_s]),
    film: answer(last.film, [
      f.workingEnd_s,
      f.noMoreLevelling_s,
      f.gel_s,
      f.recoatOpens_s,
      f.recoatBestFrom_s,
      f.recoatBestTo_s,
      f.recoatCloses_s,
      f.dryHard_s,
      f.handle_s,
      f.peak_s,
    ]),
  };
}

function answer(history: CureHistory, reached: readonly (number | null)[]): BodyAnswer {
  const last = history.time_s.length - 1;
  if (spanOf(history).end_s !== SPAN_s) throw new Error('the forecast ended early');
  return {
    reached,
    conversion: history.conversion[last]!,
    temperature_K: history.temperature_K[last]!,
    steps: last,
  };
}
