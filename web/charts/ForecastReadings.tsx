/** What the chart says at one minute, in words, and the whole chart as a table. */
import type { CoatPlan } from '#core/pour/plan.ts';
import { formatTemperature } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { timeOfDay } from './clock.ts';
import { type ForecastCurve, readingOf, viscosityText } from './forecast-curves.ts';
import type { Row } from './forecast-rows.ts';
import { minutesText, minutesWithUnit } from './time-text.ts';

export interface Moment {
  readonly when: string;
  /** Film and cups: "film on the piece 1.9 Pa s, 84 F". */
  readonly bodies: readonly { readonly name: string; readonly text: string }[];
  /** Steps planned now or that may start: "Wrap edges: now, 6 min left". */
  readonly open: readonly string[];
}

export function momentAt(
  plan: CoatPlan,
  curves: readonly ForecastCurve[],
  at_s: number,
  start_ms: number | null,
  system: System,
): Moment {
  const clock = start_ms === null ? '' : `, ${timeOfDay(start_ms + at_s * 1000, system)}`;
  const bodies = curves.flatMap((c) => {
    const viscosity = readingOf(c, 'viscosity_Pa_s', at_s);
    const temperature = readingOf(c, 'temperature_K', at_s);
    if (viscosity === null || temperature === null) return [];
    return [{ name: c.name, text: `${viscosityText(viscosity)}, ${formatTemperature(temperature, system)}` }];
  });
  const open = plan.steps.flatMap((step) => {
    const planned = at_s >= step.start_s && at_s <= step.end_s;
    const left = step.window.closes_s - at_s;
    const isOpen = at_s >= step.window.opens_s && left >= 0;
    if (!planned && !(isOpen && at_s < step.start_s)) return [];
    const state = planned ? 'now' : 'may start';
    const time = Number.isFinite(left)
      ? left >= 0
        ? `, ${minutesWithUnit(left)} left`
        : ', past its time'
      : '';
    return [`${step.label}: ${state}${time}`];
  });
  return { when: `${minutesWithUnit(at_s)} after the first mix${clock}`, bodies, open };
}

/** The moment in one line, for the slider's value. */
export function momentText(moment: Moment): string {
  return [moment.when, ...moment.bodies.map((b) => `${b.name} ${b.text}`), ...moment.open].join('; ');
}

export function Readings({ moment }: { readonly moment: Moment }) {
  return (
    <div className="chart-readings">
      <p className="chart-when">{moment.when}</p>
      <dl>
        {moment.bodies.map((b) => (
          <div key={b.name}>
            <dt>{b.name}</dt>
            <dd>{b.text}</dd>
          </div>
        ))}
      </dl>
      {moment.open.length > 0 && (
        <ul>
          {moment.open.map((text, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two steps may carry the same words
            <li key={i}>{text}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

export function ForecastTable({ rows }: { readonly rows: readonly Row[] }) {
  return (
    <details className="chart-table">
      <summary>The same figures as a table</summary>
      <div className="chart-scroll">
        <table>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Opens</th>
              <th scope="col">Planned</th>
              <th scope="col">Closes, safe to latest</th>
              <th scope="col">What closes it</th>
            </tr>
          </thead>
          <tbody>
            {rows.flatMap((row) =>
              row.lanes.flat().map((bar) => (
                <tr key={`${row.key} ${bar.key}`}>
                  <th scope="row">{bar.says.split(':')[0]}</th>
                  <td>{minutesText(bar.opens_s)}</td>
                  <td>
                    {bar.planned.length === 0
                      ? 'by itself'
                      : bar.planned
                          .map((p) => `${minutesText(p.start_s)} to ${minutesText(p.end_s)}`)
                          .join(', ')}
                    {bar.late ? ', too late' : ''}
                  </td>
                  <td>
                    {Number.isFinite(bar.closes_s)
                      ? `${minutesText(bar.closes_s)} to ${minutesText(bar.closesHigh_s)}`
                      : 'stays open'}
                  </td>
                  <td>{bar.limit}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </div>
      <p>Minutes after the first mix. Safe is the 5 % figure, latest the 95 % figure.</p>
    </details>
  );
}
