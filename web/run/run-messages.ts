import type { RunForecast, RunForecastRequest } from '#core/pour/run/forecast-run.ts';

export interface RunQuestion extends RunForecastRequest {
  readonly number: number;
}

export type RunReply =
  | { readonly number: number; readonly forecast: RunForecast }
  | { readonly number: number; readonly failed: string };
