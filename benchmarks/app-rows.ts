/** Calls of the app that have a time to keep: ensemble, label fit, plan of a coat. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { computeJob } from '#core/job/compute-job.ts';
import { GENERIC_CARDS, REGULAR_50 } from '#core/resin/cards.ts';
import { cureCup } from '#core/resin/cup.ts';
import { drawModels } from '#core/resin/ensemble.ts';
import { cureFilm } from '#core/resin/film.ts';
import { cupStages, filmStages } from '#core/resin/stages.ts';
import { ellCounter, roundTable, vanityVesselSink } from '#examples/jobs.ts';
import { airOf, BOARD, CUP_kg, FILM_m, SPAN_s, startOf } from './forecast/problem.ts';
import { median } from './work-precision.ts';

export interface AppRow {
  readonly name: string;
  readonly cpu_s: number;
  readonly slowest_s: number;
  readonly goal_s: number;
}

const ROUNDS = 7;

function timed(name: string, goal_s: number, work: () => void): AppRow {
  for (let i = 0; i < 2; i++) work();
  const times: number[] = [];
  for (let i = 0; i < ROUNDS; i++) {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    times.push((user + system) * 1e-6);
  }
  return { name, goal_s, cpu_s: median(times), slowest_s: Math.max(...times) };
}

/** As the app draws ranges: tolerance of the draws, everything else as in a forecast. */
const DRAW_TOLERANCE = { relative: 1e-4, conversion: 1e-5, temperature: 0.01 };

function ensemble(tolerance?: typeof DRAW_TOLERANCE): void {
  const problem = { name: 'ensemble', model: REGULAR_50.model, air_K: 297.15 };
  const air = airOf(problem);
  const body = { air, start: startOf(problem), start_s: 0, duration_s: SPAN_s };
  const exact = tolerance === undefined ? {} : { tolerance };
  for (const model of drawModels(REGULAR_50, 1000, 1)) {
    cupStages(cureCup({ ...body, ...exact, model, mass_kg: CUP_kg }), model);
    filmStages(cureFilm({ ...body, ...exact, model, thickness_m: FILM_m, board: BOARD }), model, air);
  }
}

/** A label fit with its posterior for both generic cards; nothing where the fit is not there. */
async function fitRows(): Promise<AppRow[]> {
  const file = join(import.meta.dirname, '..', 'core', 'resin', 'fit-card.ts');
  if (!existsSync(file)) return [];
  const { refit } = await import('#core/resin/fit-card.ts');
  return GENERIC_CARDS.filter((card) => (card.figures ?? []).length > 0).map((card) =>
    timed(`label fit with posterior: ${card.name}`, 0.3, () => refit(card)),
  );
}

export async function appRows(): Promise<AppRow[]> {
  const jobs = { vanityVesselSink, ellCounter, roundTable };
  return [
    timed('1,000 forecasts drawn and computed, tolerance of the draws', 1, () => ensemble(DRAW_TOLERANCE)),
    timed('1,000 forecasts drawn and computed, default tolerance', 1, () => ensemble()),
    ...(await fitRows()),
    ...Object.entries(jobs).map(([name, job]) => {
      const plans = computeJob(job).coats.flatMap(({ plan }) => (plan === null ? [] : [plan]));
      const searched = plans.filter((plan) => plan.waysOut.length > 0).length;
      const also = searched === 0 ? '' : `, ways out sought for ${searched}`;
      return timed(`whole job ${name}: ${plans.length} coats planned${also}`, 0.1, () => computeJob(job));
    }),
  ];
}
