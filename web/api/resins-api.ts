/** Resin cards: everything the app asks the server about them. */
import type { ResinCardDocument } from '#core/resin/card-document.ts';
import type { ResinCard } from '#core/resin/model.ts';
import type { Sent } from '#web/draft/draft-store.ts';
import type { SaveAnswer } from '#web/draft/job-session.ts';
import { api, refusal } from './http.ts';

export interface StoredResin {
  readonly id: string;
  readonly version: number;
  readonly savedAt: string;
  readonly archived: boolean;
  readonly document: ResinCardDocument;
}

export interface FittedResin {
  readonly archived: boolean;
  readonly card: ResinCard;
}

/** All cards of the shop, archived ones too, by name. */
export async function listResins(): Promise<readonly StoredResin[]> {
  const response = await api.resins.$get();
  if (!response.ok) throw await refusal(response);
  return (await response.json()).resins;
}

export async function getResin(id: string): Promise<StoredResin> {
  const response = await api.resins[':id'].$get({ param: { id } });
  if (response.status !== 200) throw await refusal(response);
  return response.json();
}

/** The cards as forecasts use them. */
export async function listFittedResins(): Promise<readonly FittedResin[]> {
  const response = await api['fitted-resins'].$get();
  if (!response.ok) throw await refusal(response);
  return (await response.json()).cards as readonly FittedResin[];
}

/** Repeating it with the same save id is harmless. False: there is a card of this id already. */
export async function createResin(saveId: string, document: ResinCardDocument): Promise<boolean> {
  const response = await api.resins.$post({ json: { saveId, document } });
  if (response.status === 409) return false;
  if (!response.ok) throw await refusal(response);
  return true;
}

export async function saveResin(
  id: string,
  sent: Sent<ResinCardDocument>,
): Promise<SaveAnswer<ResinCardDocument>> {
  const { baseVersion, saveId, document } = sent;
  const response = await api.resins[':id'].$put({ param: { id }, json: { baseVersion, saveId, document } });
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
          : [{ path: '', code: 'resin.refused', message: error.message }],
    };
  return { kind: 'unreachable', reason: error.message };
}

export async function archiveResin(id: string, archived: boolean): Promise<void> {
  const at = api.resins[':id'];
  const response = await (archived
    ? at.archive.$post({ param: { id } })
    : at.restore.$post({ param: { id } }));
  if (!response.ok) throw await refusal(response);
}
