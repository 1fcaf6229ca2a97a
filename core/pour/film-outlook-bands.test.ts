import { describe, expect, it } from 'vitest';
import { computeJob } from '#core/job/compute-job.ts';
import { ellCounter, roundTable, vanityVesselSink } from '#examples/jobs.ts';
import { cupReason, type FilmBand, stageReason, type WorkBand, workReason } from './film-outlook-bands.ts';
import { planCoat } from './plan-coat.ts';
import { requestOf } from './sample-request.check.ts';

const STAGES: readonly FilmBand[] = ['working end', 'no more levelling', 'gel'];
const WORK: readonly WorkBand[] = ['meld', 'wrap edges', 'torch', 'scrape drips', 'hands off'];

const ask = requestOf();
const plan = planCoat(ask);
const request = { coat: ask.coat, plan, air: ask.air, system: 'us' } as const;

describe('the reasons of the bands of a forecast', () => {
  for (const [name, job] of Object.entries({ vanityVesselSink, ellCounter, roundTable }))
    it(`stand behind every cup, stage and work of ${name}: formula, finite numbers, source, ordered range, rule`, () => {
      for (const { plan, pour } of computeJob(job, { system: 'metric' }).coats) {
        if (plan === null || pour === null) continue;
        const of = { ...pour, plan, system: 'metric' } as const;
        const work = WORK.filter((kind) => plan.steps.some((step) => step.kind === kind));
        const reasons = [
          ...plan.cups.map((cup) => cupReason(of, cup.number)),
          ...work.map((kind) => workReason(of, kind)),
          ...STAGES.map((key) => stageReason(of, key)),
        ];
        for (const reason of reasons) {
          expect(reason?.says).toMatch(/^[A-Z0-9].*\.$/);
          for (const words of [reason!.formula, reason!.source, reason!.rule]) expect(words).toMatch(/\w/);
          expect(Object.values(reason!.numbers).filter((value) => !Number.isFinite(value))).toEqual([]);
          expect(Object.keys(reason!.numbers).length).toBeGreaterThan(1);
          const { low, value, high } = reason!.range ?? { low: 0, value: 0, high: 0 };
          expect(low <= value && value <= high).toBe(true);
        }
      }
    });

  it('give the closing of the window that the chart draws', () => {
    for (const kind of WORK.filter((each) => each !== 'hands off')) {
      const closes = plan.steps.filter((step) => step.kind === kind).map(({ window }) => window.closes_s);
      if (closes.length > 0) expect(closes).toContain(workReason(request, kind)!.range!.low);
    }
    const range = (of: string) => {
      const at = plan.stages.find(({ key }) => key === of)!.at!;
      return { low: at.low_s, value: at.mid_s, high: at.high_s };
    };
    expect(stageReason(request, 'gel')!.range).toEqual(range('gel'));
    expect(workReason(request, 'hands off')!.range).toEqual(range('recoat opens'));
  });

  it('put numbers in that give the result back: the film then is R times as thick as the fresh mix', () => {
    const { numbers } = stageReason(request, 'working end')!;
    const { gelConversion: gel, viscosityA, viscosityB, workingRatio } = ask.coat.card.model;
    const { viscosityActivation_J_mol: activation } = ask.coat.card.model;
    const a = numbers.conversionThen!;
    // Castro and Macosko's ratio, and the mix thinner as the film is warmer than the air it is measured at.
    const cured = (gel / (gel - a)) ** (viscosityA + viscosityB * a);
    const warmer = Math.exp((activation / 8.314462618) * (1 / numbers.filmThen_K! - 1 / numbers.air_K!));
    // The middle is that of the draws, which is not quite the card's own film.
    expect(Math.abs((cured * warmer) / workingRatio - 1)).toBeLessThan(0.1);
  });

  it('are not there for work that the plan has none of', () => {
    const dammed = requestOf({ wrapEdges: false, faceFilm_m: 0 });
    const without = { ...request, coat: dammed.coat, plan: planCoat(dammed) };
    expect(workReason(without, 'wrap edges')).toBeUndefined();
    expect(cupReason(without, 99)).toBeUndefined();
  });
});
