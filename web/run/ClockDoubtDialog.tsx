import { useState } from 'react';
import type { ClockDoubt } from '#core/pour/run/run-clock.ts';
import { readDuration_s } from '#core/quantity/read.ts';
import type { Speak } from '#web/units/speak.ts';
import { Dialog } from './Dialog.tsx';
import type { RunSession } from './run-session.ts';
import { TextAsk } from './TextAsk.tsx';

interface Props {
  readonly session: RunSession;
  readonly doubt: ClockDoubt | null;
  readonly speak: Speak;
}

/** The two clocks of the device disagree, and only the maker knows why. */
export function ClockDoubtDialog({ session, doubt, speak }: Props) {
  const [away_s, setAway] = useState<number | null>(null);
  if (doubt === null) return null;
  const by = speak.duration(doubt.by_s);
  if (doubt.kind === 'slept or set forward')
    return (
      <Dialog title="Did the device sleep?" onClose={null}>
        <p>
          Its clock went on by {by} while this page stood still. That time is counted now, to be on the safe
          side.
        </p>
        <p className="run-choices">
          <button type="button" className="primary" onClick={() => void session.settle(0)}>
            It slept
          </button>
          <button type="button" onClick={() => void session.settle(-doubt.by_s)}>
            The clock was only set
          </button>
        </p>
      </Dialog>
    );
  return (
    <Dialog title="How long was this page away?" onClose={null}>
      <p>
        The clock of the device was set back by {by} or more while this page was closed, so it cannot tell.
        None of that time is counted yet.
      </p>
      <TextAsk
        label="Away for"
        hint="5 min"
        read={(text) => readDuration_s(text, { what: 'time away', unit: 'min', max: 86_400 })}
        onRead={setAway}
      />
      <p className="run-choices">
        <button
          type="button"
          className="primary"
          disabled={away_s === null}
          onClick={() => void session.settle(away_s ?? 0)}
        >
          It slept that long
        </button>
        <button type="button" onClick={() => void session.settle(0)}>
          The clock was only set
        </button>
      </p>
    </Dialog>
  );
}
