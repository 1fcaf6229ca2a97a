/** The routes of a look, for the table of all routes. */
import type { Route } from '../routes.ts';
import { ErrorAnswer, ProblemsAnswer } from '../schemas.ts';
import { PdfFile } from '../set-out/queries.ts';
import { LookSheetQuery, PictureQuery, PngFile } from './queries.ts';

const noJob = { what: 'There is no such job, or no such coat', schema: ErrorAnswer };
const problems = {
  what: 'The look lacks something or cannot be made; the problems name it',
  schema: ProblemsAnswer,
};

const pdf = <Path extends string>(path: Path, what: string, answer: string) =>
  ({
    method: 'get',
    path,
    what,
    query: LookSheetQuery,
    answers: {
      200: { what: answer, schema: PdfFile, type: 'application/pdf' },
      404: noJob,
      422: problems,
    },
  }) as const satisfies Route;

export const lookRoutes = {
  lookApproval: pdf(
    '/api/jobs/:id/look/approval.pdf',
    'The look to sign: picture, colours, what may differ, sample panel, mark of this state',
    'The sheet',
  ),
  lookPourMap: pdf(
    '/api/jobs/:id/look/pour-map.pdf',
    'The look for the wall: numbered pours and pulls, cups by volume and mass',
    'The sheets',
  ),
  lookFullSize: pdf(
    '/api/jobs/:id/look/full-size.pdf',
    'The look at true size on sheets to tape together, with a check bar of 100 mm on each',
    'The sheets',
  ),
  lookPicture: {
    method: 'get',
    path: '/api/jobs/:id/look/picture.png',
    what: 'The look as a picture, clear where there is no film',
    query: PictureQuery,
    answers: {
      200: { what: 'The picture', schema: PngFile, type: 'image/png' },
      404: noJob,
      422: problems,
    },
  },
} as const satisfies Record<string, Route>;
