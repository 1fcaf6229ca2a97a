import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { emptySurvey, SurveyDocument, type SurveyDocumentInput } from '#core/piece/survey/document.ts';
import { badAttributes } from '#web/charts/bad-attributes.ts';
import { addCorner, newOffset, removeCorner } from './edit-survey.ts';
import { SurveyPanel } from './SurveyPanel.tsx';
import { notUsable, surveyPicture } from './survey-picture.ts';

const nothing = () => undefined;
const draw = (document: SurveyDocument, unitSystem: 'us' | 'metric' = 'metric') =>
  renderToStaticMarkup(
    <SurveyPanel document={document} onChange={nothing} onUse={nothing} unitSystem={unitSystem} />,
  );
const survey = (lengths: Readonly<Record<string, string>>, more: SurveyDocumentInput = {}) =>
  SurveyDocument.parse({
    ...more,
    readings: Object.entries(lengths).map(([pair, length]) => ({
      kind: 'distance',
      from: pair[0],
      to: pair[1],
      length,
    })),
  });
const sides = { AB: '1200 mm', BC: '500 mm', CD: '1200 mm', DA: '500 mm' };

describe('the survey panel', () => {
  it('starts empty: corners loose, nothing to use, fields for four sides and two diagonals', () => {
    const markup = draw(emptySurvey());
    expect(markup.match(/: length"|: length</g)!.length).toBeGreaterThanOrEqual(6);
    expect(markup).toContain('Corners B, C and D can still move.');
    expect(markup).toContain('5 more readings are needed');
    expect(markup).toContain('Corners are still loose.');
    expect(markup).toMatch(/class="primary" disabled=""/);
  });

  it('asks for a diagonal when four sides are typed', () => {
    const markup = draw(survey(sides));
    expect(markup).toContain('Corners C and D can still move. One more reading is needed');
    expect(markup).toContain('Measure A to C next: it holds a loose corner.');
    expect(markup).toContain('C loose');
  });

  it('says that nothing checks a shape that is just held, and lets it be used', () => {
    const markup = draw(survey({ ...sides, AC: '1300 mm' }));
    expect(markup).toContain('nothing checks it');
    expect(markup).toContain('Measuring B to D too would help most');
    expect(markup).not.toMatch(/class="primary" disabled/);
    expect(markup).toContain('The diagonals differ by less than 0.1 mm.');
  });

  it('says that readings agree, with ellipses and their exaggeration', () => {
    const markup = draw(survey({ ...sides, AC: '1300 mm', BD: '1301 mm' }));
    expect(markup).toContain('The readings agree');
    expect(markup.match(/class="survey-ellipse"/g)).toHaveLength(4);
    expect(markup).toMatch(/drawn \d+ times too large/);
    expect(markup).toMatch(
      /aria-label="Outline with 4 corners: A where measuring starts, B to within [\d.]+ mm/,
    );
  });

  it('with one reading to spare names all that may be wrong, in words and not by colour alone', () => {
    const markup = draw(survey({ ...sides, AC: '1300 mm', BD: '1325.4 mm' }));
    expect(markup).toContain('nobody can tell which is wrong');
    expect(markup.match(/⚑ one of these is wrong/g)).toHaveLength(6);
  });

  it('names the one that does not fit where others check it, and how much it is off', () => {
    const six = { AB: 2, BC: 0.6, CD: 1.4, DE: 0.9, EF: 0.6, FA: 1.5 };
    const places = [
      [0, 0],
      [2, 0],
      [2, 0.6],
      [0.6, 0.6],
      [0.6, 1.5],
      [0, 1.5],
    ] as const;
    const lengths: Record<string, string> = {};
    for (let i = 0; i < 6; i++)
      for (let j = i + 1; j < 6; j++) {
        const length = Math.hypot(places[i]![0] - places[j]![0], places[i]![1] - places[j]![1]);
        lengths[String.fromCharCode(65 + i, 65 + j)] = `${(length * 1000).toFixed(1)} mm`;
      }
    expect(lengths.BC).toBe(`${(six.BC * 1000).toFixed(1)} mm`);
    const corners = ['out', 'out', 'out', 'in', 'out', 'out'].map((turn) => ({ turn: turn as 'out' | 'in' }));
    const right = draw(survey(lengths, { corners }));
    expect(right).toContain('The readings agree');
    const wrong = draw(
      survey({ ...lengths, BE: `${(Math.hypot(1.4, 1.5) * 1000 + 25.4).toFixed(1)} mm` }, { corners }),
    );
    expect(wrong).toMatch(/B to E does not fit the others: it reads about 2[45]\.\d mm too much/);
    expect(wrong.match(/⚑ doubtful: measure again/g)).toHaveLength(1);
    expect(wrong).toContain('survey-doubted');
  });

  it('keeps drawing the rest when a row cannot be read, and will not use it', () => {
    const document = survey({ ...sides, AC: '1300 mm', BD: 'about so' });
    const markup = draw(document);
    expect(markup).toContain('survey-outline');
    expect(markup).toContain('A row cannot be read');
    expect(notUsable(surveyPicture(document, 'metric'))).not.toBeNull();
  });

  it('writes inches in the other system', () => {
    expect(draw(survey({ ...sides, AC: '1300 mm', BD: '1308 mm' }), 'us')).toMatch(/\d+\/\d+ in/);
  });

  it('adds and removes a corner with its rows, and loses nothing typed', () => {
    const five = addCorner(survey(sides));
    expect(five.corners).toHaveLength(5);
    expect(five.readings.slice(4)).toMatchObject([
      { from: 'D', to: 'E' },
      { from: 'E', to: 'A' },
    ]);
    expect(removeCorner(five)).toEqual(survey(sides));
    const typed = {
      ...five,
      readings: five.readings.map((row, i) => (i === 4 ? { ...row, length: '1 m' } : row)),
    };
    expect(removeCorner(typed as SurveyDocument).readings).toHaveLength(5);
    expect(newOffset({ ...five, order: 'clockwise' })).toMatchObject({ side: 'right' });
  });

  it('has no broken attribute, whatever is typed', () => {
    const text = fc.oneof(fc.constantFrom('', '1 in', '30 m', '500 mm', 'x'), fc.string({ maxLength: 8 }));
    fc.assert(
      fc.property(fc.array(text, { minLength: 6, maxLength: 6 }), (texts) => {
        const pairs = ['AB', 'BC', 'CD', 'DA', 'AC', 'BD'];
        const document = survey(Object.fromEntries(pairs.map((pair, i) => [pair, texts[i]!])));
        expect(badAttributes(draw(document))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});
