/** What a map is asked with: as typed, and as read. */
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { readLength_m } from '#core/quantity/read.ts';

/** As typed; kept whatever it says. */
export interface TypedChoices {
  readonly cell: string;
  readonly start: 'even' | 'puddles';
  readonly tiltX: string;
  readonly tiltY: string;
  readonly moment: 'gel' | 'minute';
  readonly minute: string;
}

export const FIRST_CHOICES: TypedChoices = {
  cell: '5 mm',
  start: 'even',
  tiltX: '0',
  tiltY: '0',
  moment: 'gel',
  minute: '',
};

/** Smallest and largest cell, m: finer ones take minutes, coarser ones blur an edge. */
export const CELLS_m = { min: 0.001, max: 0.005 } as const;

/** Steepest bench told, mm a metre. */
const STEEPEST = 50;

export const FIELD_NAMES = {
  cell: 'Cell size',
  tiltX: 'Bench falls to the right, mm per m',
  tiltY: 'Bench falls to the back, mm per m',
  minute: 'Minutes from the first mix',
} as const;

/** What was typed, in the units a map reckons in. */
export interface ReadChoices {
  readonly cell_m: number;
  /** Fall over run. */
  readonly slope: { readonly x: number; readonly y: number };
  /** Minutes of the plan; null: gel. */
  readonly minute: number | null;
}

export type ChoiceField = keyof typeof FIELD_NAMES;

/** Cell size: a length with its unit, or a bare number of mm. */
function readCell(text: string): Result<number> {
  const read = readLength_m(text, {
    path: 'cell',
    what: 'cell size',
    unit: 'mm',
    ...CELLS_m,
    system: 'metric',
  });
  if (read.ok) return read;
  const [first] = read.problems;
  return bad({ ...first!, read: text, allowed: '1 mm to 5 mm, typed as 5 mm, 2.5 mm or 1/8 in' });
}

function readPlain(
  text: string,
  field: ChoiceField,
  low: number,
  high: number,
  unit: string,
  what: string,
): Result<number> {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  const number = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
  if (number !== undefined && number >= low && number <= high) return good(number);
  const about = number === undefined ? 'is not a number' : 'is outside what a map can show';
  return bad({
    path: field,
    code: number === undefined ? 'map.unreadable' : 'map.range',
    message: `${what} ${about}.`,
    read: text,
    allowed: `${String(low).replace('-', '−')} to ${high} ${unit}`,
  });
}

/** Fall of the bench to one side, typed in mm per m; fall over run. */
function readTilt(text: string, field: 'tiltX' | 'tiltY', side: string): Result<number> {
  const what = `Fall of the bench to the ${side}`;
  const read = readPlain(text, field, -STEEPEST, STEEPEST, 'mm per m', what);
  return read.ok ? good(read.value / 1000) : read;
}

/** All choices, or every problem among them, each with the field it belongs to as its path. */
export function readChoices(typed: TypedChoices, from_min: number, to_min: number): Result<ReadChoices> {
  const cell = readCell(typed.cell);
  const x = readTilt(typed.tiltX, 'tiltX', 'right');
  const y = readTilt(typed.tiltY, 'tiltY', 'back');
  const minute: Result<number | null> =
    typed.moment === 'gel'
      ? good(null)
      : readPlain(typed.minute, 'minute', from_min, to_min, 'minutes from the first mix', 'Minute shown');
  if (cell.ok && x.ok && y.ok && minute.ok)
    return good({ cell_m: cell.value, slope: { x: x.value, y: y.value }, minute: minute.value });
  const problems: readonly Problem[] = [cell, x, y, minute].flatMap((one) => (one.ok ? [] : one.problems));
  return bad(...problems);
}

/** "at gel, on a level bench"; "at minute 30, on a bench that falls 2 mm per m to the right". */
export function sayChoices({ slope, minute }: ReadChoices): string {
  const falls = (['x', 'y'] as const).flatMap((axis) => {
    const fall = Number((slope[axis] * 1000).toPrecision(6));
    if (fall === 0) return [];
    const side = axis === 'x' ? (fall > 0 ? 'right' : 'left') : fall > 0 ? 'back' : 'front';
    return [`${Math.abs(fall)} mm per m to the ${side}`];
  });
  const moment = minute === null ? 'at gel' : `at minute ${minute}`;
  return `${moment}, on a ${falls.length === 0 ? 'level bench' : `bench that falls ${falls.join(' and ')}`}`;
}
