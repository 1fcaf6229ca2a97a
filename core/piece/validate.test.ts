import { describe, expect, it } from 'vitest';
import { sayProblem } from '#core/quantity/problem.ts';
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

describe('a sound piece', () => {
  it('has nothing against it', () => {
    expect(reviewPiece(pieceOf(rectangle, [bowl]))).toEqual({ problems: [], warnings: [] });
  });
});

describe('an outline is refused', () => {
  it.each([
    ['too small', { ...rectangle, length_m: 0.009 }, 'outline.length length.range'],
    ['too large', { ...rectangle, width_m: 10.1 }, 'outline.width length.range'],
    ['no number', { ...rectangle, width_m: Number.NaN }, 'outline.width length.range'],
    [
      'radius over half the side',
      { ...rectangle, cornerRadius_m: 0.31 },
      'outline.cornerRadius corner.too-big',
    ],
    ['negative radius', { ...rectangle, cornerRadius_m: -0.01 }, 'outline.cornerRadius corner.too-big'],
    ['slender oval', { shape: 'ellipse', length_m: 5, width_m: 0.05 }, 'outline.width oval.slender'],
    ['two corners', polygon([0, 0], [1, 0]), 'outline.corners outline.count'],
    ['a corner twice', polygon([0, 0], [1, 0], [1, 0], [0, 1]), 'outline.corners.2 outline.repeat'],
    [
      'a spike',
      polygon([0, 0], [1, 0], [1, 1], [1, 0.5], [0, 0.5]),
      'outline.corners.2 outline.doubles-back',
    ],
    ['flat', polygon([0, 0], [2, 0], [1, 0.009]), 'outline outline.extent'],
    ['a sliver', polygon([0, 0], [0.5, 0.5], [0.5, 0.50015]), 'outline outline.no-area'],
    ['a bow tie', polygon([0, 0], [1, 1], [1, 0], [0, 1]), 'outline outline.crosses'],
    ['far away', polygon([0, 0], [1000, 0], [0, 1]), 'outline.corners.1 point.range'],
    [
      'an open path',
      {
        shape: 'path',
        start: { x_m: 0, y_m: 0 },
        segments: [
          { kind: 'line', to: { x_m: 1, y_m: 0 } },
          { kind: 'line', to: { x_m: 0, y_m: 1 } },
        ],
      },
      'outline.segments.1.to outline.open',
    ],
    [
      'a wild arc',
      {
        shape: 'path',
        start: { x_m: 0, y_m: 0 },
        segments: [
          { kind: 'arc', to: { x_m: 1, y_m: 0 }, bulge: Infinity },
          { kind: 'line', to: { x_m: 0, y_m: 0 } },
        ],
      },
      'outline.segments.0.bulge arc.bulge',
    ],
    [
      'an L with a return no longer than its leg',
      { shape: 'ell', side: 'left', length_m: 2, width_m: 0.6, returnLength_m: 0.6, returnWidth_m: 0.6 },
      'outline.returnLength ell.return-short',
    ],
    [
      'an L with an inside radius that does not fit',
      {
        shape: 'ell',
        side: 'left',
        length_m: 2,
        width_m: 0.6,
        returnLength_m: 1,
        returnWidth_m: 0.6,
        insideRadius_m: 0.5,
      },
      'outline.insideRadius corner.too-big',
    ],
  ] as [string, Outline, string][])('%s', (_, outline, problem) => {
    expect(found(pieceOf(outline))).toContain(problem);
  });

  it('says where it crosses itself', () => {
    const [problem] = validatePiece(pieceOf(polygon([0, 0], [1, 1], [1, 0], [0, 1])));
    expect(sayProblem(problem!)).toBe(
      'outline: The outline meets itself: "edge 1" and "edge 3" touch or cross. Read: "500 mm (19.685 in) from the left, 500 mm (19.685 in) from the front". Allowed: an outline that goes round once without touching itself.',
    );
  });

  it('notices arcs that bulge through another edge', () => {
    const outline: Outline = {
      shape: 'path',
      start: { x_m: 0, y_m: 0 },
      segments: [
        { kind: 'arc', to: { x_m: 1, y_m: 0 }, bulge: -1 },
        { kind: 'line', to: { x_m: 1, y_m: 0.4 } },
        { kind: 'line', to: { x_m: 0, y_m: 0.4 } },
        { kind: 'line', to: { x_m: 0, y_m: 0 } },
      ],
    };
    expect(found(pieceOf(outline))).toContain('outline outline.crosses');
    const room: Outline = {
      ...outline,
      segments: outline.segments.map((s) =>
        s.kind === 'line' && s.to.y_m > 0 ? { ...s, to: { ...s.to, y_m: 0.6 } } : s,
      ),
    };
    expect(found(pieceOf(room))).toEqual([]);
  });

  it('is quick to refuse a drawing of a hundred thousand corners, and to look through two thousand', () => {
    const star = (n: number): Outline =>
      polygon(
        ...Array.from({ length: n }, (_, i) => {
          const r = i % 2 === 0 ? 2 : 1.9;
          return [3 + r * Math.cos((2 * Math.PI * i) / n), 3 + r * Math.sin((2 * Math.PI * i) / n)] as const;
        }),
      );
    const [problem] = validatePiece(pieceOf(star(100_000)));
    expect(problem).toMatchObject({ path: 'outline.corners', read: '100000', allowed: '3 to 2000' });
    const review = reviewPiece(pieceOf(star(2000)));
    expect(review.problems).toEqual([]);
    expect(review.warnings).toHaveLength(20);
  });
});

describe('edges', () => {
  const withEdge = (front: EdgeSpec): Piece => {
    const piece = pieceOf(rectangle);
    return { ...piece, edges: { ...piece.edges, front } };
  };

  it('must be there, all of them and no others', () => {
    const { front: _, ...rest } = pieceOf(rectangle).edges;
    const problems = found({ ...pieceOf(rectangle), edges: { ...rest, top: spec } });
    expect(problems).toEqual(['edges.top edge.unknown', 'edges.front edge.missing']);
  });

  it.each([
    [{ ...spec, faceHeight_m: 0 }, 'edges.front.faceHeight length.range'],
    [
      { ...spec, profile: { kind: 'round-over', radius_m: 0.039 } },
      'edges.front.profile.radius profile.too-big',
    ],
    [{ ...spec, profile: { kind: 'bevel', leg_m: 0.04 } }, 'edges.front.profile.leg profile.too-big'],
    [{ ...spec, profile: { kind: 'chiselled', factor: 1.2 } }, 'edges.front.profile.factor profile.factor'],
    [{ ...spec, undersideReturn_m: -0.01 }, 'edges.front.undersideReturn length.range'],
  ] as [EdgeSpec, string][])('%j is refused', (front, problem) => {
    expect(found(withEdge(front))).toEqual([problem]);
  });

  it('cannot carry a profile wider than half the piece', () => {
    const strip: Outline = { shape: 'rectangle', length_m: 0.5, width_m: 0.03 };
    const bullnose = { ...spec, profile: { kind: 'bullnose' } } as const;
    const piece = pieceOf(strip);
    expect(found(piece)).toEqual([]);
    expect(found({ ...piece, edges: { ...piece.edges, back: bullnose } })).toEqual([
      'edges.back.profile profile.wide',
    ]);
  });

  it('are warned about when too sharp for resin, unless they are not coated', () => {
    const sharp = { ...spec, profile: { kind: 'square eased', radius_m: 0.001 } } as const;
    expect(warned(withEdge(sharp))).toEqual(['edges.front.profile profile.sharp']);
    expect(warned(withEdge({ ...sharp, kind: 'wall' }))).toEqual([]);
  });
});
