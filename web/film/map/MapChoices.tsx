/** What a map is asked with. */
import { useId } from 'react';
import { Labelled } from '#web/field/Labelled.tsx';

/** As typed. */
export interface TypedChoices {
  readonly cell: 'normal' | 'fine';
  readonly start: 'even' | 'puddles';
  readonly tiltX: string;
  readonly tiltY: string;
  readonly moment: 'gel' | 'minute';
  readonly minute: string;
}

export const FIRST_CHOICES: TypedChoices = {
  cell: 'normal',
  start: 'even',
  tiltX: '0',
  tiltY: '0',
  moment: 'gel',
  minute: '',
};

/** Steepest bench told, mm a metre. */
const STEEPEST = 50;

/** A plain number as typed, with a point or a comma; undefined when it is none or out of range. */
export function readNumber(text: string, low: number, high: number): number | undefined {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return undefined;
  const value = Number(plain);
  return value >= low && value <= high ? value : undefined;
}

/** Fall over run, or undefined. */
export function readTilt(text: string): number | undefined {
  const value = readNumber(text, -STEEPEST, STEEPEST);
  return value === undefined ? undefined : value / 1000;
}

interface Props {
  readonly typed: TypedChoices;
  readonly onChange: (typed: TypedChoices) => void;
  /** Minutes of the plan a map may show. */
  readonly from_min: number;
  readonly to_min: number;
  readonly hasPuddles: boolean;
}

export function MapChoices({ typed, onChange, from_min, to_min, hasPuddles }: Props) {
  const id = useId();
  const set = (part: Partial<TypedChoices>): void => onChange({ ...typed, ...part });
  const problems = {
    tiltX: readTilt(typed.tiltX) === undefined,
    tiltY: readTilt(typed.tiltY) === undefined,
    minute: typed.moment === 'minute' && readNumber(typed.minute, from_min, to_min) === undefined,
  };
  const field = (name: 'tiltX' | 'tiltY' | 'minute', label: string, allowed: string) => (
    <div className="field" data-invalid={problems[name] || undefined}>
      <label className="field-label" htmlFor={`${id}-${name}`}>
        {label}
      </label>
      <input
        id={`${id}-${name}`}
        inputMode="decimal"
        autoComplete="off"
        value={typed[name]}
        aria-invalid={problems[name]}
        aria-describedby={`${id}-${name}-problem`}
        onChange={(event) => set({ [name]: event.target.value })}
      />
      <span
        className="field-problem"
        id={`${id}-${name}-problem`}
        role={problems[name] ? 'alert' : undefined}
      >
        {problems[name] ? `Read “${typed[name]}”; allowed ${allowed}.` : ''}
      </span>
    </div>
  );
  return (
    <div className="form form-tight">
      <Labelled id={`${id}-start`} label="Start from">
        <select
          id={`${id}-start`}
          value={typed.start}
          onChange={(event) => set({ start: event.target.value === 'puddles' ? 'puddles' : 'even' })}
        >
          <option value="even">An even film</option>
          {hasPuddles && <option value="puddles">This coat’s puddles</option>}
        </select>
      </Labelled>
      <Labelled id={`${id}-cell`} label="Cells">
        <select
          id={`${id}-cell`}
          value={typed.cell}
          onChange={(event) => set({ cell: event.target.value === 'fine' ? 'fine' : 'normal' })}
        >
          <option value="normal">5 mm</option>
          <option value="fine">2.5 mm, fine</option>
        </select>
      </Labelled>
      {field('tiltX', 'Bench falls to the right, mm per m', `-${STEEPEST} to ${STEEPEST} mm per m`)}
      {field('tiltY', 'Bench falls to the back, mm per m', `-${STEEPEST} to ${STEEPEST} mm per m`)}
      <Labelled id={`${id}-moment`} label="Moment shown">
        <select
          id={`${id}-moment`}
          value={typed.moment}
          onChange={(event) => {
            const moment = event.target.value === 'minute' ? 'minute' : 'gel';
            set({ moment, minute: typed.minute === '' ? String(from_min) : typed.minute });
          }}
        >
          <option value="gel">At gel</option>
          <option value="minute">At a minute of the plan</option>
        </select>
      </Labelled>
      {typed.moment === 'minute' &&
        field('minute', 'Minutes from the first mix', `${from_min} to ${to_min} minutes`)}
    </div>
  );
}
