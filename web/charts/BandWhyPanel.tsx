/** The place right under a forecast where the reasons of one band are read; Escape or its button closes it. */
import { type ReactNode, useEffect, useId, useRef } from 'react';
import type { Row } from './forecast-rows.ts';

interface Props {
  readonly id: string;
  /** undefined: nothing is open. */
  readonly row: Row | undefined;
  readonly onClose: () => void;
  readonly render: (row: Row) => ReactNode;
}

export function BandWhyPanel({ id, row, onClose, render }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const heading = useId();
  const key = row?.key;
  useEffect(() => {
    // On a phone the place may lie under the fold: a press must show that something happened.
    if (key !== undefined) place.current?.scrollIntoView({ block: 'nearest' });
  }, [key]);
  const bars = row?.lanes.flat() ?? [];
  return (
    <div id={id} ref={place} className="band-why" hidden={row === undefined}>
      {row !== undefined && (
        <section aria-labelledby={heading}>
          <div className="band-why-head">
            <h4 id={heading}>{row.name}: why it is where it is</h4>
            <button type="button" className="small band-why-close" onClick={onClose}>
              Close<span className="unseen"> why {row.name}</span>
            </button>
          </div>
          <ul className="band-why-bars">
            {bars.length === 0 && <li>Not within the time computed.</li>}
            {bars.map((bar) => (
              <li key={bar.key}>{bar.says}</li>
            ))}
          </ul>
          {render(row)}
        </section>
      )}
    </div>
  );
}
