import { describe, expect, it } from 'vitest';
import { planCutting } from '../cutting/plan-cutting.ts';
import type { EdgeSpec, Piece } from '../piece.ts';
import { layersUnder } from './body.ts';
import { bodyAdvice } from './body-advice.ts';
import { bodyParts } from './body-parts.ts';
import { bodyWeight } from './body-weight.ts';

const INCH = 0.0254;
const edge = (kind: EdgeSpec['kind'], faceHeight_m = 1.5 * INCH): EdgeSpec => ({
  kind,
  faceHeight_m,
  profile: { kind: 'square eased', radius_m: 0.003 },
  undersideReturn_m: 0,
});
const finished = edge('finished');
const plain: Piece = {
  outline: { shape: 'rectangle', length_m: 1, width_m: 0.5 },
  edges: { front: finished, right: finished, back: edge('wall'), left: finished },
  cutOuts: [],
  bodyThickness_m: 1.5 * INCH,
};
const board = { boardThickness_m: 0.75 * INCH, stripWidth_m: 0.075, oversize_m: 0.005 };
const sizes = (piece: Piece, options = {}) =>
  bodyParts(piece, { ...board, ...options }).map((part) => [
    part.name,
    Math.round(1000 * part.length_m),
    Math.round(1000 * part.width_m),
    part.count,
  ]);

describe('body parts', () => {
  it('of a vanity: field with its oversize, one strip under each finished edge, none at the wall', () => {
    expect(sizes(plain)).toEqual([
      ['field', 1010, 510, 1],
      ['front strip', 1000, 75, 1],
      ['right strip', 500, 75, 1],
      ['left strip', 500, 75, 1],
    ]);
  });

  it('run strips on into small rounded corners', () => {
    const round: Piece = {
      ...plain,
      outline: { ...plain.outline, cornerRadius_m: 0.02 } as Piece['outline'],
    };
    expect(sizes(round)).toEqual(sizes(plain));
  });

  it('make a round top of curved strips that add up to the ring', () => {
    const round: Piece = { ...plain, outline: { shape: 'round', diameter_m: 1 }, edges: { rim: finished } };
    const weight = bodyWeight(round, { ...board, density_kg_m3: 1000 });
    expect(weight.strips_kg).toBeCloseTo(Math.PI * (0.5 ** 2 - 0.425 ** 2) * 0.75 * INCH * 1000, 9);
    // A full turn in sixths.
    expect(sizes(round)[1]!.at(-1)).toBe(6);
    for (const part of bodyParts(round, board).filter((each) => each.kind === 'strip')) {
      expect(part.length_m).toBeCloseTo(2 * 0.5 * Math.sin(Math.PI / 6), 9);
      expect(part.width_m).toBeCloseTo(0.5 - 0.425 * Math.cos(Math.PI / 6), 9);
    }
  });

  it('make an oval of as many curves as a round, though its outline is many small arcs, and as heavy as its ring', () => {
    const oval: Piece = {
      ...plain,
      outline: { shape: 'ellipse', length_m: 1.2, width_m: 0.8 },
      edges: { rim: finished },
    };
    const curves = bodyParts(oval, board).filter((part) => part.kind === 'strip');
    expect(curves.reduce((sum, part) => sum + part.count, 0)).toBe(6);
    // Ring of width w inside a closed convex curve: perimeter x w - pi w2 (Steiner).
    const [a, b] = [0.6, 0.4];
    const h = ((a - b) / (a + b)) ** 2;
    const round = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    const ring = round * 0.075 - Math.PI * 0.075 ** 2;
    const kg = bodyWeight(oval, { ...board, density_kg_m3: 1000 }).strips_kg;
    expect(Math.abs(kg / (ring * 0.75 * INCH * 1000) - 1)).toBeLessThan(1e-3);
    const thin: Piece = {
      ...oval,
      bodyThickness_m: 0.75 * INCH,
      edges: { rim: edge('finished', 0.75 * INCH) },
    };
    expect(bodyParts(thin, board).map((part) => part.kind)).toEqual(['field']);
  });

  it('frame a rectangular hole, block a wrapped round one, leave a dammed tap hole alone', () => {
    const centre = { x_m: 0.5, y_m: 0.25 };
    const bowl = {
      name: 'bowl',
      shape: 'rectangle',
      length_m: 0.4,
      width_m: 0.3,
      cornerRadius_m: 0.02,
    } as const;
    const tap = { name: 'tap', shape: 'round', diameter_m: 0.035, centre: { x_m: 0.5, y_m: 0.45 } } as const;
    const holed: Piece = {
      ...plain,
      cutOuts: [
        { ...bowl, centre, rim: 'wrapped' },
        { ...tap, rim: 'dammed' },
      ],
    };
    expect(sizes(holed).slice(4)).toEqual([
      ['bowl rim', 550, 95, 2],
      ['bowl rim', 260, 95, 2],
    ]);
    const wrapped: Piece = { ...plain, cutOuts: [{ ...tap, rim: 'wrapped' }] };
    expect(sizes(wrapped).slice(4)).toEqual([['tap rim', 185, 185, 1]]);
  });

  it('stack and plane strips to the face, and joint what is too long', () => {
    expect(layersUnder(0.0381, 0.01905).count).toBe(1);
    expect(layersUnder(0.019, 0.01905).count).toBe(0);
    const deep: Piece = { ...plain, edges: { ...plain.edges, front: edge('finished', 0.05) } };
    const strips = bodyParts(deep, board).filter((part) => part.name === 'front strip');
    expect(strips.map((part) => [part.count, part.note.includes('Plane to 11.9 mm')])).toEqual([
      [1, false],
      [1, true],
    ]);
    const long: Piece = { ...plain, outline: { shape: 'rectangle', length_m: 3, width_m: 0.5 } };
    expect(sizes(long).slice(0, 2)).toEqual([
      ['field', 1505, 510, 2],
      ['front strip', 1500, 75, 2],
    ]);
  });

  it('take splashes, keep the grain of plywood, and can be cut', () => {
    const options = { grained: true, splashes: [{ name: 'back splash', length_m: 1, height_m: 0.1 }] };
    const parts = bodyParts(plain, { ...board, ...options });
    expect(parts.map((part) => [part.kind, part.grain])).toEqual([
      ['field', 'fixed'],
      ['strip', 'free'],
      ['strip', 'free'],
      ['strip', 'free'],
      ['splash', 'fixed'],
    ]);
    const plan = planCutting(parts, [{ name: 'plywood', length_m: 2.44, width_m: 1.22 }]);
    expect(plan.ok && plan.value.sheets.length).toBe(1);
    const none = { name: 'back splash', length_m: 0, height_m: 0.1 };
    expect(() => bodyParts(plain, { splashes: [none] })).toThrow(RangeError);
    expect(() => bodyParts(plain, { boardThickness_m: 0 })).toThrow(RangeError);
  });
});

describe('what the maker says about parts', () => {
  it('goes before what the board says: grain by kind of part, splashes of another board', () => {
    const parts = bodyParts(plain, {
      ...board,
      grained: true,
      grain: { field: 'free', strip: 'fixed' },
      splashes: [{ name: 'back splash', length_m: 1, height_m: 0.1, thickness_m: 0.012 }],
    });
    expect(parts.map((part) => [part.kind, part.grain, part.thickness_m])).toEqual([
      ['field', 'free', 0.75 * INCH],
      ['strip', 'fixed', 0.75 * INCH],
      ['strip', 'fixed', 0.75 * INCH],
      ['strip', 'fixed', 0.75 * INCH],
      ['splash', 'fixed', 0.012],
    ]);
  });

  it('weighs a splash by its own thickness', () => {
    const splash = { name: 'back splash', length_m: 1, height_m: 0.1 };
    const weigh = (thickness_m: number) =>
      bodyWeight(plain, { ...board, splashes: [{ ...splash, thickness_m }] }).splashes_kg;
    expect(weigh(0.02)).toBeCloseTo(0.02 * 0.1 * 740, 9);
    expect(weigh(0.01)).toBeCloseTo(weigh(0.02) / 2, 9);
  });
});

describe('body weight and advice', () => {
  it('weighs a square metre of 3/4 in board at 721 kg/m3 as 13.7 kg', () => {
    const sheet: Piece = { ...plain, outline: { shape: 'rectangle', length_m: 2, width_m: 0.5 } };
    const weight = bodyWeight(sheet, { ...board, density_kg_m3: 721, resin_kg: 2 });
    expect(weight.field_kg).toBeCloseTo(13.735, 3);
    expect(weight.strips_kg).toBeCloseTo((2 + 0.5 + 0.5) * 0.075 * 0.01905 * 721, 9);
    expect(weight.total_kg).toBeCloseTo(weight.field_kg + weight.strips_kg + 2, 12);
    expect(weight.high_kg - weight.low_kg).toBeCloseTo(0.16 * (weight.total_kg - 2), 12);
  });

  it('asks for people by weight, brackets by overhang, and screws shorter than the body', () => {
    const light = bodyWeight(plain, board);
    const codes = (options: object, resin_kg = 0) =>
      bodyAdvice(plain, bodyWeight(plain, { ...board, resin_kg }), 'metric', { ...board, ...options }).map(
        (each) => each.code,
      );
    expect(light.high_kg).toBeLessThan(23);
    expect(codes({})).toEqual([]);
    expect(codes({}, 30)).toEqual(['lift']);
    expect(codes({ overhangs: [{ edge: 'front', overhang_m: 0.25 }] })).toEqual([]);
    expect(codes({ overhangs: [{ edge: 'front', overhang_m: 0.3 }] })).toEqual(['bracket']);
    expect(codes({ screwLength_m: 0.036 })).toEqual(['screw']);
    const bracket = bodyAdvice(plain, light, 'metric', {
      overhangs: [{ edge: 'front', overhang_m: 0.3 }],
    })[0]!;
    expect(bracket.text).toContain('3 brackets, no more than 600 mm apart');
  });

  it('tells accessible heights as information', () => {
    const tell = (topHeight_m: number) =>
      bodyAdvice(plain, bodyWeight(plain), 'us', { accessible: { topHeight_m, kneeWidth_m: 0.7 } });
    const good = tell(34 * INCH);
    expect(good[0]!.text).toBe('Top at 34 in: within the 34 in allowed.');
    expect(good[1]!.text).toContain('32 1/2 in clear under the deepest edge: within');
    expect(good[2]!.text).toContain('outside the 30 in');
    expect(tell(35 * INCH)[0]!.text).toContain('outside');
    expect(tell(28 * INCH)[1]!.text).toContain('outside');
    for (const each of good)
      expect([each.kind, each.source.includes('Not legal advice')]).toEqual(['information', true]);
  });
});
