/** The demo shop: invented, with five jobs at different stages and a resin card of its own. Dates lie around the day it is opened. */
import type { JobDocumentInput } from '#core/job/document.ts';
import type { ResinCardDocumentInput } from '#core/resin/card-document.ts';
import { counterAndShelf, ellCounter, hallTable, roundTable, vanityVesselSink } from './jobs.ts';

export interface Demo {
  readonly shop: {
    readonly name: string;
    readonly system: 'us' | 'metric';
    readonly currency: string;
    readonly rates: Record<string, never>;
  };
  readonly resins: readonly ResinCardDocumentInput[];
  readonly jobs: readonly { readonly id: string; readonly document: JobDocumentInput }[];
}

/** `today` as 2026-05-14. */
export function demo(today: string): Demo {
  const on = (days: number, clock = '') => `${dayAfter(today, days)}${clock === '' ? '' : `T${clock}`}`;
  return {
    shop: { name: 'Lantern Yard Tops (demo)', system: 'us', currency: 'USD', rates: {} },
    resins: [shopSlow40(on(-12))],
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
      {
        id: '0190d000-0000-7000-8000-000000000005',
        document: poured(counterAndShelf, 'building', on(20), [
          on(6, '09:00'),
          on(7, '13:00'),
          on(7, '15:00'),
        ]),
      },
    ],
  };
}

/** An invented label, and what the shop saw of a cup of it. */
function shopSlow40(seenOn: string): ResinCardDocumentInput {
  return {
    format: 'pourwright resin 1',
    id: 'shop-slow-40',
    name: 'Shop slow 40',
    description: 'For wide tops: about 40 minutes in a film, next coat the same evening or next morning.',
    mix: { byVolume: '2:1', byWeight: '100:44', densityA: '1.13 g/mL', densityB: '0.99 g/mL' },
    label: [
      { kind: 'working time', value: '40 min', temperature: '75 F' },
      { kind: 'pot life', value: '28 to 35 min', mass: '100 g', temperature: '75 F', end: 'unknown' },
      { kind: 'recoat opens', value: '10 to 14 h', temperature: '75 F' },
      { kind: 'full cure', value: '7 d' },
      { kind: 'viscosity', value: '950 cP', temperature: '77 F' },
      { kind: 'largest film', value: '5 mm' },
    ],
    colourantLimit: '6 %',
    observations: [
      {
        id: 'first-cup',
        kind: 'cup time',
        date: seenOn,
        time: '26 min',
        mass: '250 g',
        air: '72 F',
        reaches: '40 C',
        note: 'Left over from a test board, in a plastic cup.',
      },
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
