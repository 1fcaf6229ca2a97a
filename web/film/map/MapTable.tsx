/** The map in figures: where the resin went, and how thick the film is where. */
import type { FilmMapResult } from '#core/film/map-result.ts';
import type { Bounds } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { speaker } from '#web/units/speak.ts';
import { sayBare, sayPart, sayPlace } from './map-words.ts';

interface Props {
  readonly map: FilmMapResult;
  readonly box: Bounds;
  readonly system: System;
  /** "at gel, on a level bench". */
  readonly about: string;
}

export function MapTable({ map, box, system, about }: Props) {
  const speak = speaker(system);
  const account: readonly (readonly [string, number])[] = [
    ['On the piece', map.onTop_m3],
    ...map.lostOver
      .filter((lost) => lost.volume_m3 > 0)
      .map((lost) => [`Run off over ${lost.edge}`, lost.volume_m3] as const),
    ['Run off in all', map.lost_m3],
  ];
  const places = [
    ['Thinnest', map.thinnest],
    ...(map.thinnestInside === undefined
      ? []
      : [[`Thinnest, ${speak.length(0.025)} and more from every edge`, map.thinnestInside] as const]),
    ['Thickest', map.thickest],
  ] as const;
  return (
    <div className="film-map-tables">
      <table className="film-map-table film-map-account">
        <caption>Where the resin is {about}</caption>
        <thead>
          <tr>
            <th scope="col">Resin</th>
            <th scope="col" className="number">
              Volume
            </th>
            <th scope="col" className="number">
              Share
            </th>
          </tr>
        </thead>
        <tbody>
          {account.map(([name, volume_m3]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="number">{speak.volume(volume_m3)}</td>
              <td className="number">{sayPart(volume_m3 / map.poured_m3)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Poured</th>
            <td className="number">{speak.volume(map.poured_m3)}</td>
            <td className="number">100%</td>
          </tr>
        </tfoot>
      </table>
      <table className="film-map-table film-map-films">
        <caption>The film {about}</caption>
        <thead>
          <tr>
            <th scope="col">Film</th>
            <th scope="col" className="number">
              Thickness
            </th>
            <th scope="col">Where</th>
          </tr>
        </thead>
        <tbody>
          {places.map(([name, place]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="number">{speak.thickness(place.thickness_m)}</td>
              <td>{sayPlace(place, box, system)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">On average</th>
            <td className="number">{speak.thickness(map.mean_m)}</td>
            <td>the whole top</td>
          </tr>
          <tr>
            <th scope="row">Bare</th>
            <td className="number">{sayBare(map.bareShare, system)}</td>
            <td>share of the top</td>
          </tr>
        </tbody>
      </table>
      <p className="rules-note">
        What is on the piece and what ran off add up to what was poured, but for {sayBalance(map.balance)} of
        it, the rounding of the sums.
      </p>
    </div>
  );
}

/** "less than a billionth", or the share as it is. */
function sayBalance(balance: number): string {
  const off = Math.abs(balance);
  return off < 1e-9 ? 'less than a billionth' : `${(100 * off).toPrecision(2)}%`;
}
