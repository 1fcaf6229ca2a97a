/** What a new coat starts from. Every figure is a shop default a maker edits: common practice, no source. */
import type { CoatDocument } from '#core/job/document.ts';
import type { System } from '#core/quantity/units.ts';

export const COAT_KINDS: readonly CoatDocument['kind'][] = [
  'seal coat',
  'colour coat',
  'clear buffer',
  'flood coat',
];

const films: Readonly<Record<CoatDocument['kind'], Readonly<Record<System, string>>>> = {
  'seal coat': { us: '0.5 fl oz/sq ft', metric: '0.15 mm' },
  'colour coat': { us: '4 fl oz/sq ft', metric: '1.3 mm' },
  'clear buffer': { us: '1 fl oz/sq ft', metric: '0.3 mm' },
  'flood coat': { us: '5 fl oz/sq ft', metric: '1.6 mm' },
};

export function newCoat(
  kind: CoatDocument['kind'],
  id: string,
  before: CoatDocument | undefined,
  system: System,
): CoatDocument {
  return {
    id,
    name: '',
    kind,
    resin: before?.resin ?? '',
    film: films[kind][system],
    faceFilm: kind === 'seal coat' ? '0.15 mm' : '0.5 mm',
    edges: before?.edges ?? 'wrapped',
    colours: [],
    look: null,
    allowance: '10 %',
    resinTemperature: before?.resinTemperature ?? '',
    startsAt: '',
    crew: before?.crew ?? 1,
    largestCup: before?.largestCup ?? '',
    pieces: before?.pieces ?? [],
  };
}

/** Swatches offered to a new colour, in turn, so that two colours are told apart on the drawing. */
export const SWATCHES = [
  '#e8e2d4',
  '#3f4a52',
  '#b08d57',
  '#7d8f95',
  '#1f2a30',
  '#8a4b38',
  '#cbb99a',
  '#4f6b5a',
];
