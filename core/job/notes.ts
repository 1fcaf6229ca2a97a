import type { Problem, Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import type { Missing } from './forecast.ts';

/** What every reader of a text is told: the field it stands in, and the units a range is told in (none: those typed). */
export interface Asked {
  readonly path: string;
  readonly system?: System | undefined;
}

/** Gathers, while a document is read, what was wrong, what is doubtful and what is still missing. */
export class Notes {
  readonly problems: Problem[] = [];
  readonly warnings: Problem[] = [];
  readonly missing: Missing[] = [];
  /** The shop's units, for what is allowed. */
  readonly system: System | undefined;

  constructor(system?: System) {
    this.system = system;
  }

  miss(path: string, needs: string): void {
    this.missing.push({ path, needs });
  }

  problem(path: string, code: string, message: string, read: string, allowed: string): void {
    this.problems.push({ path, code, message, read, allowed });
  }

  /** A problem a reader of another room found; codes that begin with `warning` are doubts, not refusals. */
  add(problem: Problem): void {
    (problem.code.startsWith('warning') ? this.warnings : this.problems).push(problem);
  }

  /** Reads a text that is there. Empty: null and nothing noted. */
  take<T>(path: string, text: string, reader: (text: string, ask: Asked) => Result<T>): T | null {
    if (text.trim() === '') return null;
    const read = reader(text, { path, system: this.system });
    if (read.ok) {
      this.warnings.push(...read.warnings);
      return read.value;
    }
    this.problems.push(...read.problems);
    return null;
  }

  /** Reads a text that has to be there before the section can be computed. */
  need<T>(
    path: string,
    text: string,
    needs: string,
    reader: (text: string, ask: Asked) => Result<T>,
  ): T | null {
    if (text.trim() === '') this.miss(path, needs);
    return this.take(path, text, reader);
  }

  /** Reads a text that has a usual value when nothing is typed. */
  or<T>(path: string, text: string, otherwise: T, reader: (text: string, ask: Asked) => Result<T>): T | null {
    return text.trim() === '' ? otherwise : this.take(path, text, reader);
  }
}
