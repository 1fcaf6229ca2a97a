/** From the walls to the piece: what was measured, what to make, whether it turns in and gets to the room. */
import { type ReactNode, useDeferredValue, useMemo } from 'react';
import type { FitDocument } from '#core/job/fit-document.ts';
import type { System } from '#core/quantity/units.ts';
import type { Path } from '#web/draft/at-path.ts';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { type FitPicture, type FitTop, fitPicture } from './fit-picture.ts';
import {
  jointWords,
  loadWords,
  type Made,
  madeSizes,
  makeWords,
  swingWords,
  wallWords,
  wayLines,
} from './fit-words.ts';
import { PlanDrawing } from './PlanDrawing.tsx';
import { SwingDrawing } from './SwingDrawing.tsx';
import './fit.css';

interface Props {
  /** Where the measurements stand in the document of the fields around it. */
  readonly base: Path;
  readonly document: FitDocument;
  /** The piece as drawn; null while it is not complete. Kept the same object until it changes. */
  readonly top: FitTop | null;
  readonly system: System;
  readonly onUse: (sizes: Made) => void;
  /** Why these sizes cannot be used; null when they can. */
  readonly notUsable: string | null;
}

const ends = [
  { value: 'both', label: 'both ends (alcove)' },
  { value: 'left', label: 'left end' },
  { value: 'right', label: 'right end' },
  { value: 'neither', label: 'only the back' },
];
const joints = ['as the wall asks', 'caulk', 'scribe'].map((value) => ({ value, label: value }));

export function FitPanel({ base, document, top, system, onUse, notUsable }: Props) {
  const shown = useDeferredValue(document);
  const picture = useMemo(() => fitPicture(shown, top), [shown, top]);
  const at = (...path: Path): Path => [...base, ...path];
  const alcove = document.ends === 'both';
  const size = (label: string, ...path: Path) => (
    <QuantityField key={path.join('.')} label={label} path={at(...path)} kind="length" />
  );
  const usual = (label: string, us: string, metric: string, key: string) => (
    <QuantityField label={label} path={at(key)} kind="length" placeholder={system === 'us' ? us : metric} />
  );
  return (
    <div className="fit">
      <fieldset className="plain fit-part">
        <legend>Walls and joints</legend>
        <div className="fit-fields">
          <div className="form form-tight">
            <SelectField label="A wall at" path={at('ends')} options={ends} />
            <SelectField label="Joint at a wall" path={at('joint')} options={joints} />
            {size('Back wall to cabinet front', 'depth')}
            {!alcove && size('Length of the cabinet', 'length')}
            {usual('Over the front', '1 in', '25.4 mm', 'overhang')}
            {!alcove && usual('Over an open end', '1/2 in', '12.7 mm', 'endOverhang')}
            {usual('Left at a wall', '1/8 in', '3.2 mm', 'clearance')}
            {usual('Widest caulked joint', '1/4 in', '6.4 mm', 'widestCaulk')}
            {usual('Spare where it is scribed', '1/4 in', '6.4 mm', 'scribeSpare')}
            {size('Largest gap at the back wall', 'backGap')}
          </div>
          {alcove && <AlcoveTable at={at} />}
        </div>
        <MakeAnswer
          picture={picture}
          system={system}
          onUse={onUse}
          notUsable={notUsable}
          behind={shown !== document}
        />
      </fieldset>
      {alcove && (
        <fieldset className="plain fit-part">
          <legend>Turning it in</legend>
          <div className="fit-fields">
            <div className="form form-tight">{size('Side walls come out', 'alcove', 'reach')}</div>
            <TurningWords picture={picture} system={system} />
          </div>
          {picture.turning !== null && (
            <div className="fit-answer">
              <SwingDrawing turning={picture.turning} system={system} />
            </div>
          )}
        </fieldset>
      )}
      <fieldset className="plain fit-part">
        <legend>The way in</legend>
        <div className="fit-fields fit-ways">
          <Way name="Door">
            {size('Door, clear width', 'door', 'width')}
            {size('Door, clear height', 'door', 'height')}
          </Way>
          <Way name="Passage with a corner">
            {size('Width before it', 'passage', 'before')}
            {size('Width after it', 'passage', 'after')}
            {size('Ceiling', 'passage', 'height')}
          </Way>
          <Way name="Stair with a landing">
            {size('Flight, width', 'stair', 'flight')}
            {size('Landing, depth', 'stair', 'landing')}
            {size('Headroom', 'stair', 'height')}
          </Way>
          <Way name="Lift">
            {size('Lift, width', 'lift', 'width')}
            {size('Lift, depth', 'lift', 'depth')}
            {size('Lift, height', 'lift', 'height')}
          </Way>
          <Way name="Hands">
            <QuantityField
              label="One person carries"
              path={at('liftEach')}
              kind="mass"
              placeholder={system === 'us' ? '55 lb' : '25 kg'}
            />
          </Way>
        </div>
        <WayAnswer picture={picture} top={top} system={system} />
      </fieldset>
    </div>
  );
}

function AlcoveTable({ at }: { readonly at: (...path: Path) => Path }) {
  return (
    <table className="rows fit-widths">
      <caption>Between the side walls, at the height of the top</caption>
      <thead>
        <tr>
          <th scope="col">Measured</th>
          <th scope="col">Width</th>
          <th scope="col">From the back wall</th>
        </tr>
      </thead>
      <tbody>
        {(['back', 'middle', 'front'] as const).map((place) => (
          <tr key={place}>
            <th scope="row">{place === 'middle' ? 'in the middle' : `at the ${place}`}</th>
            <td data-label="Width">
              <QuantityField
                hideLabel
                label={`Alcove width, ${place}`}
                path={at('alcove', place, 'width')}
                kind="length"
              />
            </td>
            <td data-label="From the back wall">
              <QuantityField
                hideLabel
                label={`Width ${place}: distance from the back wall`}
                path={at('alcove', place, 'at')}
                kind="length"
              />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Way({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <fieldset className="plain fit-way">
      <legend>{name}</legend>
      <div className="form form-tight">{children}</div>
    </fieldset>
  );
}

interface AnswerProps {
  readonly picture: FitPicture;
  readonly system: System;
}

function MakeAnswer({
  picture: { walls, piece, problems },
  system,
  onUse,
  notUsable,
  behind,
}: AnswerProps & Pick<Props, 'onUse' | 'notUsable'> & { readonly behind: boolean }) {
  const made = piece === null ? null : madeSizes(piece, system);
  const nothing = made === null || (made.length_m === null && made.depth_m === null);
  return (
    <div className="fit-answer">
      {piece !== null && <PlanDrawing walls={walls} piece={piece} system={system} />}
      <div role="status" aria-label="What to make">
        {problems.map((problem) => (
          <p key={problem.code} className="fit-stop">
            {problem.message}
          </p>
        ))}
        {piece !== null && (
          <>
            {makeWords(walls, piece, system).map((words) => (
              <p key={words} className="fit-make">
                {words}
              </p>
            ))}
            <ul>
              {[...jointWords(walls, piece, system), ...wallWords(walls, piece, system)].map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </>
        )}
      </div>
      <p>
        <button
          type="button"
          className="primary"
          disabled={nothing || notUsable !== null || behind}
          onClick={() => made !== null && onUse(made)}
        >
          {made?.depth_m === null ? 'Use as the length of the piece' : 'Use as the size of the piece'}
        </button>{' '}
        {notUsable !== null && <span className="none">{notUsable}</span>}
      </p>
    </div>
  );
}

function TurningWords({ picture: { turning, piece, walls }, system }: AnswerProps) {
  if (turning === null)
    return (
      <p className="section-note">
        {piece?.width == null || walls.alcove.reach_m === null
          ? 'It needs the three widths of the alcove and how far the side walls come out.'
          : 'It needs the size of the piece.'}
      </p>
    );
  return (
    <div className="fit-answer" role="status" aria-label="Turning it in">
      {swingWords(turning.swing, turning.length_m, turning.width_m, turning.tilt, system).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <p className="section-note">
        {turning.of === 'drawn'
          ? 'The piece as it is drawn in this job.'
          : 'The piece these walls ask for; none is drawn yet.'}
      </p>
    </div>
  );
}

function WayAnswer({ picture: { way, answers }, top, system }: AnswerProps & Pick<Props, 'top'>) {
  if (top === null || answers === null)
    return (
      <p className="fit-answer section-note">
        It needs the piece: its shape, its sizes and the thickness of its body.
      </p>
    );
  const lines = wayLines(top.load, way, answers, system);
  return (
    <div className="fit-answer" role="status" aria-label="The way in">
      <p>{loadWords(top.load, answers.people, way.liftEach_kg, top.withResin, system)}</p>
      {lines.length === 0 ? (
        <p className="section-note">Type the narrow places on the way; each is answered by itself.</p>
      ) : (
        <ul className="fit-lines">
          {lines.map(({ place, goes, words }) => (
            <li key={place} data-goes={goes}>
              <strong>{place}</strong>: {words}.
            </li>
          ))}
        </ul>
      )}
      {way.door !== null && (
        <p className="section-note">
          A door counts on a straight run in front of it as long as the piece; a lift on its diagonal, which a
          wide piece may not reach.
        </p>
      )}
    </div>
  );
}
