import { drawModels, type ReachedRange, rangeOf } from './ensemble.ts';
import { refit } from './fit-card.ts';
import { type Body, prepareBody } from './follow.ts';
import { UNSAID } from './label.ts';
import type { ResinCard, ResinModel } from './model.ts';
import { sayObservation } from './observation-terms.ts';
import type { Observation } from './observations.ts';
import { convertedTo, hardened, thickened } from './term.ts';

/** What a resin does in the label's film (2.5 mm on 18 mm MDF) and in a cup of 1 kg, at 24 C. */
export interface Outlook {
  readonly workingTime: ReachedRange | null;
  readonly gel: ReachedRange | null;
  readonly dryHard: ReachedRange | null;
  /** A cup of 1 kg is at its hottest. */
  readonly flash: ReachedRange | null;
}

/** The same of one model, s; null: not within `OUTLOOK_SPAN_s`. */
export interface OutlookTimes {
  readonly workingTime: number | null;
  readonly gel: number | null;
  readonly dryHard: number | null;
  readonly flash: number | null;
}

/** A film and a cup are followed this long: 30 days, 2 days. */
export const OUTLOOK_SPAN_s = { film: 30 * 86_400, cup: 2 * 86_400 } as const;
export const OUTLOOK_DRAWS = 200;
const AIR_K = UNSAID.temperature_K;
const FILM: Body = { film_m: UNSAID.film_m, temperature_K: AIR_K };
const CUP: Body = { mass_kg: 1, temperature_K: AIR_K };

/** Outlook of single models that share conductivity and density with `base`. About 0.3 ms each. */
export function outlookTimes(base: ResinModel): (model: ResinModel) => OutlookTimes {
  const film = prepareBody(FILM, base);
  const cup = prepareBody(CUP, base);
  const limit = Math.log(OUTLOOK_SPAN_s.film) * (1 - 1e-9);
  return (model) => {
    const { reachedLn } = film(model, {
      watches: [
        thickened(model, model.workingRatio, AIR_K),
        convertedTo(model.gelConversion),
        hardened(model, model.dryHardOffset_K),
      ],
      samples_s: [],
      peak: false,
      limit_s: OUTLOOK_SPAN_s.film,
    });
    const [workingTime, gel, dryHard] = reachedLn.map((ln) => (ln < limit ? Math.exp(ln) : null));
    const { peak_s } = cup(model, { watches: [], samples_s: [], peak: true, limit_s: OUTLOOK_SPAN_s.cup });
    return {
      workingTime: workingTime!,
      gel: gel!,
      dryHard: dryHard!,
      flash: peak_s < OUTLOOK_SPAN_s.cup ? peak_s : null,
    };
  };
}

/** Outlook of a card with its ranges (5, 50, 95 % of the draws). About 0.15 s with the usual 200 draws. */
export function outlookOf(card: ResinCard, draws: number = OUTLOOK_DRAWS, seed = 1): Outlook {
  const times = outlookTimes(card.model);
  const each = drawModels(card, draws, seed).map(times);
  const range = (pick: (one: OutlookTimes) => number | null) => rangeOf(each.map(pick));
  return {
    workingTime: range((one) => one.workingTime),
    gel: range((one) => one.gel),
    dryHard: range((one) => one.dryHard),
    flash: range((one) => one.flash),
  };
}

/** What an observation taught: the outlook without and with it, and the card that holds it. */
export interface Taught {
  readonly said: string;
  readonly before: Outlook;
  readonly after: Outlook;
  /** Width of each range after, as a share of before (both of the logarithm); null where there is no range. */
  readonly narrowed: {
    readonly workingTime: number | null;
    readonly gel: number | null;
    readonly flash: number | null;
  };
  readonly card: ResinCard;
}

/**
 * What one more observation teaches: fits the card without it (one with the same id is taken out first) and with it. Two
 * fits and two outlooks, about half a second.
 */
export function whatItTaught(card: ResinCard, observation: Observation): Taught {
  const others = (card.observations ?? []).filter((each) => each.id !== observation.id);
  const without = refit({ ...card, observations: others });
  const together = refit({ ...card, observations: [...others, { ...observation, withdrawn: false }] });
  const before = outlookOf(without);
  const after = outlookOf(together);
  const share = (from: ReachedRange | null, to: ReachedRange | null) =>
    from === null || to === null
      ? null
      : Math.log(to.high_s / to.low_s) / Math.max(1e-6, Math.log(from.high_s / from.low_s));
  return {
    said: sayObservation(observation),
    before,
    after,
    narrowed: {
      workingTime: share(before.workingTime, after.workingTime),
      gel: share(before.gel, after.gel),
      flash: share(before.flash, after.flash),
    },
    card: together,
  };
}
