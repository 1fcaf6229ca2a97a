/**
 * A resin card as a shop types it: what is printed on the label and what was seen in the shop. Quantities are the text a
 * person typed, with its unit; an empty text means "not said", which widens the forecast and is never guessed silently. This
 * file says the shape only; `readCard` (read-card.ts) turns the texts into SI.
 */
import { z } from 'zod';
import { END_CRITERIA } from './label.ts';

export const CARD_FORMAT = 'pourwright resin 1';

const text = (what: string, example: string, max = 60) =>
  z.string().max(max).default('').describe(`${what}, for example "${example}". Empty: not said.`);

export const FIGURE_KINDS = [
  'working time',
  'pot life',
  'recoat opens',
  'recoat closes',
  'dry hard',
  'handle',
  'full cure',
  'viscosity',
  'largest film',
] as const;

export const FigureDocument = z.strictObject({
  kind: z.enum(FIGURE_KINDS),
  value: text('The figure, or its range', '4 to 6 h'),
  mass: text('Mass in the cup it was measured on', '100 g'),
  film: text('Film it was measured on', '2.5 mm'),
  temperature: text('Temperature it was measured at', '75 F'),
  end: z
    .enum(END_CRITERIA)
    .default('unknown')
    .describe('What a pot life or a working time ends at, when the label says so'),
});

export const MixDocument = z.strictObject({
  byVolume: text('Parts of A to parts of B by volume', '2:1'),
  byWeight: text('Parts of A to parts of B by weight', '100:44'),
  densityA: text('Density of part A', '1.13 g/mL'),
  densityB: text('Density of part B', '1.00 g/mL'),
  epoxyEquivalent: text('Epoxy equivalent weight of part A, from its data sheet', '195 g/eq'),
});

export const LabelDocument = z.strictObject({
  mix: MixDocument.prefault({}),
  label: z.array(FigureDocument).max(30).default([]),
  colourantLimit: text('Most colourant the label allows, by weight of mix', '6 %'),
});

export const OBSERVATION_KINDS = [
  'cup temperatures',
  'cup time',
  'working end',
  'gel',
  'touch',
  'recoat',
] as const;
export const RECOAT_RESULTS = ['ok', 'too early', 'too late'] as const;

export const ObservationDocument = z.strictObject({
  id: z.string().min(1).max(60),
  kind: z.enum(OBSERVATION_KINDS),
  date: z.string().max(40).default('').describe('The day it was seen, as 2026-05-14'),
  withdrawn: z.boolean().default(false).describe('No longer believed; kept, but not used'),
  time: text('Since the parts met (cup) or the film was poured', '9 min'),
  mass: text('What stood in the cup', '100 g'),
  diameter: text('Inner diameter of the cup', '70 mm'),
  film: text('Wet film', '2.5 mm'),
  air: text('Air in the shop', '75 F'),
  start: text('Temperature of the fresh mix, if not that of the air', '72 F'),
  reaches: z.enum(['40 C', '50 C']).default('40 C').describe('Of a cup time: what the cup reached'),
  result: z.enum(RECOAT_RESULTS).default('ok').describe('Of a recoat: how the next coat took'),
  readings: z
    .array(z.strictObject({ at: text('Since the parts met', '3 min'), temperature: text('Cup', '80 F') }))
    .max(5000)
    .default([])
    .describe('Of cup temperatures'),
  note: z.string().max(2000).default(''),
});

export const ResinCardDocument = LabelDocument.extend({
  format: z.literal(CARD_FORMAT),
  id: z
    .string()
    .regex(/^[a-z0-9][a-z0-9-]{0,59}$/)
    .describe('Small letters, figures and hyphens'),
  name: z.string().min(1).max(100),
  description: z.string().max(1000).default(''),
  observations: z.array(ObservationDocument).max(500).default([]),
}).describe('A resin card. Quantities are texts with their unit.');

export type FigureDocument = z.infer<typeof FigureDocument>;
export type LabelDocument = z.infer<typeof LabelDocument>;
export type LabelDocumentInput = z.input<typeof LabelDocument>;
export type ObservationDocument = z.infer<typeof ObservationDocument>;
export type ResinCardDocument = z.infer<typeof ResinCardDocument>;
export type ResinCardDocumentInput = z.input<typeof ResinCardDocument>;
