import { useDeferredValue, useMemo } from 'react';
import type { Point } from '#core/piece/piece.ts';
import type { SurveyDocument } from '#core/piece/survey/document.ts';
import { withWallBows } from '#core/piece/survey/shape.ts';
import { cornerName } from '#core/piece/survey/survey.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { setAt, without } from '#web/draft/at-path.ts';
import { FieldsProvider } from '#web/field/fields-context.tsx';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { addCorner, addReading, newBow, newDistance, newOffset, removeCorner } from './edit-survey.ts';
import { ReadingRow, type RowState } from './ReadingRow.tsx';
import { SurveyDrawing } from './SurveyDrawing.tsx';
import { notUsable, ROOT, type SurveyPicture, surveyPicture } from './survey-picture.ts';
import { adviceWords, residualWords, shapeDoubts, shapeWords, verdictWords } from './survey-words.ts';
import './survey.css';

interface Props {
  readonly document: SurveyDocument;
  readonly onChange: (document: SurveyDocument) => void;
  /** Takes the outline over: corners in order in metres, wall bows as corners of their own, moved to x and y of 0 or more. */
  readonly onUse: (corners: readonly Point[]) => void;
  readonly unitSystem: System;
}

const tapes = ['I', 'II', 'III'].map((value) => ({ value, label: `class ${value}` }));
const orders = [
  { value: 'counter-clockwise', label: 'counter-clockwise' },
  { value: 'clockwise', label: 'clockwise' },
];
const turns = [
  { value: 'out', label: 'points out' },
  { value: 'in', label: 'wraps round a wall corner' },
];

/** Tape readings at the wall, the outline that fits them best, and how far to trust it. */
export function SurveyPanel({ document, onChange, onUse, unitSystem }: Props) {
  const shown = useDeferredValue(document);
  const picture = useMemo(() => surveyPicture(shown, unitSystem), [shown, unitSystem]);
  const { drawn } = picture;
  const letters = document.corners.map((_, i) => cornerName(i));
  const blocked = notUsable(picture);
  // While readings disagree, measuring one of them again comes first; the verdict says which.
  const settled = drawn?.outline.verdict.kind === 'agree' || drawn?.outline.verdict.kind === 'unchecked';
  const advice = settled ? drawn?.outline.next[0] : undefined;
  return (
    <FieldsProvider
      value={{
        document: { [ROOT]: document },
        system: unitSystem,
        problems: byPath(picture.problems),
        warnings: byPath(picture.warnings),
        set: (_label, path, value) => onChange(setAt(document, path.slice(1), value)),
      }}
    >
      <section className="survey" aria-label="Tape survey">
        <div className="form form-tight">
          <SelectField label="Tape" path={[ROOT, 'tape', 'tapeClass']} options={tapes} />
          <QuantityField label="Read to the nearest" path={[ROOT, 'tape', 'readTo']} kind="length" />
          <label className="tick-box">
            <input
              type="checkbox"
              checked={document.tape.fromHook}
              onChange={(event) => onChange(setAt(document, ['tape', 'fromHook'], event.target.checked))}
            />
            measured from the hook
          </label>
          <SelectField label="Corners named, seen from above" path={[ROOT, 'order']} options={orders} />
        </div>
        <fieldset className="plain">
          <legend>Corners</legend>
          <div className="form form-tight">
            {letters.map((letter, i) => (
              <SelectField
                key={letter}
                label={`Corner ${letter}`}
                path={[ROOT, 'corners', i, 'turn']}
                options={turns}
              />
            ))}
          </div>
          <p className="survey-buttons">
            <button type="button" className="small" onClick={() => onChange(addCorner(document))}>
              Add a corner
            </button>
            {letters.length > 3 && (
              <button type="button" className="small" onClick={() => onChange(removeCorner(document))}>
                Remove corner {letters.at(-1)}
              </button>
            )}
          </p>
        </fieldset>
        <div className="survey-parts">
          {drawn !== null && (
            <div className="survey-result">
              <SurveyDrawing survey={drawn.survey} outline={drawn.outline} system={unitSystem} />
              <div aria-live="polite">
                {shapeDoubts(drawn.outline, unitSystem).map((words) => (
                  <p key={words} className="survey-doubt">
                    {words}
                  </p>
                ))}
                <p className="survey-verdict">{verdictWords(drawn.survey, drawn.outline, unitSystem)}</p>
              </div>
              {advice !== undefined && (
                <p>
                  {adviceWords(advice)}{' '}
                  <button
                    type="button"
                    className="small"
                    onClick={() =>
                      onChange(
                        addReading(document, newDistance(cornerName(advice.from), cornerName(advice.to))),
                      )
                    }
                  >
                    Add a row for {cornerName(advice.from)} to {cornerName(advice.to)}
                  </button>
                </p>
              )}
              {drawn.outline.rank === drawn.outline.unknowns && (
                <ul>
                  {shapeWords(drawn.shape, unitSystem).map((words) => (
                    <li key={words}>{words}</li>
                  ))}
                </ul>
              )}
            </div>
          )}
          <div className="table-block">
            <table className="rows survey-readings">
              <caption>What was measured</caption>
              <thead>
                <tr>
                  <th scope="col">Kind</th>
                  <th scope="col">From</th>
                  <th scope="col">To</th>
                  <th scope="col">Measured</th>
                  <th scope="col">Fits</th>
                  <th scope="col">
                    <span className="unseen">Remove</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {document.readings.map((reading, i) => (
                  <ReadingRow
                    // biome-ignore lint/suspicious/noArrayIndexKey: readings have no name but their place
                    key={i}
                    reading={reading}
                    index={i}
                    letters={letters}
                    state={rowState(picture, i, unitSystem)}
                    onRemove={() => onChange({ ...document, readings: without(document.readings, i) })}
                  />
                ))}
              </tbody>
            </table>
            <p className="survey-buttons">
              <button
                type="button"
                className="small"
                onClick={() => onChange(addReading(document, newDistance('A', 'C')))}
              >
                Add a distance
              </button>
              <button
                type="button"
                className="small"
                onClick={() => onChange(addReading(document, newOffset(document)))}
              >
                Add a corner off a straightedge
              </button>
              <button
                type="button"
                className="small"
                onClick={() => onChange(addReading(document, newBow()))}
              >
                Add a wall bow
              </button>
            </p>
          </div>
        </div>
        <p>
          <button
            type="button"
            className="primary"
            disabled={blocked !== null || shown !== document}
            onClick={() => {
              if (drawn !== null)
                onUse(
                  toOrigin(withWallBows(drawn.outline.corners, drawn.survey.bows, drawn.survey.clockwise)),
                );
            }}
          >
            Use this outline
          </button>{' '}
          {blocked !== null && <span className="none">{blocked}</span>}
        </p>
      </section>
    </FieldsProvider>
  );
}

function byPath(problems: readonly Problem[]): Map<string, Problem[]> {
  const map = new Map<string, Problem[]>();
  for (const problem of problems) map.set(problem.path, [...(map.get(problem.path) ?? []), problem]);
  return map;
}

function rowState(picture: SurveyPicture, row: number, system: System): RowState {
  if (picture.drawn === null) return { words: [], doubted: null };
  const { survey, outline } = picture.drawn;
  const { verdict } = outline;
  const own = survey.readings.flatMap((reading, i) =>
    reading.path.startsWith(`${ROOT}.readings.${row}.`) ? [i] : [],
  );
  const isSuspect = verdict.kind === 'suspect' && own.includes(verdict.reading);
  const isOneOf = 'readings' in verdict && verdict.readings.some((i) => own.includes(i));
  const words = own.map((i) => {
    const { kind } = survey.readings[i]!;
    const said = residualWords(outline.checks[i]!, kind, system, isSuspect || isOneOf);
    return kind === 'distance' ? said : `${kind === 'along' ? 'along' : 'off it'}: ${said}`;
  });
  return { words, doubted: isSuspect ? 'suspect' : isOneOf ? 'one of these' : null };
}

function toOrigin(corners: readonly Point[]): Point[] {
  const left = Math.min(...corners.map(({ x_m }) => x_m));
  const front = Math.min(...corners.map(({ y_m }) => y_m));
  return corners.map(({ x_m, y_m }) => ({ x_m: x_m - left, y_m: y_m - front }));
}
