/** What the adjustment found, in words. */
import type { AdjustedOutline } from '#core/piece/survey/adjust-outline.ts';
import type { NextReading } from '#core/piece/survey/next-reading.ts';
import type { SurveyShape } from '#core/piece/survey/shape.ts';
import { cornerName, readingName, type Survey } from '#core/piece/survey/survey.ts';
import type { ReadingCheck } from '#core/piece/survey/verdict.ts';
import { formatArea } from '#core/quantity/format.ts';
import { formatLength } from '#core/quantity/format-length.ts';
import type { System } from '#core/quantity/units.ts';

/** A small length: 64ths of an inch, tenths of a millimetre; "less than 1/64 in" instead of nothing. */
export function fine(length_m: number, system: System): string {
  const size = Math.abs(length_m);
  if (system === 'metric')
    return size < 0.00005 ? 'less than 0.1 mm' : formatLength(size, system, { decimals: 1 });
  return size < 0.0254 / 128 ? 'less than 1/64 in' : formatLength(size, system, { fraction: 64 });
}

const pairName = (from: number, to: number) => `${cornerName(from)} to ${cornerName(to)}`;

function listed(names: readonly string[], last = 'and'): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} ${last} ${names.at(-1)}`;
}

/** One reading against the outline: "fits", "outline 1/16 in longer". `flagged`: the row says already that it is doubted. */
export function residualWords(
  check: ReadingCheck,
  kind: 'distance' | 'along' | 'offset',
  system: System,
  flagged = false,
): string {
  if (check.standardised === null) return 'nothing checks it yet';
  if (Math.abs(check.residual_m) < 0.0002) return 'fits';
  const more = kind === 'distance' ? ['longer', 'shorter'] : ['more', 'less'];
  const way = check.residual_m > 0 ? more[0] : more[1];
  const much = !flagged && Math.abs(check.standardised) > 3.29 ? ', far more than a tape strays' : '';
  return `outline ${fine(check.residual_m, system)} ${way}${much}`;
}

/** Whether the readings agree, and which to doubt. */
export function verdictWords(survey: Survey, outline: AdjustedOutline, system: System): string {
  const name = (i: number) => readingName(survey.readings[i]!);
  const { verdict } = outline;
  switch (verdict.kind) {
    case 'unchecked':
      return outline.rank < outline.unknowns
        ? ''
        : 'The shape is held, but nothing checks it: a wrong reading would not show. Take one more.';
    case 'agree':
      return 'The readings agree, as well as a tape of this class lets them.';
    case 'suspect': {
      const mistake = outline.checks[verdict.reading]!.mistake_m!;
      const way = mistake > 0 ? 'too much' : 'too little';
      return `${name(verdict.reading)} does not fit the others: it reads about ${fine(mistake, system)} ${way}. Measure it again.`;
    }
    case 'cannot tell':
      return outline.dof === 1
        ? `The readings do not agree, and with one to spare nobody can tell which is wrong. Measure one of these again: ${listed(verdict.readings.map(name), 'or')}.`
        : `The readings do not agree. Any of these could be the wrong one: ${listed(verdict.readings.map(name), 'or')}. Measure one of them again.`;
    case 'several':
      return `More than one reading is wrong. Furthest off: ${listed(verdict.readings.map(name))}.`;
  }
}

/** What is still loose or strange about the shape; nothing when all is well. */
export function shapeDoubts(outline: AdjustedOutline, system: System): string[] {
  const doubts: string[] = [];
  const loose = outline.corners.flatMap((corner, i) => (corner.loose ? [cornerName(i)] : []));
  if (loose.length > 0) {
    const missing = outline.unknowns - outline.rank;
    const count = missing === 1 ? 'One more reading is needed' : `${missing} more readings are needed`;
    doubts.push(
      `${loose.length === 1 ? 'Corner' : 'Corners'} ${listed(loose)} can still move. ${count}; the drawing puts loose corners where square walls would have them.`,
    );
  }
  if (outline.crosses)
    doubts.push('Sides of the outline cross: two corners may be named in the wrong order.');
  else if (outline.wrongTurns.length > 0 && loose.length === 0) {
    const names = listed(outline.wrongTurns.map(cornerName));
    doubts.push(
      `Corner ${names} turns the other way than said: change its kind, or look for a misread diagonal.`,
    );
  }
  if (outline.otherShape !== null) {
    const { from, to, difference_m } = outline.otherShape;
    doubts.push(
      `Two shapes fit these readings. Measure ${pairName(from, to)}: it differs by ${fine(difference_m, system)} between them.`,
    );
  }
  return doubts;
}

/** The reading that would help most. */
export function adviceWords(next: NextReading): string {
  const pair = pairName(next.from, next.to);
  if (next.holds) return `Measure ${pair} next: it holds a loose corner.`;
  const share = Math.round(100 * next.gain);
  return `${next.again ? `Measuring ${pair} again` : `Measuring ${pair} too`} would help most: it takes ${share} % off the uncertainty.`;
}

/** Out of square, diagonals, area. */
export function shapeWords(shape: SurveyShape, system: System): string[] {
  const words = [`Area ${formatArea(shape.area_m2, system)}.`];
  if (shape.diagonalDifference_m !== null)
    words.push(`The diagonals differ by ${fine(shape.diagonalDifference_m, system)}.`);
  shape.corners.forEach(({ angle_rad, outOfSquare_m }, i) => {
    const degrees = ((angle_rad * 180) / Math.PI).toFixed(1);
    const off =
      outOfSquare_m === null
        ? ''
        : Math.abs(outOfSquare_m) < 0.0002
          ? ', square'
          : `, out of square by ${fine(outOfSquare_m, system)} ${outOfSquare_m > 0 ? 'open' : 'closed'}`;
    words.push(`${cornerName(i)}: ${degrees}°${off}.`);
  });
  return words;
}
