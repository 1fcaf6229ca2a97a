import { useState } from 'react';
import { type ObservationDocument, RECOAT_RESULTS } from '#core/resin/card-document.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { FieldsProvider } from '#web/field/fields-context.tsx';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { ProseField, QuantityField, SelectField, TextField } from '#web/field/sheet-fields.tsx';
import { useCard } from './card-context.tsx';
import { useDraftFields } from './draft-fields.ts';
import { LoggerImport } from './LoggerImport.tsx';
import { dayOf, newObservation, useObservationDraft } from './new-observation.ts';
import { ReadingsTable } from './ReadingsTable.tsx';

const KINDS: readonly { readonly value: ObservationDocument['kind']; readonly label: string }[] = [
  { value: 'cup time', label: 'a cup got hot' },
  { value: 'cup temperatures', label: 'temperatures in a cup' },
  { value: 'gel', label: 'it gelled, or pulled strings' },
  { value: 'working end', label: 'a film could no longer be worked' },
  { value: 'touch', label: 'a film was dry to the touch' },
  { value: 'recoat', label: 'how the next coat took' },
];
const reached = [
  { value: '40 C', label: '40 °C (104 °F)' },
  { value: '50 C', label: '50 °C (122 °F)' },
];
const results = RECOAT_RESULTS.map((value) => ({ value, label: value }));
const fresh = () => ({ seen: newObservation('cup time', dayOf(new Date())), startedAt_ms: null });

/** An observation typed, or read from a thermometer logger. */
export function ObservationForm({ onAdded }: { readonly onAdded: (id: string) => void }) {
  const { id, edit, system } = useCard();
  const { draft, setDraft, reset } = useObservationDraft(id, 'form', fresh);
  const [tried, setTried] = useState(false);
  const { fields, read } = useDraftFields(draft, setDraft, 'seen', system, tried);
  const { seen } = draft;
  const cup = seen.kind === 'cup time' || seen.kind === 'cup temperatures' || seen.kind === 'gel';
  const film = !cup || seen.kind === 'gel';
  const keep = () => {
    setTried(true);
    if (!read.ok) return;
    const kept = { ...seen, id: uuid7() };
    edit('Add an observation', '', (d) => ({ ...d, observations: [...d.observations, kept] }));
    reset();
    setTried(false);
    onAdded(kept.id);
  };
  const whole = fields.problems.get('seen.readings') ?? [];
  return (
    <FieldsProvider value={fields}>
      <fieldset className="coat seen-form">
        <legend>Add an observation</legend>
        <div className="form form-tight">
          <SelectField label="What was seen" path={['seen', 'kind']} options={KINDS} />
          <TextField label="Day" path={['seen', 'date']} type="date" />
          <QuantityField
            label="Air in the shop"
            path={['seen', 'air']}
            kind="temperature"
            placeholder="75 F"
          />
          {seen.kind !== 'cup temperatures' && (
            <QuantityField label="After" path={['seen', 'time']} kind="duration" placeholder="9 min" />
          )}
          {seen.kind === 'cup time' && (
            <SelectField label="The cup reached" path={['seen', 'reaches']} options={reached} />
          )}
          {seen.kind === 'recoat' && (
            <SelectField label="The next coat" path={['seen', 'result']} options={results} />
          )}
          {cup && (
            <QuantityField label="Mass in the cup" path={['seen', 'mass']} kind="mass" placeholder="100 g" />
          )}
          {film && (
            <QuantityField
              label={seen.kind === 'gel' ? 'Film (not in a cup)' : 'Film'}
              path={['seen', 'film']}
              kind="length"
              placeholder="2.5 mm"
            />
          )}
          {cup && (
            <>
              <QuantityField
                label="Inner width of the cup"
                path={['seen', 'diameter']}
                kind="length"
                placeholder="not measured"
              />
              <QuantityField
                label="Fresh mix at"
                path={['seen', 'start']}
                kind="temperature"
                placeholder="as the air"
              />
            </>
          )}
          <ProseField label="Note" path={['seen', 'note']} rows={1} />
        </div>
        {seen.kind === 'cup temperatures' && (
          <>
            <LoggerImport
              onRead={(readings) => setDraft((now) => ({ ...now, seen: { ...now.seen, readings } }))}
            />
            <ReadingsTable
              at="seen"
              readings={seen.readings}
              onChange={(readings) => setDraft((now) => ({ ...now, seen: { ...now.seen, readings } }))}
            />
            {whole.map((problem) => (
              <p key={problem.code} className="problem-block" role="alert">
                <ProblemText problem={problem} />
              </p>
            ))}
          </>
        )}
        <p className="actions">
          <button type="button" className="primary" onClick={keep}>
            Add to the card
          </button>
          <button type="button" onClick={reset}>
            Clear
          </button>
        </p>
      </fieldset>
    </FieldsProvider>
  );
}
