import type { JobForecast } from '#core/job/forecast.ts';

/** What the model still waits for, in the order of the sheet. */
export function stillNeeds(forecast: JobForecast | null): string[] {
  if (forecast === null) return [];
  return forecast.missing.map((missing) => missing.needs);
}
