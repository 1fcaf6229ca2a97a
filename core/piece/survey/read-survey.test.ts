import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adjustOutline } from './adjust-outline.ts';
import { emptySurvey, SurveyDocument, type SurveyDocumentInput } from './document.ts';
import { readSurvey } from './read-survey.ts';
import { surveyShape, withWallBows } from './shape.ts';

const read = (input: SurveyDocumentInput) => readSurvey(SurveyDocument.parse(input), 'survey');
const distance = (pair: string, length: string) => ({
  kind: 'distance' as const,
  from: pair[0]!,
  to: pair[1]!,
  length,
});
const points = (list: readonly (readonly [number, number])[]) => list.map(([x_m, y_m]) => ({ x_m, y_m }));

describe('a survey as typed', () => {
  it('is read in any unit, with the spread of the tape', () => {
    const survey = read({
      tape: { tapeClass: 'I', fromHook: false, readTo: '1 mm' },
      readings: [
        distance('AB', '48 1/4 in'),
        distance('BC', '560mm'),
        distance('CD', ''),
        distance('AC', "4' 5"),
      ],
    });
    if (!survey.ok) throw new Error('not read');
    expect(survey.value.readings.map(({ value_m }) => value_m)).toEqual([
      expect.closeTo(1.22555, 12),
      expect.closeTo(0.56, 12),
      expect.closeTo(53 * 0.0254, 12),
    ]);
    expect(survey.value.readings.map(({ path }) => path)).toEqual([
      'survey.readings.0.length',
      'survey.readings.1.length',
      'survey.readings.3.length',
    ]);
    // 560 mm of class I: 0.2 mm permitted, so 0.1; two ends read to 1 mm: 1 / sqrt 6.
    expect(survey.value.readings[1]!.sigma_m * 1000).toBeCloseTo(Math.hypot(0.1, 1 / Math.sqrt(6)), 12);
  });

  it('starts with four sides and two diagonals, nothing measured', () => {
    expect(readSurvey(emptySurvey())).toMatchObject({ ok: true, value: { readings: [], bows: [] } });
    expect(emptySurvey().readings).toHaveLength(6);
  });

  it('refuses, by field, what cannot be', () => {
    const survey = read({
      readings: [
        distance('AB', 'long'),
        distance('AA', '10 in'),
        distance('AF', '10 in'),
        distance('BC', '200 ft'),
        { kind: 'offset', from: 'A', to: 'B', corner: 'B', along: '10 in', offset: '1 in' },
        { kind: 'bow', from: 'A', to: 'C', along: '10 in', gap: '1/8 in' },
      ],
    });
    if (survey.ok) throw new Error('accepted');
    expect(survey.problems.map(({ path, code }) => `${path} ${code}`)).toEqual([
      'survey.readings.0.length length.unreadable',
      'survey.readings.1.to survey.span.same',
      'survey.readings.2.to survey.corner.unknown',
      expect.stringMatching(/^survey\.readings\.3\.length length\./),
      'survey.readings.4.corner survey.offset.own-corner',
      'survey.readings.5.to survey.bow.not-a-side',
    ]);
  });

  it('warns of three sides that close no triangle, at the longest', () => {
    const survey = read({
      readings: [distance('AB', '20 in'), distance('BC', '10 in'), distance('CA', '40 in')],
    });
    expect(survey).toMatchObject({
      ok: true,
      warnings: [{ code: 'warning.survey.triangle', path: 'survey.readings.2.length' }],
    });
  });

  it('whatever is typed, is answered and drawn', () => {
    const text = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.constantFrom('0', '1 in', '10 in', '0 mm', '30 m', '1e9 m', '-1 in'),
    );
    const letter = fc.constantFrom('A', 'B', 'C', 'D');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(letter, letter, text, fc.constantFrom('distance', 'offset', 'bow')), {
          maxLength: 12,
        }),
        (rows) => {
          const readings = rows.map(([from, to, typed, kind]) =>
            kind === 'distance'
              ? { kind, from, to, length: typed }
              : kind === 'offset'
                ? { kind, from, to, corner: 'D', along: typed, offset: '1 in' }
                : { kind, from, to, along: '5 in', gap: typed },
          );
          const survey = read({ readings } as SurveyDocumentInput);
          if (!survey.ok) return;
          const outline = adjustOutline(survey.value);
          expect(outline.corners.every(({ x_m, y_m }) => Number.isFinite(x_m + y_m))).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('the shape of what was measured', () => {
  it('has angles, out of square and diagonals', () => {
    const shape = surveyShape(
      points([
        [0, 0],
        [1.2, 0],
        [1.21, 0.6],
        [0, 0.6],
      ]),
    );
    expect(shape.corners[0]!.angle_rad).toBeCloseTo(Math.PI / 2, 12);
    expect(shape.corners[1]!.angle_rad).toBeCloseTo(Math.PI / 2 + Math.atan2(0.01, 0.6), 12);
    expect(shape.corners[1]!.outOfSquare_m).toBeCloseTo(0.01, 12);
    expect(shape.corners.reduce((sum, { angle_rad }) => sum + angle_rad, 0)).toBeCloseTo(2 * Math.PI, 12);
    expect(shape.area_m2).toBeCloseTo(0.723, 12);
    expect(shape.diagonalDifference_m).toBeCloseTo(Math.hypot(1.21, 0.6) - Math.hypot(1.2, 0.6), 12);
  });

  it('of an L has one corner of three right angles', () => {
    const shape = surveyShape(
      points([
        [0, 0],
        [2, 0],
        [2, 0.6],
        [0.6, 0.6],
        [0.6, 1.5],
        [0, 1.5],
      ]),
    );
    expect(shape.corners[3]!.angle_rad).toBeCloseTo(1.5 * Math.PI, 12);
    expect(shape.corners[3]!.outOfSquare_m).toBeCloseTo(0, 12);
    expect(shape.diagonalDifference_m).toBeNull();
  });

  it('reaches out where a wall is hollow, either way round', () => {
    const corners = points([
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ]);
    const bow = { from: 1, to: 2, along_m: 0.4, gap_m: 0.01, path: '' };
    expect(withWallBows(corners, [bow], false)[2]).toEqual({ x_m: 1.01, y_m: 0.4 });
    const mirror = corners.map(({ x_m, y_m }) => ({ x_m, y_m: y_m === 0 ? 0 : -y_m }));
    expect(withWallBows(mirror, [bow], true)[2]).toEqual({ x_m: 1.01, y_m: -0.4 });
    expect(withWallBows(corners, [{ ...bow, along_m: 2 }], false)).toHaveLength(4);
  });
});
