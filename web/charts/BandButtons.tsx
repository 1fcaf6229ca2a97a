/** Real buttons over the rows of bands: each opens why it is where it is. */
import type { RefObject } from 'react';
import type { ForecastLayout } from './forecast-layout.ts';

export type ButtonsByRow = Map<string, HTMLButtonElement>;

interface Props {
  readonly layout: ForecastLayout;
  /** Key of the row that is open. */
  readonly open: string | null;
  /** Where the reasons appear. */
  readonly panel: string;
  readonly buttons: RefObject<ButtonsByRow>;
  readonly onPress: (key: string) => void;
}

export function BandButtons({ layout, open, panel, buttons, onPress }: Props) {
  const share = (px: number) => `${(100 * px) / layout.height}%`;
  return (
    <ul className="band-buttons" aria-label="Bands of the forecast" data-narrow={layout.narrow || undefined}>
      {layout.rows.map(({ row, y, height }) => (
        // In shares of the picture, so that they stay on their rows when it is drawn smaller than laid out.
        <li key={row.key} style={{ insetBlockStart: share(y - 5), blockSize: share(height) }}>
          <button
            type="button"
            aria-expanded={row.key === open}
            aria-controls={panel}
            onClick={() => onPress(row.key)}
            ref={(button) => {
              if (button === null) buttons.current.delete(row.key);
              else buttons.current.set(row.key, button);
            }}
          >
            <span className="band-mark">why</span>
            <span className="unseen"> {row.name}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
