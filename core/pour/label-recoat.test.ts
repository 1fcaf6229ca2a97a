import { describe, expect, it, test } from 'vitest';
import { BOARDS } from '#core/resin/boards.ts';
import { QUICK_20 } from '#core/resin/cards.ts';
import { cureFilm } from '#core/resin/film.ts';
import { labelRecoat, labelRecoatHere, sayLabelRecoat } from './label-recoat.ts';

const saying = (text: string) => ({ ...QUICK_20, label: [{ kind: 'recoat opens' as const, text }] });
const filmAt = (temperature_K: number) =>
  cureFilm({
    model: QUICK_20.model,
    thickness_m: 0.0025,
    board: BOARDS['mdf-18'],
    air: { time_s: [0], temperature_K: [temperature_K] },
    start: { conversion: 0, temperature_K },
    start_s: 0,
    duration_s: 10 * 86_400,
  });

describe('the recoat figure of a label', () => {
  test.each([
    ['4 to 6 h at 24 C', 4 * 3600, 6 * 3600, 297.15],
    ['24 h', 86_400, 86_400, 297.15],
    ['90-120 min at 75 F', 5400, 7200, 297.0388889],
    ['1 day at 20 °C', 86_400, 86_400, 293.15],
  ])('reads "%s"', (text, from_s, to_s, temperature_K) => {
    const read = labelRecoat(saying(text))!;
    expect(read).toMatchObject({ from_s, to_s });
    expect(read.temperature_K).toBeCloseTo(temperature_K, 6);
  });

  test.each([
    ['4 to 6 h at 24 C', '4 h to 6 h at 75 °F', '4 h to 6 h at 24 °C'],
    ['90-120 min at 75 F', '1 h 30 min to 2 h at 75 °F', '1 h 30 min to 2 h at 24 °C'],
    ['24 h', '24 h', '24 h'],
  ])(
    'says "%s" in the units of the shop, and no temperature that is not on the label',
    (text, us, metric) => {
      const label = labelRecoat(saying(text))!;
      expect(sayLabelRecoat(label, 'us')).toBe(us);
      expect(sayLabelRecoat(label, 'metric')).toBe(metric);
    },
  );

  test.each(['overnight', '6 to 4 h', '0 h', '90 d', '4 h at 90 C'])('leaves "%s" alone', (text) => {
    expect(labelRecoat(saying(text))).toBeNull();
  });

  it('is itself where the job is like the label', () => {
    const card = saying('4 to 6 h at 24 C');
    const here = labelRecoatHere(card, labelRecoat(card)!, filmAt(297.15))!;
    expect(here.from_s / (4 * 3600)).toBeCloseTo(1, 3);
    expect(here.to_s / (6 * 3600)).toBeCloseTo(1, 3);
  });

  it('is later in a cooler shop and never told where the film freezes before it', () => {
    const card = saying('4 to 6 h at 24 C');
    const cool = labelRecoatHere(card, labelRecoat(card)!, filmAt(293.15))!;
    expect(cool.from_s).toBeGreaterThan(4 * 3600 * 1.2);
    const short = cureFilm({
      model: QUICK_20.model,
      thickness_m: 0.0025,
      board: BOARDS['mdf-18'],
      air: { time_s: [0], temperature_K: [283.15] },
      start: { conversion: 0, temperature_K: 283.15 },
      start_s: 0,
      duration_s: 3600,
    });
    expect(labelRecoatHere(card, labelRecoat(card)!, short)).toBeNull();
  });
});
