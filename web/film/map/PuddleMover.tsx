/** Moves a puddle with large buttons, for fingers and for those who do not drag. */
import { useId, useState } from 'react';
import type { Bounds, Point } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { Labelled } from '#web/field/Labelled.tsx';
import { speaker } from '#web/units/speak.ts';
import { sayPlace } from './map-words.ts';
import { STEP_m } from './PuddleHandles.tsx';
import type { CupPuddle } from './puddle-layout.ts';

interface Props {
  readonly puddles: readonly CupPuddle[];
  readonly box: Bounds;
  readonly system: System;
  readonly onMove: (key: string, to: Point) => void;
}

const WAYS = [
  ['Left', -1, 0],
  ['Right', 1, 0],
  ['To the back', 0, 1],
  ['To the front', 0, -1],
] as const;

export function PuddleMover({ puddles, box, system, onMove }: Props) {
  const id = useId();
  const [key, setKey] = useState('');
  const [times, setTimes] = useState(1);
  const { length, volume } = speaker(system);
  const chosen = puddles.find((puddle) => puddle.key === key) ?? puddles[0];
  if (chosen === undefined) return null;
  const by_m = STEP_m * times;
  return (
    <fieldset className="film-map-mover">
      <legend>Move a puddle</legend>
      <div className="form form-tight">
        <Labelled id={`${id}-puddle`} label="Puddle" aside={sayPlace(chosen, box, system)}>
          <select
            id={`${id}-puddle`}
            value={chosen.key}
            aria-describedby={`${id}-puddle-aside`}
            onChange={(event) => setKey(event.target.value)}
          >
            {puddles.map((puddle) => (
              <option key={puddle.key} value={puddle.key}>
                {puddle.key}, cup {puddle.cup}, {puddle.colour}, {volume(puddle.volume_m3)}
              </option>
            ))}
          </select>
        </Labelled>
        <Labelled id={`${id}-step`} label="By">
          <select id={`${id}-step`} value={times} onChange={(event) => setTimes(Number(event.target.value))}>
            <option value={1}>{length(STEP_m)}</option>
            <option value={5}>{length(5 * STEP_m)}</option>
          </select>
        </Labelled>
      </div>
      <div className="film-map-ways">
        {WAYS.map(([name, x, y]) => (
          <button
            key={name}
            type="button"
            onClick={() => onMove(chosen.key, { x_m: chosen.x_m + x * by_m, y_m: chosen.y_m + y * by_m })}
          >
            {name}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
