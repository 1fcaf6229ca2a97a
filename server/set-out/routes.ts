/** The two PDF routes, for the table of all routes. */
import type { Route } from '../routes.ts';
import { ErrorAnswer, ProblemsAnswer } from '../schemas.ts';
import { PdfFile, SheetQuery, TemplateQuery } from './queries.ts';

const noJob = { what: 'There is no such job, or no such piece in it', schema: ErrorAnswer };
const problems = {
  what: 'The piece lacks something or cannot be built; the problems name it',
  schema: ProblemsAnswer,
};

export const setOutRoutes = {
  setOutSheet: {
    method: 'get',
    path: '/api/jobs/:id/set-out.pdf',
    what: 'The set-out sheet: drawing, corners, diagonals, cut-outs, edges',
    query: SheetQuery,
    answers: {
      200: { what: 'The sheet', schema: PdfFile, type: 'application/pdf' },
      404: noJob,
      422: problems,
    },
  },
  template: {
    method: 'get',
    path: '/api/jobs/:id/template.pdf',
    what: 'The piece at true scale on sheets to tape together, with a check bar of 100 mm on each',
    query: TemplateQuery,
    answers: {
      200: { what: 'The template', schema: PdfFile, type: 'application/pdf' },
      404: noJob,
      422: problems,
    },
  },
} as const satisfies Record<string, Route>;
