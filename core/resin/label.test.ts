import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { QUICK_DOCUMENT, REGULAR_DOCUMENT } from './generic-documents.ts';
import { heatFromRatio, massRatioOf } from './heat-of-reaction.ts';
import { figureSpread } from './label.ts';
import { readCard } from './read-card.ts';
import { readLabel } from './read-label.ts';

type Typed = Readonly<Record<string, string>>;
const label = (figures: readonly Typed[], mix: Typed = { byVolume: '2:1' }) => ({ mix, label: figures });
const problemsOf = (input: unknown) => {
  const read = readLabel(input);
  if (read.ok) throw new Error('it was read');
  return read.problems;
};
const figureOf = (typed: Typed) => {
  const read = readLabel(label([typed]));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value.figures[0]!;
};

describe('a label figure', () => {
  test.each([
    ['working time', '20 min', 1200, 1200],
    ['recoat opens', '4 to 6 h', 4 * 3600, 6 * 3600],
    ['recoat opens', '4-6 h', 4 * 3600, 6 * 3600],
    ['recoat opens', '90 min – 2 h', 5400, 7200],
    ['full cure', 'about 7 d', 7 * 86_400, 7 * 86_400],
    ['viscosity', '800 to 1200 cP', 0.8, 1.2],
    ['largest film', 'up to 1/8 in', 0.003175, 0.003175],
    ['largest film', '3 mm', 0.003, 0.003],
    ['working time', '1 h 30 min', 5400, 5400],
  ])('%s "%s"', (kind, value, low, high) => {
    const figure = figureOf({ kind, value });
    expect(figure.low).toBeCloseTo(low, 9);
    expect(figure.high).toBeCloseTo(high, 9);
  });

  it('keeps mass, film, temperature and end, and leaves out what is not said', () => {
    const full = figureOf({
      kind: 'pot life',
      value: '40 min',
      mass: '100 g',
      film: '2.5 mm',
      temperature: '77 F',
      end: '50 C',
    });
    expect(full.mass_kg).toBeCloseTo(0.1, 12);
    expect(full.film_m).toBeCloseTo(0.0025, 12);
    expect(full.temperature_K).toBeCloseTo(298.15, 9);
    expect(full.end).toBe('50 C');
    expect(Object.keys(figureOf({ kind: 'pot life', value: '40 min' })).sort()).toEqual([
      'high',
      'kind',
      'low',
    ]);
  });

  it('is the less certain the less it says', () => {
    const bare = figureSpread(figureOf({ kind: 'pot life', value: '40 min' }), false);
    const full = figureSpread(
      figureOf({ kind: 'pot life', value: '40 min', mass: '100 g', temperature: '24 C', end: 'gel' }),
      false,
    );
    // 0.15 alone; with 0.12, 0.05 and 0.15 for temperature, mass and end: root of the sum of squares.
    expect(full).toBeCloseTo(0.15, 12);
    expect(bare).toBeCloseTo(Math.hypot(0.15, 0.12, 0.05, 0.15), 12);
    const range = figureSpread(
      figureOf({ kind: 'recoat opens', value: '4 to 6 h', temperature: '24 C' }),
      false,
    );
    expect(range).toBeCloseTo(Math.hypot(0.3, Math.log(1.5) / 3.29), 9);
  });
});

describe('what a label cannot say', () => {
  test.each([
    ['ratio 0', label([], { byVolume: '2:0' }), 'mix.byVolume', 'ratio.range'],
    ['no ratio', label([], {}), 'mix.byVolume', 'label.no-ratio'],
    [
      'a ratio by weight in the place of volume',
      label([], { byVolume: '2:1 by weight' }),
      'mix.byVolume',
      'label.ratio-basis',
    ],
    [
      'recoat before the end of working time',
      label([
        { kind: 'working time', value: '50 min' },
        { kind: 'recoat opens', value: '30 min' },
      ]),
      'label.1.value',
      'label.recoat-before-working',
    ],
    [
      'a window that closes before it opens',
      label([
        { kind: 'recoat closes', value: '4 h' },
        { kind: 'recoat opens', value: '6 h' },
      ]),
      'label.0.value',
      'label.closes-before-opens',
    ],
    [
      'full cure before dry hard',
      label([
        { kind: 'dry hard', value: '2 d' },
        { kind: 'full cure', value: '1 d' },
      ]),
      'label.1.value',
      'label.full-cure-first',
    ],
    [
      'an unreadable time',
      label([{ kind: 'working time', value: 'a while' }]),
      'label.0.value',
      'duration.unreadable',
    ],
    [
      'a time without a unit',
      label([{ kind: 'working time', value: '20' }]),
      'label.0.value',
      'duration.no-unit',
    ],
    [
      'a range that runs backwards',
      label([{ kind: 'recoat opens', value: '6 to 4 h' }]),
      'label.0.value',
      'label.range-backwards',
    ],
    [
      'a working time of a month',
      label([{ kind: 'working time', value: '30 d' }]),
      'label.0.value',
      'duration.range',
    ],
    ['a kind of its own', label([{ kind: 'smell', value: '1 h' }]), 'label.0.kind', 'label.shape'],
  ])('%s', (_name, input, path, code) => {
    expect(problemsOf(input)).toContainEqual(expect.objectContaining({ path, code }));
  });

  test.each([
    ['75 C', /did you mean 75 °F/],
    ['24 F', /did you mean 24 °C/],
  ])('a shop at %s, with the question what was meant', (temperature, message) => {
    const [problem] = problemsOf(label([{ kind: 'working time', value: '20 min', temperature }]));
    expect(problem!.path).toBe('label.0.temperature');
    expect(problem!.message).toMatch(message);
  });

  it('a shop no unit makes sense of is refused without a guess', () => {
    const [problem] = problemsOf(label([{ kind: 'working time', value: '20 min', temperature: '300 C' }]));
    expect(problem!.message).not.toMatch(/did you mean/);
  });

  it('tells all problems at once, each with its path', () => {
    const problems = problemsOf(
      label(
        [
          { kind: 'working time', value: 'x' },
          { kind: 'full cure', value: 'y' },
        ],
        { byVolume: '0:1' },
      ),
    );
    expect(problems.map((each) => each.path).sort()).toEqual([
      'label.0.value',
      'label.1.value',
      'mix.byVolume',
    ]);
  });

  it('a window is not held against a working time at another temperature', () => {
    const cool = { kind: 'working time', value: '3 h', temperature: '16 C' };
    const warm = { kind: 'recoat opens', value: '2 h', temperature: '30 C' };
    expect(readLabel(label([cool, warm])).ok).toBe(true);
  });

  it('doubts a warm figure that is slower than a cool one', () => {
    const read = readLabel(
      label([
        { kind: 'working time', value: '20 min', temperature: '18 C' },
        { kind: 'working time', value: '25 min', temperature: '28 C' },
      ]),
    );
    expect(read.ok && read.warnings.map((each) => each.code)).toContain('label.warmer-slower');
  });
});

describe('mix ratio by volume and by weight', () => {
  const densities = { densityA: '1.13 g/mL', densityB: '1.00 g/mL' };
  // 2:1 by volume with these densities is 100:44.25 by weight.
  test.each([
    ['100:44', 0],
    ['100:45', 0],
    ['100:46', 1],
    ['100:42.5', 1],
  ])('2:1 and %s agree, or are doubted (%i)', (byWeight, doubts) => {
    const read = readLabel(label([], { byVolume: '2:1', byWeight, ...densities }));
    expect(read.ok && read.warnings.length).toBe(doubts);
  });

  it.each(['100:48', '100:40', '45:100'])('2:1 and %s are refused', (byWeight) => {
    const [problem] = problemsOf(label([], { byVolume: '2:1', byWeight, ...densities }));
    expect(problem!.code).toBe('label.ratios-disagree');
  });

  it('gives the density that is not said', () => {
    const read = readLabel(label([], { byVolume: '2:1', byWeight: '100:45', densityA: '1.13 g/mL' }));
    expect(read.ok && read.value.mix.densityB_kg_m3).toBeCloseTo(1130 * 0.9, 9);
  });

  it('from weight alone gives parts by volume with the same mass ratio', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 120 }), (b) => {
        const read = readLabel(label([], { byWeight: `100:${b}`, ...densities }));
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        expect(massRatioOf(read.value.mix)).toBeCloseTo(b / 100, 12);
        expect(Math.min(read.value.mix.volumeA, read.value.mix.volumeB)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('sets the heat: 100:50 by weight of a resin of 195 g/eq is 352 J/g', () => {
    const read = readLabel(label([], { byWeight: '100:50', epoxyEquivalent: '195 g/eq' }));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value.epoxyEquivalent_g_eq).toBe(195);
    expect(Math.round(heatFromRatio(massRatioOf(read.value.mix), 195) / 1000)).toBe(352);
  });
});

describe('a card document', () => {
  it('keeps the figures as typed for the card', () => {
    const read = readCard(QUICK_DOCUMENT);
    expect(read.ok && read.value.texts.map((each) => each.text)).toEqual([
      '20 min at 24 C in a 2.5 mm film',
      '4 to 6 h at 24 C',
      '1200 cP at 24 C',
      '3 mm',
    ]);
  });

  it('says where an observation is wrong, and that two have one id', () => {
    const seen = { id: 'a', kind: 'gel', time: '40 min', film: '2.5 mm', air: '75 F' };
    const read = readCard({ ...REGULAR_DOCUMENT, observations: [seen, { ...seen, air: '75 C' }] });
    expect(read.ok).toBe(false);
    if (!read.ok) {
      expect(read.problems.map((each) => each.path).sort()).toEqual([
        'observations.1.air',
        'observations.1.id',
      ]);
    }
  });

  it('never throws on what is typed, and answers only finite figures', () => {
    const text = fc.oneof(
      fc.string({ maxLength: 20 }),
      fc.constantFrom(
        '20 min',
        '4 to 6 h',
        '-',
        'NaN h',
        '1e400 h',
        '75 C',
        '2:1',
        '1/0 in',
        ' to ',
        '∞ min',
        '0:0',
      ),
    );
    const figure = fc.record({
      kind: fc.constantFrom('working time', 'pot life', 'viscosity', 'largest film', 'recoat opens'),
      value: text,
      mass: text,
      film: text,
      temperature: text,
    });
    fc.assert(
      fc.property(fc.array(figure, { maxLength: 3 }), text, text, text, (figures, a, b, c) => {
        const read = readLabel(label(figures, { byVolume: a, byWeight: b, densityA: c }));
        if (read.ok) {
          for (const { low, high } of read.value.figures) {
            expect(Number.isFinite(low) && low > 0 && high >= low && Number.isFinite(high)).toBe(true);
          }
        } else expect(read.problems.length).toBeGreaterThan(0);
        for (const junk of [null, 7, [], a]) expect(readLabel(junk).ok).toBe(false);
      }),
      { numRuns: 300 },
    );
  });
});
