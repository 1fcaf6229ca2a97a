/**
 * What people type, taken apart: numbers (decimals, fractions, mixed numbers) each followed by the words of a
 * unit.
 */

/** One number and the unit words after it ('' when none), as typed. */
export interface Term {
  readonly value: number;
  /** A whole number was typed, so a smaller unit may follow. */
  readonly whole: boolean;
  readonly words: string;
}

export type Taken =
  | { readonly ok: true; readonly negative: boolean; readonly terms: readonly Term[] }
  | {
      readonly ok: false;
      readonly code: 'unreadable' | 'ambiguous';
      readonly part: string;
      readonly why: string;
    };

const vulgar: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅐': '1/7',
  '⅑': '1/9',
  '⅒': '1/10',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/**
 * The same text in plain characters: quotes, dashes, spaces, fractions, degree and micro signs, superscripts
 * kept.
 */
export function plain(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${vulgar[sign] ?? sign}`)
    .replace(/⁄|∕/g, '/')
    .replace(/[“”„‟″〃]/g, '"')
    .replace(/[‘’‚‛′´`]/g, "'")
    .replace(/''/g, '"')
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/℃/g, '°C')
    .replace(/℉/g, '°F')
    .replace(/[º˚]/g, '°')
    .replace(/[µμ]/g, 'u')
    .replace(/\s+/g, ' ')
    .trim();
}

/** "m2", "ft^3" with the digit as a superscript, so that it is not taken for the next number. */
export function raisePowers(text: string): string {
  return text.replace(/([a-z])\^?([23])(?![\d.,])/gi, (_all, letter: string, digit: string) =>
    digit === '2' ? `${letter}²` : `${letter}³`,
  );
}

const decimalPattern = '\\d+(?:[.,]\\d+)*|\\.\\d+';
const mixedPattern = '(\\d+)(?: ?- ?| )(\\d+) ?/ ?(\\d+)';
const fractionPattern = '(\\d+) ?/ ?(\\d+)';
const unitPattern = '(?:(?!\\.\\d)\\D)*';
const termPattern = new RegExp(
  `(?:${mixedPattern}|${fractionPattern}|(${decimalPattern}))(${unitPattern})`,
  'y',
);

type Read =
  | { readonly value: number; readonly whole: boolean }
  | { readonly why: string; readonly ambiguous?: true };

/** A decimal number with a point or a comma; thousands marks only where nothing else can be meant. */
export function readDecimal(text: string): Read {
  if (/^\d+$/.test(text)) return { value: Number(text), whole: true };
  if (/^\d*\.\d+$/.test(text)) return { value: Number(text), whole: false };
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) {
    const [thousands = '', rest = ''] = text.split(',');
    return {
      why: `"${text}" can be ${thousands}${rest} or ${thousands}.${rest}: leave the comma out, or type a point`,
      ambiguous: true,
    };
  }
  if (/^\d+,\d+$/.test(text)) return { value: Number(text.replace(',', '.')), whole: false };
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(text)) {
    return { value: Number(text.replaceAll(',', '')), whole: !text.includes('.') };
  }
  if (/^\d{1,3}(\.\d{3})+(,\d+)?$/.test(text)) {
    return { value: Number(text.replaceAll('.', '').replace(',', '.')), whole: !text.includes(',') };
  }
  return { why: `"${text}" is not a number` };
}

function readFraction(whole: string, above: string, below: string, text: string): Read {
  const denominator = Number(below);
  if (denominator === 0) return { why: `"${text}" divides by 0` };
  if (whole !== '' && Number(above) >= denominator) return { why: `"${text}" has a fraction of 1 or more` };
  return { value: (Number(whole) * denominator + Number(above)) / denominator, whole: false };
}

/** Takes plain text apart into its numbers and unit words. Never throws. */
export function takeApart(text: string): Taken {
  const sign = /^([+-]?) ?/.exec(text);
  const start = sign?.[0].length ?? 0;
  const terms: Term[] = [];
  let at = start;
  while (at < text.length) {
    termPattern.lastIndex = at;
    const match = termPattern.exec(text);
    if (match === null) {
      return {
        ok: false,
        code: 'unreadable',
        part: text.slice(at),
        why: `"${text.slice(at)}" is not a number`,
      };
    }
    const [all, whole, above, below, onlyAbove, onlyBelow, decimal, words = ''] = match;
    const typed = all.slice(0, all.length - words.length);
    const number =
      decimal !== undefined
        ? readDecimal(decimal)
        : readFraction(whole ?? '', above ?? onlyAbove ?? '', below ?? onlyBelow ?? '', typed);
    if ('why' in number) {
      const code = number.ambiguous === true ? 'ambiguous' : 'unreadable';
      return { ok: false, code, part: typed, why: number.why };
    }
    at += all.length;
    const last = at >= text.length;
    if (!last && /[,.]$/.test(words)) {
      const part = `${words.trim()}${text.slice(at)}`;
      return { ok: false, code: 'unreadable', part, why: `"${part}" was not understood` };
    }
    terms.push({ ...number, words: (last ? words : words.replace(/(?:[\s,;&+-]|\band\b)+$/i, '')).trim() });
  }
  if (terms.length === 0) {
    return { ok: false, code: 'unreadable', part: text, why: 'there is no number in it' };
  }
  return { ok: true, negative: sign?.[1] === '-', terms };
}
