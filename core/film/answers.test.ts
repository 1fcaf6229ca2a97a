import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bubbleAnswers } from './bubble-answers.ts';
import { filmOverSpot_m, floodAnswer } from './craters.ts';
import { dripAnswers, dripFilm_m } from './drip-answers.ts';
import { fastestDrips, hangingDrop } from './drips.ts';
import { thetaLeftAt, thetaOfSeries } from './flow-budget.ts';
import { orchardRate } from './levelling.ts';
import { levellingAnswers, MARK_GONE, TOOLS } from './levelling-answers.ts';
import { puddleRadius_m } from './puddle.ts';
import { puddleAnswers } from './puddle-answers.ts';
import { wettingLimit_m } from './self-damming.ts';
import { tiltAnswer } from './tilt-answer.ts';
import { cellsAnswer } from './two-layer.ts';
import { wetPuddle } from './wet-puddle.ts';

const minutes = Array.from({ length: 61 }, (_, i) => i * 60);
const series = (start: number, tau: number) =>
  thetaOfSeries(
    minutes,
    minutes.map((t) => start * Math.exp(t / tau)),
  );
const regular = series(1, 900);
const quick = series(3, 240);
const theta = fc.double({ min: 5, max: 1500, noNaN: true });

describe('levelling', () => {
  it('tells for each tool the moment after which its marks stay', () => {
    const { tools } = levellingAnswers(regular, 0.0015, 60);
    expect(tools.map((tool) => tool.label)).toEqual(TOOLS.map((tool) => tool.label));
    for (const tool of tools) {
      const left = tool.last_s === undefined ? tool.needs_per_Pa : thetaLeftAt(regular, tool.last_s);
      expect(Math.exp(-orchardRate(tool.pitch_m, 0.0015) * left)).toBeCloseTo(MARK_GONE, 6);
    }
    const told = tools.map((tool) => tool.last_s ?? -1);
    expect([...told].sort((a, b) => b - a)).toEqual(told);
  });
  it('a quick resin levels shorter waves only', () => {
    const slow = levellingAnswers(regular, 0.0015, 60).longestWave_m!;
    expect(levellingAnswers(quick, 0.0015, 60).longestWave_m!).toBeLessThan(slow);
    expect(levellingAnswers(regular, 0.0015, 600).longestWave_m!).toBeLessThan(slow);
    expect(levellingAnswers(regular, 0.0015, 3600).longestWave_m).toBeUndefined();
  });
  it('a last touch before the moment asked from is none', () => {
    const late = levellingAnswers(quick, 0.0008, 1500, [{ label: 'torch', pitch_m: 0.05 }]);
    expect(late.tools[0]!.last_s).toBeUndefined();
  });
});

describe('puddles', () => {
  it('the fewest that close touch the furthest point of their grid, one fewer would not', () => {
    fc.assert(
      fc.property(theta, fc.double({ min: 0.0008, max: 0.004, noNaN: true }), (theta_per_Pa, film_m) => {
        const area_m2 = 2;
        const { fewest, spacing_m, each_m3 } = puddleAnswers({ cups_m3: [], area_m2, film_m, theta_per_Pa });
        expect(each_m3! * fewest!).toBeCloseTo(area_m2 * film_m, 12);
        expect(((Math.sqrt(3) / 2) * spacing_m! ** 2 * fewest!) / area_m2).toBeCloseTo(1, 9);
        expect(puddleRadius_m(each_m3!, theta_per_Pa)).toBeGreaterThanOrEqual(
          (spacing_m! / Math.sqrt(3)) * (1 - 1e-9),
        );
        if (fewest! > 1) {
          const larger = (area_m2 * film_m) / (fewest! - 1);
          const apart = Math.sqrt((2 * larger) / (Math.sqrt(3) * film_m));
          expect(puddleRadius_m(larger, theta_per_Pa)).toBeLessThan(apart / Math.sqrt(3));
        }
      }),
    );
  });
  it('a film below the wetting limit does not close by itself', () => {
    const answer = puddleAnswers({ cups_m3: [1e-4], area_m2: 1, film_m: 0.0005, theta_per_Pa: 240 });
    expect(answer.fewest).toBeUndefined();
    expect(answer.reasons.at(-1)!.numbers.limit_m).toBeCloseTo(wettingLimit_m(20), 12);
  });
  it('a puddle with plenty of flow stops where the surface holds it', () => {
    const [cup] = puddleAnswers({
      cups_m3: [1e-5],
      area_m2: 1,
      film_m: 0.002,
      theta_per_Pa: 1e5,
      contactAngle_deg: 40,
    }).cups;
    expect(cup!.stopsEarly).toBe(true);
    expect(cup!.middle_m).toBeCloseTo(wettingLimit_m(40), 12);
    expect(Math.PI * cup!.radius_m.value ** 2 * cup!.middle_m).toBeCloseTo(1e-5, 12);
  });
  it('on a wet coat it spreads with flow, less than when all is level, and sooner on a thicker coat', () => {
    fc.assert(
      fc.property(theta, fc.double({ min: 0.0006, max: 0.003, noNaN: true }), (theta_per_Pa, coat_m) => {
        const input = { volume_m3: 3e-5, startRadius_m: 0.03, coat_m, theta_per_Pa };
        const now = wetPuddle(input);
        expect(now.ownRadius_m).toBeGreaterThan(0.03);
        expect(now.ownRadius_m).toBeLessThanOrEqual(now.finalRadius_m * (1 + 1e-6));
        expect(wetPuddle({ ...input, theta_per_Pa: theta_per_Pa * 1.5 }).ownRadius_m).toBeGreaterThan(
          now.ownRadius_m,
        );
        expect(now.middle_m).toBeGreaterThan(coat_m);
      }),
      { numRuns: 15 },
    );
    expect(
      wetPuddle({ volume_m3: 3e-5, startRadius_m: 0.03, coat_m: 0.001, theta_per_Pa: 0 }).ownRadius_m,
    ).toBeCloseTo(0.03, 4);
  });
});

describe('drips', () => {
  const base = { series: regular, from_s: 120, comesDown_m2: 12e-6 };
  it('store no more than the largest drops hold; the rest falls', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e-4, noNaN: true }), (comesDown_m2) => {
        const answer = dripAnswers({ ...base, comesDown_m2 });
        expect(answer.stored_m2 + answer.falls_m2).toBeCloseTo(comesDown_m2, 15);
        expect(answer.stored_m2).toBeLessThanOrEqual(hangingDrop().storedPerMetre_m2);
      }),
    );
  });
  it('show, then want the scraper from the first to the last useful moment', () => {
    const answer = dripAnswers(base);
    expect(answer.show_s!).toBeGreaterThan(base.from_s);
    expect(answer.scrapeFirst_s!).toBeGreaterThanOrEqual(answer.show_s!);
    expect(answer.scrapeLast_s!).toBeGreaterThan(answer.scrapeFirst_s!);
    expect(thetaLeftAt(regular, answer.scrapeLast_s!)).toBeCloseTo(10, 6);
    expect(answer.pitch_m).toBeGreaterThan(0.016);
  });
  it('a little resin gels smooth', () => {
    const answer = dripAnswers({ ...base, comesDown_m2: 4e-7 });
    expect(answer.show_s).toBeUndefined();
    expect(answer.scrapeFirst_s).toBeUndefined();
    expect(dripAnswers({ ...base, comesDown_m2: 0 }).hangingFilm_m).toBe(0);
    expect(() => dripAnswers({ ...base, comesDown_m2: -1 })).toThrow(/comesDown_m2/);
  });
  it('the film that just shows them makes four e-folds, and thicker films grow faster', () => {
    fc.assert(
      fc.property(theta, (theta_per_Pa) => {
        const film_m = dripFilm_m(theta_per_Pa);
        expect(Math.abs(fastestDrips(film_m).growth_Pa * theta_per_Pa - 4)).toBeLessThan(1e-3);
        expect(fastestDrips(film_m * 1.1).growth_Pa).toBeGreaterThan(fastestDrips(film_m).growth_Pa);
      }),
    );
  });
});

describe('bubbles', () => {
  it('thin coats and much flow let smaller bubbles out', () => {
    const { cases, torch } = bubbleAnswers([
      { label: 'flood', thickness_m: 0.003, theta_per_Pa: 240 },
      { label: 'thin', thickness_m: 0.0015, theta_per_Pa: 240 },
      { label: 'cold', thickness_m: 0.003, theta_per_Pa: 60 },
      { label: 'warm', thickness_m: 0.003, theta_per_Pa: 480 },
    ]);
    const [flood, thin, cold, warm] = cases.map((each) => each.smallest_m.value);
    expect(flood! / thin!).toBeCloseTo(Math.SQRT2, 12);
    expect(cold! / flood!).toBeCloseTo(2, 12);
    expect(warm!).toBeLessThan(flood!);
    expect(cases.map((each) => each.staysVisible)).toEqual([true, false, true, false]);
    expect(cases[0]!.smallestMobile_m).toBeLessThan(cases[0]!.smallest_m.value);
    expect(torch.rule).toContain('no source');
    expect(() => bubbleAnswers([])).toThrow(/cases/);
  });
});

describe('craters', () => {
  it('larger spots and angles need more film, never more than a wide spot does', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 85, noNaN: true }),
        fc.double({ min: 1e-5, max: 0.2, noNaN: true }),
        (angle, radius_m) => {
          const film_m = filmOverSpot_m(angle, radius_m);
          expect(film_m).toBeGreaterThan(0);
          expect(film_m).toBeLessThanOrEqual(wettingLimit_m(angle));
          expect(filmOverSpot_m(angle, radius_m * 1.05)).toBeGreaterThanOrEqual(film_m);
          expect(filmOverSpot_m(angle * 1.05, radius_m)).toBeGreaterThanOrEqual(film_m);
        },
      ),
    );
    expect(filmOverSpot_m(0, 0.01)).toBe(0);
    expect(filmOverSpot_m(40, 0)).toBe(0);
    expect(() => filmOverSpot_m(95, 0.01)).toThrow(/contactAngle_deg/);
  });
  it('a deep divot asks for a second flood, whatever closes', () => {
    const flood = { film_m: 0.002, spotRadius_m: 0, advancingAngle_deg: 30, divotDepth_m: 0.0004 };
    expect(floodAnswer(flood).secondFlood).toBe(false);
    expect(floodAnswer({ ...flood, divotDepth_m: 0.0006 }).secondFlood).toBe(true);
  });
});

describe('cells and tilt', () => {
  it('more difference, film and flow make more cells', () => {
    fc.assert(
      fc.property(
        theta,
        fc.double({ min: 1, max: 90, noNaN: true }),
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (theta_per_Pa, drho, viscosityRatio, share) => {
          const ask = (more: number, longer: number) =>
            cellsAnswer({
              bottom: { name: 'a', thickness_m: 0.002 * share, density_kg_m3: 1100 },
              top: { name: 'b', thickness_m: 0.002 * (1 - share), density_kg_m3: 1100 + drho * more },
              viscosityRatio,
              theta_per_Pa: theta_per_Pa * longer,
            });
          const one = ask(1, 1);
          expect(ask(2, 1).eFolds.value / one.eFolds.value).toBeCloseTo(2, 9);
          expect(ask(1, 2).eFolds.value / one.eFolds.value).toBeCloseTo(2, 9);
          expect(one.eFolds.value >= 4).toBe(drho >= one.critical_kg_m3);
          expect(one.goesUnder).toBe('b');
          expect(ask(-1, 1).eFolds.value).toBe(0);
        },
      ),
    );
    const same = cellsAnswer({
      bottom: { name: 'a', thickness_m: 0.001, density_kg_m3: 1100 },
      top: { name: 'b', thickness_m: 0.001, density_kg_m3: 1100 },
      theta_per_Pa: 100,
    });
    expect(same.goesUnder).toBeUndefined();
    expect(same.cells).toBe('no');
  });
  it('tilt: level is no difference; the slope it names is where it begins to matter', () => {
    const ask = (slope: number) =>
      tiltAnswer({ slope, length_m: 1.2, thickness_m: 0.003, theta_per_Pa: 240 });
    expect(ask(0)).toMatchObject({ matters: false, overLowEdge_m2: 0 });
    const { levelTo } = ask(0.001);
    expect(ask(levelTo! * 0.999).matters).toBe(false);
    expect(ask(levelTo! * 1.001).matters).toBe(true);
    expect(ask(0.05).difference_m.value).toBeLessThanOrEqual(0.006);
  });
  it('tilt: a fall that nobody has read is no verdict on the bench', () => {
    const ask = (slope: number, assumed: boolean) =>
      tiltAnswer({ slope, assumed, length_m: 1.2, thickness_m: 0.003, theta_per_Pa: 240 });
    for (const slope of [0, 0.01]) {
      expect(ask(slope, true).reasons[0]!.says).toMatch(/^No level reading/);
      expect(ask(slope, false).reasons[0]!.says).not.toMatch(/No level reading/);
      expect(ask(slope, true).difference_m).toEqual(ask(slope, false).difference_m);
    }
    expect(ask(0.01, false).reasons[0]!.says).toMatch(/level the bench/);
  });
});
