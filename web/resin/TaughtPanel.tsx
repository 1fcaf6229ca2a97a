import { useEffect, useState } from 'react';
import type { ResinCardDocument } from '#core/resin/card-document.ts';
import { useCard } from './card-context.tsx';
import type { Answers } from './fit-messages.ts';
import { OUTLOOK_ROWS } from './OutlookTable.tsx';
import { narrowedText, spanText } from './range-words.ts';
import { fitClient } from './use-fit.ts';

interface Props {
  readonly document: ResinCardDocument;
  readonly id: string;
}

/** The ranges without one observation and with it. */
export function TaughtPanel({ document, id }: Props) {
  const { speak } = useCard();
  const [taught, setTaught] = useState<Answers['taught'] | null>(null);
  const [failed, setFailed] = useState<string | null>(null);
  useEffect(() => {
    let over = false;
    fitClient()
      .ask(`taught ${id}`, { kind: 'taught', document, observation: id })
      .then((answer) => {
        if (over || answer === null) return;
        setTaught(answer);
        setFailed(null);
      })
      .catch((error: Error) => !over && setFailed(error.message));
    return () => {
      over = true;
    };
  }, [document, id]);
  if (failed !== null)
    return (
      <p className="problem-block" role="alert">
        What it taught could not be computed ({failed}).
      </p>
    );
  if (taught === null)
    return (
      <p className="waiting" role="status">
        Fitting the card without it and with it …
      </p>
    );
  const share = (key: (typeof OUTLOOK_ROWS)[number]['key']) =>
    key === 'dryHard' ? null : taught.narrowed[key];
  return (
    <table className="ledger taught">
      <caption>What it taught: the ranges without it and with it</caption>
      <thead>
        <tr>
          <th scope="col">At {speak.temperature(297.15)}</th>
          <th scope="col">Without it</th>
          <th scope="col">With it</th>
          <th scope="col">The range is</th>
        </tr>
      </thead>
      <tbody>
        {OUTLOOK_ROWS.map(({ key, name }) => (
          <tr key={key}>
            <th scope="row">{name}</th>
            <td data-label="Without it">{spanText(taught.before[key])}</td>
            <td data-label="With it">
              <strong>{spanText(taught.after[key])}</strong>
            </td>
            <td data-label="The range is">{narrowedText(share(key))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
