import { useMemo } from 'react';
import { polygonDocument } from '#core/job/outline-document.ts';
import { emptySurvey, type SurveyDocument, type SurveyReadingDocument } from '#core/piece/survey/document.ts';
import type { Verdict } from '#core/piece/survey/verdict.ts';
import type { System } from '#core/quantity/units.ts';
import type { Path } from '#web/draft/at-path.ts';
import { toast } from '#web/shell/toasts.tsx';
import { SurveyPanel } from '#web/survey/SurveyPanel.tsx';
import { surveyPicture } from '#web/survey/survey-picture.ts';
import { useSheet } from '../../context.tsx';
import { counted } from '../../summaries.ts';
import { Fold } from './Fold.tsx';
import { usePieceAt } from './use-piece-at.ts';
import { withOutline } from './with-outline.ts';

/** What a tape read at the customer's wall, and the outline it comes to. */
export function MeasuredPart({ base, id }: { readonly base: Path; readonly id: string }) {
  const { system, set } = useSheet();
  const { document, change } = usePieceAt(base);
  const { survey } = document;
  const place = [...base, 'survey'];
  const picture = useMemo(() => (survey === null ? null : surveyPicture(survey, system)), [survey, system]);
  return (
    <Fold
      id={id}
      name="Measured at the wall"
      summary={survey === null ? 'Nothing measured yet.' : surveySummary(survey, system)}
      problems={picture?.problems.length ?? 0}
    >
      {survey === null ? (
        <>
          <p className="section-note">
            Type what the tape reads between the corners, in any order: sides, diagonals, offsets from a
            straightedge, the bow of a wall. The outline that fits them best is drawn as you type, with how
            far to trust every corner and which reading to doubt.
          </p>
          <p>
            <button
              type="button"
              className="primary"
              onClick={() => change('Measure at the wall', (piece) => ({ ...piece, survey: emptySurvey() }))}
            >
              Start with four corners
            </button>
          </p>
        </>
      ) : (
        <>
          <SurveyPanel
            document={survey}
            unitSystem={system}
            onChange={(next) => set('Tape readings', place, next)}
            onUse={(corners) => {
              change('Use the surveyed outline', (piece) =>
                withOutline(piece, polygonDocument(corners, system)),
              );
              toast(
                `The outline has ${counted(corners.length, 'corner')} as measured. Undo brings the old one back.`,
              );
            }}
          />
          <p>
            <button
              type="button"
              className="small"
              onClick={() => change('Remove the tape readings', (piece) => ({ ...piece, survey: null }))}
            >
              Remove these readings
            </button>
          </p>
        </>
      )}
    </Fold>
  );
}

/** "4 corners, 5 of 6 readings taken; the readings agree." */
export function surveySummary(survey: SurveyDocument, system: System): string {
  const taken = survey.readings.filter((reading) => readingText(reading).trim() !== '').length;
  const head = `${counted(survey.corners.length, 'corner')}, ${taken} of ${counted(survey.readings.length, 'reading')} taken`;
  const { drawn } = surveyPicture(survey, system);
  if (drawn === null || taken === 0) return `${head}.`;
  const { outline } = drawn;
  return outline.rank < outline.unknowns
    ? `${head}; corners are still loose.`
    : `${head}; ${VERDICTS[outline.verdict.kind]}.`;
}

const VERDICTS: Readonly<Record<Verdict['kind'], string>> = {
  unchecked: 'nothing checks them yet',
  agree: 'they agree',
  suspect: 'one of them does not fit',
  'cannot tell': 'they do not agree',
  several: 'they do not agree',
};

function readingText(reading: SurveyReadingDocument): string {
  return reading.kind === 'distance'
    ? reading.length
    : reading.kind === 'offset'
      ? reading.offset
      : reading.gap;
}
