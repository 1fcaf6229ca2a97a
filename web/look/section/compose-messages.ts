/** What is asked of the worker that composes looks, and what it answers, one look at a time. */
import type { JobDocument } from '#core/job/document.ts';
import type { LookDocument } from '#core/look/look-document.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import type { ResinCard } from '#core/resin/model.ts';

export interface ComposeAsk {
  readonly ask: number;
  readonly document: JobDocument;
  /** Of the shop; the generic ones the worker has itself. */
  readonly cards: readonly ResinCard[];
  readonly system: System;
  readonly index: number;
  /** By key. */
  readonly wanted: readonly (readonly [string, number])[];
  /** Brief, seed, locked areas: each gives one look. */
  readonly looks: readonly LookDocument[];
}

export type ComposeReply =
  | {
      readonly ask: number;
      readonly at: number;
      readonly look: LookDocument;
      readonly off: number;
      readonly warnings: readonly Problem[];
    }
  | { readonly ask: number; readonly at: number; readonly problems: readonly Problem[] };
