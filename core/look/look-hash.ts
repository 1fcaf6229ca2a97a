/**
 * A short name for what a look is, to tell whether what was signed is still what is there: 64-bit FNV-1a (Fowler, Noll & Vo; constants
 * from memory, checked on published vectors) of a canonical text. It finds a change made by mistake; it is no protection
 * against one made on purpose, and no signature.
 */
import type { LookDocument } from './look-document.ts';

/** FNV-1a of the UTF-8 bytes of a text, 16 hex digits. */
export function fnv1a64(text: string): string {
  let [high, low] = [0xcbf29ce4, 0x84222325];
  for (const byte of new TextEncoder().encode(text)) {
    low = (low ^ byte) >>> 0;
    // Times 2^40 + 0x1b3, in halves of 32 bits.
    const product = low * 0x1b3;
    const carry = Math.floor(product / 0x1_0000_0000);
    high = (Math.imul(high, 0x1b3) + carry + Math.imul(low, 0x100)) >>> 0;
    low = product >>> 0;
  }
  return [high, low].map((half) => half.toString(16).padStart(8, '0')).join('');
}

/** JSON with the keys of every object in order and nothing undefined in it, so that equal contents are equal texts. */
export function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`;
  if (typeof value === 'object' && value !== null)
    return `{${Object.entries(value)
      .filter(([, field]) => field !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, field]) => `${JSON.stringify(key)}:${canonicalText(field)}`)
      .join(',')}}`;
  return JSON.stringify(value) ?? 'null';
}

/** What besides the look decides its picture: colours, films and pieces as they stand in the job. */
export interface LookContext {
  readonly colours: readonly object[];
  readonly film: string;
  readonly faceFilm: string;
  readonly pieces: readonly object[];
}

/**
 * The name of a look with what it is poured of and on. What does not show is left out: the brief, the locks, names and moves that
 * are not kept, the approval itself. Texts count as typed: "25.5 in" for "25 1/2 in" is another name.
 */
export function lookHash(look: LookDocument, context: LookContext): string {
  const { brief: _brief, locked: _locked, approved: _approved, moves, ...rest } = look;
  const shown = moves
    .filter((move) => move.kept)
    .map(({ name: _name, kept: _kept, id: _id, ...move }) => move);
  return fnv1a64(canonicalText({ ...rest, moves: shown, context }));
}
