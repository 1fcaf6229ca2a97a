/** What the pour screen says at one moment, from the windows and the clock. Pure. */
import type { RunCup, RunForecast, RunStep } from '#core/pour/run/forecast-run.ts';

/** Whose steps are shown: everybody's, or of one person. */
export type Whose = 'all' | 1 | 2 | 3;

export type Tone = 'plenty' | 'soon' | 'short' | 'late';

export interface StandingCup {
  readonly cup: RunCup;
  /** Until it must be out of the cup, s, by the safe figure; null: it never has to. */
  readonly left_s: number | null;
  readonly tone: Tone;
}

export interface ScreenState {
  /** To be done now; null: nothing yet, or nothing more. */
  readonly now: RunStep | null;
  /** More that is in hand with other people, when everybody is shown. */
  readonly beside: readonly RunStep[];
  readonly next: RunStep | null;
  /** Until `next` is due, when nothing is to be done now; null otherwise. */
  readonly wait_s: number | null;
  /** Until the window of `now` closes, or of `next` while waiting. Negative: past it. */
  readonly left_s: number | null;
  readonly tone: Tone;
  readonly standing: readonly StandingCup[];
  /** The least slack of all that must still be done. */
  readonly slack_s: number | null;
  readonly slackTone: Tone;
  /** Nobody has a hand in anything any more: only waiting is left. */
  readonly handsFree: boolean;
}

/** Left under this: "soon"; under the second: "short". Seconds. */
const SOON_s = 180;
const SHORT_s = 60;

export function toneOf(left_s: number | null): Tone {
  if (left_s === null || left_s >= SOON_s) return 'plenty';
  if (left_s >= SHORT_s) return 'soon';
  return left_s >= 0 ? 'short' : 'late';
}

export const isOpen = ({ state }: RunStep) => state === 'in hand' || state === 'to do';

export function screenState(forecast: RunForecast, now_s: number, whose: Whose): ScreenState {
  const mine = forecast.steps
    .filter((each) => isOpen(each) && each.step.kind !== 'hands off')
    .filter(({ step }) => whose === 'all' || step.person === whose)
    .sort((a, b) => a.start_s - b.start_s || a.window.closes_s - b.window.closes_s);
  const due = mine.filter(({ state, start_s }) => state === 'in hand' || start_s <= now_s);
  const inHand = [...due].sort(
    (a, b) => Number(a.step.optional) - Number(b.step.optional) || a.window.closes_s - b.window.closes_s,
  );
  const now = inHand[0] ?? null;
  const next = mine.find((each) => each !== now && !due.includes(each)) ?? inHand[1] ?? null;
  const target = now ?? next;
  const left_s = target === null ? null : target.window.closes_s - now_s;
  // between two forecasts an overdue step eats into the slack second by second
  const since_s = Math.max(0, now_s - forecast.now_s);
  const overdue = now !== null && now.end_s <= now_s;
  const slack_s = forecast.slack_s === null ? null : forecast.slack_s - (overdue ? since_s : 0);
  return {
    now,
    beside: whose === 'all' ? inHand.slice(1).filter((each) => each.step.person !== now?.step.person) : [],
    next,
    wait_s: now === null && next !== null ? Math.max(0, next.start_s - now_s) : null,
    left_s,
    tone: toneOf(left_s),
    standing: forecast.cups
      .filter(({ place }) => place === 'standing')
      .map((cup) => {
        const cupLeft_s = cup.pourNow === null ? null : cup.pourNow.low_s - now_s;
        return { cup, left_s: cupLeft_s, tone: toneOf(cupLeft_s) };
      }),
    slack_s,
    slackTone: toneOf(slack_s),
    handsFree: mine.length === 0,
  };
}
