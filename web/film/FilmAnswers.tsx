import type { FilmOutlook } from '#core/pour/film-outlook.ts';
import { minutesWithUnit } from '#web/charts/time-text.ts';
import type { Speak } from '#web/units/speak.ts';
import { FilmField } from './FilmField.tsx';
import { bubblesSentence, resinsSentence } from './film-sentences.ts';
import { plainNumber, rangeText } from './reason-words.ts';
import type { CoatFilm } from './use-film.ts';
import { Why } from './Why.tsx';

interface Props {
  readonly outlook: FilmOutlook;
  readonly speak: Speak;
}

/** The generic quick and regular resins in this film, side by side. */
export function ResinTable({ outlook, speak, film }: Props & { readonly film: CoatFilm }) {
  const { resins, levelling } = outlook;
  const row = (label: string, value: (side: FilmOutlook['resins'][number]) => string) => (
    <tr key={label}>
      <th scope="row">{label}</th>
      {resins.map((side) => (
        <td className="number" data-label={side.name} key={side.name}>
          {value(side)}
        </td>
      ))}
    </tr>
  );
  return (
    <section className="film-answer" aria-label="Levelling">
      <h5>Levelling, and why a flood coat is a regular resin</h5>
      <table className="ledger">
        <caption className="unseen">The same film from a quick and from a regular resin</caption>
        <thead>
          <tr>
            <td />
            {resins.map((side) => (
              <th scope="col" className="number" key={side.name}>
                {side.name}
                {side.own && ' (this coat)'}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {levelling.tools.map((tool, i) =>
            row(`Last touch: ${tool.label.toLowerCase()}, ${speak.length(tool.pitch_m)} apart`, (side) => {
              const last_s = side.levelling?.tools[i]?.last_s;
              return last_s === undefined ? 'marks stay' : minutesWithUnit(last_s);
            }),
          )}
          {row('Longest wave that levels', (side) =>
            side.levelling?.longestWave_m === undefined ? 'none' : speak.length(side.levelling.longestWave_m),
          )}
          {row('Flow left when it is down', (side) => `${plainNumber(side.thetaLeft_per_Pa)} per Pa`)}
          {row('Gel', (side) => (side.gel_s === undefined ? 'in the cup' : minutesWithUnit(side.gel_s)))}
        </tbody>
      </table>
      <FilmField
        label="Your own tool: its marks apart (notches, teeth)"
        value={film.pitch}
        onChange={film.onPitch}
        problem={film.pitchProblem}
      />
      <p>{resinsSentence(resins, speak.system)}</p>
      <Why what="levelling" reasons={levelling.reasons} range="length" system={speak.system} />
    </section>
  );
}

export function PuddleSection({ outlook, speak }: Props) {
  const { puddles } = outlook;
  return (
    <section className="film-answer" aria-label="Puddles">
      <h5>Puddles</h5>
      <p>
        {puddles.fewest === undefined || puddles.spacing_m === undefined || puddles.each_m3 === undefined
          ? 'A film this thin does not close by itself: spread it by hand.'
          : puddles.fewest === 1
            ? 'One puddle in the middle closes an even, compact top by itself.'
            : `${puddles.fewest} equal puddles of ${speak.volume(puddles.each_m3)}, ${speak.length(puddles.spacing_m)} apart, close the top without help.`}
      </p>
      <ul>
        {puddles.cups.map((cup, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: cups have no name but their place
          <li key={i}>
            Cup {i + 1}, {speak.volume(cup.volume_m3)}: a puddle of radius{' '}
            {rangeText(cup.radius_m, 'length', speak.system)} by gel
            {cup.stopsEarly && ', where the dry board stops it'}.
          </li>
        ))}
      </ul>
      <Why what="puddles" reasons={puddles.reasons} range="length" system={speak.system} />
    </section>
  );
}

export function BubbleSection({ outlook, speak }: Props) {
  const { cases, reasons } = outlook.bubbles;
  return (
    <section className="film-answer" aria-label="Bubbles">
      <h5>Bubbles</h5>
      <ul>
        {cases.map((of) => (
          <li key={of.label}>
            {of.label}: those from {rangeText(of.smallest_m, 'film', speak.system)} across get out before gel
            {of.staysVisible ? '; smaller ones that can be seen stay' : ', all that can be seen'}.
          </li>
        ))}
      </ul>
      <p>{bubblesSentence(cases, speak.system)}</p>
      <Why what="bubbles and the torch" reasons={reasons} range="film" system={speak.system} />
    </section>
  );
}
