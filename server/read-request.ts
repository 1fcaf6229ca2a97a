/** Readers of what a request carries. They refuse with the field, what was read and what is allowed. */
import type { Context, MiddlewareHandler } from 'hono';
import type { z } from 'zod';
import type { AppEnv } from './context.ts';
import { Refusal } from './refusal.ts';
import { ResinId, Uuid } from './schemas.ts';

/** A full job is some tens of kB. */
export const BODY_LIMIT_bytes = 1_000_000;

/**
 * Reads a JSON body and checks it by `schema`; `c.req.valid('json')` then has it.
 * `Sent` is what a typed client may send, where that is said more exactly by another schema.
 */
export function jsonBody<Checked extends z.ZodType, Sent>(
  schema: Checked,
): MiddlewareHandler<AppEnv, string, { in: { json: Sent }; out: { json: z.output<Checked> } }> {
  return async (c, next) => {
    const type = c.req.header('content-type') ?? '';
    if (!/^application\/json\s*(;|$)/i.test(type))
      throw new Refusal(415, 'body.type', 'The body must be sent with Content-Type: application/json.');
    const text = await readText(c.req.raw);
    let input: unknown;
    try {
      input = JSON.parse(text);
    } catch {
      throw new Refusal(400, 'body.json', 'The body is not JSON.');
    }
    c.req.addValidatedData('json', accept(schema, input, 'body') as object);
    await next();
  };
}

/** Reads the query; `c.req.valid('query')` then has it. */
export function query<S extends z.ZodType>(
  schema: S,
): MiddlewareHandler<AppEnv, string, { in: { query: z.input<S> }; out: { query: z.output<S> } }> {
  return async (c, next) => {
    c.req.addValidatedData('query', accept(schema, c.req.query(), 'query') as object);
    await next();
  };
}

/** The `:id` of a path, in lower case. */
export function idOf(c: Context): string {
  const read = Uuid.safeParse(c.req.param('id'));
  if (!read.success)
    throw new Refusal(400, 'id.uuid', 'The id in the address is not a UUID (8-4-4-4-12 hex digits).');
  return read.data;
}

/** The `:id` of a path to a resin card. */
export function resinIdOf(c: Context): string {
  const read = ResinId.safeParse(c.req.param('id'));
  if (!read.success)
    throw new Refusal(400, 'id.resin', 'The id in the address is not small letters, figures and hyphens.');
  return read.data;
}

/** The `:version` of a path. */
export function versionOf(c: Context): number {
  const text = c.req.param('version') ?? '';
  if (!/^[1-9]\d{0,8}$/.test(text))
    throw new Refusal(400, 'version.number', 'The version in the address is not a whole number from 1.');
  return Number(text);
}

function accept<S extends z.ZodType>(schema: S, input: unknown, where: string): z.output<S> {
  const read = schema.safeParse(input);
  if (read.success) return read.data;
  const issues = read.error.issues.slice(0, 5).map((issue) => {
    const path = issue.path.join('.');
    return path === '' ? issue.message : `${path}: ${issue.message}`;
  });
  throw new Refusal(400, `${where}.shape`, `The ${where} is not as described. ${issues.join('. ')}.`);
}

/** Stops reading as soon as the body is over the limit, whatever its Content-Length said. */
async function readText(request: Request): Promise<string> {
  const tooLarge = () =>
    new Refusal(413, 'body.size', `The body is too large. Allowed: up to ${BODY_LIMIT_bytes} bytes.`);
  if (Number(request.headers.get('content-length') ?? 0) > BODY_LIMIT_bytes) throw tooLarge();
  if (request.body === null) return '';
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const reader = request.body.getReader();
  let text = '';
  let size_bytes = 0;
  try {
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      size_bytes += part.value.byteLength;
      if (size_bytes > BODY_LIMIT_bytes) throw tooLarge();
      text += decoder.decode(part.value, { stream: true });
    }
    return text + decoder.decode();
  } catch (error) {
    await reader.cancel().catch(() => {});
    if (error instanceof TypeError) throw new Refusal(400, 'body.utf8', 'The body is not UTF-8 text.');
    throw error;
  }
}
