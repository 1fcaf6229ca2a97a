/** Numbers, lengths and transforms as SVG writes them (W3C, Scalable Vector Graphics 1.1, chapters 4.2 and 7.6). */

import { type Affine, after, rotation, shift, stretch, UNMOVED } from './affine.ts';
import { refuse } from './imported-drawing.ts';

const NUMBER = '[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?';

export interface SvgLength {
  readonly value: number;
  /** '' for none; 'px', 'mm', '%' ... */
  readonly unit: string;
}

/** undefined for an attribute that is not there or says auto. */
export function svgLength(text: string | undefined): SvgLength | undefined {
  if (text === undefined || text.trim() === '' || text.trim() === 'auto') return undefined;
  const found = new RegExp(`^\\s*(${NUMBER})\\s*([a-z%]*)\\s*$`).exec(text);
  const value = Number(found?.[1]);
  if (found === null || !Number.isFinite(value))
    refuse(
      'file.number',
      'A length in the file is no number.',
      text.slice(0, 40),
      'a finite number with its unit',
    );
  return { value, unit: found[2]! };
}

export function svgNumbers(text: string): number[] {
  const words = text.trim() === '' ? [] : text.trim().split(/[\s,]+/);
  return words.map((word) => {
    const value = new RegExp(`^${NUMBER}$`).test(word) ? Number(word) : Number.NaN;
    if (!Number.isFinite(value))
      refuse(
        'file.number',
        'A list of numbers in the file cannot be read.',
        word.slice(0, 40),
        'finite decimal numbers',
      );
    return value;
  });
}

export function svgTransform(text: string | undefined): Affine {
  if (text === undefined) return UNMOVED;
  let all = UNMOVED;
  let rest = text.trim();
  while (rest !== '') {
    const found = /^(\w+)\s*\(([^()]*)\)[\s,]*/.exec(rest);
    const step =
      found === null
        ? undefined
        : one(found[1]!, svgNumbers(found[2]!.replace(/([\d.])(?=[+-])(?<![eE])/g, '$1 ')));
    if (found === null || step === undefined)
      refuse(
        'file.transform',
        'A transform in the file cannot be read.',
        rest.slice(0, 40),
        'matrix, translate, scale, rotate, skewX, skewY',
      );
    all = after(all, step);
    rest = rest.slice(found[0].length);
  }
  return all;
}

function one(name: string, n: readonly number[]): Affine | undefined {
  const [p, q = 0, r = 0] = n;
  if (p === undefined) return undefined;
  const angle = (p * Math.PI) / 180;
  switch (name) {
    case 'matrix':
      return n.length === 6 ? { a: p, b: q, c: r, d: n[3]!, e: n[4]!, f: n[5]! } : undefined;
    case 'translate':
      return shift(p, q);
    case 'scale':
      return stretch(p, n[1] ?? p);
    case 'rotate':
      return after(after(shift(q, r), rotation(angle)), shift(-q, -r));
    case 'skewX':
      return { ...UNMOVED, c: Math.tan(angle) };
    case 'skewY':
      return { ...UNMOVED, b: Math.tan(angle) };
    default:
      return undefined;
  }
}
