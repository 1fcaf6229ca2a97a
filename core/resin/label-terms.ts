import { formatDuration } from '#core/quantity/format.ts';
import type { Body, Watch } from './follow.ts';
import {
  type EndCriterion,
  type Figure,
  FULL_CURE_SHARE,
  figureSpread,
  isCupFigure,
  LARGEST_FILM_PEAK,
  middleOf,
  UNSAID,
} from './label.ts';
import { GAS_CONSTANT_J_molK, REFERENCE_K, type ResinModel } from './model.ts';
import { convertedTo, hardened, type Term, thickened, warmedTo } from './term.ts';

const HOUR_s = 3600;
const DAY_s = 86_400;
/** Glass transition of the film against its temperature when a recoat window opens and closes, and when it is handled, K. */
const WINDOW_OPENS_K = -15;
const WINDOW_CLOSES_K = 2;
const HANDLE_K = 12;

/** What a label says, as terms of the fit. */
export function labelTerms(figures: readonly Figure[]): Term[] {
  const windowed =
    figures.some((each) => each.kind === 'recoat opens') &&
    figures.some((each) => each.kind === 'recoat closes');
  return figures.map((figure) => termOf(figure, windowed));
}

function termOf(figure: Figure, windowed: boolean): Term {
  const temperature_K = figure.temperature_K ?? UNSAID.temperature_K;
  const film: Body = { film_m: figure.film_m ?? UNSAID.film_m, temperature_K };
  const sd = figureSpread(figure, windowed);
  const said = sayFigure(figure);
  const time_s = middleOf(figure);
  const plain = (): Omit<Term, 'residuals'> => ({
    said,
    body: film,
    watches: () => [],
    samples_s: [],
    peak: false,
    limit_s: 0,
    count: 1,
  });
  const timed = (body: Body, limit_s: number, watches: (model: ResinModel) => readonly Watch[]): Term => ({
    said,
    body,
    watches,
    samples_s: [],
    peak: false,
    limit_s,
    told: { time_s, sdLn: sd },
    count: 1,
    // The mean over the watches: a pot life of unknown end lies between two of them.
    residuals: (_model, { reachedLn }) => [
      (reachedLn.reduce((sum, value) => sum + value, 0) / reachedLn.length - Math.log(time_s)) / sd,
    ],
  });
  switch (figure.kind) {
    case 'working time':
    case 'pot life': {
      if (isCupFigure(figure)) {
        const cup: Body = { mass_kg: figure.mass_kg ?? UNSAID.mass_kg, temperature_K };
        return timed(cup, 8 * time_s, (model) => cupEnd(model, figure.end ?? 'unknown', temperature_K));
      }
      return timed(film, 8 * time_s, (model) => [filmEnd(model, figure.end, temperature_K)]);
    }
    case 'recoat opens':
      return timed(film, hardLimit(time_s), (model) => [
        hardened(model, windowed ? WINDOW_OPENS_K : model.dryHardOffset_K),
      ]);
    case 'dry hard':
      return timed(film, hardLimit(time_s), (model) => [hardened(model, model.dryHardOffset_K)]);
    case 'recoat closes':
      return timed(film, hardLimit(time_s), (model) => [hardened(model, WINDOW_CLOSES_K)]);
    case 'handle':
      return timed(film, hardLimit(time_s), (model) => [hardened(model, HANDLE_K)]);
    case 'full cure':
      return {
        ...plain(),
        samples_s: [time_s, Math.max(30 * DAY_s, 2 * time_s)],
        residuals: (_model, { samples }) => [
          Math.max(0, FULL_CURE_SHARE.least - samples[0]!.conversion / samples[1]!.conversion) /
            FULL_CURE_SHARE.sd,
        ],
      };
    case 'largest film':
      return {
        ...plain(),
        body: { film_m: figure.high, temperature_K },
        limit_s: 2 * DAY_s,
        peak: true,
        residuals: (_model, { peak_K }) => [
          Math.max(0, peak_K - LARGEST_FILM_PEAK.most_K) / LARGEST_FILM_PEAK.sd_K,
        ],
      };
    case 'viscosity': {
      const factor = (model: ResinModel) =>
        (model.viscosityActivation_J_mol / GAS_CONSTANT_J_molK) * (1 / temperature_K - 1 / REFERENCE_K);
      return {
        ...plain(),
        body: null,
        residuals: (model) => [(Math.log(model.viscosityRef_Pa_s / middleOf(figure)) + factor(model)) / sd],
      };
    }
  }
}

/** Times of hardness are followed at least three days, so that a slow model still says how slow it is. */
const hardLimit = (time_s: number): number => Math.max(72 * HOUR_s, 3 * time_s);

function cupEnd(model: ResinModel, end: EndCriterion, air_K: number): readonly Watch[] {
  switch (end) {
    case '40 C':
      return [warmedTo(313.15)];
    case '50 C':
      return [warmedTo(323.15)];
    case 'gel':
      return [convertedTo(model.gelConversion)];
    case 'viscosity doubled':
      return [thickened(model, 2, air_K)];
    case 'unknown':
      return [warmedTo(323.15), convertedTo(model.gelConversion)];
  }
}

function filmEnd(model: ResinModel, end: EndCriterion | undefined, air_K: number): Watch {
  if (end === 'gel') return convertedTo(model.gelConversion);
  return thickened(model, end === 'viscosity doubled' ? 2 : model.workingRatio, air_K);
}

/** "working time 52 min", "largest film 6 mm". */
export function sayFigure(figure: Figure): string {
  const { kind, low, high } = figure;
  if (kind === 'viscosity') return `viscosity ${Math.round(1000 * middleOf(figure))} mPa s`;
  if (kind === 'largest film') return `largest film ${Number((1000 * high).toFixed(1))} mm`;
  const time = (t: number) => formatDuration(t);
  return `${kind} ${low === high ? time(low) : `${time(low)} to ${time(high)}`}`;
}
