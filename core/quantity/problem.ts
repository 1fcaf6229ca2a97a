/**
 * What every entry point answers when something typed cannot be used. Core never throws on user data: readers return a
 * Result. Numeric functions throw RangeError on a domain error, which is a programmer's mistake.
 */
export interface Problem {
  /** Where in the document, as `coats.0.thickness`; '' for the document itself. */
  readonly path: string;
  /** Stable, for programs: `length.unreadable`, `cut-out.outside`, ... */
  readonly code: string;
  /** One sentence for people, naming the field in trade words. */
  readonly message: string;
  /** What was read, as typed. */
  readonly read?: string;
  /** What would have been accepted, with its unit: "1 in to 20 ft". */
  readonly allowed?: string;
}

export type Result<T> =
  | { readonly ok: true; readonly value: T; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function good<T>(value: T, warnings: readonly Problem[] = []): Result<T> {
  return { ok: true, value, warnings };
}

export function bad<T = never>(...problems: readonly Problem[]): Result<T> {
  return { ok: false, problems };
}

/** One line for a person: message, what was read, what is allowed. */
export function sayProblem(problem: Problem): string {
  const read = problem.read === undefined ? '' : ` Read: ${JSON.stringify(problem.read)}.`;
  const allowed = problem.allowed === undefined ? '' : ` Allowed: ${problem.allowed}.`;
  const where = problem.path === '' ? '' : `${problem.path}: `;
  return `${where}${problem.message}${read}${allowed}`;
}
