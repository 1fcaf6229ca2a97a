import { describe, expect, it } from 'vitest';
import { BOARDS } from './boards.ts';
import { cupTimesByMass, finalTgByRatioError, workingTimeByTemperature } from './card-curves.ts';
import { REGULAR_50 } from './cards.ts';
import { cureFilm } from './film.ts';
import { withObservations } from './fit-card.ts';
import { fitCurves, MOST_THICKENING } from './fit-curves.ts';
import { tgAtBalance } from './mix-error.ts';
import type { Observation } from './observations.ts';
import { filmStages } from './stages.ts';
import { whatIsKnown } from './what-is-known.ts';

const alone = { draws: 1 };
const seen = { id: 'a', date: '2026-05-14', withdrawn: false, air_K: 297.15 } as const;
const gel: Observation = { ...seen, kind: 'gel', film_m: 0.0025, time_s: 200 * 60 };
const hot: Observation = {
  ...seen,
  id: 'b',
  kind: 'cup time',
  mass_kg: 0.1,
  reaches_K: 323.15,
  time_s: 1500,
};
const learned = withObservations(REGULAR_50, [
  gel,
  hot,
  { ...gel, id: 'c', time_s: 30 * 60, withdrawn: true },
]);

describe('curves of a card', () => {
  it('working time of the card alone is that of its film at each temperature, within 1 %', () => {
    const points = workingTimeByTemperature(REGULAR_50, {
      ...alone,
      temperatures_K: [291.15, 297.15, 303.15],
    });
    expect(points).toHaveLength(3);
    for (const { temperature_K, workingTime } of points) {
      const air = { time_s: [0], temperature_K: [temperature_K] };
      const history = cureFilm({
        model: REGULAR_50.model,
        thickness_m: 0.0025,
        board: BOARDS['mdf-18'],
        air,
        start: { conversion: 0, temperature_K },
        start_s: 0,
        duration_s: 6 * 3600,
      });
      const full = filmStages(history, REGULAR_50.model, air).workingEnd_s!;
      expect(Math.abs(workingTime.mid_s / full - 1)).toBeLessThan(0.01);
    }
  });

  it('falls with temperature, its band in order and narrowest near the label', () => {
    const points = workingTimeByTemperature(REGULAR_50);
    points.forEach(({ workingTime: { low_s, mid_s, high_s } }, i) => {
      expect(low_s).toBeLessThan(mid_s);
      expect(mid_s).toBeLessThan(high_s);
      if (i > 0) expect(mid_s).toBeLessThan(points[i - 1]!.workingTime.mid_s);
    });
    const width = points.map(({ workingTime }) => Math.log(workingTime.high_s / workingTime.low_s));
    const narrowest = points[width.indexOf(Math.min(...width))]!.temperature_K;
    expect(Math.abs(narrowest - 297.15)).toBeLessThan(4.1);
  });

  it('cups: above 100 g the time hardly depends on the mass, and pour-now comes before the flash', () => {
    const points = cupTimesByMass(REGULAR_50);
    for (const { pourNow, flash } of points) expect(pourNow!.mid_s).toBeLessThan(flash!.mid_s);
    const at = (mass: number) => points.find((point) => point.mass_kg === mass)!;
    expect(Math.abs(at(0.1).pourNow!.mid_s / at(5).pourNow!.mid_s - 1)).toBeLessThan(0.15);
    expect(at(5).peak_K.mid).toBeGreaterThan(at(0.02).peak_K.mid + 50);
  });

  it('mix ratio: the final glass transition of the card alone is that of its balance, highest at 0', () => {
    const points = finalTgByRatioError(REGULAR_50, alone);
    expect(points).toHaveLength(21);
    const top = points.reduce((best, point) => (point.tg_K.mid > best.tg_K.mid ? point : best));
    expect(Math.abs(top.error)).toBeLessThan(1e-9);
    for (const { error, tg_K } of points) {
      expect(tg_K.mid).toBeCloseTo(tgAtBalance(REGULAR_50.model, 1 + error), 9);
    }
  });

  it('the fit is drawn over what it was fitted to, withdrawn figures marked', () => {
    const curves = fitCurves(learned, { draws: 40 });
    const by = (quantity: string) => curves.filter((curve) => curve.quantity === quantity);
    expect(by('film thickening')).toHaveLength(1);
    expect(by('film thickening')[0]!.points.map((point) => point.withdrawn)).toEqual([false, false, true]);
    const cup = by('cup temperature')[0]!;
    expect(cup.body).toEqual({ mass_kg: 0.1, temperature_K: 297.15 });
    // The band passes the observed point.
    const [point] = cup.points;
    const i = cup.time_s.findIndex((time) => time >= point!.time_s);
    expect(cup.band[i]!.low).toBeLessThan(point!.value!);
    expect(cup.band[i]!.high).toBeGreaterThan(point!.value!);
    for (const { time_s, band } of curves) {
      expect(band).toHaveLength(time_s.length);
      for (const { low, mid, high } of band) {
        expect(low <= mid && mid <= high && Number.isFinite(low) && Number.isFinite(high)).toBe(true);
      }
    }
    const thick = by('film thickening')[0]!.band;
    expect(thick[0]!.mid).toBeLessThan(1.2);
    expect(thick[thick.length - 1]!.mid).toBe(MOST_THICKENING);
  });
});

describe('the account of a card', () => {
  const account = whatIsKnown(learned, 'metric');
  it('says what the label gives and what was taken for the unsaid', () => {
    expect(account.known).toHaveLength(REGULAR_50.figures!.length);
    expect(account.known[0]).toBe(
      'The label says working time 52 min at 24 °C in a film of 2.5 mm. It says most about how fast it is.',
    );
    expect(account.known[1]).toMatch(/Not said, and taken as: a film of 2.5 mm on 18 mm MDF/);
  });

  it('says what the shop learned, when, and that one was withdrawn', () => {
    expect(account.learned[0]).toMatch(
      /^On 2026-05-14 the shop saw gel of a film after 3 h 20 min at 24 °C\./,
    );
    expect(account.learned.at(-1)).toBe('Withdrawn and not used: 1.');
  });

  it('says what is assumed, with figures, until something tells it', () => {
    expect(account.assumed.join(' ')).toMatch(/twice as fast in 8 to 10 K/);
    expect(account.assumed.join(' ')).not.toMatch(/No figure for a cup/);
    expect(whatIsKnown(REGULAR_50).assumed.join(' ')).toMatch(/No figure for a cup/);
  });

  it('says what tells nothing, and what follows as ranges', () => {
    expect(account.doubtful).toContain('full cure 7 d: agrees with the rest and tells nothing new.');
    expect(account.follows).toHaveLength(4);
    expect(account.follows[0]).toMatch(/^Working time of a 2.5 mm film at 24 °C: \d+ to \d+ min\.$/);
  });
});
