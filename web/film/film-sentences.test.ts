import { describe, expect, it } from 'vitest';
import { bubblesSentence, dripsSentences, leftOutSentence, resinsSentence } from './film-sentences.ts';

const bubble = (label: string, value: number) => ({
  label,
  smallest_m: { low: value * 0.8, value, high: value * 1.2 },
  smallestMobile_m: value,
  staysVisible: false,
});
const side = (name: string, thetaLeft_per_Pa: number, longestWave_m?: number) => ({
  name,
  own: false,
  thetaLeft_per_Pa,
  ...(longestWave_m === undefined ? {} : { levelling: { tools: [], longestWave_m, reasons: [] } }),
});

describe('the sentence about bubbles', () => {
  it('holds thin, cold and warm against this film', () => {
    const cases = [
      bubble('This film', 1e-4),
      bubble('A coat half as thick', 7e-5),
      bubble('Resin and shop 5 °C colder', 1.2e-4),
      bubble('Resin and shop 5 °C warmer', 1.01e-4),
    ];
    expect(bubblesSentence(cases, 'metric')).toBe(
      'Against this film (bubbles from 0.10 mm get out): a coat half as thick, smaller ones get out too (from 70 µm); resin and shop 5 °C colder, more of them stay (out from 0.12 mm only); resin and shop 5 °C warmer, no difference. Warm resin is thinner but gels sooner, cold resin the other way round.',
    );
  });

  it('is not there without others to hold against', () => {
    expect(bubblesSentence([bubble('This film', 1e-4)], 'us')).toBe('');
  });
});

describe('the sentence about quick and regular', () => {
  it('says why a flood coat is a regular resin', () => {
    expect(resinsSentence([side('Quick', 40, 0.05), side('Regular', 200, 0.1)], 'metric')).toBe(
      'Once this film is down the regular has 5 times as much flow left: it levels waves up to 100 mm, the quick only up to 50 mm. That is why a flood coat is a regular resin.',
    );
    expect(resinsSentence([side('Quick', 0), side('Regular', 200, 0.1)], 'metric')).toContain(
      'the quick has no flow left and keeps every mark',
    );
  });

  it('does not say so where the figures do not', () => {
    for (const resins of [
      [side('Quick', 200, 0.1), side('Regular', 100, 0.05)],
      [side('Quick', 0), side('Regular', 0)],
    ])
      expect(resinsSentence(resins, 'metric')).not.toContain('why a flood coat');
  });
});

describe('the sentences about drips', () => {
  const drips = { pitch_m: 0.016, hangingFilm_m: 0.001, stored_m2: 6e-6, falls_m2: 2e-6, reasons: [] };
  it('tell pitch, when they show, when to scrape, the last useful scrape and the volume', () => {
    const said = dripsSentences(
      { ...drips, show_s: 1800, scrapeFirst_s: 3600, scrapeLast_s: 5400 },
      'metric',
    );
    expect(said).toBe(
      'Drips 16 mm apart show from 30 min. Scrape once 60 to 90 min; the last useful scrape is at 90 min, later the place no longer closes. They hold 6.0 mL a metre of edge; 2.0 mL a metre falls to the floor.',
    );
  });

  it('say when there is nothing to scrape', () => {
    expect(dripsSentences(drips, 'metric')).toContain('do not show before gel: nothing to scrape');
  });
});

describe('the sentence about edges left out', () => {
  it('names each with what keeps the film off', () => {
    expect(leftOutSentence({ dammed: [], rims: ['tap'], walls: ['back'], seams: [] })).toBe(
      'No film is worked over tap (dammed rim); back (at the wall): nothing runs over there and nothing stays on a face.',
    );
  });
  it('is not there when every edge is worked', () => {
    expect(leftOutSentence({ dammed: [], rims: [], walls: [], seams: [] })).toBe('');
  });
});
