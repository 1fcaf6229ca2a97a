import { describe, expect, it } from 'vitest';
import { edgeNames } from '#core/piece/outline.ts';
import type { Outline, Piece } from '#core/piece/piece.ts';
import { fitTop } from './fit-top.ts';

const outline: Outline = { shape: 'rectangle', length_m: 2, width_m: 0.6 };
/** 40 mm at its edges, all of them against walls, so that no strip is under it. */
const piece: Piece = {
  outline,
  edges: Object.fromEntries(
    edgeNames(outline).map((name) => [
      name,
      {
        kind: 'wall',
        faceHeight_m: 0.04,
        profile: { kind: 'square eased', radius_m: 0.003 },
        undersideReturn_m: 0,
      },
    ]),
  ),
  cutOuts: [],
  bodyThickness_m: 0.04,
};
const board = { boardThickness_m: 0.02, density_kg_m3: 700 };

describe('what is carried in', () => {
  it('weighs as its body is built, with the resin on it', () => {
    // One board 2 m x 0.6 m x 20 mm at 700 kg/m3: 16.8 kg.
    expect(fitTop(piece, board, 3)?.load.mass_kg).toBeCloseTo(16.8 + 3, 9);
    expect(fitTop(piece, board, 3)?.withResin).toBe(true);
  });

  it('is lighter than a solid body, which is what is counted while nobody can say how it is built', () => {
    // Solid, 40 mm at 740 kg/m3: 35.52 kg.
    expect(fitTop(piece, null, 0)?.load.mass_kg).toBeCloseTo(35.52, 9);
    expect(fitTop(piece, null, 0)?.withResin).toBe(false);
  });

  it('leaves splashes out: they are carried by themselves', () => {
    const splashes = [{ name: 'back splash', length_m: 2, height_m: 0.1 }];
    expect(fitTop(piece, { ...board, splashes }, 0)).toEqual(fitTop(piece, board, 0));
  });

  it('is nothing for a piece that cannot be measured', () => {
    expect(fitTop({ ...piece, bodyThickness_m: -1 }, board, 0)).toBeNull();
  });
});
