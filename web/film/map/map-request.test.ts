import { describe, expect, it } from 'vitest';
import { filmMapAtOnce } from '#core/film/film-map.ts';
import { pinnedOnRoundArris } from '#core/film/self-damming.ts';
import { computeJob } from '#core/job/compute-job.ts';
import { edgesWorked_s, spreadEnd_s } from '#core/pour/film-moments.ts';
import { vanityVesselSink } from '#examples/jobs.ts';
import { evenFrom_s, flowEnds_s, thetaBetween_per_Pa, whenSpent_s } from './film-clock.ts';
import { mapFrom_s, mapRequestOf } from './map-request.ts';
import { sayEdges, sayLetGo } from './map-words.ts';
import { layOutPuddles } from './puddle-layout.ts';

const { coats, piece, measures } = computeJob(vanityVesselSink, { system: 'us' });
const { plan, pour } = coats[0]!;
if (plan === null || pour === null || piece === null || measures === null)
  throw new Error('the example has no plan');
const { coat } = pour;
const puddles = layOutPuddles(piece, plan.cups);
const choices = { cell_m: 0.005, start: 'even', slope: { x: 0, y: 0 }, moment_s: null } as const;
const ask = (change: Partial<Parameters<typeof mapRequestOf>[4]> = {}, of = coat) =>
  mapRequestOf(of, plan, piece, puddles, { ...choices, ...change });
const worked_s = edgesWorked_s(plan)!;

describe('the request of a map', () => {
  it('starts even when the last cup is spread, and works the edges when the plan does', () => {
    expect(mapFrom_s(plan, 'even')).toBe(spreadEnd_s(plan));
    const { edges, evenFilm_m, theta_per_Pa } = ask();
    expect(evenFilm_m).toBe(coat.film_m);
    const spent = thetaBetween_per_Pa(plan, evenFrom_s(plan), worked_s);
    expect(spent).toBeGreaterThan(0);
    expect(spent).toBeLessThan(theta_per_Pa);
    const front = edges!.front!;
    if (front.kind !== 'wetted') throw new Error(front.kind);
    expect(front.dryUntil!.theta_per_Pa).toBeCloseTo(spent, 9);
    const { arrisRadius_m } = measures.edges.find((edge) => edge.name === 'front')!;
    expect(front.dryUntil!.holds_m).toBe(pinnedOnRoundArris(20, arrisRadius_m, coat.card.model).thickness_m);
  });
  it('with puddles keeps the edges dry from the first pour on, whatever moment is shown', () => {
    const start = 'puddles';
    const whole = ask({ start });
    const early = ask({ start, moment_s: worked_s - 120 });
    for (const { edges } of [whole, early]) {
      const front = edges!.front!;
      if (front.kind !== 'wetted') throw new Error(front.kind);
      expect(front.dryUntil!.theta_per_Pa).toBeCloseTo(
        thetaBetween_per_Pa(plan, plan.filmStart_s, worked_s),
        9,
      );
    }
    expect(early.theta_per_Pa).toBeLessThan(whole.theta_per_Pa);
    expect(whole.puddles).toHaveLength(puddles.length);
  });
  it('leaves edges that are not wrapped dry to the end', () => {
    const { edges } = ask({}, { ...coat, wrapEdges: false });
    expect(edges!.front).toMatchObject({ kind: 'dry' });
  });
  it('gives a map that loses nothing before the edges are worked where the dry arris holds, and then keeps count of all of it', () => {
    const thin = { ...coat, film_m: 0.001 };
    expect(filmMapAtOnce(ask({ moment_s: worked_s - 1 }, thin)).lost_m3).toBe(0);
    const map = filmMapAtOnce(ask({}, thin));
    expect(map.lost_m3).toBeGreaterThan(0);
    expect(map.letGo).toEqual([]);
    expect(Math.abs(map.balance)).toBeLessThan(1e-12);
  });
  it('gives a map that says which dry edges let go of a thicker film, from the start', () => {
    const map = filmMapAtOnce(ask({ moment_s: worked_s - 1 }));
    expect(map.lost_m3).toBeGreaterThan(0);
    expect(map.letGo.map(({ edge }) => edge)).toContain('front');
    for (const { theta_per_Pa } of map.letGo) expect(theta_per_Pa).toBe(0);
  });
});

describe('the clock of a map', () => {
  it('tells when a part of its budget is spent', () => {
    const from_s = evenFrom_s(plan);
    for (const time_s of [from_s, from_s + 60, worked_s])
      expect(whenSpent_s(plan, from_s, thetaBetween_per_Pa(plan, from_s, time_s))).toBeCloseTo(time_s, 0);
    expect(whenSpent_s(plan, from_s, 1e9)).toBe(flowEnds_s(plan));
  });
});

describe('edges in words', () => {
  it('says until when they are dry, and which let go before', () => {
    expect(sayEdges({ wrapEdges: true }, plan)).toBe(
      `Edges are dry until they are worked, minute ${Math.round(worked_s / 60)}.`,
    );
    expect(sayEdges({ wrapEdges: true }, { steps: [] })).toBe('Edges are wiped over from the start.');
    expect(sayEdges({ wrapEdges: false }, plan)).toBe('Edges stay dry.');
    expect(sayLetGo([], () => 0)).toBe('');
    const letGo = [
      { edge: 'front', theta_per_Pa: 1 },
      { edge: 'bowl', theta_per_Pa: 3 },
    ];
    expect(sayLetGo(letGo, (theta) => 4 * theta + 0.5)).toBe(
      'Dry edges let resin over: front from minute 4, bowl from minute 12.',
    );
  });
});
