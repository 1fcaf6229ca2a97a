import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EdgeRequest, edgeAnswers, edgeMoment, MOST_PASSES, WORKABLE_Pa_s } from './edge-answers.ts';
import { edgeRunOffs_m3 } from './edge-run-off.ts';
import { jeffreysThickness_m } from './face.ts';
import { thetaLeftAt, thetaOfSeries } from './flow-budget.ts';

const minutes = Array.from({ length: 61 }, (_, i) => i * 60);
const series = (start_Pa_s: number, tau_s: number) =>
  thetaOfSeries(
    minutes,
    minutes.map((t) => start_Pa_s * Math.exp(t / tau_s)),
  );
const base: EdgeRequest = {
  series: series(5, 600),
  down_s: 300,
  height_m: 0.038,
  length_m: 1.8,
  arrisRadius_m: 0.002,
  topFilm_m: 0.0015,
  faceFilm_m: 0.0008,
  wanted_m: 0.0003,
  area_m2: 0.72,
  wettedLength_m: 3.6,
};

describe('an edge worked at a moment', () => {
  it('keeps more on face and arris and loses less the later, whatever edge and resin', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 30, noNaN: true }),
        fc.double({ min: 300, max: 1500, noNaN: true }),
        fc.double({ min: 0.001, max: 0.009, noNaN: true }),
        fc.double({ min: 0.0004, max: 0.003, noNaN: true }),
        fc.double({ min: 0.015, max: 0.09, noNaN: true }),
        (start, tau, arrisRadius_m, topFilm_m, height_m) => {
          const { moments } = edgeAnswers({
            ...base,
            series: series(start, tau),
            arrisRadius_m,
            topFilm_m,
            height_m,
            moments: 15,
          });
          for (const [i, now] of moments.entries()) {
            expect(now.faceMean_m).toBeLessThanOrEqual(base.faceFilm_m);
            expect(now.arris_m).toBeLessThanOrEqual(topFilm_m);
            expect(now.floor_m3).toBeLessThanOrEqual(now.runOff_m3 + now.shed_m3);
            expect(now.faceMean_m * height_m * base.length_m + now.shed_m3).toBeCloseTo(
              base.faceFilm_m * height_m * base.length_m,
              12,
            );
            const before = moments[i - 1];
            if (before === undefined) continue;
            expect(now.faceMean_m).toBeGreaterThanOrEqual(before.faceMean_m * (1 - 1e-12));
            expect(now.arris_m).toBeGreaterThanOrEqual(before.arris_m * (1 - 1e-12));
            // surface tension may push up to 0.5 mL per metre back onto the top while time passes
            expect(now.runOff_m3).toBeLessThanOrEqual(before.runOff_m3 + 0.5e-6 * base.length_m);
            expect(now.shed_m3).toBeLessThanOrEqual(before.shed_m3 * (1 + 1e-12) + 1e-18);
          }
        },
      ),
      { numRuns: 40 },
    );
  });
  it('at gel everything stays where it was put, and nothing is on the floor of a film the dry arris held', () => {
    const last = edgeAnswers({ ...base, topFilm_m: 0.0013 }).moments.at(-1)!;
    expect([last.faceMean_m, last.arris_m, last.runOff_m3, last.floor_m3]).toEqual([0.0008, 0.0013, 0, 0]);
  });
  it('loses over its dry arris what is too thick for it, however late it is worked', () => {
    const { moments, dry } = edgeAnswers({ ...base, topFilm_m: 0.002 });
    expect(dry.staysByItself).toBe(false);
    expect(moments.at(-1)!.runOff_m3).toBeGreaterThan(0.5 * moments[0]!.runOff_m3);
  });
  it('has lost at any moment what the bill counts for this moment', () => {
    for (const time_s of [300, 700, 1500, 3600]) {
      const thetaLeft_per_Pa = thetaLeftAt(base.series, time_s);
      const [bill] = edgeRunOffs_m3({
        edges: [
          { length_m: 1.8, arrisRadius_m: 0.002 },
          { length_m: 1.8, arrisRadius_m: 0.003 },
        ],
        area_m2: base.area_m2,
        film_m: base.topFilm_m,
        thetaDry_per_Pa: thetaLeftAt(base.series, base.down_s) - thetaLeft_per_Pa,
        thetaLeft_per_Pa,
      });
      expect(edgeMoment(base, time_s).runOff_m3).toBeCloseTo(bill!, 15);
    }
    expect(() => edgeMoment(base, 200)).toThrow(/time_s/);
  });
});

describe('the best minute', () => {
  it('lies in a window that begins when one coat is enough and ends while resin spreads and marks level', () => {
    const answer = edgeAnswers(base);
    const { from_s, to_s } = answer.window!;
    expect(from_s).toBeGreaterThan(base.down_s);
    expect(to_s).toBeLessThanOrEqual(answer.workableUntil_s!);
    expect(answer.best.time_s).toBeCloseTo((from_s + to_s) / 2, 9);
    expect(answer.best.faceMean_m).toBeGreaterThanOrEqual(base.wanted_m);
    expect(answer.best.marksLevel).toBe(true);
    expect(answer.passes).toBe(1);
    // 5 exp(t/600) = 50
    expect(answer.workableUntil_s!).toBeCloseTo(600 * Math.log(WORKABLE_Pa_s / 5), 6);
    // the mean of a drained face is two thirds of its bottom
    const left = thetaLeftAt(base.series, from_s);
    expect((2 / 3) * jeffreysThickness_m(0.038, left)).toBeCloseTo(0.0003, 9);
  });
  it('without a window it is the last moment that levels, and more coats are counted', () => {
    const answer = edgeAnswers({ ...base, wanted_m: 0.0012 });
    expect(answer.window).toBeUndefined();
    expect(answer.passes!).toBeGreaterThan(1);
    expect(answer.passes! * answer.best.faceMean_m).toBeGreaterThanOrEqual(0.0012);
    expect((answer.passes! - 1) * answer.best.faceMean_m).toBeLessThan(0.0012);
    expect(edgeAnswers({ ...base, wanted_m: 0.02 }).passes).toBeUndefined();
    expect(MOST_PASSES * answer.best.faceMean_m).toBeLessThan(0.02);
    expect(answer.reasons[0]!.says).toContain('coats');
  });
  it('a resin already too thick is worked at once', () => {
    const answer = edgeAnswers({ ...base, series: series(80, 900) });
    expect(answer.workableUntil_s).toBeUndefined();
    expect(answer.best.time_s).toBe(base.down_s);
  });
});

describe('the arris', () => {
  it('a 3 mm round-over is worth it on a sharp edge and not on a round one', () => {
    const sharp = edgeAnswers({ ...base, arrisRadius_m: 0.001, series: series(5, 1200) });
    expect(sharp.roundOver.worthIt).toBe(true);
    expect(sharp.roundOver.gain).toBeGreaterThan(1.5);
    const round = edgeAnswers({ ...base, arrisRadius_m: 0.006 });
    expect(round.roundOver).toMatchObject({ gain: 1, worthIt: false });
  });
  it('dry, it holds 1.35 mm at 2 mm radius and 1.95 mm at 1 mm', () => {
    expect(edgeAnswers(base).dry.staysByItself).toBe(false);
    expect(edgeAnswers(base).dry.holds_m * 1000).toBeCloseTo(1.353, 3);
    expect(edgeAnswers({ ...base, arrisRadius_m: 0.001 }).dry).toMatchObject({ staysByItself: true });
  });
});

it('every answer says why, with numbers and a source', () => {
  for (const reason of edgeAnswers(base).reasons) {
    expect(reason.says.length).toBeGreaterThan(20);
    expect(reason.source.length).toBeGreaterThan(5);
    for (const value of Object.values(reason.numbers)) expect(Number.isFinite(value)).toBe(true);
  }
});

it('refuses nonsense, naming it', () => {
  const bad = (change: Partial<EdgeRequest>) => () => edgeAnswers({ ...base, ...change });
  expect(bad({ down_s: -1 })).toThrow(/down_s/);
  expect(bad({ height_m: 0 })).toThrow(/height_m/);
  expect(bad({ length_m: 0 })).toThrow(/length_m/);
  expect(bad({ arrisRadius_m: -1 })).toThrow(/arrisRadius_m/);
  expect(bad({ topFilm_m: 0 })).toThrow(/thickness_m/);
  expect(bad({ faceFilm_m: 0 })).toThrow(/Thickness_m/);
  expect(bad({ wanted_m: 0 })).toThrow(/wanted_m/);
  expect(bad({ moments: 1 })).toThrow(/moments/);
  expect(bad({ contactAngle_deg: 100 })).toThrow(/contactAngle_deg/);
});
