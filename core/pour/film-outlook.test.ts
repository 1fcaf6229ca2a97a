import { describe, expect, it } from 'vitest';
import { computeJob } from '#core/job/compute-job.ts';
import { wrappedEdges } from '#core/mix/quantity.ts';
import { ellCounter, hallTable, roundTable, vanityVesselSink } from '#examples/jobs.ts';
import { type FilmOutlook, type FilmOutlookRequest, filmOutlook } from './film-outlook.ts';
import { COLOURANT_kg_m3, tintedDensity_kg_m3 } from './film-outlook-colours.ts';
import { edgeKinds } from './film-outlook-edges.ts';
import { planCoat } from './plan-coat.ts';
import { coatOf, REGULAR_50, requestOf } from './sample-request.check.ts';

const request = (coat: Parameters<typeof requestOf>[0] = {}, more: Partial<FilmOutlookRequest> = {}) => {
  const ask = requestOf(coat);
  const { measures, board, air } = ask;
  return { coat: ask.coat, plan: planCoat(ask), measures, board, air, system: 'us', ...more } as const;
};
const outlook = (coat: Parameters<typeof requestOf>[0] = {}, more: Partial<FilmOutlookRequest> = {}) =>
  filmOutlook(request(coat, more))!;

/** Every number anywhere in an answer, with the way to it. */
function numbers(of: unknown, path = ''): [string, number][] {
  if (typeof of === 'number') return [[path, of]];
  if (typeof of !== 'object' || of === null) return [];
  return Object.entries(of).flatMap(([key, value]) => numbers(value, `${path}.${key}`));
}

/** Every low, value, high. */
function spreads(of: unknown, path = ''): [string, { low: number; value: number; high: number }][] {
  if (typeof of !== 'object' || of === null) return [];
  if ('low' in of && 'value' in of && 'high' in of) return [[path, of as never]];
  return Object.entries(of).flatMap(([key, value]) => spreads(value, `${path}.${key}`));
}

const whole = outlook();

describe('the film outlook of a coat', () => {
  const jobs = { vanityVesselSink, ellCounter, roundTable, hallTable };
  for (const [name, job] of Object.entries(jobs))
    it(`answers every planned coat of ${name} in both systems, with finite numbers and ordered ranges`, () => {
      let planned = 0;
      for (const system of ['us', 'metric'] as const) {
        const { coats, measures } = computeJob(job, { system });
        for (const { plan, pour } of coats) {
          if (plan === null || pour === null) continue;
          planned += 1;
          const found = filmOutlook({ ...pour, plan, measures: measures!, system })!;
          expect(numbers(found).filter(([, value]) => !Number.isFinite(value))).toEqual([]);
          const wrong = spreads(found).filter(([, { low, value, high }]) => !(low <= value && value <= high));
          expect(wrong).toEqual([]);
          expect(found.filmStart_s).toBeLessThanOrEqual(found.down_s);
          expect(found.down_s).toBeLessThanOrEqual(found.wrapped_s);
          expect(found.wrapped_s).toBeLessThan(found.gel_s);
          const kinds = found.edges.flatMap((edge) => edge.names);
          expect(kinds.sort()).toEqual(
            wrappedEdges(pour.coat, measures!)
              .map((edge) => edge.name)
              .sort(),
          );
        }
      }
      expect(planned).toBe(2 * (job === hallTable ? 0 : job.coats.length));
    });

  it('changes with the system in words only', () => {
    expect(numbers(outlook({}, { system: 'metric' }))).toEqual(numbers(whole));
    expect(whole.bubbles.cases.map((of) => of.label)).toContain('Resin and shop 9 °F colder');
    expect(outlook({}, { system: 'metric' }).bubbles.cases.map((of) => of.label)).toContain(
      'Resin and shop 5 °C colder',
    );
  });

  it('has no answer for a film that is gelled as it lands', () => {
    const ask = request();
    const viscosity_Pa_s = ask.plan.film.viscosity_Pa_s.map(() => 1e9);
    const plan = { ...ask.plan, film: { ...ask.plan.film, viscosity_Pa_s } };
    expect(filmOutlook({ ...ask, plan })).toBeUndefined();
  });
});

describe('the run-off of the bill', () => {
  for (const coat of [{}, { crew: 2 }, { film_m: 0.0025 }, { card: REGULAR_50, crew: 3, film_m: 0.0008 }])
    it(`is the film room's at the planned wrap: ${JSON.stringify(Object.keys(coat))}`, () => {
      const ask = request(coat);
      const found = filmOutlook(ask)!;
      const line = ask.plan.quantity.lines.find(({ key }) => key === 'run-off')!;
      const here = found.edges.reduce((sum, edge) => sum + edge.planned.runOff_m3, 0);
      expect(line.volume_m3).toBeGreaterThan(0);
      expect(here).toBeGreaterThanOrEqual(line.low_m3);
      expect(here).toBeLessThanOrEqual(line.high_m3);
      // The plan stops its rounds when the budget agrees to 0.2 %; the rest is how the series is integrated.
      expect(Math.abs(here / line.volume_m3 - 1)).toBeLessThan(0.01);
    });
});

describe('edges', () => {
  it('keep more on face and arris, and lose less to the floor, the later they are worked', () => {
    for (const { answers } of whole.edges)
      for (const [i, moment] of answers.moments.entries()) {
        if (i === 0) continue;
        const before = answers.moments[i - 1]!;
        expect(moment.faceMean_m).toBeGreaterThanOrEqual(before.faceMean_m - 1e-12);
        expect(moment.arris_m).toBeGreaterThanOrEqual(before.arris_m - 1e-12);
        expect(moment.shed_m3).toBeLessThanOrEqual(before.shed_m3 + 1e-15);
      }
  });

  it('alike are one kind; another arris or height is another', () => {
    const kinds = edgeKinds({ wrapEdges: true }, requestOf().measures);
    expect(kinds.map((kind) => kind.names)).toEqual([['front', 'right', 'left', 'bowl']]);
    const { measures } = requestOf();
    const edges = measures.edges.map((edge) =>
      edge.name === 'left' ? { ...edge, arrisRadius_m: 0.006 } : edge,
    );
    expect(edgeKinds({ wrapEdges: true }, { edges }).map((kind) => kind.names)).toEqual([
      ['front', 'right', 'bowl'],
      ['left'],
    ]);
  });

  it('that are dammed have no answers and are named', () => {
    const { edges, leftOut } = outlook({ wrapEdges: false, faceFilm_m: 0 });
    expect(edges).toEqual([]);
    expect(leftOut.dammed).toEqual(['front', 'right', 'left', 'bowl']);
  });

  it('are each answered or named with what keeps the film off them', () => {
    expect(whole.leftOut).toEqual({ dammed: [], rims: ['tap'], walls: ['back'], seams: [] });
    expect(whole.edges.flatMap((edge) => edge.names)).toEqual(['front', 'right', 'left', 'bowl']);
  });

  it('need no fewer passes for more film', () => {
    const passes = [0.0001, 0.0002, 0.0004].map(
      (faceWanted_m) => outlook({}, { faceWanted_m }).edges[0]!.answers.passes ?? 10,
    );
    expect(passes).toEqual([...passes].sort((a, b) => a - b));
    expect(passes[2]!).toBeGreaterThan(passes[0]!);
  });
});

describe('levelling', () => {
  it("tells the last touch of the maker's own tool, in both resins, between those of finer and wider marks", () => {
    const { levelling, resins } = outlook({}, { toolPitch_m: 0.03 });
    const last = (pitch_m: number) => levelling.tools.find((tool) => tool.pitch_m === pitch_m)!.last_s!;
    expect(last(0.03)).toBeLessThanOrEqual(last(0.02));
    expect(last(0.03)).toBeGreaterThanOrEqual(last(0.05));
    for (const side of resins) expect(side.levelling!.tools.map((tool) => tool.pitch_m)).toContain(0.03);
    expect(() => outlook({}, { toolPitch_m: 0 })).toThrow(RangeError);
  });

  it('has a range about its longest wave, at most as wide as the root of the viscosity', () => {
    for (const { range } of whole.levelling.reasons) {
      expect(range!.value).toBe(whole.levelling.longestWave_m);
      expect(range!.high / range!.value).toBeLessThan(Math.sqrt(1.5) + 1e-9);
      expect(range!.low / range!.value).toBeGreaterThan(1 / Math.sqrt(1.5) - 1e-9);
    }
  });
});

describe('a quick resin beside a regular one', () => {
  it('gels sooner, has less flow left, and levels shorter waves only', () => {
    const [quick, regular] = whole.resins;
    expect(quick!.gel_s!).toBeLessThan(regular!.gel_s!);
    expect(quick!.thetaLeft_per_Pa).toBeLessThan(regular!.thetaLeft_per_Pa);
    expect(quick!.levelling!.longestWave_m!).toBeLessThan(regular!.levelling!.longestWave_m!);
  });

  it("repeats the plan's own film for the card of the coat", () => {
    const own = whole.resins.find((side) => side.own)!;
    const left = whole.thetaTotal_per_Pa - whole.thetaDown_per_Pa;
    expect(Math.abs(own.thetaLeft_per_Pa / left - 1)).toBeLessThan(1e-3);
    expect(Math.abs(own.gel_s! - whole.gel_s)).toBeLessThan(60);
  });
});

describe('bubbles', () => {
  it('get out of thinner and warmer coats sooner', () => {
    const size = (label: string) =>
      whole.bubbles.cases.find((of) => of.label.includes(label))!.smallest_m.value;
    expect(size('half')).toBeLessThan(size('This'));
    expect(size('warmer')).not.toBe(size('This'));
  });
});

describe('colours', () => {
  it('have the density of their mixture', () => {
    expect(tintedDensity_kg_m3({ colourant: 'none', load: 0 }, 1100)).toBe(1100);
    // 1.05 kg of mix of 1 kg resin and 0.05 kg mica: 1/1100 + 0.05/2900 m3
    expect(tintedDensity_kg_m3({ colourant: 'mica powder', load: 0.05 }, 1100)).toBeCloseTo(
      1.05 / (1 / 1100 + 0.05 / COLOURANT_kg_m3['mica powder']),
      9,
    );
  });

  it('are told in pairs, the heavier on top, and it is the one that goes under', () => {
    const { pairs, densities } = whole.colours;
    expect([pairs.length, densities.length]).toEqual([3, 3]);
    for (const { top, bottom, answer } of pairs) {
      expect(top.density_kg_m3).toBeGreaterThan(bottom.density_kg_m3);
      expect(answer.goesUnder).toBe(top.name);
    }
  });

  it('of a crowd are told pair by pair, none left out', () => {
    const crowd = Array.from({ length: 12 }, (_, i) => ({
      ...coatOf().colours[0]!,
      name: `colour ${i}`,
      share: 1 / 12,
      load: 0.01 + i / 1000,
    }));
    const { colours } = outlook({ colours: crowd });
    const told = new Set(colours.pairs.map(({ top, bottom }) => [top.name, bottom.name].sort().join()));
    expect(told.size).toBe((12 * 11) / 2);
  });

  it('poured heaviest first lie under every lighter one', () => {
    const { pairs, crispOrder } = whole.colours;
    for (const { top, bottom } of pairs)
      expect(crispOrder.indexOf(top.name)).toBeLessThan(crispOrder.indexOf(bottom.name));
  });
});

describe('bench and board', () => {
  const tilts = (of: FilmOutlook) => of.surface.tilt.difference_m.value;
  it('tilted more, differ more; with a wider spot or a deeper divot, need more', () => {
    expect(tilts(outlook({}, { tilt: 0.002 }))).toBeGreaterThan(tilts(whole));
    expect(tilts(outlook({}, { tilt: 0 }))).toBe(0);
    const flood = (more: Partial<FilmOutlookRequest>) => outlook({}, more).surface.flood;
    expect(flood({ spot: 0.004 }).filmToClose_m).toBeGreaterThan(whole.surface.flood.filmToClose_m);
    expect(flood({ divot: 0.001 }).sink_m).toBeGreaterThan(whole.surface.flood.sink_m);
    expect(flood({ divot: 0.001 }).secondFlood).toBe(true);
  });

  it('outside what is possible is refused', () => {
    expect(() => outlook({}, { tilt: 0.2 })).toThrow(RangeError);
    expect(() => outlook({}, { divot: -1 })).toThrow(RangeError);
  });
});
