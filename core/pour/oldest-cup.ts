import type { CoatPlan } from './plan.ts';

/** Place, from 0, of the cup whose film the plan reckons with: the one that is empty when that film starts. */
export function oldestCup({ cupForecasts, filmStart_s }: CoatPlan): number {
  const off = (i: number) => Math.abs(cupForecasts[i]!.emptied_s - filmStart_s);
  let oldest = 0;
  for (let i = 1; i < cupForecasts.length; i++) if (off(i) < off(oldest)) oldest = i;
  return oldest;
}
