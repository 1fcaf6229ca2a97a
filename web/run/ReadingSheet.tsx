import { useState } from 'react';
import type { RunForecast } from '#core/pour/run/forecast-run.ts';
import { readTemperature_K } from '#core/quantity/read.ts';
import type { Speak } from '#web/units/speak.ts';
import { Dialog } from './Dialog.tsx';
import type { RunSession } from './run-session.ts';
import { TextAsk } from './TextAsk.tsx';

interface Props {
  readonly session: RunSession;
  readonly forecast: RunForecast;
  readonly speak: Speak;
  readonly onClose: () => void;
}

/** A thermometer was read: in the air, on the board, or in a cup that stands. Every window moves with it. */
export function ReadingSheet({ session, forecast, speak, onClose }: Props) {
  const standing = forecast.cups.filter(({ place }) => place === 'standing');
  const [of, setOf] = useState('air');
  const [read_K, setRead] = useState<number | null>(null);
  const cup = of.startsWith('cup') ? Number(of.slice(4)) : null;
  const us = speak.system === 'us';
  const note = async () => {
    if (read_K === null) return;
    await session.did({
      kind: 'reading',
      of: cup === null ? (of as 'air' | 'board') : 'cup',
      cup,
      temperature_K: read_K,
    });
    onClose();
  };
  return (
    <Dialog title="A reading" onClose={onClose}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void note();
        }}
      >
        <fieldset className="plain run-choices">
          <legend className="field-label">Read in</legend>
          {[
            { value: 'air', label: 'The air' },
            { value: 'board', label: 'The board' },
            ...standing.map(({ number, colour }) => ({
              value: `cup-${number}`,
              label: `Cup ${number}, ${colour}`,
            })),
          ].map(({ value, label }) => (
            <label key={value} className="run-radio">
              <input
                type="radio"
                name="reading-of"
                value={value}
                checked={of === value}
                onChange={() => setOf(value)}
              />
              {label}
            </label>
          ))}
        </fieldset>
        <TextAsk
          label="Temperature"
          hint={us ? '78 F' : '25 °C'}
          read={(text) =>
            readTemperature_K(text, {
              what: 'temperature',
              unit: us ? 'F' : 'C',
              min: cup === null ? 253.15 : 263.15,
              max: cup === null ? 333.15 : 573.15,
              system: speak.system,
            })
          }
          onRead={setRead}
        />
        <p className="run-choices">
          <button type="submit" className="primary" disabled={read_K === null}>
            Move every window
          </button>
        </p>
      </form>
    </Dialog>
  );
}
