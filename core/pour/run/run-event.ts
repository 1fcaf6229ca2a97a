/**
 * What happens in a pour, as it is written down: append-only, each with an id made where it was written (UUID version 7), so that a
 * repeat is harmless and two phones' lists are put together by joining the sets. Times are seconds on the run's clock, 0 = the first cup's
 * parts meet.
 */
import { z } from 'zod';

const id = z
  .string()
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/, 'a UUID of version 7');

/** Ten days: a run is handed over to the cure long before. */
const LONGEST_s = 864_000;

const head = {
  id,
  run: id,
  /** The phone or tablet it was written on, made once and kept there. */
  device: id,
  at_s: z.number().min(-86_400).max(LONGEST_s).describe('Seconds on the clock of the run'),
  /** For the record only; nothing is computed with it. */
  wall_ms: z.number().int().min(0).max(8.64e15).describe('Clock of the device, ms since 1970'),
};
const step = z.string().min(1).max(40).describe('Id of the step in the plan');
const temperature_K = z.number().min(223.15).max(573.15);
const cup = z.number().int().min(1).max(200);

export const HAPPENINGS = [
  'cup hot',
  'spill',
  'short of a colour',
  'crater',
  'called away',
  'something else',
] as const;

export const RunEvent = z.discriminatedUnion('kind', [
  z.strictObject({ ...head, kind: z.literal('started') }),
  z.strictObject({ ...head, kind: z.literal('began'), step }),
  z.strictObject({ ...head, kind: z.literal('done'), step }),
  z.strictObject({ ...head, kind: z.literal('skipped'), step, why: z.string().max(400).default('') }),
  z.strictObject({ ...head, kind: z.literal('undone'), event: id }),
  z.strictObject({
    ...head,
    kind: z.literal('reading'),
    of: z.enum(['air', 'board', 'cup']),
    cup: cup.nullable().default(null),
    temperature_K,
  }),
  z.strictObject({
    ...head,
    kind: z.literal('happened'),
    what: z.enum(HAPPENINGS),
    cup: cup.nullable().default(null),
    /** Resin lost or missing, kg. */
    mass_kg: z.number().min(0).max(100).nullable().default(null),
    /** Across a crater, m. */
    size_m: z.number().min(0).max(1).nullable().default(null),
    /** Away from the piece, s. */
    away_s: z.number().min(0).max(86_400).nullable().default(null),
    note: z.string().max(1000).default(''),
  }),
  z.strictObject({ ...head, kind: z.literal('ticked'), item: z.string().min(1).max(80), on: z.boolean() }),
  z.strictObject({ ...head, kind: z.literal('clock corrected'), by_s: z.number().min(-86_400).max(86_400) }),
  z.strictObject({ ...head, kind: z.literal('finished') }),
]);

export type RunEvent = z.infer<typeof RunEvent>;
export type RunEventKind = RunEvent['kind'];
export type Happening = (typeof HAPPENINGS)[number];

/** The order in which events count: by the run's clock, then by id, so that every device tells the same story. */
export function inOrder(a: RunEvent, b: RunEvent): number {
  return a.at_s - b.at_s || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/**
 * Joins lists of events into one, each id once, in the order they count. Joining is idempotent, commutative and associative; of two
 * events with one id and different contents the one whose text sorts first is kept, so that all devices keep the same one.
 */
export function joinEvents(...lists: readonly (readonly RunEvent[])[]): readonly RunEvent[] {
  const known = new Map<string, RunEvent>();
  for (const list of lists)
    for (const event of list) {
      const same = known.get(event.id);
      if (same === undefined || (same !== event && textOf(event) < textOf(same))) known.set(event.id, event);
    }
  return [...known.values()].sort(inOrder);
}

const textOf = (event: RunEvent) =>
  JSON.stringify(Object.entries(event).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
