/** The pour of one coat: steps, windows, slack and the plain verdict. Times in seconds; 0 = the first cup's parts meet. */
import type { CoatQuantity, CupRecipe } from '#core/mix/coat.ts';
import type { CureHistory, TimeRange } from '#core/resin/model.ts';

export type StepKind = 'mix' | 'pour' | 'meld' | 'wrap edges' | 'torch' | 'scrape drips' | 'hands off';

/** How long a step may wait: it must be done between `opens_s` and `closes_s`; `closes_s` is the safe (5 %) figure. */
export interface Window {
  readonly opens_s: number;
  readonly closes_s: number;
  /** Mid of the closing time, so the screen can show the range. */
  readonly closesMid_s: number;
  readonly closesHigh_s: number;
  /** Which limit closes it, in words: "cup 2 reaches 104 °F or 8% cured", "film of cup 1 stops flowing". */
  readonly limit: string;
  readonly basis: 'label figure' | 'model' | 'shop default';
}

export interface Step {
  readonly id: string;
  readonly kind: StepKind;
  readonly label: string;
  /** 1 = first person. */
  readonly person: number;
  readonly cup: number | null;
  readonly start_s: number;
  readonly end_s: number;
  readonly window: Window;
  /** closes_s - end_s; negative: too late. */
  readonly slack_s: number;
  /** Left out without harm when there is no time, or a wait: not counted in the verdict. */
  readonly optional: boolean;
  /** The rule of thumb of the trade that this step follows, "common practice, no source" unless said. */
  readonly rule: string;
}

export type Verdict = 'fits' | 'tight' | 'does not fit';

export interface CupForecast {
  readonly number: number;
  readonly colour: string;
  readonly swatch: string;
  /** When its parts meet, and when it is empty. */
  readonly mixed_s: number;
  readonly emptied_s: number;
  /** Left standing full; times on the plan's clock; null: not reached. */
  readonly warm: TimeRange | null;
  readonly pourNow: TimeRange | null;
  readonly danger: TimeRange | null;
  readonly gel: TimeRange | null;
  readonly peak_K: number;
  /** Cup left standing, on its own clock: 0 is `mixed_s`. */
  readonly history: CureHistory;
}

export type StageKey =
  | 'working end'
  | 'no more levelling'
  | 'gel'
  | 'recoat opens'
  | 'recoat best from'
  | 'recoat best to'
  | 'recoat closes'
  | 'dry hard'
  | 'sandable'
  | 'handle'
  | 'in use'
  | 'full cure';

export interface StageForecast {
  readonly key: StageKey;
  readonly label: string;
  /** The criterion in words, for "why". */
  readonly criterion: string;
  readonly basis: 'label figure' | 'model' | 'shop default';
  readonly at: TimeRange | null;
  readonly rule: string;
}

/** What the film can still do, read off the flow budget. */
export interface FilmAnswers {
  /** Flow budget from the end of spreading to gel. */
  readonly thetaTotal_per_Pa: number;
  /** Last moment a tool may touch so that marks of this pitch level to 1 %. */
  readonly lastTouch: readonly { readonly pitch_m: number; readonly at_s: number | null }[];
  /** Longest wave that still levels when left alone after spreading. */
  readonly longestWave_m: number;
  /** Mean film that stays on a face when wrapped as planned. */
  readonly faceHolds_m: number;
  readonly faceHoldsLow_m: number;
  readonly faceHoldsHigh_m: number;
  /** How far in from a wetted edge the film is thinner than 90 %. */
  readonly taper_m: number;
  readonly peak_K: number;
}

export interface WayOut {
  readonly key: 'cooler resin' | 'more cups' | 'a helper' | 'slower resin' | 'two stages' | 'cooler shop';
  readonly label: string;
  /** What would change, in words. */
  readonly change: string;
  readonly verdict: Verdict;
  readonly slack_s: number;
  /** What it brings with it. */
  readonly note: string;
}

/** When the edges are worked and what that brings against working them as soon as hands are free. */
export interface WrapAdvice {
  /** The edges are left to stand this long, s; 0: worked at once. */
  readonly wait_s: number;
  /** Working the edges starts, and could start without a wait, s on the plan's clock. */
  readonly start_s: number;
  readonly atOnce_s: number;
  /** Less run-off than at once, m3. */
  readonly savesRunOff_m3: number;
  /** Mean film on the faces at gel, as planned and at once, m. */
  readonly faceHolds_m: number;
  readonly faceHoldsAtOnce_m: number;
  /** One plain sentence: the minute, why, and what wrapping at once would cost. */
  readonly says: string;
}

export interface CoatPlan {
  readonly coatId: string;
  readonly quantity: CoatQuantity;
  readonly cups: readonly CupRecipe[];
  readonly cupForecasts: readonly CupForecast[];
  readonly steps: readonly Step[];
  readonly stages: readonly StageForecast[];
  /** Film of the cup whose film stops flowing first (nearly always the first cup); runs on its own clock from 0. */
  readonly film: CureHistory;
  /** When that film is on the board, on the plan's clock. */
  readonly filmStart_s: number;
  readonly answers: FilmAnswers;
  /** null without edges to wrap; plans frozen by older versions have none. */
  readonly wrap?: WrapAdvice | null;
  readonly verdict: Verdict;
  /** The least slack of the steps that must be done, and the id of the step that has it. */
  readonly slack_s: number;
  readonly slackStep: string;
  /** One plain sentence. */
  readonly says: string;
  /** Empty when the pour fits. */
  readonly waysOut: readonly WayOut[];
  readonly cautions: readonly string[];
}
