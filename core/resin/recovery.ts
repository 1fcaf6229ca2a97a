import { type RandomStream, randomStream } from '#core/numeric/random.ts';
import { COORDINATES, K1_PRIOR, modelAt, workingIntegral } from './coordinates.ts';
import { drawModels } from './ensemble.ts';
import { refit } from './fit-card.ts';
import { type Body, prepareBody } from './follow.ts';
import { FIGURE_LN, type Figure } from './label.ts';
import { priorMiddle } from './mode.ts';
import type { ResinCard, ResinModel } from './model.ts';
import { type OutlookTimes, outlookTimes } from './outlook.ts';
import { PRIOR_MODEL } from './prior-model.ts';
import { convertedTo, hardened, thickened, warmedTo } from './term.ts';

/**
 * Synthetic recovery: a resin drawn from the priors, a label written for it with the scatter that labels are taken to have, the
 * fit of that label, and where the truth lies among the draws of the posterior. If the ranges are honest, the truth is
 * at an even place, and 90 % of the 90 % ranges hold it (simulation-based calibration; Talts, Betancourt, Simpson, Vehtari and
 * Gelman 2018).
 */
export interface Recovery {
  readonly figures: readonly Figure[];
  /** Share of the draws below the truth, 0 to 1. */
  readonly place: {
    readonly workingTime: number;
    readonly gel: number;
    readonly flash: number;
    readonly dryHard: number;
  };
}

/** Working times that a label of such a resin says, s: 6 min to 4 h. Others are drawn again. */
const LABELLED_s = [360, 4 * 3600] as const;
const DRY_LIMIT_s = 14 * 86_400;

/** One recovery; the same seed gives the same. `draws` of the posterior, 20 to 2000. About 0.3 s. */
export function recover(seed: number, draws = 200): Recovery {
  const random = randomStream(seed);
  for (;;) {
    const heat = PRIOR_MODEL.heat_J_kg;
    const truth = drawTruth(random);
    const times = outlookTimes(PRIOR_MODEL)(truth);
    const { workingTime, gel, flash, dryHard } = times;
    if (workingTime === null || workingTime < LABELLED_s[0] || workingTime > LABELLED_s[1]) continue;
    if (gel === null || flash === null) continue;
    const figures = writeLabel(truth, dryHard, random);
    const card = refit({
      id: 'drawn',
      name: 'Drawn',
      description: '',
      model: PRIOR_MODEL,
      spread: NONE,
      mix: { volumeA: 1, volumeB: 1, densityA_kg_m3: 1120, densityB_kg_m3: 980 },
      label: [],
      figures,
      heatPrior_J_kg: heat,
      largestFilm_m: 0.003,
      colourantLimit: 0.05,
    });
    const forecast = outlookTimes(card.model);
    const each = drawModels(card, draws + 1, seed + 1)
      .slice(1)
      .map(forecast);
    const place = (pick: (one: OutlookTimes) => number | null, true_s: number) =>
      each.filter((one) => (pick(one) ?? Number.POSITIVE_INFINITY) < true_s).length / each.length;
    return {
      figures,
      place: {
        workingTime: place((one) => one.workingTime, workingTime),
        gel: place((one) => one.gel, gel),
        flash: place((one) => one.flash, flash),
        dryHard: place((one) => one.dryHard, dryHard ?? Number.POSITIVE_INFINITY),
      },
    };
  }
}

const NONE: ResinCard['spread'] = {
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

function drawTruth(random: RandomStream): ResinModel {
  const middle = priorMiddle({ base: PRIOR_MODEL, heat_J_kg: PRIOR_MODEL.heat_J_kg });
  const point = COORDINATES.map(({ sd }, i) => middle[i]! + sd * random.normal());
  const model = modelAt(point, PRIOR_MODEL);
  const lnK = K1_PRIOR.meanLn + K1_PRIOR.sdLn * random.normal();
  point[0] = Math.log(workingIntegral(model)) - lnK;
  return modelAt(point, PRIOR_MODEL);
}

/** A label for a resin: always a working time; a recoat time in two of three, a pot life in one of two; details often unsaid. */
function writeLabel(truth: ResinModel, dryHard_s: number | null, random: RandomStream): Figure[] {
  const chance = (share: number) => random.uniform() < share;
  const scatter = (sd: number) => Math.exp(sd * random.normal());
  const timeIn = (body: Body, watch: (model: ResinModel) => ReturnType<typeof warmedTo>) => {
    const question = { watches: [watch(truth)], samples_s: [], peak: false, limit_s: DRY_LIMIT_s };
    return Math.exp(prepareBody(body, PRIOR_MODEL)(truth, question).reachedLn[0]!);
  };
  const warmth = () => {
    const said = chance(0.6);
    return { said, temperature_K: said ? 294.15 + 6 * random.uniform() : 297.15 + 2 * random.normal() };
  };
  const figures: Figure[] = [];
  const add = (
    kind: Figure['kind'],
    time_s: number,
    told: Pick<Figure, 'film_m' | 'mass_kg' | 'temperature_K' | 'end'>,
  ) => figures.push({ kind, low: time_s, high: time_s, ...told });

  const work = warmth();
  const saysFilm = chance(0.6);
  const film_m = saysFilm ? 0.0015 + 0.002 * random.uniform() : 0.0025 * scatter(0.3);
  const working_s = timeIn({ film_m, temperature_K: work.temperature_K }, (m) =>
    thickened(m, m.workingRatio, work.temperature_K),
  );
  add('working time', working_s * scatter(FIGURE_LN.workingTime), {
    ...(saysFilm ? { film_m } : {}),
    ...(work.said ? { temperature_K: work.temperature_K } : {}),
  });
  if (dryHard_s !== null && dryHard_s < DRY_LIMIT_s && chance(2 / 3)) {
    const dry = warmth();
    const dry_s = timeIn({ film_m: 0.0025, temperature_K: dry.temperature_K }, (m) =>
      hardened(m, m.dryHardOffset_K),
    );
    if (dry_s < DRY_LIMIT_s) {
      add('recoat opens', dry_s * scatter(FIGURE_LN.recoat), {
        ...(dry.said ? { temperature_K: dry.temperature_K } : {}),
      });
    }
  }
  if (chance(0.5)) {
    const pot = warmth();
    const saysMass = chance(0.7);
    const mass_kg = saysMass ? 0.1 + 0.4 * random.uniform() : 0.125 * scatter(0.2);
    const saysEnd = chance(0.5);
    const toHot = saysEnd || chance(0.5);
    const pot_s = timeIn({ mass_kg, temperature_K: pot.temperature_K }, (m) =>
      toHot ? warmedTo(323.15) : convertedTo(m.gelConversion),
    );
    if (pot_s < 12 * 3600) {
      add('pot life', pot_s * scatter(FIGURE_LN.potLife), {
        ...(saysMass ? { mass_kg } : {}),
        ...(saysEnd ? { end: '50 C' as const } : {}),
        ...(pot.said ? { temperature_K: pot.temperature_K } : {}),
      });
    }
  }
  return figures;
}
