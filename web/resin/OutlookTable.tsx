import { afterPourText } from '#web/charts/time-text.ts';
import type { Speak } from '#web/units/speak.ts';
import { useCard } from './card-context.tsx';
import { spanText } from './range-words.ts';

/** What labels are taken to be measured on. */
const labelFilm = ({ system, thickness }: Speak) =>
  `film of ${thickness(0.0025)} on ${system === 'us' ? '3/4 in' : '18 mm'} MDF`;

export const OUTLOOK_ROWS = [
  { key: 'workingTime', name: 'Working time', of: labelFilm },
  { key: 'gel', name: 'Gel', of: 'the same film' },
  { key: 'dryHard', name: 'Dry hard', of: 'the same film' },
  { key: 'flash', name: 'Cup at its hottest', of: 'full cup of 1 kg, not poured' },
] as const;

/** The four figures a maker looks for first, each with its range. */
export function OutlookTable() {
  const { shown, speak } = useCard();
  const { fit } = shown;
  return (
    <section aria-labelledby="outlook">
      <h2 id="outlook">
        What it does <span className="of">at {speak.temperature(297.15)}</span>
      </h2>
      {fit === null ? (
        <p className="waiting" role="status">
          {shown.failed === null ? 'Fitting the label …' : 'There is no fit yet.'}
        </p>
      ) : (
        <dl className="outlook">
          {OUTLOOK_ROWS.map(({ key, name, of }) => {
            const range = fit.outlook[key];
            return (
              <div key={key}>
                <dt>{name}</dt>
                <dd>
                  <strong>{spanText(range)}</strong>
                  <span className="basis">
                    {range !== null && `most likely ${afterPourText(range.mid_s)}; `}
                    {typeof of === 'string' ? of : of(speak)}
                  </span>
                </dd>
              </div>
            );
          })}
        </dl>
      )}
      <p className="section-note">
        Ranges hold 5 to 95 % of the resins that fit this label and what the shop saw. Limits for safety use
        the early end.
      </p>
    </section>
  );
}
