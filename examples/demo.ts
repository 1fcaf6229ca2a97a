/** The demo shop: invented, with four jobs at different stages. Dates lie around the day it is opened. */
import type { JobDocumentInput } from '#core/job/document.ts';
import { ellCounter, hallTable, roundTable, vanityVesselSink } from './jobs.ts';

export interface Demo {
  readonly shop: {
    readonly name: string;
    readonly system: 'us' | 'metric';
    readonly currency: string;
    readonly rates: Record<string, never>;
  };
  readonly jobs: readonly { readonly id: string; readonly document: JobDocumentInput }[];
}

/** `today` as 2026-05-14. */
export function demo(today: string): Demo {
  const on = (days: number, clock = '') => `${dayAfter(today, days)}${clock === '' ? '' : `T${clock}`}`;
  return {
    shop: { name: 'Lantern Yard Tops (demo)', system: 'us', currency: 'USD', rates: {} },
    jobs: [
      {
        id: '0190d000-0000-7000-8000-000000000001',
        document: poured(vanityVesselSink, 'pouring', on(9), [on(0, '09:30'), on(1, '13:00')]),
      },
      {
        id: '0190d000-0000-7000-8000-000000000002',
        document: poured(ellCounter, 'building', on(24), [on(2, '08:30'), on(3, '13:30')]),
      },
      {
        id: '0190d000-0000-7000-8000-000000000003',
        document: poured(roundTable, 'curing', on(6), [on(-1, '10:00'), on(0, '08:00')]),
      },
      { id: '0190d000-0000-7000-8000-000000000004', document: poured(hallTable, 'enquiry', '', []) },
    ],
  };
}

function poured(
  job: JobDocumentInput,
  stage: 'enquiry' | 'building' | 'pouring' | 'curing',
  handOver: string,
  starts: readonly string[],
): JobDocumentInput {
  return {
    ...job,
    agreed: { ...job.agreed, stage, handOver },
    coats: (job.coats ?? []).map((coat, index) => ({ ...coat, startsAt: starts[index] ?? '' })),
  };
}

function dayAfter(day: string, days: number): string {
  const at = new Date(`${day}T12:00:00Z`);
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10);
}
