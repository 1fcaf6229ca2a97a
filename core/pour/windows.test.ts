import { describe, expect, it } from 'vitest';
import {
  type FilmLimits,
  handsOffWindow,
  meldWindow,
  mixWindow,
  NOT_WITHIN_SPAN_s,
  pourWindow,
  scrapeWindow,
  torchWindow,
  wrapWindow,
} from './windows.ts';

const range = (low_s: number, mid_s: number, high_s: number) => ({ low_s, mid_s, high_s });
const film: FilmLimits = {
  cup: 1,
  workingEnd: range(1200, 1500, 1900),
  torch: range(2000, 2600, 3500),
  gel: range(3000, 5000, 8000),
};
const cup = { number: 2, pourNow: range(500, 700, 1000), empty_s: 20, spread_s: 40 };

describe('when a cup closes', () => {
  it('closes at its safe pour-now time, the spreading after it, and is hard at the middle estimate', () => {
    const { window, hard_s } = pourWindow(100, cup, film);
    expect(window).toMatchObject({ opens_s: 100, closes_s: 540, closesMid_s: 740, closesHigh_s: 1040 });
    expect(window.limit).toBe('cup 2 reaches 104 °F or 8% cured');
    expect(pourWindow(100, cup, film, 'metric').window.limit).toBe('cup 2 reaches 40 °C or 8% cured');
    expect(mixWindow(100, cup, film, 'metric').window.limit).toBe('cup 2 reaches 40 °C or 8% cured');
    expect(hard_s).toBe(740);
  });

  it('closes when the oldest film can no longer be worked, if that is sooner, and then is hard at once', () => {
    const { window, hard_s } = pourWindow(100, { ...cup, pourNow: range(1300, 1500, 1700) }, film);
    expect(window).toMatchObject({ closes_s: 1200, limit: 'film of cup 1 stops flowing' });
    expect(hard_s).toBe(1200);
  });

  it('closes for mixing early enough to pour and spread', () => {
    const pour = pourWindow(0, cup, film);
    const mix = mixWindow(0, cup, film);
    expect(pour.window.closes_s - mix.window.closes_s).toBe(60);
    expect(pour.hard_s - mix.hard_s).toBe(60);
  });

  it('knows a cup that never gets warm', () => {
    expect(pourWindow(0, { ...cup, pourNow: null }, film).window.limit).toBe('film of cup 1 stops flowing');
    const open = pourWindow(0, { ...cup, pourNow: null }, { ...film, workingEnd: null }).window;
    expect(open.closes_s).toBe(NOT_WITHIN_SPAN_s);
  });
});

describe('when the film closes', () => {
  it('ends melding and edges with the working time of the oldest film', () => {
    expect(meldWindow(300, film).window).toMatchObject({ opens_s: 300, closes_s: 1200 });
    expect(wrapWindow(300, film).window).toMatchObject({ opens_s: 300, closes_s: 1200, closesHigh_s: 1900 });
  });

  it('ends torching with the earlier of last touch and working time', () => {
    expect(torchWindow(0, film).window.closes_s).toBe(1200);
    expect(torchWindow(0, { ...film, torch: range(900, 1000, 1100) }).window).toMatchObject({
      closes_s: 900,
      limit: 'later torch marks 2 in long would stay',
    });
    const early = { ...film, torch: range(900, 1000, 1100) };
    expect(torchWindow(0, early, 'metric').window.limit).toBe('later torch marks 50 mm long would stay');
    expect(torchWindow(0, { ...film, torch: null }).window.limit).toContain('stay anyway');
  });

  it('lets drips be scraped until gel, and hands stay off until recoat opens', () => {
    expect(scrapeWindow(0, film).window).toMatchObject({ closes_s: 3000, limit: 'drips gel' });
    expect(handsOffWindow(50, range(9000, 10_000, 12_000)).window).toMatchObject({
      opens_s: 50,
      closes_s: 10_000,
      closesHigh_s: 12_000,
    });
  });
});
