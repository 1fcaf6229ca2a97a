/** What the shop is: one record, versioned like a job. Rates are the maker's own working speeds, in SI (core/pour/shop-rates.ts). */
import { z } from 'zod';
import { isTimeZone } from '#core/job/calendar/zone-time.ts';
import { ShopBody } from '#core/job/shop-body.ts';
import { DEFAULT_SPREADS, type PourSpreads, type TimedKind } from '#core/pour/chance/spreads.ts';
import { SHOP_DEFAULTS, type ShopRates } from '#core/pour/shop-rates.ts';

/** A rate somebody stored before a later version added another one is read with the default for the new one. */
const rate = (key: keyof ShopRates, least: number, most: number, unit: string) =>
  z
    .number()
    .min(least)
    .max(most)
    .default(SHOP_DEFAULTS[key])
    .describe(`${unit}, ${least} to ${most}; a shop default`);

const Rates = z.strictObject({
  frontRail_m: rate('frontRail_m', 0, 0.5, 'm'),
  sideRail_m: rate('sideRail_m', 0, 0.5, 'm'),
  backRail_m: rate('backRail_m', 0, 0.5, 'm'),
  seamRail_m: rate('seamRail_m', 0, 0.5, 'm'),
  tapCentre_m: rate('tapCentre_m', 0, 0.5, 'm'),
  betweenBowls_m: rate('betweenBowls_m', 0, 0.5, 'm'),
  insideRadius_m: rate('insideRadius_m', 0, 0.2, 'm'),
  mix_s: rate('mix_s', 1, 3600, 's'),
  mixExtra_s_per_kg: rate('mixExtra_s_per_kg', 0, 3600, 's/kg'),
  tint_s: rate('tint_s', 0, 3600, 's'),
  pour_kg_per_s: rate('pour_kg_per_s', 0.0001, 10, 'kg/s'),
  spread_m2_per_s: rate('spread_m2_per_s', 0.00001, 1, 'm2/s'),
  meld_s_per_m2: rate('meld_s_per_m2', 0, 36_000, 's/m2'),
  leastMeld_s: rate('leastMeld_s', 0, 3600, 's'),
  wrap_m_per_s: rate('wrap_m_per_s', 0.0001, 10, 'm/s'),
  wrapPatience_s: rate('wrapPatience_s', 0, 14_400, 's'),
  torch_m2_per_s: rate('torch_m2_per_s', 0.00001, 1, 'm2/s'),
  leastTorch_s: rate('leastTorch_s', 0, 3600, 's'),
  scrapeEvery_s: rate('scrapeEvery_s', 60, 86_400, 's'),
  scrape_m_per_s: rate('scrape_m_per_s', 0.0001, 10, 'm/s'),
  scaleStep_kg: rate('scaleStep_kg', 0.000001, 1, 'kg'),
  cupFilmShare: rate('cupFilmShare', 0, 0.5, 'share of the mass in the cup'),
  leastCupFilm_kg: rate('leastCupFilm_kg', 0, 1, 'kg'),
  tightUnder_s: rate('tightUnder_s', 0, 86_400, 's'),
}) satisfies z.ZodType<ShopRates>;

const stepSpread = (kind: TimedKind) =>
  z
    .strictObject({
      factor: z.number().min(0.1).max(10).describe('what the step takes over what is planned, in the middle'),
      ln: z.number().min(0).max(1.5).describe('standard deviation of the logarithm of its duration'),
      runs: z.number().int().min(0).max(10_000).describe('runs it rests on; 0: a shop default, or typed'),
    })
    .default(DEFAULT_SPREADS.steps[kind]);

/** How far steps take longer or shorter than planned in this shop (core/pour/chance/spreads.ts). */
const Spreads = z.strictObject({
  steps: z
    .strictObject({
      mix: stepSpread('mix'),
      pour: stepSpread('pour'),
      meld: stepSpread('meld'),
      'wrap edges': stepSpread('wrap edges'),
      torch: stepSpread('torch'),
      'scrape drips': stepSpread('scrape drips'),
    })
    .prefault({}),
  common: z.number().min(0).max(1).default(DEFAULT_SPREADS.common),
  temperature_K: z.number().min(0).max(10).default(DEFAULT_SPREADS.temperature_K).describe('K'),
  pause: z
    .strictObject({
      chance: z.number().min(0).max(1).default(DEFAULT_SPREADS.pause.chance),
      mid_s: z.number().min(1).max(7200).default(DEFAULT_SPREADS.pause.mid_s).describe('s'),
      ln: z.number().min(0).max(1.5).default(DEFAULT_SPREADS.pause.ln),
    })
    .prefault({}),
}) satisfies z.ZodType<PourSpreads>;

export const Shop = z
  .strictObject({
    name: z.string().max(200).default(''),
    system: z.enum(['us', 'metric']).default('us').describe('Units shown first'),
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/)
      .default('USD')
      .describe('ISO 4217 code, for example USD'),
    timeZone: z
      .string()
      .max(64)
      .refine((zone) => zone === '' || isTimeZone(zone), 'not a time zone of the IANA data base')
      .default('')
      .describe('IANA name, for example America/Chicago; empty: not chosen yet'),
    rates: Rates.prefault({}),
    spreads: Spreads.prefault({}),
    body: ShopBody.prefault({}),
  })
  .describe(
    'The shop: its name, units, currency, time zone, how fast it works and how evenly, how it builds and cuts bodies',
  );

export type Shop = z.infer<typeof Shop>;
export type ShopInput = z.input<typeof Shop>;

/** What a shop is before anyone has said anything about it. */
export function newShop(): Shop {
  return Shop.parse({});
}
