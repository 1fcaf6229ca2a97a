/** The routes about runs, for the table of all routes. */
import type { Route } from '../routes.ts';
import { ErrorAnswer } from '../schemas.ts';
import { Exchange, ExchangeBody, OpenRunBody, Run, RunList, RunOpened, RunsQuery } from './schemas.ts';

const noRun = { what: 'There is no such run', schema: ErrorAnswer };

export const runRoutes = {
  listRuns: {
    method: 'get',
    path: '/api/runs',
    what: 'Pours as they happened, the newest first, without their plans',
    query: RunsQuery,
    answers: { 200: { what: 'The runs', schema: RunList } },
  },
  openRun: {
    method: 'put',
    path: '/api/runs/:id',
    what: 'Opens a run with its frozen pour; a run that is there stays as it is',
    body: OpenRunBody,
    answers: {
      200: { what: 'It is open, now or by an earlier sending', schema: RunOpened },
      422: { what: 'The frozen pour cannot be used; nothing was stored', schema: ErrorAnswer },
    },
  },
  getRun: {
    method: 'get',
    path: '/api/runs/:id',
    what: 'A run with its frozen pour',
    answers: { 200: { what: 'The run', schema: Run }, 404: noRun },
  },
  exchangeEvents: {
    method: 'post',
    path: '/api/runs/:id/events',
    what: 'Hands in events of a device and answers with those it does not have',
    body: ExchangeBody,
    answers: { 200: { what: 'The events after the one named', schema: Exchange }, 404: noRun },
  },
} as const satisfies Record<string, Route>;
