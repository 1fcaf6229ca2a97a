/** What to mind in this pour, each with its figure. General safety sentences stand with the job; these are computed. */
import { hangingDrop } from '#core/film/drips.ts';
import type { Coat, CoatQuantity, CupRecipe } from '#core/mix/coat.ts';
import { judgeRatio } from '#core/mix/ratio-verdict.ts';
import {
  formatDuration,
  formatFilm,
  formatMass,
  formatPercent,
  formatTemperature,
  formatVolume,
} from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import type { CupForecast, FilmAnswers } from './plan.ts';

export interface CautionsRequest {
  readonly coat: Coat;
  readonly quantity: CoatQuantity;
  readonly cups: readonly CupRecipe[];
  readonly forecasts: readonly CupForecast[];
  readonly answers: FilmAnswers;
  /** When the edges are worked, and why; null without edges. */
  readonly wrap: string | null;
  readonly scaleStep_kg: number;
  /** What the label's recoat figure and the film's own window disagree about. */
  readonly recoat: string | null;
  /** Why no cup is safe, if so. */
  readonly noSafeCup: string | null;
  /** The largest cup allowed here, by heat and by the maker, kg. */
  readonly allowed_kg: number;
  /** Units of the figures; masses are grams in both. */
  readonly system: System;
}

/** A cup that gets hotter than this burns and fumes. */
const HOT_K = 333.15;
/** More than this left in a cup runs away unseen. Common practice, no source. */
const LEFT_OVER_m3 = 250e-6;
/** Below this resin is thick and holds bubbles. Common practice, no source. */
const COLD_RESIN_K = 291.15;
/** What cold containers are warmed to. Common practice, no source. */
const WARMED_RESIN_K = 297.15;

const practice = '(common practice, no source)';

/** Sentences, the most pressing first. */
export function cautionsOf(request: CautionsRequest): readonly string[] {
  const { coat, quantity, cups, forecasts, answers, scaleStep_kg, recoat, noSafeCup, allowed_kg, system } =
    request;
  const degrees = (temperature_K: number) => formatTemperature(temperature_K, system);
  const said: string[] = [];
  if (noSafeCup !== null) said.push(noSafeCup);
  const heaviest = cups.reduce((best, cup) => (cup.mass_kg > best.mass_kg ? cup : best));
  if (heaviest.mass_kg > allowed_kg * 1.01 + 6 * scaleStep_kg)
    said.push(
      `Cups of ${formatMass(allowed_kg)} would be about ${Math.ceil(quantity.mass_kg / allowed_kg)} for this coat; the plan stops at about a hundred and makes them up to ${formatMass(heaviest.mass_kg)}. Divide the piece or the film.`,
    );
  const hot = forecasts[heaviest.number - 1]!;
  const at = hot.pourNow;
  if (hot.peak_K > HOT_K && at !== null)
    said.push(
      `Cup ${heaviest.number} (${formatMass(heaviest.mass_kg)}) left standing has to be out ${formatDuration(at.low_s - hot.mixed_s)} to ${formatDuration(at.high_s - hot.mixed_s)} after its parts meet; after that it runs away and its middle may reach ${degrees(hot.peak_K)}. Keep a metal tray ready outdoors.`,
    );
  if (heaviest.volume_m3 > LEFT_OVER_m3)
    said.push(
      `If the pour has to stop, do not leave more than ${formatVolume(LEFT_OVER_m3, system, { decimals: 0 })} of mixed resin in a cup; these hold up to ${formatVolume(heaviest.volume_m3, system)}. Spread what is left thin in a tray outdoors ${practice}.`,
    );
  const ink = coat.colours.find((colour) => colour.colourant === 'alcohol ink');
  said.push(
    ink === undefined
      ? 'Torch: no flame while alcohol, cleaner or solvent is wet or can be smelled in the room.'
      : `${ink.name} holds alcohol ink: no torch and no heat gun until it has evaporated and the room is aired; its vapour burns.`,
  );
  said.push(
    `Gloves and sleeves for ${formatMass(quantity.mass_kg)} of uncured resin: it sensitises the skin. Follow the product's safety data sheet.`,
  );
  if (answers.peak_K > HOT_K)
    said.push(
      `The film itself gets up to ${degrees(answers.peak_K)}: it may yellow, print the board or shrink. Pour it in two coats.`,
    );
  if (coat.film_m > coat.card.largestFilm_m * 1.0001)
    said.push(
      `${formatFilm(coat.film_m, system)} is more than the ${formatFilm(coat.card.largestFilm_m, system)} this resin allows in one pour.`,
    );
  if (coat.resin.temperature_K < COLD_RESIN_K)
    said.push(
      `Resin at ${degrees(coat.resin.temperature_K)} is thick and keeps its bubbles: warm the closed containers to ${degrees(WARMED_RESIN_K)} ${practice}.`,
    );
  const run = quantity.lines.find((line) => line.key === 'run-off');
  const length_m = run?.working.length_m ?? 0;
  if (
    run !== undefined &&
    length_m > 0 &&
    run.high_m3 / length_m > hangingDrop(coat.card.model).storedPerMetre_m2
  )
    said.push(
      `About ${formatVolume(run.volume_m3, system)} (${formatVolume(run.low_m3, system)} to ${formatVolume(run.high_m3, system)}) runs over the edges: cover the floor, and scrape what hangs.`,
    );
  if (request.wrap !== null) said.push(request.wrap);
  if (coat.wrapEdges && answers.faceHolds_m > 0 && answers.faceHolds_m < 0.8 * coat.faceFilm_m)
    said.push(
      `Faces keep about ${formatFilm(answers.faceHolds_m, system, { as: 'thickness' })} of the ${formatFilm(coat.faceFilm_m, system, { as: 'thickness' })} put on, whatever is poured: plan another edge pass, or thicken what goes on the faces.`,
    );
  if (recoat !== null) said.push(recoat);
  for (const cup of cups) {
    const { says } = judgeRatio(cup, scaleStep_kg);
    if (says !== null) said.push(says);
  }
  said.push(...smallTints(coat, cups, scaleStep_kg));
  return said;
}

/** Tints the scale cannot weigh to within a tenth. */
function smallTints(coat: Coat, cups: readonly CupRecipe[], step_kg: number): readonly string[] {
  return coat.colours.flatMap((colour) => {
    if (colour.load === 0) return [];
    const own = cups.find((cup) => cup.colour === colour.name && cup.colourant === colour.colourant);
    if (own === undefined) return [];
    const wanted_kg = (own.partA_kg + own.partB_kg) * colour.load;
    if (wanted_kg >= 5 * step_kg) return [];
    return [
      `${colour.name} wants ${formatMass(wanted_kg, 'metric', { decimals: 2 })} of ${colour.colourant} a cup (${formatPercent(colour.load, { decimals: 2 })}), too little for a scale of ${formatMass(step_kg, 'metric')} steps: weigh it on a finer one, or thin a larger amount with part A and count that.`,
    ];
  });
}
