import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
import { JOB_FORMAT, JobDocument } from './document.ts';

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
      read: String(format).slice(0, 80),
      allowed: `"${JOB_FORMAT}"`,
    });
  const parsed = JobDocument.safeParse(input);
  if (parsed.success) return good(parsed.data);
  const problems = parsed.error.issues.map((issue): Problem => {
    const path = issue.path.join('.');
    const value = issue.path.reduce<unknown>(
      (at, key) =>
        typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>)[key] : undefined,
      input,
    );
    const read =
      value === undefined ? 'nothing' : typeof value === 'object' ? JSON.stringify(value) : String(value);
    const allowed =
      issue.code === 'invalid_value'
        ? issue.values.map(String).join(', ')
        : issue.code === 'unrecognized_keys'
          ? `no field called ${issue.keys.join(', ')}`
          : issue.code === 'invalid_type'
            ? issue.expected
            : issue.message;
    return { path, code: `job.${issue.code}`, message: sentence(issue), read: read.slice(0, 120), allowed };
  });
  return bad(...problems);
}

function sentence(issue: { code: string; message: string; path: readonly PropertyKey[] }): string {
  const field = String(issue.path.at(-1) ?? 'job');
  switch (issue.code) {
    case 'unrecognized_keys':
      return `There is a field here that a job does not have.`;
    case 'invalid_value':
      return `"${field}" is none of the words it may be.`;
    case 'invalid_type':
      return `"${field}" is of the wrong kind.`;
    case 'too_big':
      return `"${field}" is too long.`;
    case 'too_small':
      return `"${field}" is too short.`;
    default:
      return `"${field}" was not understood.`;
  }
}
