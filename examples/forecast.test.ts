import { describe, expect, it } from 'vitest';
import { computeJob } from '#core/job/compute-job.ts';
import { JobDocument } from '#core/job/document.ts';
import type { CoatForecast } from '#core/job/forecast.ts';
import type { StepKind } from '#core/pour/plan.ts';
import type { TimeRange } from '#core/resin/model.ts';
import { demo } from './demo.ts';
import { counterAndShelf, ellCounter, hallTable, roundTable, vanityVesselSink } from './jobs.ts';

const examples = { vanityVesselSink, ellCounter, counterAndShelf, roundTable, hallTable };

describe.each(Object.entries(examples))('%s', (name, job) => {
  const forecast = computeJob(job);

  it('has nothing against it', () => {
    expect(forecast.problems).toEqual([]);
  });

  it('gives the same forecast twice', () => {
    expect(computeJob(structuredClone(job))).toEqual(forecast);
  });

  it('holds no figure that is no number, in either system of units', () => {
    expect(unsound(forecast)).toEqual([]);
    const metric = computeJob(job, { system: 'metric' });
    expect(unsound(metric)).toEqual([]);
    expect(JSON.stringify(metric)).not.toMatch(/NaN|Infinity|undefined/);
  });

  if (name === 'hallTable')
    it('says what it still needs', () => {
      expect(forecast.missing.map((each) => each.path)).toEqual(['piece.bodyThickness', 'room.air', 'coats']);
      expect(forecast.coats).toEqual([]);
      expect([forecast.piece, forecast.measures, forecast.room]).toEqual([null, null, null]);
    });
  else
    it('has a plan for each coat: cups that make up the quantity, each mixed before it is poured', () => {
      expect(forecast.missing).toEqual([]);
      expect(forecast.coats.map((coat) => coat.id)).toEqual(job.coats.map((coat) => coat.id));
      for (const { plan } of forecast.coats) {
        expect(plan).not.toBeNull();
        const { cups, quantity, steps, stages } = plan!;
        // The tint counts as part of the coat.
        const mixed_kg = cups.reduce((sum, cup) => sum + cup.mass_kg, 0);
        expect(mixed_kg).toBeCloseTo(quantity.mass_kg, 9);
        for (const { number } of cups) {
          const own = (kind: StepKind) => steps.find((step) => step.cup === number && step.kind === kind);
          expect(own('mix')!.end_s).toBeGreaterThan(own('mix')!.start_s);
          expect(own('pour')!.start_s).toBeGreaterThanOrEqual(own('mix')!.end_s);
          expect(own('pour')!.end_s).toBeGreaterThan(own('pour')!.start_s);
        }
        expect(stages.filter((stage) => stage.at !== null).length).toBeGreaterThan(8);
      }
    });
});

/** Vanity as a shop that measures in millimetres would type it; 1 fl oz/sq ft is 0.318327 mm. */
const metricVanity = JobDocument.parse({
  ...vanityVesselSink,
  piece: {
    ...vanityVesselSink.piece,
    outline: { shape: 'rectangle', length: '1066.8 mm', width: '54.61 cm', cornerRadius: '9.525 mm' },
    bodyThickness: '38.1 mm',
    boardThickness: '19.05 mm',
    edges: vanityVesselSink.piece.edges.map((edge) => ({
      ...edge,
      faceHeight: '0.0381 m',
      profileSize: edge.profileSize === '' ? '' : '3.175 mm',
      undersideReturn: edge.undersideReturn === '' ? '' : '12.7 mm',
    })),
    cutOuts: vanityVesselSink.piece.cutOuts.map((cutOut) => ({
      ...cutOut,
      length: '44.45 mm',
      fromLeft: '533,4 mm',
      fromFront: '266.7 mm',
    })),
  },
  room: { ...vanityVesselSink.room, air: '22.7778 C', board: '22.2222 C' },
  coats: vanityVesselSink.coats.map((coat, index) => ({
    ...coat,
    film: ['1.27331 mm', '1.59163 mm'][index],
    resinTemperature: ['23.3333 C', '23.8889 C'][index],
  })),
});

describe('the same job typed in inches and in millimetres', () => {
  const us = computeJob(vanityVesselSink);
  const metric = computeJob(metricVanity);

  it('is the same piece', () => {
    expect(metric.problems).toEqual([]);
    expect(metric.measures!.topArea_m2).toBeCloseTo(us.measures!.topArea_m2, 12);
    expect(metric.measures!.finishedFaceArea_m2).toBeCloseTo(us.measures!.finishedFaceArea_m2, 12);
    expect(metric.measures!.bodyMass_kg).toBeCloseTo(us.measures!.bodyMass_kg, 9);
    expect(metric.room!.dewPoint_K).toBeCloseTo(us.room!.dewPoint_K!, 3);
  });

  it.each([0, 1])('has the same plan for coat %i', (index) => {
    const [a, b] = [planOf(us.coats[index]), planOf(metric.coats[index])];
    expect(b.verdict).toBe(a.verdict);
    expect(b.slackStep).toBe(a.slackStep);
    expect(b.steps.map((step) => step.id)).toEqual(a.steps.map((step) => step.id));
    expect(b.cups.map((cup) => cup.mass_kg)).toEqual(a.cups.map((cup) => cup.mass_kg));
    expect(b.quantity.volume_m3).toBeCloseTo(a.quantity.volume_m3, 9);
    // The temperatures are typed to 0.0001 C: at 8 % of the rate a kelvin, 4 millionths of a time (2.7 seen).
    b.steps.forEach((step, i) => {
      near(step.start_s, a.steps[i]!.start_s);
      near(step.window.closes_s, a.steps[i]!.window.closes_s);
    });
    b.stages.forEach((stage, i) => {
      nearRange(stage.at, a.stages[i]!.at);
    });
  });
});

it('the demo shop’s jobs compute as well, whatever the day', () => {
  for (const { document } of demo('2028-02-28').jobs) {
    const job = JobDocument.parse(document);
    expect(computeJob(job).problems).toEqual([]);
  }
});

function planOf(coat: CoatForecast | undefined): NonNullable<CoatForecast['plan']> {
  if (coat?.plan == null) throw new Error('no plan');
  return coat.plan;
}

function near(value_s: number, other_s: number): void {
  expect(Math.abs(value_s - other_s)).toBeLessThanOrEqual(0.1 + 1e-5 * Math.abs(other_s));
}

function nearRange(range: TimeRange | null, other: TimeRange | null): void {
  expect(range === null).toBe(other === null);
  if (range === null || other === null) return;
  near(range.low_s, other.low_s);
  near(range.mid_s, other.mid_s);
  near(range.high_s, other.high_s);
}

/** Paths of figures that are no number. */
function unsound(value: unknown, at = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [at];
  if (ArrayBuffer.isView(value))
    return (value as Float64Array).some((figure) => !Number.isFinite(figure)) ? [at] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inside]) => unsound(inside, `${at}.${key}`));
}
