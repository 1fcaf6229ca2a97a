/** A vanity top and its coats for the tests of this room and of core/mix. */
import type { Coat, Colour } from '#core/mix/coat.ts';
import { measurePiece } from '#core/piece/measure.ts';
import type { EdgeSpec, PieceMeasures } from '#core/piece/piece.ts';
import { BOARDS } from '#core/resin/boards.ts';
import { QUICK_20, REGULAR_50 } from '#core/resin/cards.ts';
import type { AirTemperature } from '#core/resin/model.ts';
import type { PlanRequest } from './plan-coat.ts';
import { SHOP_DEFAULTS } from './shop-rates.ts';

const finished: EdgeSpec = {
  kind: 'finished',
  faceHeight_m: 0.038,
  profile: { kind: 'square eased', radius_m: 0.003 },
  undersideReturn_m: 0.012,
};
const wall: EdgeSpec = { ...finished, kind: 'wall', undersideReturn_m: 0 };

/** A rectangle, back against the wall, with one wrapped and one dammed hole. */
export function topOf(length_m: number, width_m: number): PieceMeasures {
  const measured = measurePiece({
    outline: { shape: 'rectangle', length_m, width_m },
    edges: { front: finished, right: finished, back: wall, left: finished },
    cutOuts: [
      {
        shape: 'round',
        diameter_m: 0.1,
        name: 'bowl',
        centre: { x_m: length_m / 3, y_m: width_m / 2 },
        rim: 'wrapped',
        faceHeight_m: 0.038,
      },
      {
        shape: 'round',
        diameter_m: 0.035,
        name: 'tap',
        centre: { x_m: (2 * length_m) / 3, y_m: width_m / 2 },
        rim: 'dammed',
      },
    ],
    bodyThickness_m: 0.038,
  });
  if (!measured.ok) throw new Error(JSON.stringify(measured.problems));
  return measured.value;
}

export const clear: Colour = { name: 'clear', share: 1, colourant: 'none', load: 0, swatch: '#cccccc' };
export const inks: readonly Colour[] = [
  { name: 'ink', share: 0.6, colourant: 'pigment paste', load: 0.03, swatch: '#112233' },
  { name: 'sea', share: 0.28, colourant: 'pigment paste', load: 0.025, swatch: '#447766' },
  { name: 'copper', share: 0.12, colourant: 'mica powder', load: 0.04, swatch: '#aa6633' },
];

export const celsius = (value: number) => value + 273.15;

export function steady(temperature_K: number): AirTemperature {
  return { time_s: [0], temperature_K: [temperature_K] };
}

export function coatOf(change: Partial<Coat> = {}): Coat {
  return {
    id: 'colour',
    name: 'Colour coat',
    kind: 'colour coat',
    card: REGULAR_50,
    film_m: 0.00127,
    faceFilm_m: 0.0005,
    wrapEdges: true,
    colours: inks,
    allowance: 0.1,
    resin: { conversion: 0, temperature_K: celsius(24) },
    board_K: celsius(23),
    crew: 1,
    largestCup_kg: null,
    fewestCups: 1,
    ...change,
  };
}

export function requestOf(coat: Partial<Coat> = {}, change: Partial<PlanRequest> = {}): PlanRequest {
  return {
    coat: coatOf(coat),
    measures: topOf(1.2, 0.56),
    board: BOARDS['mdf-19'],
    air: steady(celsius(24)),
    rates: SHOP_DEFAULTS,
    slowerCards: [QUICK_20, REGULAR_50],
    ...change,
  };
}

export { QUICK_20, REGULAR_50 };
