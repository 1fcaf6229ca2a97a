/** What the server answers, as the app uses it; the typed client checks that these are the same. */
import type { JobDocument, STAGES } from '#core/job/document.ts';
import type { ShopBody } from '#core/job/shop-body.ts';
import type { PourSpreads } from '#core/pour/chance/spreads.ts';
import type { ShopRates } from '#core/pour/shop-rates.ts';
import type { System } from '#core/quantity/units.ts';

export interface JobSummary {
  readonly id: string;
  readonly title: string;
  readonly customerName: string;
  readonly stage: (typeof STAGES)[number];
  /** `2026-05-30`, or '' when nothing is promised. */
  readonly handOver: string;
  /** Local `2026-05-14T09:00`, or '' when no pour has a time. */
  readonly firstPourAt: string;
  readonly version: number;
  readonly updatedAt: string;
  readonly archived: boolean;
}

export interface StoredJob {
  readonly id: string;
  readonly version: number;
  readonly document: JobDocument;
  readonly savedAt: string;
  readonly archived: boolean;
}

export interface ShopSettings {
  readonly name: string;
  readonly system: System;
  /** ISO 4217, three capitals. */
  readonly currency: string;
  /** IANA name; '': not chosen yet. */
  readonly timeZone: string;
  readonly rates: ShopRates;
  /** How far steps take longer or shorter than planned. */
  readonly spreads: PourSpreads;
  /** How bodies are built and cut here. */
  readonly body: ShopBody;
}

export interface Shop extends ShopSettings {
  /** 0: never saved. */
  readonly version: number;
}
