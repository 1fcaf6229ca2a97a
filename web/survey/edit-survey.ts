/** Changes to the list of corners and readings. */
import type { SurveyDocument, SurveyReadingDocument } from '#core/piece/survey/document.ts';
import { cornerName, MOST_CORNERS } from '#core/piece/survey/survey.ts';

/** One corner more after the last, with empty rows for its two sides. */
export function addCorner(document: SurveyDocument): SurveyDocument {
  const count = document.corners.length;
  if (count >= MOST_CORNERS) return document;
  const [last, added] = [cornerName(Math.max(0, count - 1)), cornerName(count)];
  return {
    ...document,
    corners: [...document.corners, { turn: 'out' }],
    readings: [...document.readings, newDistance(last, added), newDistance(added, 'A')],
  };
}

/** The last corner taken away, with its rows that hold nothing; rows with a reading stay and are told. */
export function removeCorner(document: SurveyDocument): SurveyDocument {
  const gone = cornerName(document.corners.length - 1);
  if (document.corners.length <= 3) return document;
  return {
    ...document,
    corners: document.corners.slice(0, -1),
    readings: document.readings.filter((reading) => !names(reading).includes(gone) || !isEmpty(reading)),
  };
}

function names(reading: SurveyReadingDocument): string[] {
  return [reading.from, reading.to, ...(reading.kind === 'offset' ? [reading.corner] : [])];
}

function isEmpty(reading: SurveyReadingDocument): boolean {
  const texts =
    reading.kind === 'distance'
      ? [reading.length]
      : reading.kind === 'offset'
        ? [reading.along, reading.offset]
        : [reading.along, reading.gap];
  return texts.every((text) => text.trim() === '');
}

export function newDistance(from: string, to: string): SurveyReadingDocument {
  return { kind: 'distance', from, to, length: '' };
}

export function newOffset(document: SurveyDocument): SurveyReadingDocument {
  const corner = cornerName(document.corners.length > 2 ? 2 : 0);
  return { kind: 'offset', from: 'A', to: 'B', corner, along: '', offset: '', side: sideOf(document) };
}

/** The piece lies to the left of the way round when corners are named counter-clockwise. */
function sideOf(document: SurveyDocument): 'left' | 'right' {
  return document.order === 'clockwise' ? 'right' : 'left';
}

export function newBow(): SurveyReadingDocument {
  return { kind: 'bow', from: 'A', to: 'B', along: '', gap: '', wall: 'hollow' };
}

export function addReading(document: SurveyDocument, reading: SurveyReadingDocument): SurveyDocument {
  return { ...document, readings: [...document.readings, reading] };
}
