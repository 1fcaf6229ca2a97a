/**
 * What a colourant does to light, in three linear sRGB channels: absorption and scattering of the mixed resin for each unit of
 * load. Known from a drawdown, or guessed from a picked colour and how well it hides. Kubelka-Munk is for what scatters and absorbs
 * (pastes, pigments, dyes); flakes gleam on top of it and are never predicted, only shown (ISO 6504-1 leaves metallics out too).
 */
import { brent } from '#core/numeric/brent.ts';
import { notNegative, positive } from '#core/quantity/domain.ts';
import { contrastRatio, readDrawdown } from './drawdown.ts';
import { absorptionToScattering, layer, over } from './kubelka-munk.ts';
import { luminance } from './lab.ts';
import type { Flake } from './look.ts';
import type { LinearRgb, Triple } from './srgb.ts';
import { internalOf, MIRRORED_NORMAL, seen } from './surface.ts';

/** dye: absorbs only; paste: scatters too; flake: gleams as well. */
export type Body = 'dye' | 'paste' | 'flake';

/** K and S for each unit of load (mass of colourant per mass of mixed resin), 1/m. */
export interface Colourant {
  readonly body: Body;
  readonly evidence: 'picked' | 'drawdown';
  readonly absorption_per_m: Triple;
  readonly scattering_per_m: Triple;
  readonly flake: FlakeKind | null;
}

export interface FlakeKind {
  readonly gleam: LinearRgb;
  readonly size_m: number;
  readonly spread_rad: number;
}

/** A card as in ASTM D2805 practice: black near 0.02, white near 0.82, gloss left out. */
export const CARD = { black: 0.02, white: 0.82 } as const;

/** Film by which a maker tells how well a mix hides. */
export const HIDING_FILM_M = 1e-3;

/** Contrast ratios of that film for the words: fully is what ISO 6504 and ASTM D2805 call hiding, the rest are shop words, no source. */
export const HIDING_WORDS = { fully: 0.98, well: 0.9, half: 0.5, hardly: 0.2 } as const;

/** Light nearer 0 or to white than this tells nothing of a channel: what a screen colour can carry. */
const READABLE = { least: 0.0015, most: 0.94 } as const;
const readable = (light: number) => internalOf(Math.min(READABLE.most, Math.max(READABLE.least, light)));

const each = (light: LinearRgb, of: (channel: number, at: number) => number): Triple => [
  of(light[0], 0),
  of(light[1], 1),
  of(light[2], 2),
];

/**
 * A paste from the colour of a thick film of it and the contrast ratio of 1 mm. K/S of each channel from the colour, one S for all three so
 * that the luminous contrast ratio over the card is met. A sketch: with a measured strength in place of the judged hiding, colours of
 * mixes came out 15 Delta E 2000 off in the middle and 32 at most on published oil paint spectra.
 * @param load of the picked mix, above 0 @param contrast above 0.05, below 0.995
 * @throws RangeError outside these, or for light that is not finite.
 *
 * pickedPaste of #1f3a5f, contrast 0.9, load 1: S 632.81 1/m, K 8522.6, 2488.4, 707.5 1/m.
 */
export function pickedPaste(light: LinearRgb, load: number, contrast: number): Colourant {
  positive('load', load, '');
  if (!(contrast > 0.05 && contrast < 0.995))
    throw new RangeError(`contrast = ${contrast}: allowed above 0.05, below 0.995`);
  const ratio = each(light, (channel) => absorptionToScattering(readable(channel)));
  const film = (scattering_per_m: number, ground: number) =>
    luminance(
      each(ratio, (q) =>
        seen(
          over(
            layer({ scattering_per_m, absorption_per_m: q * scattering_per_m }, HIDING_FILM_M),
            internalOf(ground),
          ),
        ),
      ),
    );
  const off = (log: number) =>
    contrastRatio(film(Math.exp(log), CARD.black), film(Math.exp(log), CARD.white)) - contrast;
  const scattering_per_m = Math.exp(brent(off, Math.log(1e-3), Math.log(1e7), 1e-13)) / load;
  return {
    body: 'paste',
    evidence: 'picked',
    scattering_per_m: [scattering_per_m, scattering_per_m, scattering_per_m],
    absorption_per_m: each(ratio, (q) => q * scattering_per_m),
    flake: null,
  };
}

/** A dye from how 1 mm of it looks over white (0.82): no scattering, K = -ln(R/Rg) / (2 X). Load above 0, else RangeError. */
export function pickedDye(light: LinearRgb, load: number): Colourant {
  positive('load', load, '');
  const white = internalOf(CARD.white);
  return {
    body: 'dye',
    evidence: 'picked',
    scattering_per_m: [0, 0, 0],
    absorption_per_m: each(light, (channel) =>
      Math.max(0, -Math.log(readable(channel) / white) / (2 * HIDING_FILM_M * load)),
    ),
    flake: null,
  };
}

/** One film over the black and the white of a card, as light against a perfect white, gloss left out. */
export interface CardFilms {
  readonly film_m: number;
  readonly load: number;
  readonly black: LinearRgb;
  readonly white: LinearRgb;
  readonly overBlack: LinearRgb;
  readonly overWhite: LinearRgb;
}

export type Measured =
  | {
      readonly kind: 'read';
      readonly colourant: Colourant;
      /** Luminous contrast ratio of the card films. */
      readonly contrast: number;
      /** Channels whose film hides: their K/S is known, their S only at the least. */
      readonly hides: readonly boolean[];
    }
  /** Over white it is as dark as over black, or brighter than its card: patches changed over, or light spilt. */
  | { readonly kind: 'no film fits'; readonly channel: number };

/** Error of one reading from a phone's picture, of full white (from memory). */
export const PHOTO_NOISE = 0.015;

/**
 * K and S of each channel from a drawdown. A dye takes the film over white alone. Where a channel hides, the least S
 * that would hide so is taken, with the K/S of the film.
 * @throws RangeError where film or load is not above 0, or light lies outside 0 to 0.96.
 */
export function measuredColourant(films: CardFilms, body: Body, noise = PHOTO_NOISE): Measured {
  positive('film_m', films.film_m, 'm');
  positive('load', films.load, '');
  const inside = (light: LinearRgb) => each(light, (channel) => internalOf(channel));
  const [black, white] = [inside(films.black), inside(films.white)];
  const [overBlack, overWhite] = [inside(films.overBlack), inside(films.overWhite)];
  const hides = [false, false, false];
  const scattering: [number, number, number] = [0, 0, 0];
  const absorption: [number, number, number] = [0, 0, 0];
  for (const at of [0, 1, 2] as const) {
    if (body === 'dye') {
      if (!(overWhite[at] > 0 && overWhite[at] <= white[at])) return { kind: 'no film fits', channel: at };
      absorption[at] = -Math.log(overWhite[at] / white[at]) / (2 * films.film_m * films.load);
      continue;
    }
    const reading = readDrawdown(
      {
        thickness_m: films.film_m,
        black: black[at],
        white: white[at],
        overBlack: overBlack[at],
        overWhite: overWhite[at],
      },
      noise,
    );
    if (reading.kind === 'no film fits') return { kind: 'no film fits', channel: at };
    if (reading.kind === 'read') {
      scattering[at] = reading.film.scattering_per_m / films.load;
      absorption[at] = reading.film.absorption_per_m / films.load;
      continue;
    }
    hides[at] = true;
    const q = absorptionToScattering(Math.min(0.999, Math.max(1e-3, (overBlack[at] + overWhite[at]) / 2)));
    // b S X = 2 leaves 2 % of the ground's light (exp(-4)): the least that hides from a picture.
    const s = 2 / (Math.sqrt(q * (q + 2)) * films.film_m * films.load);
    scattering[at] = s;
    absorption[at] = q * s;
  }
  return {
    kind: 'read',
    colourant: {
      body,
      evidence: 'drawdown',
      scattering_per_m: scattering,
      absorption_per_m: absorption,
      flake: null,
    },
    contrast: Math.min(1, luminance(films.overBlack) / luminance(films.overWhite)),
    hides,
  };
}

/** A film of the coat and what is over and under it. */
export interface FilmPlace {
  /** Mass of colourant per mass of mixed resin, 0 or more. */
  readonly load: number;
  readonly film_m: number;
  /** As it looks in air, without gloss. */
  readonly undercoat: LinearRgb;
  /** Clear over it, m, and its absorption, 1/m; none when left out. */
  readonly clear_m?: number;
  readonly clearAbsorption_per_m?: Triple;
}

/**
 * The light a film sends back, straight on, gloss left out. Resin lies in optical contact with its undercoat, and clear of the same index over it
 * makes no surface in between: it only takes exp(-2 K d). Pastes by Kubelka-Munk, Saunderson at both ends.
 * @throws RangeError for a load, film or clear below 0.
 */
export function filmLight(colourant: Colourant, place: FilmPlace): LinearRgb {
  notNegative('load', place.load, '');
  notNegative('film_m', place.film_m, 'm');
  const clear_m = notNegative('clear_m', place.clear_m ?? 0, 'm');
  return each(place.undercoat, (under, at) => {
    const film = layer(
      {
        absorption_per_m: colourant.absorption_per_m[at as 0] * place.load,
        scattering_per_m: colourant.scattering_per_m[at as 0] * place.load,
      },
      place.film_m,
    );
    const ground = internalOf(Math.min(1 - MIRRORED_NORMAL, Math.max(0, under)));
    const inside =
      over(film, ground) * Math.exp(-2 * (place.clearAbsorption_per_m?.[at as 0] ?? 0) * clear_m);
    return seen(Math.min(1, inside));
  });
}

/**
 * Luminous contrast ratio of a film of this load over black and white of a card as measured from outside (ISO 6504-3, ASTM D2805: 0.98
 * counts as hiding). Load and film above 0, else RangeError.
 */
export function filmContrast(
  colourant: Colourant,
  load: number,
  film_m: number,
  card: { readonly black: number; readonly white: number } = CARD,
): number {
  positive('load', load, '');
  positive('film_m', film_m, 'm');
  const on = (grey: number) =>
    luminance(filmLight(colourant, { load, film_m, undercoat: [grey, grey, grey] }));
  return contrastRatio(Math.min(on(card.black), on(card.white)), on(card.white));
}

/** Mica platelets: half a micrometre thick, 3000 kg/m3, in resin of 1100 kg/m3 (all from memory). */
const FLAKE = { thickness_m: 0.5e-6, density_kg_m3: 3000, resin_kg_m3: 1100 } as const;

/** What the flakes of a film cover, seen from above: 1 - exp(-their area per area). Null for what has none. Load and film 0 or more. */
export function flakesOf(colourant: Colourant, load: number, film_m: number): Flake | null {
  if (colourant.flake === null) return null;
  const layers =
    (notNegative('load', load, '') * FLAKE.resin_kg_m3 * notNegative('film_m', film_m, 'm')) /
    (FLAKE.density_kg_m3 * FLAKE.thickness_m);
  return { cover: 1 - Math.exp(-layers), ...colourant.flake };
}
