import { formatDuration } from '#core/quantity/format.ts';
import { dayAndClock } from '#web/units/dates.ts';
import type { Speak } from '#web/units/speak.ts';
import type { Reminder } from './reminders.ts';

interface Props {
  readonly list: readonly Reminder[];
  readonly now_s: number;
  /** The run's zero on the clock of the day. */
  readonly zero_ms: number;
  readonly speak: Speak;
}

/** What comes by itself after the pour, with its hour. */
export function Reminders({ list, now_s, zero_ms, speak }: Props) {
  const clock = (time_s: number) => dayAndClock(zero_ms + time_s * 1000, speak.system);
  const when = ({ from_s, to_s }: Reminder) => {
    if (from_s !== null && from_s > now_s)
      return `from ${clock(from_s)}, in ${formatDuration(from_s - now_s)}`;
    if (to_s === null) return 'now';
    return to_s > now_s ? `now, until ${clock(to_s)}` : `over since ${clock(to_s)}`;
  };
  return (
    <section className="run-reminders" aria-labelledby="reminders-name">
      <h2 id="reminders-name">After the film is down</h2>
      <ul className="plain-list">
        {list.map((each) => (
          <li key={each.key} data-now={(each.from_s ?? 0) <= now_s || undefined}>
            <strong>{each.label}</strong> <span className="run-when">{when(each)}</span>
            <span className="basis">{each.says}</span>
          </li>
        ))}
      </ul>
      <p className="section-note">Rules: common practice, no source. Times: of this film as it was poured.</p>
    </section>
  );
}
