/** What is said aloud, and when: each cue once, a chosen time ahead. Pure. */
import type { RunForecast } from '#core/pour/run/forecast-run.ts';
import { remindersOf } from './reminders.ts';
import { isOpen, type Whose } from './screen-state.ts';

/** How long ahead cues come, s; null: none are given. */
export const CUE_LEADS_s = [null, 30, 60, 120] as const;
export type CueLead = (typeof CUE_LEADS_s)[number];

/** As a voice says them: "s" would be read as a letter. */
export const LEAD_WORDS: Readonly<Record<NonNullable<CueLead>, string>> = {
  30: '30 seconds',
  60: '1 minute',
  120: '2 minutes',
};

export interface Cue {
  /** The same for the same moment of the same step or cup: it is given once. */
  readonly id: string;
  readonly at_s: number;
  readonly says: string;
  /** A window is about to close: with sound and a shake. */
  readonly urgent: boolean;
}

const said = (label: string) => label.replace(/,.*$/, '');

/**
 * Every cue of what is still to do, in order. A step is announced before it is due, and warned of before its window closes; a standing cup before it
 * must be out; and once when time has run out.
 */
export function cues(forecast: RunForecast, whose: Whose, lead_s: CueLead): readonly Cue[] {
  if (lead_s === null) return [];
  const list: Cue[] = [];
  const lead = LEAD_WORDS[lead_s];
  for (const each of forecast.steps) {
    const { step, state, start_s, window } = each;
    if (!isOpen(each) || step.kind === 'hands off') continue;
    if (whose !== 'all' && step.person !== whose) continue;
    const what = said(step.label);
    if (state === 'to do')
      list.push({ id: `due ${step.id}`, at_s: start_s - lead_s, says: `${what} in ${lead}.`, urgent: false });
    if (step.optional) continue;
    list.push({
      id: `closes ${step.id}`,
      at_s: window.closes_s - lead_s,
      says: `${lead} left: ${what}.`,
      urgent: true,
    });
    list.push({
      id: `closed ${step.id}`,
      at_s: window.closes_s,
      says: `Time is up: ${what}.`,
      urgent: true,
    });
  }
  for (const { number, place, pourNow } of forecast.cups)
    if (place === 'standing' && pourNow !== null)
      list.push({
        id: `cup ${number}`,
        at_s: pourNow.low_s - lead_s,
        says: `Cup ${number} must be out in ${lead}.`,
        urgent: true,
      });
  for (const { key, label, from_s } of remindersOf(forecast.film))
    if ((key === 'airflow' || key === 'tape') && from_s !== null)
      list.push({ id: key, at_s: from_s, says: `${label}.`, urgent: false });
  return list.sort((a, b) => a.at_s - b.at_s || (a.id < b.id ? -1 : 1));
}

/** A cue whose moment is longer past than this is not given any more: it would only confuse. */
const STALE_s = 20;

/** Cues whose moment has come and that were not given yet. */
export function dueCues(list: readonly Cue[], now_s: number, given: ReadonlySet<string>): readonly Cue[] {
  return list.filter(({ id, at_s }) => at_s <= now_s && now_s - at_s < STALE_s && !given.has(id));
}
