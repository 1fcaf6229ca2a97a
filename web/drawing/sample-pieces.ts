/** Pieces for tests and for looking at drawings: one of each outline, with every kind of edge and cut-out among them. */
import { edgeNames } from '#core/piece/outline.ts';
import type { CutOut, EdgeSpec, Outline, Piece } from '#core/piece/piece.ts';
import { toSI } from '#core/quantity/units.ts';

const inch = (n: number): number => toSI(n, 'in');

function edge(kind: EdgeSpec['kind']): EdgeSpec {
  return {
    kind,
    faceHeight_m: inch(1.5),
    profile: { kind: 'square eased', radius_m: 0.003 },
    undersideReturn_m: 0,
  };
}

function piece(
  outline: Outline,
  kinds: Readonly<Record<string, EdgeSpec['kind']>>,
  cutOuts: readonly CutOut[] = [],
): Piece {
  const edges = Object.fromEntries(edgeNames(outline).map((name) => [name, edge(kinds[name] ?? 'finished')]));
  return { outline, edges, cutOuts, bodyThickness_m: inch(0.75) };
}

const hole = (name: string, x: number, y: number, diameter: number): CutOut => ({
  name,
  shape: 'round',
  diameter_m: inch(diameter),
  centre: { x_m: inch(x), y_m: inch(y) },
  rim: 'dammed',
});

export const SAMPLE_PIECES: Readonly<Record<string, Piece>> = {
  vanity: piece(
    { shape: 'rectangle', length_m: inch(42), width_m: inch(21.5), cornerRadius_m: inch(0.375) },
    { back: 'wall' },
    [
      {
        name: 'bowl',
        shape: 'oval',
        length_m: inch(16),
        width_m: inch(13),
        centre: { x_m: inch(21), y_m: inch(10) },
        rim: 'wrapped',
      },
      hole('tap', 21, 19, 1.375),
      hole('soap', 29, 19, 1.25),
    ],
  ),
  ell: piece(
    {
      shape: 'ell',
      side: 'left',
      length_m: inch(96),
      width_m: inch(25.5),
      returnLength_m: inch(70),
      returnWidth_m: inch(24),
      insideRadius_m: inch(2),
      cornerRadius_m: inch(1),
    },
    { back: 'wall', left: 'wall', right: 'seam' },
    [
      {
        name: 'sink',
        shape: 'rectangle',
        length_m: inch(30),
        width_m: inch(16),
        cornerRadius_m: inch(1),
        centre: { x_m: inch(58), y_m: inch(12) },
        rim: 'wrapped',
      },
    ],
  ),
  round: piece({ shape: 'round', diameter_m: inch(48) }, {}, [hole('grommet', 24, 24, 2.5)]),
  oval: piece({ shape: 'ellipse', length_m: inch(72), width_m: inch(36) }, {}),
  bar: piece({ shape: 'rectangle', length_m: inch(144), width_m: inch(16) }, { right: 'seam', back: 'wall' }),
  corner: piece(
    {
      shape: 'polygon',
      corners: [
        { x_m: 0, y_m: 0 },
        { x_m: inch(30), y_m: 0, radius_m: inch(3) },
        { x_m: inch(42), y_m: inch(14) },
        { x_m: inch(42), y_m: inch(40) },
        { x_m: 0, y_m: inch(40) },
      ],
    },
    { 'edge 4': 'wall', 'edge 5': 'wall' },
    [
      {
        name: 'corner sink',
        shape: 'rectangle',
        length_m: inch(16),
        width_m: inch(11),
        cornerRadius_m: inch(1),
        centre: { x_m: inch(21), y_m: inch(21) },
        rotation_rad: Math.PI / 4,
        rim: 'wrapped',
      },
    ],
  ),
};
