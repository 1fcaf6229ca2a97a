import type { z } from 'zod';
import { formatTemperature } from '#core/quantity/format.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { readTemperature_K } from '#core/quantity/read.ts';

/** Gathers what was wrong and what is doubtful while a document is read. */
export class DocumentReader {
  readonly problems: Problem[] = [];
  readonly warnings: Problem[] = [];

  refuse(path: string, code: string, message: string, read?: string, allowed?: string): void {
    this.problems.push(note(path, code, message, read, allowed));
  }

  doubt(path: string, code: string, message: string, read?: string, allowed?: string): void {
    this.warnings.push(note(path, code, message, read, allowed));
  }

  /** The value of an answer, or undefined with its problems noted. */
  take<T>(result: Result<T>): T | undefined {
    if (result.ok) {
      this.warnings.push(...result.warnings);
      return result.value;
    }
    this.problems.push(...result.problems);
    return undefined;
  }

  /** Reads a text that may be empty: undefined then. */
  maybe<T>(text: string, reader: (text: string) => Result<T>): T | undefined {
    return text.trim() === '' ? undefined : this.take(reader(text));
  }

  answer<T>(value: T | undefined): Result<T> {
    if (this.problems.length > 0) return bad(...this.problems);
    if (value === undefined) throw new RangeError('a value is missing, and no problem was noted');
    return good(value, this.warnings);
  }
}

function note(path: string, code: string, message: string, read?: string, allowed?: string): Problem {
  return {
    path,
    code,
    message,
    ...(read === undefined ? {} : { read }),
    ...(allowed === undefined ? {} : { allowed }),
  };
}

/** A document by its schema; problems carry the path of what does not fit. */
export function parseShape<T>(schema: z.ZodType<T>, input: unknown, code: string): Result<T> {
  const parsed = schema.safeParse(input);
  if (parsed.success) return good(parsed.data);
  return bad(
    ...parsed.error.issues.slice(0, 20).map((issue) => ({
      path: issue.path.join('.'),
      code: `${code}.shape`,
      message: issue.message,
    })),
  );
}

/** Air, label and resin of a shop: 5 to 45 C. Below, such a resin turns to glass before it gels; above, nobody works. */
export const SHOP_MIN_K = 278.15;
export const SHOP_MAX_K = 318.15;

/**
 * A temperature a shop can have. One outside that would be one in the other unit is answered with the question whether that
 * was meant: "75 C" with "did you mean 75 F?".
 */
export function readShopTemperature_K(text: string, path: string, what: string): Result<number> {
  const read = readTemperature_K(text, { path, what, min: SHOP_MIN_K, max: SHOP_MAX_K });
  if (read.ok) return read;
  const plain = readTemperature_K(text, { path, what });
  const match = /^\s*(-?\d+(?:[.,]\d+)?)\s*(?:°|degrees?|deg)?\s*([cf])/i.exec(text);
  if (!plain.ok || match === null) return read;
  const unit = match[2]!.toUpperCase();
  const other = unit === 'C' ? 'F' : 'C';
  const meant = readTemperature_K(`${match[1]} ${other}`, { min: SHOP_MIN_K, max: SHOP_MAX_K });
  if (!meant.ok) return read;
  const elsewhere = formatTemperature(plain.value, other === 'F' ? 'us' : 'metric', { decimals: 0 });
  return bad({
    path,
    code: 'temperature.other-unit',
    message: `${what.charAt(0).toUpperCase()}${what.slice(1)}: ${match[1]} °${unit} is ${elsewhere}, which no shop has; did you mean ${match[1]} °${other}?`,
    read: text,
    allowed: '5 °C to 45 °C (41 °F to 113 °F)',
  });
}
