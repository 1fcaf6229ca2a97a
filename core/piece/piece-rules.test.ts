import { describe, expect, it } from 'vitest';
import { toSI } from '#core/quantity/units.ts';
import { ellCorners } from './corners.ts';
import { dimensionedDrawing } from './drawing.ts';
import { edgeNames } from './outline.ts';
import type { CutOut, EdgeSpec, Outline, Piece } from './piece.ts';
import { PIECE_RULES } from './piece-rules.ts';
import { setOut } from './set-out/set-out.ts';
import { templateTiles } from './set-out/template-tiles.ts';
import { reviewPiece } from './validate.ts';

const inch = (n: number): number => toSI(n, 'in');
const top: Outline = { shape: 'rectangle', length_m: 1.6, width_m: 0.6 };
const round = (name: string, x_m: number, y_m: number, diameter_m: number): CutOut => ({
  name,
  shape: 'round',
  diameter_m,
  centre: { x_m, y_m },
  rim: 'dammed',
});
const piece = (outline: Outline, ...cutOuts: CutOut[]): Piece => ({
  outline,
  edges: Object.fromEntries(
    edgeNames(outline).map((name) => [
      name,
      {
        kind: 'finished',
        faceHeight_m: 0.038,
        profile: { kind: 'square eased', radius_m: 0.003 },
        undersideReturn_m: 0,
      },
    ]),
  ),
  cutOuts,
  bodyThickness_m: 0.038,
});
const codes = (of: Piece, rules = PIECE_RULES) => reviewPiece(of, rules).warnings.map(({ code }) => code);

describe("a shop's own rules", () => {
  const bowl = piece(top, round('bowl', 0.8, 0.26, 0.38));

  it('decide what is told: 70 mm at the front is enough, or is not', () => {
    expect(codes(bowl)).toEqual([]);
    expect(codes(bowl, { ...PIECE_RULES, frontRail_m: 0.08 })).toEqual(['cut-out.rail-front']);
  });

  it('go with the drawing, the set-out and the template as well', () => {
    const rules = { ...PIECE_RULES, frontRail_m: 0.08 };
    const wishes = { paper: 'A4', orientation: 'landscape', margin_m: 0.01, overlap_m: 0.015 } as const;
    const told = (own?: typeof rules) =>
      [dimensionedDrawing(bowl, own), setOut(bowl, own), templateTiles(bowl, wishes, own)].map((made) =>
        made.ok ? made.warnings.map(({ code }) => code) : made.problems,
      );
    expect(told()).toEqual([[], [], []]);
    const one = ['cut-out.rail-front'];
    expect(told(rules)).toEqual([one, one, one]);
  });

  it('are named as the shop default or as its own', () => {
    const allowed = (frontRail_m: number) =>
      reviewPiece(piece(top, round('bowl', 0.8, 0.24, 0.38)), { ...PIECE_RULES, frontRail_m }).warnings[0]
        ?.allowed;
    expect(allowed(PIECE_RULES.frontRail_m)).toContain('shop default, common practice, no source');
    expect(allowed(0.08)).toBe('80 mm (3.15 in) or more (as this shop has it)');
  });

  it('reach as far as the longest of them, also beyond the side rail', () => {
    expect(codes(bowl, { ...PIECE_RULES, backRail_m: 0.2, sideRail_m: 0.05 })).toEqual(['cut-out.rail-back']);
  });
});

describe('holes close to each other', () => {
  it('are told: two bowls by the wood between their rims, two taps by their centres', () => {
    const bowls = (apart_m: number) =>
      piece(top, round('a', 0.5, 0.3, 0.3), round('b', 0.5 + 0.3 + apart_m, 0.3, 0.3));
    expect(codes(bowls(0.049))).toEqual(['cut-out.between']);
    expect(codes(bowls(0.051))).toEqual([]);
    const taps = (apart_m: number) =>
      piece(top, round('a', 0.5, 0.3, 0.035), round('b', 0.5 + apart_m, 0.3, 0.035));
    expect(codes(taps(0.059))).toEqual(['cut-out.tap-tap']);
    expect(codes(taps(0.061))).toEqual([]);
  });
});

describe('an L and the corners it has', () => {
  it('are told the same, as their edges look the same way', () => {
    const ell = {
      shape: 'ell',
      side: 'right',
      length_m: inch(84),
      width_m: inch(25.5),
      returnLength_m: inch(66),
      returnWidth_m: inch(25.5),
      insideRadius_m: inch(1.5),
    } as const;
    const corners = { shape: 'polygon', corners: ellCorners(ell) } as const;
    for (const hole of [
      round('front', inch(30), inch(8), inch(13)),
      round('side', inch(9), inch(12.5), inch(14)),
      round('back', inch(30), inch(17.5), inch(13)),
    ])
      expect(codes(piece(corners, hole))).toEqual(codes(piece(ell, hole)));
  });

  it('are told the same beside the return where its edges say what they count as', () => {
    const ell = {
      ...{ shape: 'ell', side: 'right', length_m: inch(84), width_m: inch(25.5) },
      ...{ returnLength_m: inch(66), returnWidth_m: inch(25.5), insideRadius_m: inch(1.5) },
    } as const;
    const places = ellCorners(ell as Extract<Outline, { shape: 'ell' }>);
    const made = (hole: CutOut) => {
      const turned = piece({ shape: 'polygon', corners: places }, hole);
      const edges = Object.entries(turned.edges).map(([name, spec], i): [string, EdgeSpec] => {
        const { edge } = places[i]!;
        return [name, edge === 'return front' || edge === 'return end' ? { ...spec, countsAs: edge } : spec];
      });
      return { ...turned, edges: Object.fromEntries(edges) };
    };
    // 80 mm from the edge that faces the inside corner: enough of a front, too little of a side; and the same at the end.
    for (const hole of [
      round('bowl', inch(58.5) + 0.08 + 0.15, inch(-15), 0.3),
      round('bowl', inch(71.25), inch(-40.5) + 0.08 + 0.15, 0.3),
    ])
      expect(codes(made(hole))).toEqual(codes(piece(ell as Outline, hole)));
    expect(
      codes(piece({ shape: 'polygon', corners: places }, round('bowl', inch(58.5) + 0.23, inch(-15), 0.3))),
    ).toEqual(['cut-out.rail-side']);
  });
});
