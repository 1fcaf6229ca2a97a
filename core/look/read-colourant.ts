/** From what is typed and picked about a colour to a colourant, and how far that can be trusted. */

import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { readFilm_m, readLength_m, readPercent } from '#core/quantity/read.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import type { AppearanceDocument } from './appearance-document.ts';
import {
  type Body,
  CARD,
  type Colourant,
  type FlakeKind,
  HIDING_WORDS,
  measuredColourant,
  pickedDye,
  pickedPaste,
} from './colourant.ts';
import { READABLE_CONTRAST } from './drawdown.ts';
import { byWhite } from './photo-reference.ts';
import { linearOfHex } from './srgb.ts';

/** How flakes lie, as the spread of their tilt, degrees: a settled film narrow, a stirred one wide (from memory). */
const LIE_DEG = { flat: 6, usual: 10, tumbled: 20 } as const;
const FLAKE_SIZE_M = 40e-6;

/**
 * The colourant of a colour of the coat. Paths are relative to the colour (`appearance.drawdown.film`).
 * @param swatch as #1f3a5f: the mix at the coat's load, thick, or for a dye 1 mm of it over white
 * @param load of the coat, above 0 @param usual what the kind of colourant is, unless the maker says otherwise
 */
export function readColourant(
  swatch: string,
  load: number,
  usual: Body,
  appearance: AppearanceDocument | null,
): Result<Colourant> {
  const body = bodyOf(usual, appearance);
  const flake = body === 'flake' ? readFlake(appearance) : good<FlakeKind | null>(null);
  if (!flake.ok) return flake;
  const drawdown = appearance?.drawdown ?? null;
  if (drawdown === null) {
    const light = linearOfHex(swatch);
    const made =
      body === 'dye'
        ? pickedDye(light, load)
        : pickedPaste(light, load, HIDING_WORDS[appearance?.hides ?? 'well']);
    return good({ ...made, body, flake: flake.value });
  }
  const at = 'appearance.drawdown';
  const film = readFilm_m(drawdown.film, {
    path: `${at}.film`,
    what: 'film on the card',
    min: 2e-5,
    max: 5e-3,
  });
  const share = readPercent(drawdown.load, {
    path: `${at}.load`,
    what: 'load of the card',
    min: 0.0005,
    max: 0.5,
  });
  const white =
    drawdown.whiteReflectance.trim() === ''
      ? good<number>(CARD.white)
      : readPercent(drawdown.whiteReflectance, {
          path: `${at}.whiteReflectance`,
          what: 'white of the card',
          min: 0.5,
          max: 0.95,
        });
  if (!film.ok || !share.ok || !white.ok)
    return bad(...[film, share, white].flatMap((read) => (read.ok ? [] : read.problems)));
  const scale = byWhite(linearOfHex(drawdown.white), white.value);
  if (scale === null)
    return bad({
      path: `${at}.white`,
      code: 'drawdown.white',
      message: 'The white of the card is too dark in the picture to go by.',
      read: drawdown.white,
      allowed: 'every channel above 5 % of full light',
    });
  const films = {
    film_m: film.value,
    load: share.value,
    black: scale(linearOfHex(drawdown.black)),
    white: scale(linearOfHex(drawdown.white)),
    overBlack: scale(linearOfHex(drawdown.overBlack)),
    overWhite: scale(linearOfHex(drawdown.overWhite)),
  };
  const dark = films.black.findIndex((channel, i) => channel >= films.white[i]! || channel > 0.96);
  if (dark >= 0)
    return bad({
      path: `${at}.black`,
      code: 'drawdown.card',
      message: 'The black of the card is as bright as its white.',
      read: drawdown.black,
      allowed: `darker than ${drawdown.white}`,
    });
  const bright = (['overBlack', 'overWhite'] as const).find((key) =>
    films[key].some((channel) => channel > 0.96),
  );
  if (bright !== undefined)
    return bad({
      path: `${at}.${bright}`,
      code: 'drawdown.bright',
      message:
        'The film is brighter than a perfect white under resin: light was mirrored in it, or it was overexposed.',
      read: drawdown[bright],
      allowed: 'a picture without a reflection in it',
    });
  const measured = measuredColourant(films, body);
  if (measured.kind === 'no film fits')
    return bad({
      path: `${at}.overWhite`,
      code: 'drawdown.no-film',
      message: 'No film looks like this over black and white: are the two patches changed over?',
      read: `${drawdown.overBlack} over black, ${drawdown.overWhite} over white`,
      allowed: 'over white brighter than over black, and darker than the bare white',
    });
  return good({ ...measured.colourant, flake: flake.value }, doubts(at, measured, body));
}

function doubts(
  path: string,
  { contrast, hides }: { readonly contrast: number; readonly hides: readonly boolean[] },
  body: Body,
): Problem[] {
  if (body === 'dye') return [];
  const read = `contrast ratio ${trimmed(contrast, 2)}`;
  const allowed = `${READABLE_CONTRAST.from} to ${READABLE_CONTRAST.to}`;
  if (hides.some(Boolean))
    return [
      {
        path: `${path}.film`,
        code: 'warning.drawdown-hides',
        message:
          'The film hides its card, so how strongly it scatters is not known: draw a thinner film, or add a tint in white.',
        read,
        allowed,
      },
    ];
  if (contrast >= READABLE_CONTRAST.from && contrast <= READABLE_CONTRAST.to) return [];
  return [
    {
      path: `${path}.film`,
      code: 'warning.drawdown-contrast',
      message:
        contrast < READABLE_CONTRAST.from
          ? 'The film is so thin that a small error of the picture becomes a large one: draw a thicker film.'
          : 'The film nearly hides its card: draw a thinner film.',
      read,
      allowed,
    },
  ];
}

export function bodyOf(usual: Body, appearance: Pick<AppearanceDocument, 'body'> | null): Body {
  switch (appearance?.body ?? 'as the colourant') {
    case 'clear dye':
      return 'dye';
    case 'paste':
      return 'paste';
    case 'flake':
      return 'flake';
    default:
      return usual;
  }
}

function readFlake(appearance: AppearanceDocument | null): Result<FlakeKind | null> {
  const given = appearance?.flake ?? null;
  const size =
    given === null || given.size.trim() === ''
      ? good(FLAKE_SIZE_M)
      : readLength_m(given.size, { path: 'appearance.flake.size', what: 'flake', min: 2e-6, max: 2e-3 });
  if (!size.ok) return size;
  return good({
    gleam: linearOfHex(given?.gleam ?? '#e8d9a8'),
    size_m: size.value,
    spread_rad: (LIE_DEG[given?.lie ?? 'usual'] * Math.PI) / 180,
  });
}

/** What is known of colours made this way, in a sentence with its source. */
export function trustOf(colourant: Pick<Colourant, 'evidence' | 'body'>): string {
  if (colourant.body === 'flake')
    return 'Mica and metallics are shown, not predicted: agree on a poured sample.';
  return colourant.evidence === 'drawdown'
    ? 'From your drawdown: good for other loads and films within what its picture shows; not yet checked against a poured film.'
    : 'A sketch from a picked colour: on published oil paint spectra (Geldof and others 2018) such colours were off by 15 Delta E 2000 in the middle and 32 at most.';
}
