import type { FilmOutlook, FilmOutlookRequest } from '#core/pour/film-outlook.ts';

export interface OutlookAsk {
  readonly number: number;
  readonly request: FilmOutlookRequest;
}

export type OutlookReply =
  /** null: the film is gelled as it lands. */
  | { readonly number: number; readonly outlook: FilmOutlook | null }
  | { readonly number: number; readonly failed: string };
