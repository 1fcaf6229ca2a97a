import type { z } from 'zod';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { JOB_FORMAT, JobDocument, OUTLINE_SHAPES } from './document.ts';

/** The shape alone: right format, known fields, nothing too long. `readJob` then reads the quantities. */
export function checkShape(input: unknown): Result<JobDocument> {
  if (typeof input !== 'object' || input === null || Array.isArray(input))
    return bad({
      path: '',
      code: 'job.shape',
      message: 'A job is an object.',
      read: Array.isArray(input) ? 'a list' : input === null ? 'null' : typeof input,
      allowed: `an object with "format": "${JOB_FORMAT}"`,
    });
  const format = (input as { format?: unknown }).format;
  if (format !== JOB_FORMAT)
    return bad({
      path: 'format',
      code: 'job.format',
      message: 'This is not a job file this version reads.',
      read: format === undefined ? 'nothing' : shown(format).slice(0, 80),
      allowed: `"${JOB_FORMAT}"`,
    });
  const parsed = JobDocument.safeParse(input);
  if (parsed.success) return good(parsed.data);
  const problems = parsed.error.issues.map((issue): Problem => {
    const path = issue.path.map(String).join('.');
    const value = issue.path.reduce<unknown>(
      (at, key) =>
        typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>)[key] : undefined,
      input,
    );
    const allowed = allowedBy(issue);
    const read = value === undefined ? 'nothing' : shown(value);
    return { path, code: `job.${issue.code}`, message: sentence(issue), read: read.slice(0, 120), allowed };
  });
  return bad(...problems);
}

/** Whatever it is as text; a value that cannot be written as JSON is told by its kind. */
function shown(value: unknown): string {
  if (typeof value === 'string') return value;
  try {
    return JSON.stringify(value) ?? typeof value;
  } catch {
    return typeof value;
  }
}

function allowedBy(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_value':
      return issue.values.map(String).join(', ');
    case 'unrecognized_keys':
      return `no field called ${issue.keys.join(', ')}`;
    case 'invalid_type':
      return KINDS[issue.expected] ?? issue.expected;
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? issue.options.map(String).join(', ')
        : OUTLINE_SHAPES.join(', ');
    case 'too_big':
      return `at most ${issue.maximum} ${COUNTED[issue.origin] ?? unitOf(issue.path)}`.trim();
    case 'too_small':
      return `at least ${issue.minimum} ${COUNTED[issue.origin] ?? unitOf(issue.path)}`.trim();
    default:
      return issue.message;
  }
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  int: 'a whole number',
  number: 'a number',
  array: 'a list',
  object: 'an object',
};
const COUNTED: Readonly<Record<string, string>> = { string: 'characters', array: 'entries' };

/** Unit of a drawn figure, by the end of its name; places of a look are lists of metres. */
function unitOf(path: readonly PropertyKey[]): string {
  const field = String(path.findLast((key) => typeof key === 'string') ?? '');
  const end = /_(m3|m2|m|rad)$/.exec(field)?.[1];
  return end ?? (['path', 'at', 'through', 'centre', 'corners'].includes(field) ? 'm' : '');
}

function sentence(issue: z.core.$ZodIssue): string {
  const field = String(issue.path.findLast((key) => typeof key === 'string') ?? 'job');
  switch (issue.code) {
    case 'unrecognized_keys':
      return `There is a field here that a job does not have.`;
    case 'invalid_value':
      return `"${field}" is none of the words it may be.`;
    case 'invalid_type':
      return `"${field}" is of the wrong kind.`;
    case 'invalid_union':
      return `"${field}" is none of the words it may be.`;
    case 'too_big':
      return `"${field}" is too ${issue.origin === 'string' || issue.origin === 'array' ? 'long' : 'large'}.`;
    case 'too_small':
      return `"${field}" is too ${issue.origin === 'string' || issue.origin === 'array' ? 'short' : 'small'}.`;
    default:
      return `"${field}" was not understood.`;
  }
}
