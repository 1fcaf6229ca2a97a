import type { SurveyReadingDocument } from '#core/piece/survey/document.ts';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { ROOT } from './survey-picture.ts';

export interface RowState {
  /** What the outline makes of it. */
  readonly words: readonly string[];
  readonly doubted: 'suspect' | 'one of these' | null;
}

interface Props {
  readonly reading: SurveyReadingDocument;
  readonly index: number;
  readonly letters: readonly string[];
  readonly state: RowState;
  readonly onRemove: () => void;
}

const sides = [
  { value: 'left', label: 'left' },
  { value: 'right', label: 'right' },
];
const walls = [
  { value: 'hollow', label: 'hollow' },
  { value: 'bulging', label: 'bulging' },
];
const kinds = { distance: 'Distance', offset: 'Straightedge', bow: 'Wall bow' } as const;

/** One thing measured: between which corners, how much, and how it fits. */
export function ReadingRow({ reading, index, letters, state, onRemove }: Props) {
  const at = (key: string) => [ROOT, 'readings', index, key];
  const options = letters.map((value) => ({ value, label: value }));
  const name = `Reading ${index + 1}, ${kinds[reading.kind].toLowerCase()} ${reading.from} to ${reading.to}`;
  const quantity = (key: string, label: string) => (
    <QuantityField hideLabel={reading.kind === 'distance'} label={label} path={at(key)} kind="length" />
  );
  return (
    <tr data-doubted={state.doubted ?? undefined}>
      <th scope="row">{kinds[reading.kind]}</th>
      <td data-label="From">
        <SelectField hideLabel label={`${name}: from corner`} path={at('from')} options={options} />
      </td>
      <td data-label="To">
        <SelectField hideLabel label={`${name}: to corner`} path={at('to')} options={options} />
      </td>
      <td data-label="Measured" className="wide-cell survey-measured">
        {reading.kind === 'distance' && quantity('length', `${name}: length`)}
        {reading.kind === 'offset' && (
          <div className="survey-fields">
            <SelectField label="Corner seen" path={at('corner')} options={options} />
            {quantity('along', `Along, from ${reading.from}`)}
            {quantity('offset', 'Off it')}
            <SelectField label="Side" path={at('side')} options={sides} />
          </div>
        )}
        {reading.kind === 'bow' && (
          <div className="survey-fields">
            {quantity('along', `Along, from ${reading.from}`)}
            {quantity('gap', 'Gap')}
            <SelectField label="Wall" path={at('wall')} options={walls} />
          </div>
        )}
      </td>
      <td
        data-label="Fits"
        className="wide-cell survey-fits"
        data-empty={state.words.length === 0 && state.doubted === null ? true : undefined}
      >
        {state.doubted !== null && (
          <strong className="survey-flag">
            {state.doubted === 'suspect' ? '⚑ doubtful: measure again' : '⚑ one of these is wrong'}
          </strong>
        )}
        {state.words.map((words) => (
          <span className="survey-fit" key={words}>
            {words}
          </span>
        ))}
      </td>
      <td>
        <button type="button" className="small" aria-label={`Remove ${name}`} onClick={onRemove}>
          Remove
        </button>
      </td>
    </tr>
  );
}
