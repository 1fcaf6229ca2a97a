import { useEffect, useState } from 'react';
import { mayStart, type ReadyItem, readiness } from '#core/pour/run/readiness.ts';
import { readRelativeHumidity, readTemperature_K } from '#core/quantity/read.ts';
import { keepApp } from '#web/keep-app.ts';
import type { Speak } from '#web/units/speak.ts';
import type { RunSession, RunView } from './run-session.ts';
import type { KeptRun } from './run-shelf.ts';
import { readySound } from './speak-aloud.ts';
import { TextAsk } from './TextAsk.tsx';

interface Props {
  readonly kept: KeptRun;
  readonly session: RunSession;
  readonly view: RunView;
  readonly speak: Speak;
}

/** What must be ready before the first parts meet; the pour starts when every hold point is ticked. */
export function Readiness({ kept, session, view, speak }: Props) {
  const { inputs: request, plan } = kept.pour;
  const [air_K, setAir] = useState<number | null>(() => lastRead(view, 'air'));
  const [board_K, setBoard] = useState<number | null>(() => lastRead(view, 'board'));
  const [humidity, setHumidity] = useState<number | null>(null);
  const items = readiness({ request, plan, air_K, board_K, humidity });
  const { ticked } = view.state;
  const { may, missing } = mayStart(items, ticked);
  const temperature = (what: string) => (text: string) =>
    readTemperature_K(text, {
      what,
      unit: speak.system === 'us' ? 'F' : 'C',
      min: 253.15,
      max: 333.15,
      system: speak.system,
    });
  const start = async () => {
    // what was read counts from the first mix on, where it differs from what was read before
    if (air_K !== null && air_K !== lastRead(view, 'air'))
      await session.did({ kind: 'reading', of: 'air', cup: null, temperature_K: air_K });
    if (board_K !== null && board_K !== lastRead(view, 'board'))
      await session.did({ kind: 'reading', of: 'board', cup: null, temperature_K: board_K });
    await session.start();
    window.scrollTo(0, 0);
  };
  return (
    <section className="run-ready" aria-labelledby="ready-name">
      <h2 id="ready-name">Before the first mix</h2>
      <p>{plan.says}</p>
      <KeptApp />
      <div className="form form-tight">
        <TextAsk
          label="Shop air, read now"
          hint={`Planned ${speak.temperature(request.air.temperature_K[0]!)}`}
          start={air_K === null ? '' : speak.temperature(air_K)}
          read={temperature('shop air')}
          onRead={setAir}
        />
        <TextAsk
          label="Board, read now"
          hint={`Planned ${speak.temperature(request.coat.board_K)}`}
          start={board_K === null ? '' : speak.temperature(board_K)}
          read={temperature('board')}
          onRead={setBoard}
        />
        <TextAsk
          label="Humidity, read now"
          hint="45%"
          read={(text) => readRelativeHumidity(/[%a-z]/i.test(text) ? text : `${text}%`)}
          onRead={setHumidity}
        />
      </div>
      <ul className="plain-list run-list">
        {items.map((item) => (
          <Item
            key={item.id}
            item={item}
            ticked={ticked.has(item.id)}
            onTick={(on) => void session.did({ kind: 'ticked', item: item.id, on })}
          />
        ))}
      </ul>
      <div className="run-foot">
        <p id="start-why" role="status">
          {may
            ? 'Everything is ticked. The clock starts when the first cup’s parts meet.'
            : `${missing.length} of ${items.filter(({ hold }) => hold).length} hold points are still open.`}
        </p>
        <button
          type="button"
          className="primary run-done"
          disabled={!may}
          aria-describedby="start-why"
          onClick={() => {
            readySound();
            void start();
          }}
        >
          Parts meet: start the clock
        </button>
      </div>
    </section>
  );
}

const APP_SAYS = {
  asked: 'Keeping the app on this device, so that the pour needs no network …',
  yes: 'The app is kept on this device: from here on the pour needs no network, also after a reload.',
  no: 'This address does not let the browser keep the app: leave the page open. What is done is kept all the same.',
} as const;

/** Whether the network may go now. */
function KeptApp() {
  const [kept, setKept] = useState<keyof typeof APP_SAYS>('asked');
  useEffect(() => {
    let gone = false;
    void keepApp().then((is) => {
      if (!gone) setKept(is ? 'yes' : 'no');
    });
    return () => {
      gone = true;
    };
  }, []);
  return (
    <p className="section-note" role="status">
      {APP_SAYS[kept]}
    </p>
  );
}

interface ItemProps {
  readonly item: ReadyItem;
  readonly ticked: boolean;
  readonly onTick: (on: boolean) => void;
}

function Item({ item, ticked, onTick }: ItemProps) {
  return (
    <li data-against={item.against !== null || undefined}>
      <label className="run-tick">
        <input type="checkbox" checked={ticked} onChange={({ target }) => onTick(target.checked)} />
        <span>
          {item.says}
          {!item.hold && <span className="basis">Not a hold point</span>}
          {item.against !== null && (
            <span className="run-against">
              <strong>Against starting:</strong> {item.against} Ticking it starts all the same.
            </span>
          )}
        </span>
      </label>
    </li>
  );
}

function lastRead({ state }: RunView, of: 'air' | 'board'): number | null {
  return state.readings.findLast((reading) => reading.of === of)?.temperature_K ?? null;
}
