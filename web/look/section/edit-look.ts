/** Changes to the look of a coat and what follows them in its job: colours get names of their own, cups follow puddles. Pure. */
import type { CoatDocument, ColourDocument, JobDocument } from '#core/job/document.ts';
import { colourKey } from '#core/job/look-of-coat.ts';
import type { LookDocument, LookMoveDocument } from '#core/look/look-document.ts';
import { pouredShares, sharesAsTyped, sharesWithOne, withShares } from '#core/mix/look-shares.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { readPercent } from '#core/quantity/read.ts';

/** Texts nearer to what is poured than this stay as typed: they are read to the tenth of a percent. */
export const AS_TYPED = 0.00051;

/** Every colour with a key of its own, so that it keeps its puddles when the list is put in another order. */
export function keyed(colours: readonly ColourDocument[]): ColourDocument[] {
  const taken = new Set(colours.map(({ key }) => key).filter((key) => key !== ''));
  return colours.map((colour, place) => {
    if (colour.key !== '') return colour;
    let key = colourKey(colour, place);
    for (let next = 1; taken.has(key); next++) key = String(next);
    taken.add(key);
    return { ...colour, key };
  });
}

export function keysOf(colours: readonly ColourDocument[]): string[] {
  return colours.map(colourKey);
}

/** Shares as typed, by key; the problem names the first colour that has none. A single colour takes all. */
export function typedShares(colours: readonly ColourDocument[]): Result<ReadonlyMap<string, number>> {
  const shares = new Map<string, number>();
  const problems: Problem[] = [];
  colours.forEach((colour, place) => {
    const name = colour.name || `colour ${place + 1}`;
    if (colours.length === 1 && colour.share.trim() === '') shares.set(colourKey(colour, place), 1);
    else {
      const read = readPercent(colour.share, {
        path: `colours.${place}.share`,
        what: `share of ${name}`,
        min: 0,
        max: 1,
      });
      if (read.ok) shares.set(colourKey(colour, place), read.value);
      else problems.push(...read.problems);
    }
  });
  return problems.length > 0 ? bad(...problems) : good(shares);
}

const inCoat = (document: JobDocument, index: number, coat: CoatDocument): JobDocument => ({
  ...document,
  coats: document.coats.map((other, at) => (at === index ? coat : other)),
});

/**
 * The job with this look on a coat; shares of its colours are typed anew from the puddles where they miss by more than `slack`.
 * A look whose puddles cannot be counted (too much poured, a colour that is not there) leaves the shares alone.
 */
export function putLook(
  document: JobDocument,
  index: number,
  look: LookDocument | null,
  whole_m3: number,
  slack = AS_TYPED,
): JobDocument {
  const coat = document.coats[index];
  if (coat === undefined) return document;
  const colours = keyed(coat.colours);
  const keys = keysOf(colours);
  if (look === null || keys.length === 0 || (look.ground !== '' && !keys.includes(look.ground)))
    return inCoat(document, index, { ...coat, colours, look });
  const shares = pouredShares(look, keys, whole_m3);
  const sum = [...shares.values()].reduce((total, share) => total + share, 0);
  const known = typedShares(colours);
  const typedAlike =
    known.ok && keys.every((key) => Math.abs(known.value.get(key)! - shares.get(key)!) <= slack);
  if (Math.abs(sum - 1) > 1e-6 || typedAlike) return inCoat(document, index, { ...coat, colours, look });
  const texts = sharesAsTyped(shares);
  return inCoat(document, index, {
    ...coat,
    look,
    colours: colours.map((colour, at) => ({ ...colour, share: texts.get(keys[at]!)! })),
  });
}

/** The look with one share changed: its puddles grow or shrink, the other colours keep their proportions. */
export function withShare(
  look: LookDocument,
  keys: readonly string[],
  key: string,
  share: number,
  whole_m3: number,
): Result<LookDocument> {
  return withShares(look, keys, sharesWithOne(pouredShares(look, keys, whole_m3), key, share), whole_m3);
}

const put = (look: LookDocument, moves: readonly LookMoveDocument[]): LookDocument => ({
  ...look,
  moves: [...moves],
});

/** An id no move or area of the look has: the kind and a number. */
export function freeId(look: LookDocument, kind: string): string {
  const taken = new Set([...look.moves, ...look.locked].map(({ id }) => id));
  let number = look.moves.length + 1;
  const id = () => `${kind.replace(' ', '-')}-${number}`;
  while (taken.has(id())) number++;
  return id();
}

export function addMove(look: LookDocument, move: LookMoveDocument): LookDocument {
  return put(look, [...look.moves, { ...move, id: freeId(look, move.kind) }]);
}

export function replaceMove(look: LookDocument, id: string, move: LookMoveDocument): LookDocument {
  return put(
    look,
    look.moves.map((other) => (other.id === id ? { ...move, id } : other)),
  );
}

export function removeMove(look: LookDocument, id: string): LookDocument {
  return put(
    look,
    look.moves.filter((move) => move.id !== id),
  );
}

export function keepMove(look: LookDocument, id: string, kept: boolean): LookDocument {
  return put(
    look,
    look.moves.map((move) => (move.id === id ? { ...move, kept } : move)),
  );
}

/** One earlier (-1) or later (1); at the end of the list it stays. */
export function shiftMove(look: LookDocument, id: string, by: -1 | 1): LookDocument {
  const from = look.moves.findIndex((move) => move.id === id);
  const to = from + by;
  if (from < 0 || to < 0 || to >= look.moves.length) return look;
  const moves = [...look.moves];
  [moves[from], moves[to]] = [moves[to]!, moves[from]!];
  return put(look, moves);
}
