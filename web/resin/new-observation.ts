/** What is typed of an observation before it is on the card: kept on this device, so that a reload or a lost network loses nothing. */
import { useEffect, useState } from 'react';
import { ObservationDocument } from '#core/resin/card-document.ts';
import { uuid7 } from '#web/draft/uuid7.ts';

export interface ObservationDraft {
  readonly seen: ObservationDocument;
  /** Cup test: when the parts met, milliseconds since 1970. */
  readonly startedAt_ms: number | null;
}

export function newObservation(kind: ObservationDocument['kind'], day: string): ObservationDocument {
  return ObservationDocument.parse({ id: uuid7(), kind, date: day });
}

/** The day on the wall, as 2026-05-14. */
export function dayOf(now: Date): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function load(key: string, fresh: () => ObservationDraft): ObservationDraft {
  try {
    const found = JSON.parse(localStorage.getItem(key) ?? 'null') as Partial<ObservationDraft> | null;
    const seen = ObservationDocument.safeParse(found?.seen);
    if (!seen.success) return fresh();
    const at = found?.startedAt_ms;
    return { seen: seen.data, startedAt_ms: typeof at === 'number' ? at : null };
  } catch {
    return fresh();
  }
}

/** `name` tells the form from the cup test of the same card. */
export function useObservationDraft(cardId: string, name: 'form' | 'cup', fresh: () => ObservationDraft) {
  const key = `pourwright.observation.${name}.${cardId}`;
  const [draft, setDraft] = useState(() => load(key, fresh));
  useEffect(() => {
    try {
      localStorage.setItem(key, JSON.stringify(draft));
    } catch {
      // A device without storage keeps it until the page is left; the fields themselves are not affected.
    }
  }, [key, draft]);
  return { draft, setDraft, reset: () => setDraft(fresh()) };
}
