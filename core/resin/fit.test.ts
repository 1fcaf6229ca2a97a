import { describe, expect, it } from 'vitest';
import { BOARDS } from './boards.ts';
import { QUICK_20, REGULAR_50 } from './cards.ts';
import { COORDINATES, indexOf, modelAt, pointOf } from './coordinates.ts';
import { cureCup } from './cup.ts';
import { cureFilm } from './film.ts';
import { fitCard } from './fit-card.ts';
import { type Body, prepareBody } from './follow.ts';
import { QUICK_DOCUMENT, REGULAR_DOCUMENT } from './generic-documents.ts';
import { firstTime, readState } from './history.ts';
import { labelFilm } from './label-film.ts';
import type { ResinCard } from './model.ts';
import { outlookOf } from './outlook.ts';
import { readCard } from './read-card.ts';
import { cupStages, filmStages } from './stages.ts';
import { convertedTo, hardened, thickened, warmedTo } from './term.ts';

type Typed = Readonly<Record<string, string>>;
const fitted = (figures: readonly Typed[], document: object = REGULAR_DOCUMENT): ResinCard => {
  const read = readCard({ ...document, label: figures });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return fitCard(read.value);
};
const working = { kind: 'working time', value: '52 min', temperature: '24 C', film: '2.5 mm' };
const recoat = { kind: 'recoat opens', value: '24 h', temperature: '24 C' };
const potLife = (value: string) => ({
  kind: 'pot life',
  value,
  mass: '100 g',
  temperature: '24 C',
  end: '50 C',
});
const sd = (card: ResinCard, i: number) => Math.hypot(...card.posterior!.cholesky[i]!);

describe('a body that is followed', () => {
  const air = { time_s: [0], temperature_K: [297.15] };
  const start = { conversion: 0, temperature_K: 297.15 };
  const { model } = REGULAR_50;
  const ask = (
    body: Body,
    watches: readonly ReturnType<typeof warmedTo>[],
    samples_s: readonly number[] = [],
  ) => prepareBody(body, model)(model, { watches, samples_s, peak: true, limit_s: 30 * 86_400 });

  it('has the stage times of the full film within 1 %', () => {
    const seen = ask(
      { film_m: 0.0025, temperature_K: 297.15 },
      [thickened(model, 2, 297.15), convertedTo(0.6), hardened(model, 12)],
      [3600, 86_400],
    );
    const history = cureFilm({
      model,
      thickness_m: 0.0025,
      board: BOARDS['mdf-18'],
      air,
      start,
      start_s: 0,
      duration_s: 5 * 86_400,
    });
    const stages = filmStages(history, model, air);
    const full = [stages.workingEnd_s!, stages.gel_s!, stages.sandable_s!];
    full.forEach((time, i) => {
      expect(Math.abs(seen.reachedLn[i]! - Math.log(time))).toBeLessThan(0.01);
    });
    [3600, 86_400].forEach((time, i) => {
      expect(Math.abs(seen.samples[i]!.conversion - readState(history, time, model).conversion)).toBeLessThan(
        0.003,
      );
    });
  });

  it('has the times and the peak of the full cup within 0.5 % and 1 K', () => {
    const seen = ask({ mass_kg: 0.1, temperature_K: 297.15 }, [warmedTo(313.15), warmedTo(323.15)]);
    const history = cureCup({ model, mass_kg: 0.1, air, start, start_s: 0, duration_s: 4 * 3600 });
    const stages = cupStages(history, model);
    expect(Math.abs(seen.peak_s / stages.peak_s - 1)).toBeLessThan(0.005);
    expect(Math.abs(seen.peak_K - Math.max(...history.temperature_K))).toBeLessThan(1);
    for (const [i, level] of [313.15, 323.15].entries()) {
      const full = firstTime(history, (_a, T) => T, level)!;
      expect(Math.abs(Math.exp(seen.reachedLn[i]!) / full - 1)).toBeLessThan(0.005);
    }
  });

  it('says of a level it never reaches that it is later than the end', () => {
    const cold = prepareBody({ film_m: 0.001, temperature_K: 283.15 }, model);
    const limit_s = 86_400;
    const { reachedLn } = cold(model, {
      watches: [hardened(model, 40)],
      samples_s: [],
      peak: false,
      limit_s,
    });
    expect(reachedLn[0]).toBeGreaterThan(Math.log(limit_s) + 1);
  });
});

describe('coordinates', () => {
  it('give the model back', () => {
    for (const { model } of [QUICK_20, REGULAR_50]) {
      const again = modelAt(pointOf(model), model);
      expect(again.kRef_per_s / model.kRef_per_s).toBeCloseTo(1, 9);
      expect(again).toMatchObject({ rho: expect.closeTo(model.rho, 9), order: model.order });
    }
  });

  it('told by times: working time to 0.3 %, dry hard to 0.01', () => {
    for (const { model } of [QUICK_20, REGULAR_50]) {
      const film = labelFilm(model);
      const told = film.tell(pointOf(model));
      const again = film.modelOf(told);
      const back = film.tell(pointOf(again));
      expect(Math.abs(back[0]! - told[0]!)).toBeLessThan(0.0035);
      expect(Math.abs(back[indexOf('dryHardOffset_K')]! - told[indexOf('dryHardOffset_K')]!)).toBeLessThan(
        0.01,
      );
      expect(Math.abs(again.kRef_per_s / model.kRef_per_s - 1)).toBeLessThan(0.005);
    }
  });

  it('their volume is the derivative of the coordinates by the told times', () => {
    const { model } = QUICK_20;
    const film = labelFilm(model);
    const dry = indexOf('dryHardOffset_K');
    const at = pointOf(model);
    const moved = (i: number, by: number) => film.tell(at.map((value, j) => (j === i ? value + by : value)));
    const byTiming = (moved(0, 0.1)[0]! - moved(0, -0.1)[0]!) / 0.2;
    const byOffset = (moved(dry, 0.5)[dry]! - moved(dry, -0.5)[dry]!) / 1;
    const { volumeLn } = film.withVolume(film.tell(at));
    expect(Math.abs(volumeLn + Math.log(byTiming) + Math.log(byOffset))).toBeLessThan(0.1);
  });
});

describe('a fit', () => {
  it('is the same each time', () => {
    expect(fitted([working, recoat])).toEqual(fitted([working, recoat]));
  });

  it('of the generic documents is what is kept of them', () => {
    for (const [card, document] of [
      [QUICK_20, QUICK_DOCUMENT],
      [REGULAR_50, REGULAR_DOCUMENT],
    ] as const) {
      const read = readCard(document);
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      const again = fitCard(read.value);
      again.posterior!.mean.forEach((value, i) => {
        // Kept to six digits.
        const rounding = 5e-6 * Math.abs(value);
        expect(Math.abs(value - card.posterior!.mean[i]!)).toBeLessThan(rounding + 1e-5 * sd(card, i));
        expect(Math.abs(sd(again, i) / sd(card, i) - 1)).toBeLessThan(1e-3);
      });
    }
  });

  it('keeps what the label says: working time to 12 %, dry hard around the recoat time', () => {
    const card = fitted([working, recoat]);
    const { workingTime, dryHard } = outlookOf(card);
    expect(workingTime!.mid_s / 60).toBeGreaterThan(49);
    expect(workingTime!.mid_s / 60).toBeLessThan(56);
    // 1.645 standard deviations of 0.12 each way, 10 % off for 200 draws.
    expect(Math.abs(Math.log(workingTime!.high_s / workingTime!.low_s) / (3.29 * 0.12) - 1)).toBeLessThan(
      0.1,
    );
    expect(dryHard!.low_s / 3600).toBeGreaterThan(12);
    expect(dryHard!.mid_s / 3600).toBeGreaterThan(20);
    expect(dryHard!.mid_s / 3600).toBeLessThan(28);
    expect(dryHard!.high_s / 3600).toBeLessThan(45);
  });

  it('leaves open what nothing is said about, and never sure of less than the label gives', () => {
    const card = fitted([working]);
    COORDINATES.forEach(({ name, sd: prior }, i) => {
      if (name === 'timingLn' || name === 'dryHardOffset_K' || name === 'viscosityLn') return;
      expect(sd(card, i) / prior, name).toBeGreaterThan(0.8);
      expect(sd(card, i) / prior, name).toBeLessThan(1.25);
    });
    expect(card.spread.kRefLn).toBeGreaterThan(0.25);
  });

  it('with a pot life at a mass knows cups, not gel: flash half as wide', () => {
    const wide = outlookOf(fitted([working, recoat])).flash!;
    const narrow = outlookOf(fitted([working, recoat, potLife('30 min')])).flash!;
    const width = (range: typeof wide) => Math.log(range.high_s / range.low_s);
    expect(width(narrow)).toBeLessThan(0.65 * width(wide));
  });

  it('with unsaid temperature, film and mass is wider', () => {
    const said = fitted([working, potLife('30 min')]);
    const bare = fitted([
      { kind: 'working time', value: '52 min' },
      { kind: 'pot life', value: '30 min' },
    ]);
    expect(sd(bare, 0)).toBeGreaterThan(1.25 * sd(said, 0));
    expect(Math.log(outlookOf(bare).flash!.high_s / outlookOf(bare).flash!.low_s)).toBeGreaterThan(
      Math.log(outlookOf(said).flash!.high_s / outlookOf(said).flash!.low_s),
    );
  });

  it('takes nothing but a ratio, and says that it knows little', () => {
    const card = fitted([]);
    const { workingTime } = outlookOf(card);
    expect(workingTime!.high_s / workingTime!.low_s).toBeGreaterThan(8);
    expect(card.account!.figures).toEqual([]);
  });

  it('lets the largest film speak only where a film would get too hot', () => {
    const thin = fitted([working, recoat, { kind: 'largest film', value: '3 mm' }]);
    const thick = fitted([working, recoat, { kind: 'largest film', value: '12 mm' }]);
    expect(thin.account!.figures[2]!.bits).toBeLessThan(0.01);
    expect(thick.account!.figures[2]!.bits).toBeGreaterThan(0.2);
    expect(outlookOf(thick).flash!.mid_s).toBeGreaterThan(outlookOf(thin).flash!.mid_s);
  });

  it('reads a viscosity at its own temperature', () => {
    // 55 kJ/mol: 1 Pa s at 30 C is 1.553 at 24 C.
    const card = fitted([working, { kind: 'viscosity', value: '1000 cP', temperature: '30 C' }]);
    const told = Math.exp(card.posterior!.mean[indexOf('viscosityLn')]!);
    // The prior (1 Pa s to a factor of 1.5) pulls by 0.15^2/(0.15^2 + 0.4^2) of ln 1.553.
    expect(Math.log(told)).toBeCloseTo((Math.log(1.553) * 0.16) / (0.16 + 0.0225), 2);
  });
});

describe('figures that do not fit', () => {
  it('names the two that contradict, and what would be expected', () => {
    const { tensions } = fitted([working, recoat, potLife('7 min')]).account!;
    expect(tensions.length).toBeGreaterThan(0);
    const said = tensions.flatMap((each) => [each.said, each.against]);
    expect(said).toContain('pot life 7 min');
    expect(said).toContain('working time 52 min');
    expect(tensions[0]!.words).toMatch(/do not fit one resin; without it about \d+ min would be expected/);
    expect(Math.abs(tensions[0]!.away_sd)).toBeGreaterThan(2);
  });

  it('is quiet where they fit', () => {
    expect(fitted([working, recoat, potLife('30 min')]).account!.tensions).toEqual([]);
    expect(QUICK_20.account!.tensions).toEqual([]);
    expect(REGULAR_50.account!.tensions).toEqual([]);
  });

  it('leaves out a recoat time on the plateau and says so', () => {
    const late = { kind: 'dry hard', value: '20 d', temperature: '24 C' };
    const card = fitted([working, late]);
    expect(card.account!.plateau).toEqual(['dry hard 20 d']);
    const without = fitted([working]);
    expect(card.posterior).toEqual(without.posterior);
    expect(fitted([working, recoat]).account!.plateau).toEqual([]);
  });

  it('says which figures tell nothing new', () => {
    const { figures } = REGULAR_50.account!;
    const cure = figures.find((each) => each.said === 'full cure 7 d')!;
    expect(cure).toMatchObject({ taught: null, kinetic: false });
    expect(figures.find((each) => each.said === 'working time 52 min')!.taught).toBe('how fast it is');
  });
});
