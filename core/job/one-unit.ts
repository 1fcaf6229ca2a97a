import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';

/** How core/piece says a length or an area: metric first, US in brackets behind it. */
const BOTH = /(-?[\d.]+ (?:mm|cm2)) \((-?[\d.\s/]+ (?:sq )?in)\)/g;

/** A text of core/piece with each figure in the shop's units alone: "53.97 mm (2.125 in)" is "2.125 in" or "53.97 mm". */
export function inOneUnit(text: string, system: System): string {
  return text.replace(BOTH, (_both, metric: string, us: string) => (system === 'us' ? us : metric));
}

/** The same for everything a problem says. */
export function problemInOneUnit(problem: Problem, system: System): Problem {
  const { read, allowed } = problem;
  return {
    ...problem,
    message: inOneUnit(problem.message, system),
    ...(read === undefined ? {} : { read: inOneUnit(read, system) }),
    ...(allowed === undefined ? {} : { allowed: inOneUnit(allowed, system) }),
  };
}
