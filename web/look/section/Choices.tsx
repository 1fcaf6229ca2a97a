import { useMemo } from 'react';
import { type LookSetting, readLook } from '#core/look/read-look.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { Picture } from './Picture.tsx';
import type { Choice } from './use-composer.ts';

interface Props {
  readonly choices: readonly Choice[];
  readonly setting: LookSetting;
  readonly onChoose: (choice: Choice) => void;
}

/** Looks side by side, each with the seed that makes it again. */
export function Choices({ choices, setting, onChoose }: Props) {
  return (
    <ul className="look-choices plain-list" aria-label="Looks to choose from">
      {choices.map((choice) => (
        <li key={choice.look.seed}>
          <OneChoice choice={choice} setting={setting} onChoose={onChoose} />
        </li>
      ))}
    </ul>
  );
}

function OneChoice({ choice, setting, onChoose }: Omit<Props, 'choices'> & { readonly choice: Choice }) {
  const read = useMemo(() => readLook(choice.look, setting), [choice.look, setting]);
  const { seed, moves } = choice.look;
  const puddles = moves.filter((move) => move.kind === 'puddle').length;
  return (
    <>
      {read.ok && (
        <Picture look={read.value} label={`Look of seed ${seed}: ${puddles} puddles`} highest={220} />
      )}
      <p className="look-choice-words">
        Seed {seed}: {puddles} puddles, {moves.length - puddles} other moves
      </p>
      {choice.warnings.map((warning) => (
        <p className="field-warning" key={warning.code}>
          <ProblemText problem={warning} />
        </p>
      ))}
      <button type="button" onClick={() => onChoose(choice)}>
        Take seed {seed}
      </button>
    </>
  );
}
