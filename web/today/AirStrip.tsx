import { Link } from '@tanstack/react-router';
import type { System } from '#core/quantity/units.ts';
import { dayAndClock } from '#web/units/dates.ts';
import { speaker } from '#web/units/speak.ts';
import type { StripJob } from './JobStrip.tsx';

interface Props {
  readonly jobs: readonly StripJob[];
  readonly now_ms: number;
  readonly system: System;
}

const words = {
  go: 'fit to pour',
  caution: 'with care',
  stop: 'do not pour',
  'not known': 'not judged',
} as const;

/** Air, humidity, board and dew point for each pour that comes: may it be poured? */
export function AirStrip({ jobs, now_ms, system }: Props) {
  const speak = speaker(system);
  const pours = jobs.flatMap((job) =>
    job.moments.moments
      .filter((moment) => moment.key === 'pour' && moment.at_ms > now_ms - 3 * 3_600_000)
      .slice(0, 1)
      .map((moment) => ({ job, moment, room: job.forecast.room })),
  );
  if (pours.length === 0) return null;
  pours.sort((a, b) => a.moment.at_ms - b.moment.at_ms);
  return (
    <section aria-labelledby="air-title">
      <h2 id="air-title">Air for the next pours</h2>
      <table className="ledger air">
        <thead>
          <tr>
            <th scope="col">Pour</th>
            <th scope="col" className="number">
              Air
            </th>
            <th scope="col" className="number">
              Humidity
            </th>
            <th scope="col" className="number">
              Board
            </th>
            <th scope="col" className="number">
              Dew point
            </th>
            <th scope="col">Verdict</th>
          </tr>
        </thead>
        <tbody>
          {pours.map(({ job, moment, room }) => (
            <tr key={job.id}>
              <th scope="row">
                <Link to="/jobs/$jobId" params={{ jobId: job.id }} hash="coats">
                  {job.title}
                </Link>
                <span className="basis">
                  {moment.coat}, {dayAndClock(moment.at_ms, system)}
                </span>
              </th>
              <td className="number big" data-label="Air">
                {room === null ? '–' : speak.temperature(room.air_K)}
              </td>
              <td className="number big" data-label="Humidity">
                {room?.humidity == null ? '–' : speak.percent(room.humidity)}
              </td>
              <td className="number big" data-label="Board">
                {room === null ? '–' : speak.temperature(room.board_K)}
              </td>
              <td className="number big" data-label="Dew point">
                {room?.dewPoint_K == null ? '–' : speak.temperature(room.dewPoint_K)}
              </td>
              <td data-label="Verdict">
                <strong className="air-verdict" data-verdict={room?.verdict ?? 'not known'}>
                  {words[room?.verdict ?? 'not known']}
                </strong>
                {room !== null && room.reasons.length > 0 && (
                  <span className="basis">{room.reasons.join(' ')}</span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="section-note">
        As written on each job sheet; change them there when the thermometer says otherwise.
      </p>
    </section>
  );
}
