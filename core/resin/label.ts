import type { LabelFigure } from './model.ts';

/** What a pot life or a working time ends at, when the label or the method it cites says so. */
export const END_CRITERIA = ['viscosity doubled', '40 C', '50 C', 'gel', 'unknown'] as const;
export type EndCriterion = (typeof END_CRITERIA)[number];

/**
 * A label figure as data. `low` and `high` are the same for a single figure, else the range printed ("4 to 6 h"). SI: seconds
 * for times, Pa s for the viscosity, metres for the largest film. What is left out is not known, and widens what the
 * figure says (`figureSpread`).
 */
export interface Figure {
  readonly kind: LabelFigure['kind'];
  readonly low: number;
  readonly high: number;
  /** Mass in the cup. */
  readonly mass_kg?: number | undefined;
  /** Film it was measured on. */
  readonly film_m?: number | undefined;
  readonly temperature_K?: number | undefined;
  /** Of a pot life or working time. */
  readonly end?: EndCriterion | undefined;
}

/** What a figure is taken to be measured on when it does not say. Common practice, no source. */
export const UNSAID = {
  temperature_K: 297.15,
  film_m: 0.0025,
  mass_kg: 0.125,
} as const;

/**
 * Deviations of the logarithm of a figure (one standard deviation). Times of labels repeat to 10 to 15 % (working time), 12 to
 * 20 % (pot life), 25 to 35 % (recoat, dry hard); +-2 K of an unsaid temperature are 12 %, a film of 1.5 to 4 mm 8 %, a cup of
 * 100 to 150 g 5 %. A pot life whose end is not said lies between 50 C and gel: 15 % either way. Common practice, no source.
 */
export const FIGURE_LN = {
  workingTime: 0.12,
  potLife: 0.15,
  recoat: 0.3,
  dryHard: 0.25,
  viscosity: 0.15,
  /** Besides the 0.3 of a recoat time: 8 K of Tg at the opening of a window, 5 K at its closing, 4 K for handling, about 0.07 per K. */
  windowOpens: 0.63,
  windowCloses: 0.46,
  handle: 0.42,
  unsaidTemperature: 0.12,
  unsaidFilm: 0.08,
  unsaidMass: 0.05,
  unsaidEnd: 0.15,
} as const;

/** Deviation of the ratio a(t)/a(30 d) at a label's full cure, and of the peak of its largest film, K. */
export const FULL_CURE_SHARE = { least: 0.97, sd: 0.03 } as const;
export const LARGEST_FILM_PEAK = { most_K: 333.15, sd_K: 10 } as const;

/** A figure stands for a time in a cup: a pot life, or a working time given for a mass and no film. */
export function isCupFigure(figure: Figure): boolean {
  if (figure.kind === 'pot life') return figure.film_m === undefined || figure.mass_kg !== undefined;
  return figure.kind === 'working time' && figure.film_m === undefined && figure.mass_kg !== undefined;
}

/** The middle of a figure (geometric). */
export const middleOf = (figure: Figure): number => Math.sqrt(figure.low * figure.high);

/**
 * Deviation of a figure's logarithm: its kind's own, a printed range taken as 5 to 95 %, and what it leaves unsaid.
 *
 * @param windowed whether the label gives both ends of a recoat window: then "opens" is the chemical opening; alone it is
 *   a dry-hard figure.
 */
export function figureSpread(figure: Figure, windowed: boolean): number {
  const parts = [ownSpread(figure, windowed), Math.log(figure.high / figure.low) / (2 * 1.645)];
  if (figure.temperature_K === undefined) parts.push(FIGURE_LN.unsaidTemperature);
  if (figure.kind === 'viscosity') return Math.hypot(...parts);
  if (isCupFigure(figure)) {
    if (figure.mass_kg === undefined) parts.push(FIGURE_LN.unsaidMass);
    if ((figure.end ?? 'unknown') === 'unknown') parts.push(FIGURE_LN.unsaidEnd);
  } else if (figure.film_m === undefined && (figure.kind === 'working time' || figure.kind === 'pot life')) {
    parts.push(FIGURE_LN.unsaidFilm);
  }
  return Math.hypot(...parts);
}

function ownSpread(figure: Figure, windowed: boolean): number {
  switch (figure.kind) {
    case 'working time':
      return isCupFigure(figure) ? FIGURE_LN.potLife : FIGURE_LN.workingTime;
    case 'pot life':
      return isCupFigure(figure) ? FIGURE_LN.potLife : FIGURE_LN.workingTime;
    case 'recoat opens':
      return windowed ? FIGURE_LN.windowOpens : FIGURE_LN.recoat;
    case 'recoat closes':
      return FIGURE_LN.windowCloses;
    case 'dry hard':
      return FIGURE_LN.dryHard;
    case 'handle':
      return FIGURE_LN.handle;
    case 'viscosity':
      return FIGURE_LN.viscosity;
    case 'full cure':
    case 'largest film':
      return 0;
  }
}
