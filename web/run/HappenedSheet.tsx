import { useMemo, useState } from 'react';
import { answerHappening } from '#core/pour/run/answers.ts';
import type { RunHappening } from '#core/pour/run/fold-run.ts';
import type { RunForecast } from '#core/pour/run/forecast-run.ts';
import { readDuration_s, readLength_m, readMass_kg } from '#core/quantity/read.ts';
import type { Speak } from '#web/units/speak.ts';
import { AnswerShown } from './AnswerShown.tsx';
import { Dialog } from './Dialog.tsx';
import { HAPPENING_ASKS, type HappeningAsk } from './happenings.ts';
import type { RunDeed, RunSession } from './run-session.ts';
import type { KeptRun } from './run-shelf.ts';
import { TextAsk } from './TextAsk.tsx';

interface Props {
  readonly kept: KeptRun;
  readonly session: RunSession;
  readonly forecast: RunForecast;
  readonly now_s: number;
  readonly speak: Speak;
  readonly onClose: () => void;
}

type Told = Omit<Extract<RunDeed, { kind: 'happened' }>, 'kind' | 'what'>;
const NOTHING: Told = { cup: null, mass_kg: null, size_m: null, away_s: null, note: '' };

/** "Something happened": what, a figure or two, and the answer while it is typed. */
export function HappenedSheet({ kept, session, forecast, now_s, speak, onClose }: Props) {
  const { inputs: request, plan } = kept.pour;
  const [ask, setAsk] = useState<HappeningAsk | null>(null);
  const [told, setTold] = useState<Told>(NOTHING);
  const tell = (part: Partial<Told>) => setTold((now) => ({ ...now, ...part }));
  // the windows as they are, at this second
  const current = useMemo(() => ({ ...forecast, now_s }), [forecast, now_s]);
  const us = speak.system === 'us';
  if (ask === null)
    return (
      <Dialog title="Something happened" onClose={onClose}>
        <p className="run-choices">
          {HAPPENING_ASKS.map((each) => (
            <button key={each.what} type="button" onClick={() => setAsk(each)}>
              {each.label}
            </button>
          ))}
        </p>
      </Dialog>
    );
  // only the answer is wanted before it is noted: the ids of the event play no part in it
  const happening = {
    kind: 'happened',
    what: ask.what,
    ...told,
    id: '',
    run: '',
    device: '',
    at_s: now_s,
    wall_ms: 0,
  } as RunHappening;
  const answer = answerHappening({ request, plan, forecast: current, happening });
  const note = async () => {
    await session.did({ kind: 'happened', what: ask.what, ...told });
    onClose();
  };
  return (
    <Dialog title={ask.label} onClose={onClose}>
      <AnswerShown answer={answer} session={session} plan={plan} speak={speak} />
      <div className="form form-tight">
        {ask.asks.includes('cup') && (
          <div className="field">
            <label className="field-label" htmlFor="happened-cup">
              Which cup
            </label>
            <select
              id="happened-cup"
              value={told.cup ?? ''}
              onChange={({ target }) => tell({ cup: target.value === '' ? null : Number(target.value) })}
            >
              <option value="">{ask.what === 'cup hot' ? 'The first to get hot' : 'Any'}</option>
              {plan.cups.map(({ number, colour }) => (
                <option key={number} value={number}>
                  Cup {number}, {colour}
                </option>
              ))}
            </select>
          </div>
        )}
        {ask.asks.includes('mass') && (
          <TextAsk
            label="How much is missing"
            hint="200 g or 7 oz by weight"
            read={(text) => readMass_kg(text, { what: 'missing resin', unit: 'g', max: 100 })}
            onRead={(mass_kg) => tell({ mass_kg })}
          />
        )}
        {ask.asks.includes('size') && (
          <TextAsk
            label="How wide across"
            hint={us ? '1/4 in' : '6 mm'}
            read={(text) =>
              readLength_m(text, { what: 'width of the crater', unit: us ? 'in' : 'mm', max: 1 })
            }
            onRead={(size_m) => tell({ size_m })}
          />
        )}
        {ask.asks.includes('away') && (
          <TextAsk
            label="Away for how long"
            hint="5 min"
            read={(text) => readDuration_s(text, { what: 'time away', unit: 'min', max: 86_400 })}
            onRead={(away_s) => tell({ away_s })}
          />
        )}
        <div className="field">
          <label className="field-label" htmlFor="happened-note">
            Note for the record
          </label>
          <input
            id="happened-note"
            type="text"
            maxLength={1000}
            value={told.note}
            onChange={({ target }) => tell({ note: target.value })}
          />
        </div>
      </div>
      <p className="run-choices">
        <button type="button" className="primary" onClick={() => void note()}>
          Note it
        </button>
        <button
          type="button"
          onClick={() => {
            setAsk(null);
            setTold(NOTHING);
          }}
        >
          Something other
        </button>
      </p>
    </Dialog>
  );
}
