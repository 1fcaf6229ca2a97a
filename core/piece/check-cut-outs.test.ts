import { describe, expect, it } from 'vitest';
import { edgeNames } from './outline.ts';
import type { CutOut, EdgeSpec, Outline, Piece } from './piece.ts';
import { reviewPiece, validatePiece } from './validate.ts';

const spec: EdgeSpec = {
  kind: 'finished',
  faceHeight_m: 0.038,
  profile: { kind: 'round-over', radius_m: 0.006 },
  undersideReturn_m: 0,
};
const rectangle: Outline = { shape: 'rectangle', length_m: 1.2, width_m: 0.6 };
const bowl: CutOut = {
  name: 'bowl',
  shape: 'rectangle',
  length_m: 0.4,
  width_m: 0.3,
  cornerRadius_m: 0.03,
  centre: { x_m: 0.6, y_m: 0.3 },
  rim: 'wrapped',
};

function pieceOf(outline: Outline, cutOuts: readonly CutOut[] = []): Piece {
  return {
    outline,
    edges: Object.fromEntries(edgeNames(outline).map((name) => [name, spec])),
    cutOuts,
    bodyThickness_m: 0.038,
  };
}

const polygon = (...points: readonly (readonly [number, number])[]): Outline => ({
  shape: 'polygon',
  corners: points.map(([x_m, y_m]) => ({ x_m, y_m })),
});

const found = (piece: Piece): string[] => validatePiece(piece).map((p) => `${p.path} ${p.code}`);
const warned = (piece: Piece): string[] => reviewPiece(piece).warnings.map((p) => `${p.path} ${p.code}`);

describe('cut-outs', () => {
  const at = (x_m: number, y_m: number): CutOut => ({ ...bowl, centre: { x_m, y_m } });

  it('over an edge are refused, and how far over is said', () => {
    const [problem] = validatePiece(pieceOf(rectangle, [at(0.6, 0.12)]));
    expect(problem).toMatchObject({
      path: 'cutOuts.0.centre',
      code: 'cut-out.over-edge',
      message: '"bowl" reaches over the edge "front" by 30 mm (1.181 in).',
    });
  });

  it('over a slanted edge: the furthest corner counts', () => {
    const disc: CutOut = {
      name: 'bin',
      shape: 'round',
      diameter_m: 0.4,
      centre: { x_m: 0.45, y_m: 0.45 },
      rim: 'dammed',
    };
    const [problem] = validatePiece(pieceOf(polygon([0, 0], [1, 0], [0, 1]), [disc]));
    // Centre to the slant: 0.1 / sqrt 2 = 70.71 mm; radius 200 mm reaches 129.29 mm over.
    expect(problem!.message).toBe('"bin" reaches over the edge "edge 2" by 129.29 mm (5.09 in).');
  });

  it('outside, larger than the piece, or touching an edge are told apart', () => {
    expect(found(pieceOf(rectangle, [at(3, 0.3)]))).toEqual(['cutOuts.0.centre cut-out.outside']);
    const huge: CutOut = { ...bowl, length_m: 5, width_m: 5 };
    expect(validatePiece(pieceOf(rectangle, [huge]))[0]!.message).toBe('"bowl" is larger than the piece.');
    expect(validatePiece(pieceOf(rectangle, [at(0.6, 0.15)]))[0]!.message).toBe(
      '"bowl" touches the edge "front".',
    );
  });

  it('overlapping or one within the other are refused', () => {
    const inner: CutOut = {
      name: 'tap',
      shape: 'round',
      diameter_m: 0.035,
      centre: bowl.centre,
      rim: 'dammed',
    };
    expect(found(pieceOf(rectangle, [bowl, inner]))).toEqual(['cutOuts.1.centre cut-out.overlap']);
    expect(found(pieceOf(rectangle, [at(0.4, 0.3), at(0.7, 0.3)]))).toEqual([
      'cutOuts.1.centre cut-out.overlap',
    ]);
  });

  it('in the waist of an L are looked at against the true outline', () => {
    const ell: Outline = {
      shape: 'ell',
      side: 'left',
      length_m: 2.4,
      width_m: 0.6,
      returnLength_m: 1.8,
      returnWidth_m: 0.6,
      insideRadius_m: 0.03,
    };
    expect(found(pieceOf(ell, [at(0.3, -0.6)]))).toEqual([]);
    expect(found(pieceOf(ell, [at(1.2, -0.6)]))).toEqual(['cutOuts.0.centre cut-out.outside']);
  });

  it('are warned about where the rail left is thin: front 65, side 100, back 50 mm', () => {
    const w = 0.3;
    expect(warned(pieceOf(rectangle, [at(0.6, w / 2 + 0.0649)]))).toEqual([
      'cutOuts.0.centre cut-out.rail-front',
    ]);
    expect(warned(pieceOf(rectangle, [at(0.6, w / 2 + 0.0651)]))).toEqual([]);
    expect(warned(pieceOf(rectangle, [at(0.6, 0.6 - w / 2 - 0.0499)]))).toEqual([
      'cutOuts.0.centre cut-out.rail-back',
    ]);
    expect(warned(pieceOf(rectangle, [at(0.6, 0.6 - w / 2 - 0.0501)]))).toEqual([]);
    expect(warned(pieceOf(rectangle, [at(0.2999, 0.3)]))).toEqual(['cutOuts.0.centre cut-out.rail-side']);
    expect(warned(pieceOf(rectangle, [at(0.3001, 0.3)]))).toEqual([]);
  });

  it('close to a seam, and a tap close to its bowl or the back, are warned about', () => {
    const piece = pieceOf(rectangle, [at(0.6, 0.38)]);
    const seam: Piece = { ...piece, edges: { ...piece.edges, back: { ...spec, kind: 'seam' } } };
    expect(warned(piece)).toEqual([]);
    expect(warned(seam)).toEqual(['cutOuts.0.centre cut-out.rail-seam']);
    const tap = (y_m: number): CutOut => ({
      name: 'tap',
      shape: 'round',
      diameter_m: 0.035,
      centre: { x_m: 0.6, y_m },
      rim: 'dammed',
    });
    expect(warned(pieceOf(rectangle, [at(0.6, 0.25), tap(0.45)]))).toEqual([
      'cutOuts.1.centre cut-out.tap-bowl',
    ]);
    expect(warned(pieceOf(rectangle, [at(0.6, 0.25), tap(0.55)]))).toEqual([
      'cutOuts.1.centre cut-out.tap-edge',
    ]);
    expect(warned(pieceOf(rectangle, [at(0.6, 0.25), tap(0.5)]))).toEqual([]);
  });

  it('with tight inside corners are warned about', () => {
    expect(warned(pieceOf(rectangle, [{ ...bowl, cornerRadius_m: 0.006 }]))).toEqual([
      'cutOuts.0.cornerRadius corner.inside-tight',
    ]);
  });
});
