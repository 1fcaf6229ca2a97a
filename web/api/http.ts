/** The typed client, and what goes wrong on the way in words a person can act on. */
import { hc } from 'hono/client';
import type { Problem } from '#core/quantity/problem.ts';
import type { App } from '#server/app.ts';

/** The server answered, but not with what was asked for. */
export class AnswerError extends Error {
  override readonly name = 'AnswerError';
  readonly status: number;
  readonly problems: readonly Problem[];
  constructor(status: number, message: string, problems: readonly Problem[] = []) {
    super(message);
    this.status = status;
    this.problems = problems;
  }
}

/** No answer came: the server is not running, or there is no network. */
export class UnreachableError extends Error {
  override readonly name = 'UnreachableError';
  constructor(cause: unknown) {
    super(
      'The shop server does not answer. Check that it is running and that this device is on the network.',
      {
        cause,
      },
    );
  }
}

const GIVE_UP_AFTER_MS = 20_000;
const NOBODY_HOME = [502, 503, 504];

async function patientFetch(input: RequestInfo | URL, init?: RequestInit): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(input, {
      ...init,
      credentials: 'same-origin',
      signal: AbortSignal.timeout(GIVE_UP_AFTER_MS),
    });
  } catch (error) {
    throw new UnreachableError(error);
  }
  if (NOBODY_HOME.includes(response.status))
    throw new UnreachableError(new Error(`status ${response.status}`));
  return response;
}

export const api = hc<App>('/', { fetch: patientFetch }).api;

/** The answer's own words for what went wrong, as an error to throw. */
export async function refusal(response: {
  readonly status: number;
  json(): Promise<unknown>;
}): Promise<AnswerError> {
  let body: unknown = null;
  try {
    body = await response.json();
  } catch {
    // An answer without JSON is not one of ours; its status says what there is to say.
  }
  const { error, problems } = (body ?? {}) as { error?: { message?: string }; problems?: Problem[] };
  const said = error?.message ?? `The server answered with an error (${response.status}).`;
  return new AnswerError(response.status, said, Array.isArray(problems) ? problems : []);
}
