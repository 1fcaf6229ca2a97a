/**
 * A plan as it was when its pour was opened: with everything it was made from, the version of the model, and a hash over all of it.
 * Nothing computed later changes it; a phone needs nothing else to run the pour.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { z } from 'zod';
import type { CureHistory } from '#core/resin/model.ts';
import type { CoatPlan } from '../plan.ts';
import type { PlanRequest } from '../plan-coat.ts';

export const POUR_FORMAT = 'pourwright pour 1';

/** What a pour is planned from, without the resins it was only compared with. */
export type PourInputs = Omit<PlanRequest, 'slowerCards' | 'waysOut'>;

export interface FrozenPour {
  readonly format: typeof POUR_FORMAT;
  readonly modelVersion: string;
  readonly inputs: PourInputs;
  readonly plan: CoatPlan;
  /** SHA-256 (FIPS 180-4) of the rest, 64 hex digits. */
  readonly hash: string;
}

/** Freezes a plan. What has no place in JSON (undefined) is dropped, so that a frozen pour is the same after a trip through a file. */
export function freezePour(request: PlanRequest, plan: CoatPlan, modelVersion: string): FrozenPour {
  const { slowerCards: _slower, waysOut: _ways, ...inputs } = request;
  const text = frozenText({ format: POUR_FORMAT, modelVersion, inputs, plan });
  const body = withHistories(JSON.parse(text) as Omit<FrozenPour, 'hash'>);
  return { ...body, hash: hashOf(body) };
}

/** A frozen pour as JSON: series of numbers become lists. */
export function frozenText(pour: object): string {
  return JSON.stringify(pour, (_key, value) =>
    ArrayBuffer.isView(value) ? [...(value as Float64Array)] : value,
  );
}

/** Histories of cups and film are series of doubles again. */
function withHistories<P extends { readonly plan: CoatPlan }>(pour: P): P {
  const { plan } = pour;
  const cupForecasts = plan.cupForecasts.map((cup) => ({ ...cup, history: inDoubles(cup.history) }));
  return { ...pour, plan: { ...plan, cupForecasts, film: inDoubles(plan.film) } };
}

function inDoubles(history: CureHistory): CureHistory {
  return Object.fromEntries(
    Object.entries(history).map(([key, series]) => [key, Float64Array.from(series as ArrayLike<number>)]),
  ) as unknown as CureHistory;
}

/** SHA-256 of the canonical JSON (keys in order) of everything but the hash. */
export function hashOf(pour: Omit<FrozenPour, 'hash'>): string {
  const { format, modelVersion, inputs, plan } = pour;
  return bytesToHex(sha256(utf8ToBytes(canonical({ format, modelVersion, inputs, plan }))));
}

function canonical(value: unknown): string {
  if (ArrayBuffer.isView(value)) return canonical([...(value as Float64Array)]);
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${canonical(each)}`).join(',')}}`;
}

/**
 * The outer shape of a frozen pour as it comes from a file or a phone. What is inside is vouched for by the hash: only this program writes
 * it, and it is never computed with before the hash fits.
 */
export const FrozenPourDocument = z
  .strictObject({
    format: z.literal(POUR_FORMAT),
    modelVersion: z.string().min(1).max(40),
    inputs: z.looseObject({ coat: z.looseObject({ id: z.string().min(1).max(60) }) }),
    plan: z.looseObject({
      coatId: z.string().min(1).max(60),
      steps: z.array(z.unknown()).min(1).max(1000),
      cupForecasts: z.array(z.looseObject({ history: z.record(z.string(), z.array(z.number())) })).max(200),
      film: z.record(z.string(), z.array(z.number())),
    }),
    hash: z.string().regex(/^[0-9a-f]{64}$/, '64 hex digits'),
  })
  .refine((pour) => pour.hash === hashOf(pour as unknown as FrozenPour), {
    path: ['hash'],
    message: 'does not belong to this pour: the file was changed after the pour was frozen',
  })
  .transform((pour) => withHistories(pour as unknown as FrozenPour));
