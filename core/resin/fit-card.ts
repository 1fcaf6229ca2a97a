import { fitResin } from './fit.ts';
import { prepareBody } from './follow.ts';
import { COATING_EPOXY_EQUIVALENT_g_eq, heatFromRatio, massRatioOf } from './heat-of-reaction.ts';
import { type Figure, middleOf, UNSAID } from './label.ts';
import { labelTerms, sayFigure } from './label-terms.ts';
import { type FitRequest, findMode, type ModeFit } from './mode.ts';
import type { MixRatio, ResinCard, ResinModel, ResinSpread } from './model.ts';
import { observationTerms } from './observation-terms.ts';
import type { Observation } from './observations.ts';
import { drawPosterior } from './posterior.ts';
import { PRIOR_MODEL } from './prior-model.ts';
import type { CardRead } from './read-card.ts';
import { accountOf } from './tension.ts';

/** What a card is taken to allow when its label does not say. Common practice, no source. */
export const UNSAID_LIMITS = { largestFilm_m: 0.003, colourantLimit: 0.05 } as const;

/**
 * Fits a card that was read: a `ResinCard` with model, posterior and account, all plain data, so that a store keeps it as it
 * is and a forecast draws from it without fitting again. About 0.1 to 0.2 s.
 *
 * @throws RangeError on figures no reader lets through.
 */
export function fitCard(read: CardRead): ResinCard {
  const { label } = read;
  const largest = label.figures.filter((each) => each.kind === 'largest film');
  const heat_J_kg = heatFromRatio(
    massRatioOf(label.mix),
    label.epoxyEquivalent_g_eq ?? COATING_EPOXY_EQUIVALENT_g_eq,
  );
  return refit({
    id: read.id,
    name: read.name,
    description: read.description,
    model: { ...PRIOR_MODEL, heat_J_kg, density_kg_m3: mixDensity(label.mix) },
    spread: NO_SPREAD,
    mix: label.mix,
    label: read.texts,
    figures: label.figures,
    observations: read.observations,
    heatPrior_J_kg: heat_J_kg,
    largestFilm_m:
      largest.length === 0 ? UNSAID_LIMITS.largestFilm_m : Math.min(...largest.map((each) => each.high)),
    colourantLimit: label.colourantLimit ?? UNSAID_LIMITS.colourantLimit,
  });
}

/** The card with its observations exchanged and fitted again; its label stays. */
export function withObservations(card: ResinCard, observations: readonly Observation[]): ResinCard {
  return refit({ ...card, observations });
}

/** Fits a card to its figures and observations. */
export function refit(card: ResinCard): ResinCard {
  const { figures, plateau, request, most } = settle(card);
  const fit = fitResin(request, most);
  const seen = (card.observations ?? []).filter((each) => !each.withdrawn);
  const sources = request.terms.map((_, i) => (i < figures.length ? 'label' : 'shop') as 'label' | 'shop');
  if (seen.length + figures.length !== request.terms.length) throw new RangeError('terms are miscounted');
  return {
    ...card,
    model: fit.model,
    posterior: fit.posterior,
    spread: spreadOf(drawPosterior(fit.posterior, fit.model, SPREAD_DRAWS, 1)),
    account: { ...accountOf(request.terms, sources, most), plateau },
  };
}

/** Kinds of figures that are told by the glass transition, and so can lie on the plateau. */
const HARD: readonly Figure['kind'][] = ['recoat opens', 'recoat closes', 'dry hard', 'handle'];
const PLATEAU_AT_s = 30 * 86_400;
const PLATEAU_WITHIN = 0.01;

/**
 * The mode of the fit without the figures that lie on the plateau: where the model's conversion at the label's time is within
 * 0.01 of that after 30 days, any later time fits as well, and the figure would only bend the other constants.
 */
function settle(card: ResinCard): {
  readonly figures: readonly Figure[];
  readonly plateau: readonly string[];
  readonly request: FitRequest;
  readonly most: ModeFit;
} {
  const heat_J_kg = card.heatPrior_J_kg ?? card.model.heat_J_kg;
  const seen = observationTerms(card.observations ?? []);
  const ask = (figures: readonly Figure[]): FitRequest => ({
    base: card.model,
    heat_J_kg,
    terms: [...labelTerms(figures), ...seen],
  });
  const all = card.figures ?? [];
  const request = ask(all);
  const most = findMode(request);
  const flat = all.filter((figure) => HARD.includes(figure.kind) && onPlateau(figure, most.mode));
  if (flat.length === 0) return { figures: all, plateau: [], request, most };
  const figures = all.filter((figure) => !flat.includes(figure));
  const again = ask(figures);
  return { figures, plateau: flat.map(sayFigure), request: again, most: findMode(again) };
}

function onPlateau(figure: Figure, model: ResinModel): boolean {
  const time_s = middleOf(figure);
  if (time_s >= PLATEAU_AT_s) return true;
  const body = {
    film_m: figure.film_m ?? UNSAID.film_m,
    temperature_K: figure.temperature_K ?? UNSAID.temperature_K,
  };
  const samples_s = [time_s, PLATEAU_AT_s];
  const { samples } = prepareBody(body, model)(model, { watches: [], samples_s, peak: false, limit_s: 0 });
  return samples[0]!.conversion > samples[1]!.conversion - PLATEAU_WITHIN;
}

/** Density of a mix of two liquids that keep their volumes, kg/m3. */
function mixDensity(mix: MixRatio): number {
  const { volumeA, volumeB, densityA_kg_m3, densityB_kg_m3 } = mix;
  return (volumeA * densityA_kg_m3 + volumeB * densityB_kg_m3) / (volumeA + volumeB);
}

const SPREAD_DRAWS = 100;

const NO_SPREAD: ResinSpread = {
  kRefLn: 0,
  rhoLn: 0,
  order: 0,
  activation_J_mol: 0,
  heatLn: 0,
  viscosityRefLn: 0,
  workingRatioLn: 0,
  gelConversion: 0,
  tgFull_K: 0,
  dryHardOffset_K: 0,
};

/** Standard deviations of the constants themselves, over draws. */
function spreadOf(models: readonly ResinModel[]): ResinSpread {
  const of = (pick: (model: ResinModel) => number): number => {
    const values = models.map(pick);
    const middle = values.reduce((sum, value) => sum + value, 0) / values.length;
    return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / values.length);
  };
  return {
    kRefLn: of((m) => Math.log(m.kRef_per_s)),
    rhoLn: of((m) => Math.log(m.rho)),
    order: of((m) => m.order),
    activation_J_mol: of((m) => m.activation_J_mol),
    heatLn: of((m) => Math.log(m.heat_J_kg)),
    viscosityRefLn: of((m) => Math.log(m.viscosityRef_Pa_s)),
    workingRatioLn: of((m) => Math.log(m.workingRatio)),
    gelConversion: of((m) => m.gelConversion),
    tgFull_K: of((m) => m.tgFull_K),
    dryHardOffset_K: of((m) => m.dryHardOffset_K),
  };
}
