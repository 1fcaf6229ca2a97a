import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { readJob } from '#core/job/read-job.ts';
import { jobsQuery, useShop } from '#web/api/queries.ts';
import { useCards } from '#web/api/resin-queries.ts';
import { setAt } from '#web/draft/at-path.ts';
import type { JobSession } from '#web/draft/job-session.ts';
import { useForecast } from '#web/forecast/use-forecast.ts';
import { LookSection } from '#web/look/section/LookSection.tsx';
import { speaker } from '#web/units/speak.ts';
import { AgreeSection } from './AgreeSection.tsx';
import { ConflictPanel } from './ConflictPanel.tsx';
import { CoatsSection } from './coats/CoatsSection.tsx';
import { byPath, type RowFocus, type Sheet, SheetProvider } from './context.tsx';
import { ForecastSection } from './ForecastSection.tsx';
import { Glance } from './Glance.tsx';
import { MixSection } from './mix/MixSection.tsx';
import { PieceSection } from './piece/PieceSection.tsx';
import { PrintOrder } from './print/PrintOrder.tsx';
import { RecordSection } from './RecordSection.tsx';
import { useHashSection } from './Section.tsx';
import { SheetHead } from './SheetHead.tsx';
import { StepsSection } from './StepsSection.tsx';

/** One job, open: everything on it follows the document at once, the forecast as soon as it is computed. */
export function OpenSheet({ session }: { readonly session: JobSession }) {
  const state = useSyncExternalStore(session.subscribe, session.state);
  const shop = useShop();
  const cards = useCards();
  const { rates, system } = shop;
  const shown = useForecast(session.jobId, state.document, { rates, system, cards: cards.ofShop });
  const [focus, setFocus] = useState<RowFocus>(null);
  const queries = useQueryClient();
  useUndoKeys(session);
  useHashSection();

  // The list shows what was saved; it is asked for again when a save went through.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the version is what changes it
  useEffect(() => {
    void queries.invalidateQueries({ queryKey: jobsQuery.queryKey });
  }, [queries, state.version]);
  useEffect(() => () => session.saveNow(), [session]);

  const sheet = useMemo((): Sheet => {
    // The texts are read here, at once, by the same readers the forecast uses; what only the model finds comes with it.
    const all = readJob(state.document, cards.all, shop.system);
    const read = cards.known
      ? all
      : { ...all, problems: all.problems.filter((p) => p.code !== 'coat.resin') };
    const late =
      shown.of === state.document && shown.forecast !== null && cards.known
        ? shown.forecast
        : { problems: [], warnings: [] };
    const known = new Set(read.problems.map((p) => p.path + p.code));
    const knownWarnings = new Set(read.warnings.map((p) => p.path + p.code));
    return {
      jobId: session.jobId,
      document: state.document,
      forecast: shown.forecast,
      behind: shown.behind,
      unsaved: state.save !== 'saved',
      system: shop.system,
      speak: speaker(shop.system),
      problems: byPath([...read.problems, ...late.problems.filter((p) => !known.has(p.path + p.code))]),
      warnings: byPath([
        ...read.warnings,
        ...late.warnings.filter((p) => !knownWarnings.has(p.path + p.code)),
      ]),
      edit: (label, place, make) => session.edit(label, place, make),
      set: (label, path, value) => session.edit(label, path.join('.'), (d) => setAt(d, path, value)),
      undo: () => session.undo(),
      redo: () => session.redo(),
      undoLabel: state.undoLabel,
      redoLabel: state.redoLabel,
      focus,
      setFocus,
    };
  }, [
    session,
    state.document,
    state.save,
    state.undoLabel,
    state.redoLabel,
    shown,
    shop.system,
    cards,
    focus,
  ]);

  return (
    <SheetProvider value={sheet}>
      <article className="sheet" data-behind={shown.behind || undefined}>
        <SheetHead session={session} state={state} failed={shown.failed} />
        {state.conflict !== null && (
          <ConflictPanel
            conflict={state.conflict}
            mine={state.document}
            onSettle={(c) => session.settle(c)}
          />
        )}
        <div className="sheet-columns">
          <div className="sheet-main">
            <AgreeSection />
            <PieceSection />
            <LookSection />
            <CoatsSection />
            <MixSection />
            <ForecastSection />
            <StepsSection />
            <RecordSection />
          </div>
          <Glance />
        </div>
      </article>
      <PrintOrder />
    </SheetProvider>
  );
}

/** Ctrl+Z and Ctrl+Shift+Z (or Ctrl+Y) work on the document, also while typing in a field: the fields show the document. */
function useUndoKeys(session: JobSession): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const back = key === 'z' && !event.shiftKey;
      const forth = (key === 'z' && event.shiftKey) || (key === 'y' && !event.metaKey);
      if (!back && !forth) return;
      event.preventDefault();
      if (back) session.undo();
      else session.redo();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [session]);
}
