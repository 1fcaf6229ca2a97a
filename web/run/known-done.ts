/** Between an event and the windows computed from it, a screen must not ask again for what is done, nor hide what was taken back. */
import type { RunState } from '#core/pour/run/fold-run.ts';
import type { RunForecast, RunStep } from '#core/pour/run/forecast-run.ts';

/** The same windows, each step as the events have it now. The forecast itself when it already says so. */
export function asKnown(forecast: RunForecast, { steps }: RunState): RunForecast {
  const known = forecast.steps.map((each): RunStep => {
    const state = now(each, steps.get(each.step.id)?.state);
    return state === each.state ? each : { ...each, state };
  });
  return known.some((each, i) => each !== forecast.steps[i]) ? { ...forecast, steps: known } : forecast;
}

function now({ state }: RunStep, said: 'to do' | 'begun' | 'done' | 'skipped' | undefined): RunStep['state'] {
  if (said === 'done' || said === 'skipped') return said;
  // a forecast knows of a step to do whether it is in hand; of a step that was done before it cannot
  if (state === 'done' || state === 'skipped') return said === 'begun' ? 'in hand' : 'to do';
  return state;
}
