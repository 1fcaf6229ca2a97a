/** For tests and measurements: looks on a piece with a basin and a tap hole, by seed. */
import type { Piece } from '#core/piece/piece.ts';
import type { Look } from '../look.ts';
import type { Move } from '../move.ts';
import { panelsOf } from '../panels.ts';
import { type LinearRgb, linearOfHex } from '../srgb.ts';
import { anyPattern } from './any-pattern.ts';

const edge = {
  kind: 'finished',
  faceHeight_m: 0.038,
  profile: { kind: 'square eased', radius_m: 0.003 },
  undersideReturn_m: 0,
} as const;

export const VANITY: Piece = {
  outline: { shape: 'rectangle', length_m: 1.2, width_m: 0.6, cornerRadius_m: 0.03 },
  edges: { front: edge, right: edge, back: { ...edge, kind: 'wall' }, left: edge },
  cutOuts: [
    {
      name: 'basin',
      shape: 'oval',
      length_m: 0.42,
      width_m: 0.34,
      centre: { x_m: 0.6, y_m: 0.28 },
      rim: 'wrapped',
    },
    { name: 'tap', shape: 'round', diameter_m: 0.035, centre: { x_m: 0.6, y_m: 0.52 }, rim: 'dammed' },
  ],
  bodyThickness_m: 0.038,
};

const COLOURS = ['#23262b', '#d9d2c3', '#2e5a4b', '#8a5a33', '#b79a4a'];

/** A look with so many maps; the last colour holds mica, and the front edge is fogged. */
export function anyLook(seed: number, count: number, piece: Piece = VANITY): Look {
  const panels = panelsOf([{ name: 'Top', piece, at: [0, 0], turn_rad: 0, splashes: [] }], {
    film_m: 0.0015,
    faceFilm_m: 0.0009,
  });
  const { ground, moves } = anyPattern(seed, count, 1.2, 0.6);
  return {
    seed,
    film_m: 0.0015,
    area_m2: panels.reduce((sum, { area_m2, film }) => sum + area_m2 * film, 0),
    middle: [0.6, 0.3],
    colours: COLOURS.map((hex, at) => ({
      key: hex,
      name: hex,
      light: linearOfHex(hex),
      faceLight: linearOfHex(hex).map((c) => 0.8 * c + 0.05) as unknown as LinearRgb,
      flake: at === 4 ? { cover: 0.4, gleam: linearOfHex('#f0dfae'), spread_rad: 0.15, size_m: 4e-5 } : null,
    })),
    ground,
    moves: moves.map((move: Move, at) => ({ id: `move ${at}`, maps: [move] })),
    fogs: [
      {
        id: 'fog',
        light: linearOfHex('#1c1410'),
        reach_m: 0.08,
        strength: 0.6,
        lines: [
          [
            [0, 0],
            [1.2, 0],
          ],
        ],
      },
    ],
    undercoat: linearOfHex('#d8d4cc'),
    panels,
  };
}
