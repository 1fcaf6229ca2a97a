/** What is asked of the fit worker, and what it answers: plain data. */
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import type { CupTimesPoint, RatioErrorPoint, WorkingTimePoint } from '#core/resin/card-curves.ts';
import type { ObservationDocument, ResinCardDocument } from '#core/resin/card-document.ts';
import type { FitCurve } from '#core/resin/fit-curves.ts';
import type { LoggerOptions } from '#core/resin/logger-csv.ts';
import type { ResinCard } from '#core/resin/model.ts';
import type { Outlook, Taught } from '#core/resin/outlook.ts';
import type { Knowledge } from '#core/resin/what-is-known.ts';

export type Ask =
  | { readonly kind: 'fit'; readonly document: ResinCardDocument; readonly system: System }
  | { readonly kind: 'charts'; readonly document: ResinCardDocument; readonly system: System }
  | { readonly kind: 'taught'; readonly document: ResinCardDocument; readonly observation: string }
  | { readonly kind: 'logger'; readonly file: Blob; readonly options: LoggerOptions };

export interface Fit {
  readonly card: ResinCard;
  readonly outlook: Outlook;
  readonly knowledge: Knowledge;
}

export interface Charts {
  readonly fit: readonly FitCurve[];
  readonly workingTime: readonly WorkingTimePoint[];
  readonly cups: readonly CupTimesPoint[];
  readonly ratio: readonly RatioErrorPoint[];
}

export type LoggerAnswer =
  | {
      readonly ok: true;
      readonly readings: ObservationDocument['readings'];
      /** How many the file holds. */
      readonly of: number;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface Answers {
  readonly fit: Fit;
  readonly charts: Charts;
  readonly taught: Omit<Taught, 'card'>;
  readonly logger: LoggerAnswer;
}

export interface Question {
  readonly number: number;
  readonly ask: Ask;
}

export type Reply =
  | { readonly number: number; readonly answer: Answers[keyof Answers] }
  | { readonly number: number; readonly failed: string };
