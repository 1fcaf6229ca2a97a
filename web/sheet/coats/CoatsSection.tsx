import type { CoatDocument } from '#core/job/document.ts';
import { useCards } from '#web/api/resin-queries.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { problemsUnder, useSheet } from '../context.tsx';
import { Section } from '../Section.tsx';
import { coatsSummary } from '../summaries.ts';
import { CoatForm } from './CoatForm.tsx';
import { COAT_KINDS, newCoat } from './new-coat.ts';
import { RoomForm } from './RoomForm.tsx';

/** The coats in the order they go on, and the room they are poured in. */
export function CoatsSection() {
  const { all } = useCards();
  const cardName = (id: string) => all.find((card) => card.id === id)?.name ?? id;
  const { document, forecast, problems, edit, system } = useSheet();
  const missing = (forecast?.missing ?? [])
    .filter((m) => m.path.startsWith('coats') || m.path.startsWith('room'))
    .map((m) => m.needs);
  const add = (kind: CoatDocument['kind']) =>
    edit(`Add ${kind}`, '', (d) => ({
      ...d,
      coats: [...d.coats, newCoat(kind, uuid7(), d.coats.at(-1), system)],
    }));
  return (
    <Section
      id="coats"
      name="Coats"
      summary={coatsSummary(document, cardName)}
      needs={missing}
      problems={problemsUnder(problems, 'coats').length + problemsUnder(problems, 'room').length}
    >
      <RoomForm />
      {document.coats.map((coat, i) => (
        <CoatForm key={coat.id} coat={coat} index={i} count={document.coats.length} />
      ))}
      <div className="add-row">
        <span id="add-coat">{document.coats.length === 0 ? 'No coats yet. Add the first:' : 'Add'}</span>
        {COAT_KINDS.map((kind) => (
          <button
            type="button"
            className="small"
            key={kind}
            onClick={() => add(kind)}
            disabled={document.coats.length >= 12}
          >
            {kind}
          </button>
        ))}
      </div>
    </Section>
  );
}
