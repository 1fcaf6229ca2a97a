/** Everything the app asks the server, one function a question. */
import type { JobDocument } from '#core/job/document.ts';
import type { Sent } from '#web/draft/draft-store.ts';
import type { SaveAnswer } from '#web/draft/job-session.ts';
import { api, refusal } from './http.ts';
import type { JobSummary, Shop, ShopSettings, StoredJob } from './types.ts';

/** All jobs, archived ones too, newest save first. */
export async function listJobs(): Promise<readonly JobSummary[]> {
  const response = await api.jobs.$get({ query: {} });
  if (!response.ok) throw await refusal(response);
  return (await response.json()).jobs;
}

export async function getJob(id: string): Promise<StoredJob> {
  const response = await api.jobs[':id'].$get({ param: { id } });
  if (response.status !== 200) throw await refusal(response);
  return response.json();
}

/** Repeating it with the same ids is harmless. */
export async function createJob(id: string, saveId: string, document: JobDocument): Promise<void> {
  const response = await api.jobs.$post({ json: { id, saveId, document } });
  if (!response.ok) throw await refusal(response);
}

export async function saveJob(id: string, sent: Sent): Promise<SaveAnswer> {
  const { baseVersion, saveId, document } = sent;
  const response = await api.jobs[':id'].$put({ param: { id }, json: { baseVersion, saveId, document } });
  if (response.status === 200) return { kind: 'saved', version: (await response.json()).version };
  if (response.status === 409) {
    const { current } = (await response.json()).conflict;
    return { kind: 'conflict', version: current.version, document: current.document };
  }
  const error = await refusal(response);
  if (error.status === 422 || error.status === 400)
    return {
      kind: 'refused',
      problems:
        error.problems.length > 0
          ? error.problems
          : [{ path: '', code: 'job.refused', message: error.message }],
    };
  return { kind: 'unreachable', reason: error.message };
}

export async function archiveJob(id: string): Promise<void> {
  const response = await api.jobs[':id'].archive.$post({ param: { id } });
  if (!response.ok) throw await refusal(response);
}

export async function restoreJob(id: string): Promise<void> {
  const response = await api.jobs[':id'].restore.$post({ param: { id } });
  if (!response.ok) throw await refusal(response);
}

export async function getShop(): Promise<Shop> {
  const response = await api.shop.$get();
  if (!response.ok) throw await refusal(response);
  const { version, shop } = await response.json();
  return { ...shop, version };
}

/** Saved, or the shop as somebody else saved it meanwhile. */
export type ShopAnswer =
  | { readonly kind: 'saved'; readonly version: number }
  | { readonly kind: 'conflict'; readonly current: Shop };

export async function putShop(baseVersion: number, saveId: string, shop: ShopSettings): Promise<ShopAnswer> {
  const response = await api.shop.$put({ json: { baseVersion, saveId, shop } });
  if (response.status === 200) return { kind: 'saved', version: (await response.json()).version };
  if (response.status === 409) {
    const { current } = (await response.json()).conflict;
    return { kind: 'conflict', current: { ...current.document, version: current.version } };
  }
  throw await refusal(response);
}
