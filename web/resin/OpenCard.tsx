import './resin.css';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useMemo, useSyncExternalStore } from 'react';
import { readCard } from '#core/resin/read-card.ts';
import { useShop } from '#web/api/queries.ts';
import { fittedQuery, resinsQuery } from '#web/api/resin-queries.ts';
import { setAt } from '#web/draft/at-path.ts';
import type { ResinSession } from '#web/draft/sessions.ts';
import { type Fields, FieldsProvider } from '#web/field/fields-context.tsx';
import { ConflictPanel } from '#web/sheet/ConflictPanel.tsx';
import { byPath } from '#web/sheet/context.tsx';
import { speaker } from '#web/units/speak.ts';
import { CardHead } from './CardHead.tsx';
import { CupTestSection } from './CupTestSection.tsx';
import { CardProvider, type OpenCardState } from './card-context.tsx';
import { FitSection } from './FitSection.tsx';
import { HangUp } from './HangUp.tsx';
import { KnownSection } from './KnownSection.tsx';
import { LabelSection } from './LabelSection.tsx';
import { ObservationsSection } from './ObservationsSection.tsx';
import { OutlookTable } from './OutlookTable.tsx';
import { RatioSection } from './RatioSection.tsx';
import { useFit } from './use-fit.ts';

interface Props {
  readonly id: string;
  readonly session: ResinSession;
  readonly archived: boolean;
}

/** One resin card: what is on the label, what the shop saw, and what both lead to. */
export function OpenCard({ id, session, archived }: Props) {
  const state = useSyncExternalStore(session.subscribe, session.state);
  const { system } = useShop();
  const { document } = state;
  const checked = useMemo(() => readCard(document), [document]);
  const shown = useFit(checked.ok ? document : null, system);
  const queries = useQueryClient();

  // Lists and forecasts rest on what was saved; they are asked for again when a save went through.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version is what changes it
  useEffect(() => {
    void queries.invalidateQueries({ queryKey: resinsQuery.queryKey });
    void queries.invalidateQueries({ queryKey: fittedQuery.queryKey });
  }, [queries, state.version]);
  useEffect(() => () => session.saveNow(), [session]);

  const fields = useMemo((): Fields => {
    const found = checked.ok ? state.problems : checked.problems;
    return {
      document,
      system,
      problems: byPath(found),
      warnings: byPath(checked.ok ? checked.warnings : []),
      set: (label, path, value) => session.edit(label, path.join('.'), (d) => setAt(d, path, value)),
    };
  }, [checked, document, system, state.problems, session]);
  const card = useMemo(
    (): OpenCardState => ({
      id,
      document,
      read: checked.ok ? checked.value : null,
      shown,
      system,
      speak: speaker(system),
      edit: (label, place, make) => session.edit(label, place, make),
    }),
    [id, document, checked, shown, system, session],
  );
  return (
    <CardProvider value={card}>
      <FieldsProvider value={fields}>
        <article className="page resin-page" data-behind={shown.behind || undefined}>
          <CardHead session={session} state={state} archived={archived} />
          {state.conflict !== null && (
            <ConflictPanel
              what="card"
              conflict={state.conflict}
              mine={document}
              onSettle={(choices) => session.settle(choices)}
            />
          )}
          <OutlookTable />
          <LabelSection />
          <FitSection />
          <HangUp />
          <RatioSection />
          <KnownSection />
          <ObservationsSection />
          <CupTestSection />
        </article>
      </FieldsProvider>
    </CardProvider>
  );
}
