import { useEffect, useState } from 'react';
import { readDuration_s, readTemperature_K } from '#core/quantity/read.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { FieldsProvider } from '#web/field/fields-context.tsx';
import { Labelled } from '#web/field/Labelled.tsx';
import { QuantityField } from '#web/field/sheet-fields.tsx';
import { toast } from '#web/shell/toasts.tsx';
import { pourClock } from '#web/units/dates.ts';
import { CupTestResult } from './CupTestResult.tsx';
import { useCard } from './card-context.tsx';
import { useDraftFields } from './draft-fields.ts';
import { dayOf, newObservation, useObservationDraft } from './new-observation.ts';
import { CUP_TEST_s, nextReadingAt_s, withUnit } from './readings.ts';

const fresh = () => ({
  seen: { ...newObservation('cup temperatures', dayOf(new Date())), mass: '100 g' },
  startedAt_ms: null,
});

/** Past this a cup is no longer held in the hand. */
const HOT_K = 313.15;

/** The guided cup test: 100 g, a thermometer, half an hour. Everything is on this device, so it needs no network. */
export function CupTestSection() {
  const { id, edit, system, speak } = useCard();
  const { draft, setDraft, reset } = useObservationDraft(id, 'cup', fresh);
  const [tried, setTried] = useState(false);
  const { fields, read } = useDraftFields(draft, setDraft, 'cup', system, tried);
  const { seen, startedAt_ms } = draft;
  const now_ms = useClock(startedAt_ms !== null);
  const elapsed_s = startedAt_ms === null ? 0 : Math.max(0, (now_ms - startedAt_ms) / 1000);
  const next_s = nextReadingAt_s(elapsed_s);
  const last = seen.readings.at(-1);
  const lastRead = last === undefined ? null : readTemperature_K(last.temperature);
  const hot = lastRead?.ok === true && lastRead.value >= HOT_K;
  const keep = () => {
    setTried(true);
    if (!read.ok) return;
    const kept = { ...seen, id: uuid7() };
    edit('Add the cup test', '', (d) => ({ ...d, observations: [...d.observations, kept] }));
    reset();
    setTried(false);
    toast('The cup test is on the card, under “What the shop saw”.');
  };
  return (
    <FieldsProvider value={fields}>
      <section className="cup-test" aria-labelledby="cup-test">
        <h2 id="cup-test">Cup test</h2>
        <ol className="cup-steps">
          <li>Let both parts stand in the shop until they are as warm as its air. Gloves on.</li>
          <li>
            Weigh 100 g at the label’s ratio into a straight cup, and start the clock when the parts meet. Mix
            as always, then stand the thermometer in the middle.
          </li>
          <li>
            Note a reading each minute for ten minutes, then every other minute. Half an hour is enough.
          </li>
          <li>Pour it out, or set it outdoors, before it gets hot: a full cup can boil.</li>
        </ol>
        <div className="form form-tight">
          <QuantityField label="Mix in the cup" path={['cup', 'mass']} kind="mass" placeholder="100 g" />
          <QuantityField label="Air" path={['cup', 'air']} kind="temperature" placeholder="75 F" />
          <QuantityField
            label="Inner width of the test cup"
            path={['cup', 'diameter']}
            kind="length"
            placeholder="not measured"
          />
        </div>
        {startedAt_ms === null ? (
          <button
            type="button"
            className="primary"
            onClick={() => setDraft((now) => ({ ...now, startedAt_ms: Date.now() }))}
          >
            The parts meet: start the clock
          </button>
        ) : (
          <>
            <p className="cup-clock" role="timer" aria-label="Since the parts met">
              {pourClock(elapsed_s)}
            </p>
            <p className="cup-next">
              {next_s === null
                ? elapsed_s < CUP_TEST_s + 120
                  ? 'Half an hour: one last reading, then keep the test.'
                  : 'The half hour is over.'
                : `Next reading at ${pourClock(next_s)}, in ${Math.ceil(next_s - elapsed_s)} s`}
            </p>
            {hot && (
              <p className="problem-block" role="alert">
                The cup is past {speak.temperature(HOT_K)}. Stop here: pour it out flat or set it outdoors on
                something that does not burn.
              </p>
            )}
            <ReadingEntry
              onNote={(text) =>
                setDraft((now) => ({
                  ...now,
                  seen: {
                    ...now.seen,
                    readings: [
                      ...now.seen.readings,
                      {
                        at: `${Math.max(1, Math.round((Date.now() - startedAt_ms) / 1000))} s`,
                        temperature: withUnit(text, system),
                      },
                    ],
                  },
                }))
              }
            />
            <ol className="cup-readings plain-list">
              {seen.readings.map(({ at, temperature }, i) => (
                <li key={at}>
                  {clockOf(at)} <strong>{temperature}</strong>{' '}
                  <button
                    type="button"
                    className="linklike"
                    aria-label={`Strike the reading at ${clockOf(at)}`}
                    onClick={() =>
                      setDraft((now) => ({
                        ...now,
                        seen: { ...now.seen, readings: now.seen.readings.filter((_, k) => k !== i) },
                      }))
                    }
                  >
                    strike
                  </button>
                </li>
              ))}
            </ol>
          </>
        )}
        {read.ok && read.value.kind === 'cup temperatures' && <CupTestResult seen={read.value} />}
        {tried && !read.ok && (
          <p className="problem-block" role="alert">
            {read.problems.map(({ message }) => message).join(' ')}
          </p>
        )}
        {(startedAt_ms !== null || seen.readings.length > 0) && (
          <p className="actions">
            <button type="button" className="primary" onClick={keep}>
              Keep the test on the card
            </button>
            <button
              type="button"
              onClick={() => {
                const before = draft;
                reset();
                setTried(false);
                toast('The cup test was cleared.', { label: 'Bring it back', run: () => setDraft(before) });
              }}
            >
              Start over
            </button>
          </p>
        )}
      </section>
    </FieldsProvider>
  );
}

/** One reading at a time: type it, Enter. A text that is no temperature stays in the field. */
function ReadingEntry({ onNote }: { readonly onNote: (text: string) => void }) {
  const { system } = useCard();
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState(false);
  const found = readTemperature_K(withUnit(text, system), {
    what: 'reading',
    path: '',
    min: 263.15,
    max: 523.15,
  });
  const shown = wrong && !found.ok ? found.problems : [];
  return (
    <form
      className="reading-entry"
      onSubmit={(event) => {
        event.preventDefault();
        setWrong(!found.ok);
        if (!found.ok) return;
        onNote(text);
        setText('');
      }}
    >
      <Labelled id="cup-reading" label={`Thermometer, °${system === 'us' ? 'F' : 'C'}`} problems={shown}>
        <input
          id="cup-reading"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          maxLength={20}
          value={text}
          aria-invalid={shown.length > 0}
          aria-describedby="cup-reading-problem"
          onChange={(event) => setText(event.target.value)}
        />
      </Labelled>
      <button type="submit" className="primary">
        Note it now
      </button>
    </form>
  );
}

function clockOf(at: string): string {
  const read = readDuration_s(at);
  return read.ok ? pourClock(read.value) : at;
}

/** The time, each second while `running`. */
function useClock(running: boolean): number {
  const [now_ms, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (!running) return;
    setNow(Date.now());
    const timer = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, [running]);
  return now_ms;
}
