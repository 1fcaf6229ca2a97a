import type { JobDocument } from '#core/job/document.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import type { CureHistory } from '#core/resin/model.ts';

/** The plan for programs: SI numbers with their unit in the name; histories thinned to what a chart needs. */
export function planJson(job: JobDocument, forecast: JobForecast): Record<string, unknown> {
  const { coats, pieces, piece, measures, ...rest } = forecast;
  return {
    format: 'pourwright plan 1',
    title: job.title,
    ...rest,
    piece,
    measures,
    pieces: pieces.map(({ id, name, piece: of, measures: sizes }) => ({
      id,
      name,
      piece: of,
      measures: sizes,
    })),
    coats: coats.map(({ id, name, pieces: on, plan, nextCoat }) => ({
      id,
      name,
      pieces: on,
      nextCoat,
      plan:
        plan === null
          ? null
          : {
              ...plan,
              film: thinned(plan.film),
              cupForecasts: plan.cupForecasts.map((cup) => ({ ...cup, history: thinned(cup.history) })),
            },
    })),
  };
}

const POINTS = 120;

function thinned(history: CureHistory): Record<string, number[]> {
  const last = history.time_s.length - 1;
  const step = Math.max(1, Math.ceil(last / POINTS));
  const keep: number[] = [];
  for (let i = 0; i < last; i += step) keep.push(i);
  if (last >= 0) keep.push(last);
  const pick = (values: Float64Array) => keep.map((i) => values[i]!);
  return {
    time_s: pick(history.time_s),
    conversion: pick(history.conversion),
    temperature_K: pick(history.temperature_K),
    viscosity_Pa_s: pick(history.viscosity_Pa_s),
    tg_K: pick(history.tg_K),
    theta_per_Pa: pick(history.theta_per_Pa),
  };
}
