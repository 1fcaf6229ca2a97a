/** What a device asks the shop's server about pours. */
import { type FrozenPour, FrozenPourDocument, frozenText } from '#core/pour/run/frozen-pour.ts';
import { AnswerError, api, refusal } from '#web/api/http.ts';
import type { Exchanger } from './exchange.ts';
import type { KeptRun } from './run-shelf.ts';

export interface RunSummary {
  readonly id: string;
  readonly jobId: string;
  readonly coatId: string;
  readonly title: string;
  readonly openedAt: string;
  readonly lastEvent: number;
}

export async function listRuns(jobId: string): Promise<readonly RunSummary[]> {
  const response = await api.runs.$get({ query: { job: jobId } });
  if (!response.ok) throw await refusal(response);
  return (await response.json()).runs;
}

/** Sending it again is harmless. */
export async function openRun({ id, jobId, title, pour }: KeptRun): Promise<void> {
  const response = await api.runs[':id'].$put({
    param: { id },
    json: { jobId, title, pour: JSON.parse(frozenText(pour)) as { format: string } },
  });
  if (!response.ok) throw await refusal(response);
}

/** null: the server does not have it. */
export async function fetchRun(id: string): Promise<KeptRun | null> {
  const response = await api.runs[':id'].$get({ param: { id } });
  if (response.status === 404) return null;
  if (!response.ok) throw await refusal(response);
  const { pour, jobId, coatId, title, openedAt } = await response.json();
  const read = FrozenPourDocument.safeParse(pour);
  if (!read.success)
    throw new AnswerError(
      422,
      'The pour on the server does not fit its own hash: it was changed after it was frozen.',
    );
  return { id, jobId, coatId, title, openedAt, pour: read.data as FrozenPour, offered: true };
}

export const exchangeWithServer: Exchanger = async (run, { after, now_ms, events }) => {
  const response = await api.runs[':id'].events.$post({
    param: { id: run },
    json: { after, now_ms, events: [...events] },
  });
  if (response.status !== 200) throw await refusal(response);
  return response.json();
};
