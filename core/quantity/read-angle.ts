/** Reads an angle as a shop types it: in degrees. */

import { type Ask, refuse, refuseText, type Subject, withinBounds } from './ask.ts';
import { good, type Result } from './problem.ts';
import { plain, takeApart } from './typed.ts';

const angle: Subject = { name: 'angle', what: 'angle', example: '90, 22.5 or 30 degrees' };

const DEGREES = /^(?:°|d|deg|degrees?)$/i;
/** Once round either way. */
const MOST_RAD = 2 * Math.PI;

/**
 * An angle in rad from degrees: 30, 22.5°, -15 deg, 7 1/2 degrees. A bare figure is degrees. From one turn back to one turn on
 * unless the question asks for less; `min` and `max` in rad.
 */
export function readAngle_rad(text: string, ask: Ask<never> = {}): Result<number> {
  const [min, max] = [ask.min ?? -MOST_RAD, ask.max ?? MOST_RAD];
  const degrees = (rad: number): string => String(Number(((rad * 180) / Math.PI).toFixed(3)));
  const allowed = `${angle.example}; ${degrees(min)} to ${degrees(max)} degrees`;
  const refusal = refuseText(angle, ask, text, allowed);
  if (refusal !== undefined) return refusal;
  const taken = takeApart(plain(text));
  if (!taken.ok) return refuse(angle, ask, text, taken.code, taken.why, allowed);
  const [term] = taken.terms;
  if (term === undefined || taken.terms.length > 1)
    return refuse(angle, ask, text, 'unreadable', 'one figure in degrees is needed', allowed);
  if (term.words !== '' && !DEGREES.test(term.words))
    return refuse(angle, ask, text, 'unknown-unit', `"${term.words}" was not understood`, allowed);
  const value = withinBounds(((taken.negative ? -term.value : term.value) * Math.PI) / 180 + 0, min, max);
  if (value === undefined) return refuse(angle, ask, text, 'range', 'the angle is out of range', allowed);
  return good(value);
}
