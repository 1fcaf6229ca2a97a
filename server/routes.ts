/**
 * Every route of the API once: the app takes the paths from here, the OpenAPI description all of it. openapi.test.ts checks that the
 * app has exactly these routes and that its answers are as described.
 */
import type { z } from 'zod';
import { calendarRoutes } from './calendar/routes.ts';
import { lookRoutes } from './look/routes.ts';
import { runRoutes } from './runs/routes.ts';
import * as s from './schemas.ts';
import { setOutRoutes } from './set-out/routes.ts';

export interface Answer {
  readonly what: string;
  readonly schema: z.ZodType;
  /** Default application/json. */
  readonly type?: string;
}

export interface Route {
  readonly method: 'get' | 'post' | 'put';
  /** As Hono writes it: `/api/jobs/:id`. */
  readonly path: string;
  readonly what: string;
  readonly query?: z.ZodObject;
  readonly body?: z.ZodType;
  /** Besides those every route can give: 400, 403, 404, 413, 415, 500 with an error. */
  readonly answers: Readonly<Record<number, Answer>>;
}

const saved = { what: 'Saved, now or by an earlier sending of the same save', schema: s.Saved };
const problems = { what: 'The job holds something that cannot be used', schema: s.ProblemsAnswer };
const noJob = { what: 'There is no such job', schema: s.ErrorAnswer };
const noResin = { what: 'There is no such resin card', schema: s.ErrorAnswer };
const badCard = { what: 'The card holds something that cannot be used', schema: s.ProblemsAnswer };
const conflict = { what: 'Someone saved in between; nothing was stored', schema: s.JobConflict };
const archived = { what: 'Done, or so already', schema: s.Archived };

export const routes = {
  health: {
    method: 'get',
    path: '/api/health',
    what: 'Is the server up, and does its database answer?',
    answers: {
      200: { what: 'It does', schema: s.Health },
      503: { what: 'The database does not answer', schema: s.ErrorAnswer },
    },
  },
  listJobs: {
    method: 'get',
    path: '/api/jobs',
    what: 'All jobs, newest save first',
    query: s.ListQuery,
    answers: { 200: { what: 'The jobs', schema: s.JobList } },
  },
  createJob: {
    method: 'post',
    path: '/api/jobs',
    what: 'Makes a job',
    body: s.NewJobBody,
    answers: {
      201: saved,
      409: { what: 'Another save made a job of this id; nothing was stored', schema: s.JobConflict },
      422: problems,
    },
  },
  getJob: {
    method: 'get',
    path: '/api/jobs/:id',
    what: 'A job, its newest version',
    answers: { 200: { what: 'The job', schema: s.Job }, 404: noJob },
  },
  saveJob: {
    method: 'put',
    path: '/api/jobs/:id',
    what: 'Saves the next version of a job',
    body: s.SaveJobBody,
    answers: { 200: saved, 404: noJob, 409: conflict, 422: problems },
  },
  jobFile: {
    method: 'get',
    path: '/api/jobs/:id/file',
    what: 'The job file, to keep or pass on',
    answers: { 200: { what: 'The job document, as a download', schema: s.Job.shape.document }, 404: noJob },
  },
  ...setOutRoutes,
  ...lookRoutes,
  ...calendarRoutes,
  listVersions: {
    method: 'get',
    path: '/api/jobs/:id/versions',
    what: 'Every version of a job, oldest first',
    answers: { 200: { what: 'The versions', schema: s.VersionList }, 404: noJob },
  },
  getVersion: {
    method: 'get',
    path: '/api/jobs/:id/versions/:version',
    what: 'One version as it was saved',
    answers: {
      200: { what: 'The version', schema: s.JobVersion },
      404: { what: 'There is no such job or version', schema: s.ErrorAnswer },
    },
  },
  archiveJob: {
    method: 'post',
    path: '/api/jobs/:id/archive',
    what: 'Puts a job in the archive',
    answers: { 200: archived, 404: noJob },
  },
  restoreJob: {
    method: 'post',
    path: '/api/jobs/:id/restore',
    what: 'Takes a job out of the archive',
    answers: { 200: archived, 404: noJob },
  },
  listResins: {
    method: 'get',
    path: '/api/resins',
    what: 'All resin cards of the shop, by name, archived ones too',
    answers: { 200: { what: 'The cards', schema: s.ResinList } },
  },
  createResin: {
    method: 'post',
    path: '/api/resins',
    what: 'Makes a resin card',
    body: s.NewResinBody,
    answers: {
      201: saved,
      409: { what: 'There is a card of this id; nothing was stored', schema: s.ResinConflict },
      422: badCard,
    },
  },
  getResin: {
    method: 'get',
    path: '/api/resins/:id',
    what: 'A resin card, its newest version',
    answers: { 200: { what: 'The card', schema: s.Resin }, 404: noResin },
  },
  saveResin: {
    method: 'put',
    path: '/api/resins/:id',
    what: 'Saves the next version of a resin card',
    body: s.SaveResinBody,
    answers: {
      200: saved,
      404: noResin,
      409: { what: 'Someone saved in between; nothing was stored', schema: s.ResinConflict },
      422: badCard,
    },
  },
  archiveResin: {
    method: 'post',
    path: '/api/resins/:id/archive',
    what: 'Puts a resin card in the archive',
    answers: { 200: archived, 404: noResin },
  },
  restoreResin: {
    method: 'post',
    path: '/api/resins/:id/restore',
    what: 'Takes a resin card out of the archive',
    answers: { 200: archived, 404: noResin },
  },
  fittedResins: {
    method: 'get',
    path: '/api/fitted-resins',
    what: 'The cards of the shop fitted to their labels and observations, as forecasts use them',
    answers: { 200: { what: 'The fitted cards', schema: s.FittedResins } },
  },
  ...runRoutes,
  listOffcutMovements: {
    method: 'get',
    path: '/api/offcut-movements',
    what: 'Every movement of offcuts on and off the shelf',
    answers: { 200: { what: 'The movements', schema: s.MovementList } },
  },
  moveOffcuts: {
    method: 'post',
    path: '/api/offcut-movements',
    what: 'Adds a movement; one that reverses another undoes it',
    body: s.MovementBody,
    answers: {
      201: { what: 'Stored, now or by an earlier sending', schema: s.MovementSaved },
      422: { what: 'It cannot follow those there are; nothing was stored', schema: s.ProblemsAnswer },
    },
  },
  getShop: {
    method: 'get',
    path: '/api/shop',
    what: 'The shop',
    answers: { 200: { what: 'The shop', schema: s.ShopAnswer } },
  },
  saveShop: {
    method: 'put',
    path: '/api/shop',
    what: 'Saves the next version of the shop',
    body: s.SaveShopBody,
    answers: {
      200: saved,
      409: { what: 'Someone saved in between; nothing was stored', schema: s.ShopConflict },
    },
  },
  openapi: {
    method: 'get',
    path: '/api/openapi.json',
    what: 'This description',
    answers: { 200: { what: 'OpenAPI 3.1', schema: s.AnyObject } },
  },
  jobSchema: {
    method: 'get',
    path: '/api/job.schema.json',
    what: 'The JSON Schema of a job file',
    answers: {
      200: { what: 'JSON Schema 2020-12', schema: s.AnyObject, type: 'application/schema+json' },
    },
  },
} as const satisfies Record<string, Route>;
