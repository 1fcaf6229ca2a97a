import type { PieceDocument } from '#core/job/document.ts';
import { cutOutSize } from '#core/piece/cut-out-size.ts';
import type { CutOut } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import type { Path } from '#web/draft/at-path.ts';
import { useFields } from '#web/field/fields-context.tsx';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { QuantityField, SelectField, TextField } from '#web/field/sheet-fields.tsx';
import { CUT_OUT_SHAPES, RIMS } from './edge-choices.ts';
import { gapsOf } from './gaps.ts';
import { lengthWords } from './grid.ts';
import { withoutCutOut } from './holes.ts';
import { aboutCutOut, type Look } from './look.ts';
import { turnOf_degrees, withTurn } from './turn.ts';

interface Props {
  readonly piece: PieceDocument;
  readonly index: number;
  readonly look: Look | null;
  readonly at: (...path: Path) => Path;
  readonly system: System;
  readonly change: (label: string, make: (piece: PieceDocument) => PieceDocument) => void;
  readonly onGone: (said: string) => void;
}

export function CutOutPanel({ piece, index, look, at, system, change, onGone }: Props) {
  const { problems } = useFields();
  const cutOut = piece.cutOuts[index];
  if (cutOut === undefined) return null;
  const name = cutOut.name || `Cut-out ${index + 1}`;
  const field = (key: string): Path => at('cutOuts', index, key);
  const place = at('cutOuts', index).join('.');
  const shown = new Set(
    [...problems].flatMap(([path, list]) =>
      path === place || path.startsWith(`${place}.`) ? list.map((p) => p.code) : [],
    ),
  );
  const against = look === null ? [] : aboutCutOut(look, index).filter((p) => !shown.has(p.code));
  const drawn = look?.piece.cutOuts[index];
  const gaps = look === null || drawn === undefined ? [] : gapsOf(drawn, look.piece.outline);
  const size = drawn === undefined || drawn.shape !== 'template' ? null : sizeWords(drawn, system);
  return (
    <>
      <div className="form form-tight">
        <TextField idFirst="e" label="Name" path={field('name')} maxLength={80} />
        {cutOut.shape === 'template' ? (
          <p className="wide">
            Sink template{size === null ? '' : `, ${size}`}, its shape as in the drawing it came from.
          </p>
        ) : (
          <>
            <SelectField idFirst="e" label="Shape" path={field('shape')} options={CUT_OUT_SHAPES} />
            <QuantityField
              idFirst="e"
              label={cutOut.shape === 'round' ? 'Diameter' : 'Length'}
              path={field('length')}
              kind="length"
            />
          </>
        )}
        {cutOut.shape !== 'round' && cutOut.shape !== 'template' && (
          <QuantityField idFirst="e" label="Width" path={field('width')} kind="length" />
        )}
        {cutOut.shape === 'rectangle' && (
          <QuantityField idFirst="e" label="Corner radius" path={field('cornerRadius')} kind="length" />
        )}
        <QuantityField idFirst="e" label="Centre from the left" path={field('fromLeft')} kind="length" />
        <QuantityField idFirst="e" label="Centre from the front" path={field('fromFront')} kind="length" />
        {cutOut.shape !== 'round' && (
          <QuantityField
            idFirst="e"
            label="Turned left, degrees"
            path={field('turned')}
            kind="words"
            placeholder="0"
          />
        )}
        <SelectField idFirst="e" label="Rim" path={field('rim')} options={RIMS} />
      </div>
      {gaps.length > 0 && (
        <p className="editor-left">
          Left of the top, from rim to edge:{' '}
          {gaps.map(({ side, left_m }) => `${side} ${lengthWords(left_m, system)}`).join(', ')}.
        </p>
      )}
      {against.length > 0 && (
        <ul className="editor-against" aria-label={`What stands against ${name}`}>
          {against.map((problem) => (
            <li key={problem.code} className="field-warning">
              <ProblemText problem={problem} />
            </li>
          ))}
        </ul>
      )}
      <p className="actions">
        {cutOut.shape !== 'round' && (
          <button
            type="button"
            className="small"
            disabled={turnOf_degrees(cutOut) === null}
            onClick={() => change('Turn cut-out', (p) => withTurn(p, index, 90))}
          >
            Turn left by 90 degrees
          </button>
        )}
        <button
          type="button"
          className="small"
          onClick={() => {
            change('Remove cut-out', (p) => withoutCutOut(p, index));
            onGone(`${name} is gone.`);
          }}
        >
          Remove {name}
        </button>
      </p>
    </>
  );
}

/** "20 in by 14 1/2 in", along its own axes. */
function sizeWords(cutOut: CutOut, system: System): string {
  const { length_m, width_m } = cutOutSize(cutOut);
  return `${lengthWords(length_m, system)} by ${lengthWords(width_m, system)}`;
}
