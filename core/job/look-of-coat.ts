/** The look of a coat of a job: its colours as they will look, the work it lies on, and the name of it all. */
import type { Body, Colourant } from '#core/look/colourant.ts';
import { filmContrast, filmLight, flakesOf } from '#core/look/colourant.ts';
import type { LookColour } from '#core/look/look.ts';
import { emptyLook, type LookDocument } from '#core/look/look-document.ts';
import { lookHash } from '#core/look/look-hash.ts';
import { type LaidPiece, laidEdges, panelsOf } from '#core/look/panels.ts';
import { readColourant, trustOf } from '#core/look/read-colourant.ts';
import { type LookSetting, planeArea_m2 } from '#core/look/read-look.ts';
import { linearOfHex } from '#core/look/srgb.ts';
import type { ColourantKind } from '#core/mix/coat.ts';
import { outlinePath } from '#core/piece/outline.ts';
import { bounds } from '#core/piece/path.ts';
import type { Piece } from '#core/piece/piece.ts';
import { validatePiece } from '#core/piece/validate.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { readFilm_m, readLength_m, readPercent } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import type { ColourDocument, JobDocument } from './document.ts';
import { coatedIds, piecesOf } from './pieces.ts';
import type { JobRead } from './read-job.ts';

/** What a kind of colourant is to light unless the maker says otherwise. */
const BODY: Readonly<Record<ColourantKind, Body>> = {
  none: 'dye',
  'pigment paste': 'paste',
  'dry pigment': 'paste',
  'mica powder': 'flake',
  'liquid dye': 'dye',
  'alcohol ink': 'dye',
};

/** What is known of a colour of the coat. */
export interface ColourKnown {
  readonly key: string;
  /** null: clear resin. */
  readonly colourant: Colourant | null;
  readonly load: number;
  /** Contrast ratio over black and white in the film of the coat; null for clear and for dyes. */
  readonly contrast: number | null;
  /** How far to trust it, in a sentence. */
  readonly trust: string;
}

export interface CoatLook {
  readonly look: LookDocument;
  readonly setting: LookSetting;
  readonly known: readonly ColourKnown[];
  /** Film that stays on the work, m3: what puddles and shares are measured by. */
  readonly whole_m3: number;
  readonly hash: string;
}

/** Key of a colour: its own, or its place in the list from 1. */
export function colourKey(colour: Pick<ColourDocument, 'key'>, index: number): string {
  return (colour.key ?? '') === '' ? String(index + 1) : colour.key;
}

/**
 * Everything a look needs from its job; an empty look where the coat has none yet. Colours may still miss their shares, so that a look can
 * be begun; film and the coated pieces have to be there. Paths are those of the job (`coats.1.film`). Never throws on a document of the
 * right shape read by `readJob`, and an index in range.
 */
export function coatLook(
  document: JobDocument,
  read: Pick<JobRead, 'pieces'>,
  index: number,
  density_kg_m3 = 1100,
  system: System = 'us',
): Result<CoatLook> {
  const coat = document.coats[index];
  if (coat === undefined) throw new RangeError(`coat ${index}: the job has ${document.coats.length}`);
  const at = `coats.${index}`;
  const look = coat.look ?? emptyLook();
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const taken = <T>(result: Result<T>, path = ''): T | null => {
    for (const problem of result.ok ? result.warnings : result.problems)
      (result.ok ? warnings : problems).push({ ...problem, path: path + problem.path });
    return result.ok ? result.value : null;
  };
  const film_m = taken(
    readFilm_m(coat.film, { path: `${at}.film`, what: 'film', min: 5e-5, max: 0.05, density_kg_m3, system }),
  );
  const wrapped = coat.edges === 'wrapped' && look.faces === 'continued';
  const faceFilm_m = wrapped
    ? taken(
        readFilm_m(coat.faceFilm, {
          path: `${at}.faceFilm`,
          what: 'face film',
          min: 2e-5,
          max: 0.01,
          density_kg_m3,
          system,
        }),
      )
    : 0;
  const coated = coatedIds(coat, piecesOf(document));
  const pieces = read.pieces.filter((piece) => coated.includes(piece.id));
  const sound = pieces.filter((piece) => piece.piece !== null && validatePiece(piece.piece).length === 0);
  if (sound.length === 0 || sound.length < pieces.length)
    problems.push({
      path: pieces.find((piece) => !sound.includes(piece))?.path ?? 'piece',
      code: 'look.no-piece',
      message: 'A look needs the shape and size of every piece it is poured on.',
      read: 'not complete',
      allowed: 'an outline that can be made',
    });
  if (problems.length > 0 || film_m === null || faceFilm_m === null) return bad(...problems);
  const laid = layDown(sound as readonly SoundPiece[], look, at, system, taken);
  const made = (coat.colours.length === 0 ? [CLEAR] : coat.colours).map((colour, place) =>
    colourOf(colour, place, film_m, faceFilm_m, look, `${at}.colours.${place}.`, taken),
  );
  if (problems.length > 0) return bad(...problems);
  const panels = panelsOf(laid, { film_m, faceFilm_m });
  const context = {
    colours: coat.colours.map(({ share: _share, ...shown }) => shown),
    film: coat.film,
    faceFilm: coat.faceFilm,
    pieces: piecesOf(document)
      .filter((piece) => coated.includes(piece.id))
      .map(({ document: typed }) => ({
        outline: typed.outline,
        edges: typed.edges,
        cutOuts: typed.cutOuts,
        splashes: typed.splashes,
      })),
  };
  return good(
    {
      look,
      setting: { colours: made.map((one) => one.colour), film_m, panels, edges: laidEdges(laid), system },
      known: made.map((one) => one.known),
      whole_m3: planeArea_m2(panels) * film_m,
      hash: lookHash(look, context),
    },
    warnings,
  );
}

const CLEAR: Pick<ColourDocument, 'key' | 'name' | 'swatch' | 'colourant' | 'load' | 'appearance'> = {
  key: '',
  name: 'clear',
  swatch: '#c9c4b4',
  colourant: 'none',
  load: '',
  appearance: null,
};

type Taken = <T>(result: Result<T>, path?: string) => T | null;
type SoundPiece = JobRead['pieces'][number] & { readonly piece: Piece };

/** Pieces in a row from left to right, or where the look lays them; then the look's own further pieces. */
function layDown(
  pieces: readonly SoundPiece[],
  look: LookDocument,
  at: string,
  system: System,
  taken: Taken,
): LaidPiece[] {
  let right_m = 0;
  const laid = pieces.map(({ id, name, piece, splashes }): LaidPiece => {
    const place = look.beside.find((other) => other.id === id);
    const box = bounds(outlinePath(piece.outline));
    const own: LaidPiece = {
      name,
      piece,
      at: place?.at ?? [right_m === 0 ? 0 : right_m - box.minX_m, 0],
      turn_rad: place?.turn_rad ?? 0,
      splashes,
    };
    right_m = Math.max(right_m, own.at[0] + box.maxX_m);
    return own;
  });
  const ids = new Set(pieces.map((piece) => piece.id));
  const further = look.beside.flatMap((other, i): LaidPiece[] => {
    if (ids.has(other.id)) return [];
    const path = `${at}.look.beside.${i}`;
    const size = (key: 'length' | 'width') =>
      taken(
        readLength_m(other[key], {
          path: `${path}.${key}`,
          what: `${key} of the piece`,
          min: 0.02,
          max: 10,
          system,
        }),
      );
    const [length_m, width_m] = [size('length'), size('width')];
    if (length_m === null || width_m === null) return [];
    const piece: Piece = {
      outline: { shape: 'rectangle', length_m, width_m },
      edges: {},
      cutOuts: [],
      bodyThickness_m: 0.03,
    };
    return [
      {
        name: other.name || `piece beside ${i + 1}`,
        piece,
        at: other.at,
        turn_rad: other.turn_rad,
        splashes: [],
      },
    ];
  });
  return [...laid, ...further];
}

function colourOf(
  colour: typeof CLEAR,
  place: number,
  film_m: number,
  faceFilm_m: number,
  look: LookDocument,
  path: string,
  taken: Taken,
): { readonly colour: LookColour; readonly known: ColourKnown } {
  const key = colourKey(colour, place);
  const name = colour.name || `colour ${place + 1}`;
  const undercoat = linearOfHex(look.undercoat);
  const load =
    colour.colourant === 'none' || colour.load.trim() === ''
      ? 0
      : (taken(readPercent(colour.load, { path: `${path}load`, what: 'colourant', min: 0, max: 1 })) ?? 0);
  const colourant =
    load === 0
      ? null
      : taken(readColourant(colour.swatch, load, BODY[colour.colourant], colour.appearance ?? null), path);
  if (colourant === null)
    return {
      colour: { key, name, light: undercoat, flake: null },
      known: { key, colourant: null, load: 0, contrast: null, trust: 'Clear: the undercoat shows.' },
    };
  const light = filmLight(colourant, { load, film_m, undercoat });
  const faceLight = faceFilm_m > 0 ? filmLight(colourant, { load, film_m: faceFilm_m, undercoat }) : light;
  return {
    colour: { key, name, light, faceLight, flake: flakesOf(colourant, load, film_m) },
    known: {
      key,
      colourant,
      load,
      contrast: colourant.body === 'dye' ? null : filmContrast(colourant, load, film_m),
      trust: trustOf(colourant),
    },
  };
}
