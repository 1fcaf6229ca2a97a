import type { EdgeMoment } from '#core/film/edge-answers.ts';
import type { EdgeOutlook } from '#core/pour/film-outlook-edges.ts';
import { minutesSpan, minutesWithUnit } from '#web/charts/time-text.ts';
import { Guard } from '#web/shell/Guard.tsx';
import type { Speak } from '#web/units/speak.ts';
import { EdgeChart } from './EdgeChart.tsx';
import { dripsSentences } from './film-sentences.ts';
import { fineText, rangeText } from './reason-words.ts';
import { Why } from './Why.tsx';

interface Props {
  readonly edge: EdgeOutlook;
  readonly wanted_m: number;
  readonly speak: Speak;
}

/** One kind of edge: when to work it, what stays, what it takes to reach the film wanted, and its drips. */
export function EdgeSection({ edge, wanted_m, speak }: Props) {
  const { system } = speak;
  const { answers, planned, drips } = edge;
  const { best, window, passes, roundOver, workableUntil_s } = answers;
  const said = [
    window === undefined
      ? `No minute leaves ${fineText(wanted_m, system)} in one pass with its marks still level; the best is ${minutesWithUnit(best.time_s)}.`
      : `Best worked ${minutesSpan(window.from_s, window.to_s)}.`,
    passes === undefined
      ? `More than nine passes would be needed for ${fineText(wanted_m, system)} on the face.`
      : passes === 1
        ? 'One pass is enough then.'
        : `${passes} passes then, each let gel, reach ${fineText(wanted_m, system)} on the face.`,
    workableUntil_s === undefined
      ? ''
      : `The resin can be spread along an edge until ${minutesWithUnit(workableUntil_s)}.`,
    roundOver.worthIt
      ? `A ${speak.length(roundOver.radius_m)} round-over would keep ${fineText(roundOver.arris_m, system)} on the arris instead of ${fineText(best.arris_m, system)}.`
      : `A ${speak.length(roundOver.radius_m)} round-over would change nothing worth having.`,
  ];
  const name = edge.names.join(', ');
  const rows: readonly (readonly [string, EdgeMoment])[] = [
    ['As planned', planned],
    ['At the best minute', best],
  ];
  return (
    <section className="film-answer" aria-label={`Edge ${name}`}>
      <h5>
        {name}: {speak.run(edge.length_m)}, {speak.length(edge.height_m)} down the face
      </h5>
      <p>{said.filter((sentence) => sentence !== '').join(' ')}</p>
      <table className="ledger">
        <caption className="unseen">What gel finds on {name}</caption>
        <thead>
          <tr>
            <th scope="col">Worked</th>
            <th scope="col" className="number">
              Face, mean
            </th>
            <th scope="col" className="number">
              Arris
            </th>
            <th scope="col" className="number">
              On the floor
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([when, moment]) => (
            <tr key={when}>
              <th scope="row">
                {when}, {minutesWithUnit(moment.time_s)}
              </th>
              <td className="number" data-label="Face, mean">
                {fineText(moment.faceMean_m, system)}
              </td>
              <td className="number" data-label="Arris">
                {fineText(moment.arris_m, system)}
              </td>
              <td className="number" data-label="On the floor">
                {speak.volume(moment.floor_m3)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="rules-note">
        One pass at the best minute leaves {rangeText(answers.onePass.face_m, 'film', system)} on the face and{' '}
        {rangeText(answers.onePass.arris_m, 'film', system)} on the arris (viscosity off by half).
      </p>
      <Guard what="The chart of this edge" of={edge}>
        <EdgeChart
          edge={edge}
          system={system}
          words={`Film on face and arris and resin on the floor against the minute ${name} is worked. ${said[0]} The table above gives the figures.`}
        />
      </Guard>
      <Why what={`edge ${name}`} reasons={answers.reasons} range="film" system={system} />
      <p>{dripsSentences(drips, system)}</p>
      <Why what={`drips of ${name}`} reasons={drips.reasons} range="e-folds" system={system} />
    </section>
  );
}
