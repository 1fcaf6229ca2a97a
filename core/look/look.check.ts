/** For tests: a counter of 1.2 by 0.6 m with a hole, its panels, and colours to pour. */
import type { EdgeSpec, Piece } from '#core/piece/piece.ts';
import { emptyLook, type LookDocument, type LookMoveDocument } from './look-document.ts';
import { type LaidPiece, laidEdges, panelsOf } from './panels.ts';
import type { LookSetting } from './read-look.ts';
import { linearOfHex } from './srgb.ts';

const edge = (kind: EdgeSpec['kind']): EdgeSpec => ({
  kind,
  faceHeight_m: 0.038,
  profile: { kind: 'square eased', radius_m: 0.003 },
  undersideReturn_m: 0,
});

export const COUNTER: Piece = {
  outline: { shape: 'rectangle', length_m: 1.2, width_m: 0.6, cornerRadius_m: 0.01 },
  edges: { front: edge('finished'), right: edge('finished'), back: edge('wall'), left: edge('finished') },
  cutOuts: [{ shape: 'round', diameter_m: 0.3, name: 'bowl', centre: { x_m: 0.8, y_m: 0.3 }, rim: 'dammed' }],
  bodyThickness_m: 0.038,
};

export const laid = (change: Partial<LaidPiece> = {}): LaidPiece => ({
  name: 'Counter',
  piece: COUNTER,
  at: [0, 0],
  turn_rad: 0,
  splashes: [],
  ...change,
});

export function setting(pieces: readonly LaidPiece[] = [laid()], faceFilm_m = 0.0005): LookSetting {
  const colour = (key: string, hex: string) => ({ key, name: key, light: linearOfHex(hex), flake: null });
  return {
    colours: [colour('dark', '#1f2a30'), colour('green', '#4f6b5a'), colour('warm', '#b08d57')],
    film_m: 0.0013,
    panels: panelsOf(pieces, { film_m: 0.0013, faceFilm_m }),
    edges: laidEdges(pieces),
  };
}

export const puddle = (
  id: string,
  colour: string,
  volume_m3: number,
  ...path: [number, number][]
): LookMoveDocument => ({ kind: 'puddle', id, kept: true, name: '', colour, volume_m3, path });

export const withMoves = (moves: LookMoveDocument[], change: Partial<LookDocument> = {}): LookDocument => ({
  ...emptyLook(),
  moves,
  ...change,
});
