import { useMemo } from 'react';
import type { System } from '#core/quantity/units.ts';
import { readObservation } from '#core/resin/observations.ts';
import { setAt } from '#web/draft/at-path.ts';
import type { Fields } from '#web/field/fields-context.tsx';
import { byPath } from '#web/sheet/context.tsx';
import type { ObservationDraft } from './new-observation.ts';

/** Codes that say only that something is not typed yet: shown when it was tried to keep the observation. */
const NOT_YET = new Set(['observation.missing', 'observation.few-readings']);

/** The fields of an observation that is not on the card yet; `at` is where its ids begin. */
export function useDraftFields(
  draft: ObservationDraft,
  setDraft: (make: (draft: ObservationDraft) => ObservationDraft) => void,
  at: string,
  system: System,
  tried: boolean,
): { readonly fields: Fields; readonly read: ReturnType<typeof readObservation> } {
  return useMemo(() => {
    const read = readObservation(draft.seen, at);
    const problems = read.ok ? [] : read.problems.filter((each) => tried || !NOT_YET.has(each.code));
    return {
      read,
      fields: {
        document: { [at]: draft.seen },
        system,
        problems: byPath(problems),
        warnings: byPath(read.ok ? read.warnings : []),
        set: (_label, path, value) =>
          setDraft((now) => ({ ...now, seen: setAt(now.seen, path.slice(1), value) })),
      },
    };
  }, [draft, setDraft, at, system, tried]);
}
