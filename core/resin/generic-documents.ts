import type { ResinCardDocumentInput } from './card-document.ts';

/**
 * The labels of the two generic cards, as a shop would type them. Common practice, no source. The epoxy equivalents are chosen so
 * that the mix ratio gives the heat of the cards' own set (320 and 300 J/g, see `cards.ts`); they are no measured figures.
 */
export const QUICK_DOCUMENT: ResinCardDocumentInput = {
  format: 'pourwright resin 1',
  id: 'quick-20',
  name: 'Quick 20',
  description:
    'Fast top-coat resin: about 20 minutes in a 2.5 mm film at 24 C, next coat after 4 to 6 hours.',
  mix: { byVolume: '2:1', densityA: '1.13 g/mL', densityB: '1.00 g/mL', epoxyEquivalent: '223 g/eq' },
  label: [
    { kind: 'working time', value: '20 min', temperature: '24 C', film: '2.5 mm' },
    { kind: 'recoat opens', value: '4 to 6 h', temperature: '24 C' },
    { kind: 'viscosity', value: '1200 cP', temperature: '24 C' },
    { kind: 'largest film', value: '3 mm' },
  ],
  colourantLimit: '6 %',
};

export const REGULAR_DOCUMENT: ResinCardDocumentInput = {
  format: 'pourwright resin 1',
  id: 'regular-50',
  name: 'Regular 50',
  description:
    'Regular table-top resin: about 52 minutes in a 2.5 mm film at 24 C, next coat after about a day.',
  mix: { byVolume: '1:1', densityA: '1.12 g/mL', densityB: '0.98 g/mL', epoxyEquivalent: '183 g/eq' },
  label: [
    { kind: 'working time', value: '52 min', temperature: '24 C', film: '2.5 mm' },
    { kind: 'recoat opens', value: '24 h', temperature: '24 C' },
    { kind: 'full cure', value: '7 d', temperature: '24 C' },
    { kind: 'viscosity', value: '900 cP', temperature: '24 C' },
    { kind: 'largest film', value: '6 mm' },
  ],
  colourantLimit: '6 %',
};
