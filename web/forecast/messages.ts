import type { JobDocument } from '#core/job/document.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import type { ShopRates } from '#core/pour/shop-rates.ts';

export interface Question {
  readonly number: number;
  readonly document: JobDocument;
  readonly rates: Partial<ShopRates>;
}

export type Reply =
  | { readonly number: number; readonly forecast: JobForecast }
  /** The model gave up on a document that the readers let through: said on the sheet, never hidden. */
  | { readonly number: number; readonly failed: string };
