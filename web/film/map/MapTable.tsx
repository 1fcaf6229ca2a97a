/** Where the resin went, in figures. */
import type { FilmMapResult } from '#core/film/map-result.ts';
import type { Bounds } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { speaker } from '#web/units/speak.ts';
import { sayBare, sayFilmAt } from './map-words.ts';

interface Props {
  readonly map: FilmMapResult;
  readonly box: Bounds;
  readonly system: System;
  readonly moment: string;
}

export function MapTable({ map, box, system, moment }: Props) {
  const speak = speaker(system);
  const rows: readonly (readonly [string, string])[] = [
    ['Poured', speak.volume(map.poured_m3)],
    ['Left on top', `${speak.volume(map.onTop_m3)}, ${speak.thickness(map.mean_m)} on average`],
    ...map.lostOver
      .filter((lost) => lost.volume_m3 > 0)
      .map((lost) => [`Over ${lost.edge}`, speak.volume(lost.volume_m3)] as const),
    ...(map.lost_m3 > 0 ? [] : [['Over the edges', 'nothing'] as const]),
    ['Thinnest', sayFilmAt(map.thinnest, box, system)],
    ...(map.thinnestInside === undefined
      ? []
      : [
          [
            `Thinnest, ${speak.length(0.025)} and more from every edge`,
            sayFilmAt(map.thinnestInside, box, system),
          ] as const,
        ]),
    ['Thickest', sayFilmAt(map.thickest, box, system)],
    ['Bare share of the top', sayBare(map.bareShare, system)],
  ];
  return (
    <table className="film-map-table">
      <caption>The film {moment}</caption>
      <tbody>
        {rows.map(([name, figure]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{figure}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
