import type { ObservationDocument } from '#core/resin/card-document.ts';
import { without } from '#web/draft/at-path.ts';
import { QuantityField } from '#web/field/sheet-fields.tsx';

type Readings = ObservationDocument['readings'];

interface Props {
  /** Where the ids of the fields begin. */
  readonly at: string;
  readonly readings: Readings;
  readonly onChange: (readings: Readings) => void;
}

/** Typed readings; a long series from a logger is told by its ends. */
const MOST_ROWS = 40;

export function ReadingsTable({ at, readings, onChange }: Props) {
  if (readings.length > MOST_ROWS) {
    const [first, last] = [readings[0]!, readings.at(-1)!];
    return (
      <p>
        {readings.length} readings, from {first.temperature} at {first.at} to {last.temperature} at {last.at}.{' '}
        <button type="button" className="linklike" onClick={() => onChange([])}>
          Clear them
        </button>
      </p>
    );
  }
  return (
    <div className="readings">
      {readings.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: readings have no id; the fields are tied to their place
        <div key={i} className="reading-row">
          <QuantityField
            label={`Reading ${i + 1}, after`}
            path={[at, 'readings', i, 'at']}
            kind="duration"
            placeholder="3 min"
          />
          <QuantityField
            label={`Reading ${i + 1}, cup at`}
            path={[at, 'readings', i, 'temperature']}
            kind="temperature"
            placeholder="80 F"
          />
          <button
            type="button"
            className="small"
            aria-label={`Remove reading ${i + 1}`}
            onClick={() => onChange(without(readings, i))}
          >
            Remove
          </button>
        </div>
      ))}
      <button
        type="button"
        className="small"
        onClick={() => onChange([...readings, { at: '', temperature: '' }])}
      >
        Add a reading
      </button>
    </div>
  );
}
