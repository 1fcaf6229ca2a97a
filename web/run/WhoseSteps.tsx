import { Label, Radio, RadioGroup } from 'react-aria-components/RadioGroup';
import type { Whose } from './screen-state.ts';

interface Props {
  readonly crew: number;
  readonly whose: Whose;
  readonly onWhose: (whose: Whose) => void;
}

const PEOPLE = [1, 2, 3] as const;

/** Whose steps this phone shows. */
export function WhoseSteps({ crew, whose, onWhose }: Props) {
  return (
    <RadioGroup
      className="system-switch run-whose"
      value={String(whose)}
      onChange={(value) => onWhose(value === 'all' ? 'all' : (Number(value) as Whose))}
      orientation="horizontal"
    >
      <Label className="unseen">Whose steps</Label>
      <Radio value="all">All</Radio>
      {PEOPLE.slice(0, crew).map((person) => (
        <Radio key={person} value={String(person)}>
          Person {person}
        </Radio>
      ))}
    </RadioGroup>
  );
}
