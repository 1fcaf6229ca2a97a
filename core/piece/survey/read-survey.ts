import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import type { SurveyDocument, SurveyReadingDocument } from './document.ts';
import { cornerName, type Reading, type Survey, type WallBow } from './survey.ts';
import { readingSigma_m, type Tape } from './tape.ts';
import { impossibleTriangles } from './triangles.ts';

/** Shortest and longest distance between two corners of a piece. */
export const SHORTEST_READING_M = 0.005;
export const LONGEST_READING_M = 30;
const WIDEST_GAP_M = 0.5;

/**
 * A survey in metres. Empty texts are readings not taken yet and are left out; three sides that close no triangle are a warning.
 *
 * @param path where the survey stands in its document, for the problems; '' for the survey alone.
 * @param system the units in which allowed ranges are told.
 */
export function readSurvey(document: SurveyDocument, path = '', system?: System): Result<Survey> {
  const notes = new SurveyNotes(path, system);
  const count = document.corners.length;
  if (count < 3)
    notes.refuse('corners', 'corners.few', 'Corners: a piece has at least three.', `${count}`, '3 to 26');
  const tape: Tape = {
    tapeClass: document.tape.tapeClass,
    fromHook: document.tape.fromHook,
    readTo_m:
      notes.length('tape.readTo', document.tape.readTo, 'step read on the tape', 0.0001, 0.01) ?? 0.0015875,
  };
  const readings: Reading[] = [];
  const bows: WallBow[] = [];
  document.readings.forEach((reading, i) => {
    const at = `readings.${i}`;
    const span = spanOf(reading, at, count, notes);
    switch (reading.kind) {
      case 'distance': {
        const value_m = notes.length(
          `${at}.length`,
          reading.length,
          'distance',
          SHORTEST_READING_M,
          LONGEST_READING_M,
        );
        if (span !== null && value_m !== null)
          readings.push({
            kind: 'distance',
            ...span,
            value_m,
            sigma_m: readingSigma_m(value_m, tape),
            path: notes.at(`${at}.length`),
          });
        break;
      }
      case 'offset': {
        const along_m = notes.length(
          `${at}.along`,
          reading.along,
          'way along the straightedge',
          0,
          LONGEST_READING_M,
        );
        const offset_m = notes.length(`${at}.offset`, reading.offset, 'offset', 0, LONGEST_READING_M);
        const corner = cornerOf(reading.corner, `${at}.corner`, count, notes);
        if (span === null || corner === null) break;
        if (corner === span.from || corner === span.to) {
          notes.refuse(
            `${at}.corner`,
            'offset.own-corner',
            'Offset: the straightedge lies on this corner itself.',
            reading.corner,
            'a corner beside the straightedge',
          );
          break;
        }
        const put = (kind: 'along' | 'offset', size_m: number | null) => {
          if (size_m === null) return;
          const value_m = kind === 'offset' && reading.side === 'right' ? -size_m : size_m;
          const sigma_m = readingSigma_m(size_m, tape);
          readings.push({ kind, ...span, corner, value_m, sigma_m, path: notes.at(`${at}.${kind}`) });
        };
        put('along', along_m);
        put('offset', offset_m);
        break;
      }
      case 'bow': {
        const along_m = notes.length(
          `${at}.along`,
          reading.along,
          'way along the wall',
          0,
          LONGEST_READING_M,
        );
        const gap_m = notes.length(`${at}.gap`, reading.gap, 'gap under the straightedge', 0, WIDEST_GAP_M);
        if (span === null) break;
        if ((span.to - span.from + count) % count !== 1) {
          notes.refuse(
            `${at}.to`,
            'bow.not-a-side',
            'Wall bow: these corners are not the ends of one side, in order.',
            `${reading.from} to ${reading.to}`,
            'A to B, B to C and so on',
          );
          break;
        }
        if (along_m !== null && gap_m !== null)
          bows.push({
            ...span,
            along_m,
            gap_m: reading.wall === 'hollow' ? gap_m : -gap_m,
            path: notes.at(`${at}.gap`),
          });
      }
    }
  });
  if (notes.problems.length > 0) return bad(...notes.problems);
  const survey: Survey = {
    turns: document.corners.map(({ turn }) => turn),
    clockwise: document.order === 'clockwise',
    tape,
    readings,
    bows,
  };
  return good(survey, [...notes.warnings, ...impossibleTriangles(readings, system)]);
}

/** Gathers problems of one survey with their paths. */
class SurveyNotes {
  readonly problems: Problem[] = [];
  readonly warnings: Problem[] = [];
  readonly #root: string;
  readonly #system: System | undefined;

  constructor(root: string, system: System | undefined) {
    this.#root = root;
    this.#system = system;
  }

  at(path: string): string {
    return this.#root === '' ? path : `${this.#root}.${path}`;
  }

  refuse(path: string, code: string, message: string, read: string, allowed: string): void {
    this.problems.push({ path: this.at(path), code: `survey.${code}`, message, read, allowed });
  }

  /** null when nothing is typed, or what is typed cannot be used. */
  length(path: string, text: string, what: string, min: number, max: number): number | null {
    if (text.trim() === '') return null;
    const read = readLength_m(text, { path: this.at(path), what, min, max, system: this.#system });
    if (!read.ok) {
      this.problems.push(...read.problems);
      return null;
    }
    this.warnings.push(...read.warnings);
    return read.value;
  }
}

function cornerOf(letter: string, path: string, count: number, notes: SurveyNotes): number | null {
  const index = letter.charCodeAt(0) - 65;
  if (letter.length === 1 && index >= 0 && index < count) return index;
  notes.refuse(
    path,
    'corner.unknown',
    'There is no such corner.',
    letter,
    `A to ${cornerName(Math.max(0, count - 1))}`,
  );
  return null;
}

function spanOf(reading: SurveyReadingDocument, at: string, count: number, notes: SurveyNotes) {
  const from = cornerOf(reading.from, `${at}.from`, count, notes);
  const to = cornerOf(reading.to, `${at}.to`, count, notes);
  if (from === null || to === null) return null;
  if (from !== to) return { from, to };
  notes.refuse(
    `${at}.to`,
    'span.same',
    'A reading goes from one corner to another one.',
    reading.to,
    'another corner',
  );
  return null;
}
