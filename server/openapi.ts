import { z } from 'zod';
import { type Answer, type Route, routes } from './routes.ts';
import { ErrorAnswer, ResinId } from './schemas.ts';

const common: Readonly<Record<number, Answer>> = {
  400: { what: 'Something in the address or the body is not as described', schema: ErrorAnswer },
  403: { what: 'The request came from another site, or under a foreign host name', schema: ErrorAnswer },
  500: { what: 'A fault of the server; its log has the id', schema: ErrorAnswer },
};
const commonWithBody: Readonly<Record<number, Answer>> = {
  413: { what: 'The body is too large', schema: ErrorAnswer },
  415: { what: 'The body is not application/json', schema: ErrorAnswer },
};

/** The OpenAPI 3.1 description of `routes`; its schemas are JSON Schema 2020-12, as that version of OpenAPI uses. */
export function openApi(version: string): Record<string, unknown> {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const [operationId, route] of Object.entries<Route>(routes)) {
    const path = route.path.replaceAll(/:(\w+)/g, '{$1}');
    paths[path] = { ...paths[path], [route.method]: operation(operationId, route) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Pourwright',
      version,
      description:
        'Jobs of a shop that finishes tops in poured epoxy. Saving names the version it was read at; nothing is overwritten.',
      license: { name: 'MIT', identifier: 'MIT' },
    },
    servers: [{ url: '/' }],
    paths,
  };
}

function operation(operationId: string, route: Route): Record<string, unknown> {
  const answers = { ...common, ...(route.body === undefined ? {} : commonWithBody), ...route.answers };
  const responses = Object.entries(answers).map(([status, answer]) => [
    status,
    {
      description: answer.what,
      content: { [answer.type ?? 'application/json']: { schema: schemaOf(answer.schema, 'output') } },
    },
  ]);
  const parameters = [...pathParameters(route.path), ...queryParameters(route.query)];
  return {
    operationId,
    summary: route.what,
    ...(parameters.length === 0 ? {} : { parameters }),
    ...(route.body === undefined
      ? {}
      : {
          requestBody: {
            required: true,
            content: { 'application/json': { schema: schemaOf(route.body, 'input') } },
          },
        }),
    responses: Object.fromEntries(responses),
  };
}

function pathParameters(path: string): readonly unknown[] {
  return [...path.matchAll(/:(\w+)/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema:
      name === 'version'
        ? { type: 'integer', minimum: 1 }
        : path.startsWith('/api/resins/')
          ? schemaOf(ResinId, 'input')
          : { type: 'string', format: 'uuid' },
  }));
}

function queryParameters(query: z.ZodObject | undefined): readonly unknown[] {
  if (query === undefined) return [];
  const { properties = {} } = schemaOf(query, 'input') as { properties?: Record<string, unknown> };
  return Object.entries(properties).map(([name, schema]) => ({ name, in: 'query', required: false, schema }));
}

function schemaOf(schema: z.ZodType, io: 'input' | 'output'): Record<string, unknown> {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { io });
  return rest;
}
