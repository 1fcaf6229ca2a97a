/** Why a stage is where it is: what is compared, in words for the screen, and what it rests on. */
export interface StageCriterion {
  readonly criterion: string;
  readonly source: string;
}

export interface CupCriterion extends StageCriterion {
  readonly temperature_K: number;
  readonly conversion: number;
}

const CUP_SOURCE =
  'Shop default: a cup thins as it heats, so its end is told by temperature and conversion, not by viscosity.';

/** A cup is at a stage when its mean temperature or its conversion gets there, whichever is first. */
export const CUP_CRITERIA = {
  warm: {
    temperature_K: 308.15,
    conversion: 0.05,
    criterion: 'The cup is at 35 C, or 5 % of the reaction is used up',
    source: CUP_SOURCE,
  },
  pourNow: {
    temperature_K: 313.15,
    conversion: 0.08,
    criterion: 'The cup is at 40 C, or 8 % of the reaction is used up',
    source: CUP_SOURCE,
  },
  danger: {
    temperature_K: 323.15,
    conversion: 0.15,
    criterion: 'The cup is at 50 C, or 15 % of the reaction is used up: it runs away within minutes',
    source: CUP_SOURCE,
  },
} as const satisfies Record<string, CupCriterion>;

/** Thresholds of a film; those that belong to a resin (working ratio, dry-hard offset, gel) are on its card. */
export const FILM_CRITERIA = {
  workingEnd: {
    criterion: 'The film is as many times thicker than the fresh mix as its card says (twice, by default)',
    source: 'Working time as a change of viscosity (EN 14022, ISO 9514); the ratio is fitted to the label',
  },
  noMoreLevelling: {
    ratio: 10,
    criterion: 'The film is ten times thicker than the fresh mix',
    source: 'Shop default',
  },
  gel: {
    criterion: 'The conversion is at the gel point: nothing flows any more',
    source: 'Stockmayer 1952; Macosko and Miller 1976',
  },
  recoatOpens: {
    pastGel: 0.05,
    criterion: 'The conversion is 0.05 past gel: the next coat cannot stir this one',
    source: 'Shop default; chemical window of ASTM D16',
  },
  recoatBestFrom: {
    offset_K: -15,
    criterion: 'The glass transition is within 15 K of the film: tacky, and past the opening',
    source: 'Shop default',
  },
  recoatBestTo: {
    offset_K: -5,
    criterion: 'The glass transition is within 5 K of the film: tack is going',
    source: 'Shop default',
  },
  recoatCloses: {
    offset_K: 0,
    criterion:
      'The glass transition is at the temperature of the film: what could bond is freezing. Abrade from here',
    source: 'Vitrification (Gillham, time-temperature-transformation diagram)',
  },
  dryHard: {
    criterion: 'The glass transition is as far above the film as the card says (8 K, by default)',
    source: 'Dry-hard of ASTM D1640; the offset is fitted to the label',
  },
  sandable: {
    offset_K: 12,
    criterion: 'The glass transition is 12 K above the film: dust, not gum',
    source: 'Shop default; the reaction freezes there',
  },
  handle: {
    offset_K: 12,
    criterion: 'The glass transition is 12 K above the film: move, unmask, sand',
    source: 'Shop default; the reaction freezes there',
  },
  inUse: {
    share: 0.97,
    criterion: 'The conversion is at 97 % of what 30 days give: light use',
    source: 'Shop default',
  },
  fullCure: {
    share: 0.985,
    span_s: 30 * 86_400,
    criterion: 'The conversion is at 98.5 % of what 30 days give',
    source: 'Shop default; about 7 days at 24 C, as labels say. Cure goes on with the logarithm of time',
  },
} as const satisfies Record<string, StageCriterion & Readonly<Record<string, unknown>>>;
