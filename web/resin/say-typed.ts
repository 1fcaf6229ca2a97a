import type { ObservationDocument } from '#core/resin/card-document.ts';

/** An observation in the words and units it was typed in. */
export function sayTyped(seen: ObservationDocument): string {
  const air = seen.air === '' ? '' : ` at ${seen.air}`;
  const cup = `cup of ${seen.mass}`;
  const film = `film of ${seen.film}`;
  switch (seen.kind) {
    case 'cup temperatures':
      return `${seen.readings.length} readings in a ${cup}${air}.`;
    case 'cup time':
      return `A ${cup} reached ${seen.reaches} after ${seen.time}${air}.`;
    case 'working end':
      return `A ${film} could no longer be worked after ${seen.time}${air}.`;
    case 'gel':
      return `A ${seen.film === '' ? cup : film} gelled after ${seen.time}${air}.`;
    case 'touch':
      return `A ${film} was dry to the touch after ${seen.time}${air}.`;
    case 'recoat':
      return `The next coat on a ${film} after ${seen.time}${air}: ${seen.result}.`;
  }
}
