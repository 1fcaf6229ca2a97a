import type { JobDocument } from '#core/job/document.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import type { ShopRates } from '#core/pour/shop-rates.ts';
import type { System } from '#core/quantity/units.ts';
import type { ResinCard } from '#core/resin/model.ts';

/** What of the shop a forecast depends on. */
export interface ForecastShop {
  readonly rates: Partial<ShopRates>;
  /** Units of the figures in sentences. */
  readonly system: System;
  /** Resin cards of the shop; the generic ones are always there. */
  readonly cards?: readonly ResinCard[];
}

export interface Question extends ForecastShop {
  readonly number: number;
  readonly document: JobDocument;
}

export type Reply =
  | { readonly number: number; readonly forecast: JobForecast }
  /** The model gave up on a document that the readers let through: said on the sheet, never hidden. */
  | { readonly number: number; readonly failed: string };
