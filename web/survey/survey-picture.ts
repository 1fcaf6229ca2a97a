/** Everything the survey panel shows, worked out from what is typed so far. */
import { type AdjustedOutline, adjustOutline } from '#core/piece/survey/adjust-outline.ts';
import type { SurveyDocument } from '#core/piece/survey/document.ts';
import { readSurvey } from '#core/piece/survey/read-survey.ts';
import { type SurveyShape, surveyShape } from '#core/piece/survey/shape.ts';
import type { Survey } from '#core/piece/survey/survey.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';

/** Where the survey stands for its fields and problems. */
export const ROOT = 'survey';

export interface SurveyPicture {
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
  /** null with fewer than three corners. Rows that cannot be read are left out of it. */
  readonly drawn: {
    readonly survey: Survey;
    readonly outline: AdjustedOutline;
    readonly shape: SurveyShape;
  } | null;
}

export function surveyPicture(document: SurveyDocument, system: System): SurveyPicture {
  const read = readSurvey(document, ROOT, system);
  const usable = read.ok ? read : readSurvey(withoutFaults(document, read.problems), ROOT, system);
  const problems = read.ok ? [] : read.problems;
  if (!usable.ok) return { problems, warnings: [], drawn: null };
  const outline = adjustOutline(usable.value);
  return {
    problems,
    warnings: usable.warnings,
    drawn: { survey: usable.value, outline, shape: surveyShape(outline.corners) },
  };
}

/** The document with the rows at fault emptied in place, so that the others keep their paths. */
function withoutFaults(document: SurveyDocument, problems: readonly Problem[]): SurveyDocument {
  const rows = new Set(problems.map(({ path }) => /^survey\.readings\.(\d+)\./.exec(path)?.[1]));
  const tapeAtFault = problems.some(({ path }) => path === 'survey.tape.readTo');
  return {
    ...document,
    tape: tapeAtFault ? { ...document.tape, readTo: '' } : document.tape,
    readings: document.readings.map((reading, i) =>
      rows.has(String(i)) ? { kind: 'distance', from: 'A', to: 'B', length: '' } : reading,
    ),
  };
}

/** Why the outline cannot be used yet; null when it can. */
export function notUsable(picture: SurveyPicture): string | null {
  if (picture.drawn === null) return 'It needs three corners.';
  if (picture.problems.length > 0) return 'A row cannot be read; put it right first.';
  const { outline } = picture.drawn;
  if (outline.rank < outline.unknowns) return 'Corners are still loose.';
  if (outline.crosses) return 'Its sides cross: look for corners named in the wrong order.';
  return null;
}
