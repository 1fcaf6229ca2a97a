/** Every finding core/piece can make about a piece that was typed as a job document, provoked, and the field it is led to. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { measurePiece } from '#core/piece/measure.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { EdgeDocument, PieceDocument } from './document.ts';
import { JobDocument } from './document.ts';
import { Notes } from './notes.ts';
import { atPieceField } from './piece-field.ts';
import { readPiece } from './read-piece.ts';

type Typed = NonNullable<Parameters<typeof JobDocument.parse>[0]>;

const pieceOf = (piece: Record<string, unknown>): PieceDocument =>
  JobDocument.parse({
    format: 'pourwright job 1',
    piece: { bodyThickness: '38 mm', outline: rectangle, ...piece },
  } satisfies Typed).piece;

const rectangle = { shape: 'rectangle', length: '1200 mm', width: '600 mm' };
const ell = {
  shape: 'ell',
  length: '2000 mm',
  width: '600 mm',
  returnLength: '1500 mm',
  returnWidth: '600 mm',
  insideRadius: '40 mm',
};
const hole = { name: 'bowl', length: '300 mm', fromLeft: '600 mm', fromFront: '300 mm' };
const edge = (more: Partial<EdgeDocument> & { edge: string }) => ({ edges: [{ edge: 'left' }, more] });
const corners = (...places: readonly string[]) => ({
  outline: {
    shape: 'polygon',
    corners: places.map((place) => {
      const [x = '', y = '', radius = ''] = place.split(' ');
      return { x: `${x} mm`, y: `${y} mm`, radius: radius === '' ? '' : `${radius} mm` };
    }),
  },
});

/** Findings as the job sheet gets them; throws when the piece could not even be read. */
function findings(document: PieceDocument): Problem[] {
  const notes = new Notes();
  const { piece } = readPiece(document, notes);
  if (piece === null) throw new Error(JSON.stringify([notes.problems, notes.missing]));
  const measured = measurePiece(piece);
  return (measured.ok ? measured.warnings : measured.problems).map((each) => atPieceField(each, document));
}

const told = (document: PieceDocument) => findings(document).map((each) => `${each.path} ${each.code}`);

describe('a finding stands at the field that mends it', () => {
  it.each<[string, Record<string, unknown>, string]>([
    [
      'radius over half the depth',
      { outline: { ...rectangle, cornerRadius: '301 mm' } },
      'piece.outline.cornerRadius corner.too-big',
    ],
    [
      'a slender oval',
      { outline: { shape: 'ellipse', length: '5 m', width: '60 mm' } },
      'piece.outline.width oval.slender',
    ],
    [
      'a return shorter than the leg is deep',
      { outline: { ...ell, returnLength: '500 mm' } },
      'piece.outline.returnLength ell.return-short',
    ],
    [
      'a return wider than the whole',
      { outline: { ...ell, returnWidth: '2000 mm' } },
      'piece.outline.returnWidth ell.return-wide',
    ],
    [
      'an outer radius over the depth',
      { outline: { ...ell, cornerRadius: '400 mm' } },
      'piece.outline.cornerRadius corner.too-big',
    ],
    [
      'an inner radius over the return',
      { outline: { ...ell, insideRadius: '950 mm' } },
      'piece.outline.insideRadius corner.too-big',
    ],
    [
      'a sharp inner corner',
      { outline: { ...ell, insideRadius: '3 mm' } },
      'piece.outline.insideRadius corner.inside-tight',
    ],
    ['a corner twice', corners('0 0', '900 0', '900 0', '0 900'), 'piece.outline.corners.2.x outline.repeat'],
    [
      'a spike',
      corners('0 0', '900 0', '900 900', '900 500', '0 500'),
      'piece.outline.corners.2.x outline.doubles-back',
    ],
    [
      'a rounding over its side',
      corners('0 0', '900 0 800', '900 600', '0 600'),
      'piece.outline.corners.1.radius corner.too-big',
    ],
    [
      'a sharp inner corner of a polygon',
      corners('0 0', '900 0', '900 900', '450 450', '0 900'),
      'piece.outline.corners.3.radius corner.inside-tight',
    ],
    ['a polygon too flat', corners('0 0', '900 0', '450 8'), 'piece.outline outline.extent'],
    ['a sliver', corners('0 0', '500 500', '500 500.15'), 'piece.outline outline.no-area'],
    ['a bow tie', corners('0 0', '900 900', '900 0', '0 900'), 'piece.outline outline.crosses'],
    [
      'a round-over over the face',
      edge({ edge: 'front', profile: 'round-over', profileSize: '50 mm' }),
      'piece.edges.1.profileSize profile.too-big',
    ],
    [
      'a bevel over the face',
      edge({ edge: 'front', profile: 'bevel', profileSize: '50 mm' }),
      'piece.edges.1.profileSize profile.too-big',
    ],
    [
      'a chiselled face too broken',
      edge({ edge: 'front', profile: 'chiselled', profileSize: '1.9' }),
      'piece.edges.1.profileSize profile.factor',
    ],
    [
      'a sharp arris',
      edge({ edge: 'front', profileSize: '1 mm' }),
      'piece.edges.1.profileSize profile.sharp',
    ],
    [
      'a bullnose too sharp',
      edge({ edge: 'front', faceHeight: '3 mm', profile: 'bullnose' }),
      'piece.edges.1.profile profile.sharp',
    ],
    [
      'a radius over half the top',
      {
        outline: { ...rectangle, width: '100 mm' },
        ...edge({ edge: 'front', faceHeight: '200 mm', profile: 'round-over', profileSize: '60 mm' }),
      },
      'piece.edges.1.profileSize profile.wide',
    ],
    [
      'a bullnose over half the top',
      edge({ edge: 'front', faceHeight: '900 mm', profile: 'bullnose' }),
      'piece.edges.1.profile profile.wide',
    ],
    [
      'an oval hole too slender',
      { cutOuts: [{ ...hole, shape: 'oval', length: '800 mm', width: '10 mm' }] },
      'piece.cutOuts.0.width oval.slender',
    ],
    [
      'a hole with too much radius',
      { cutOuts: [{ ...hole, shape: 'rectangle', width: '100 mm', cornerRadius: '60 mm' }] },
      'piece.cutOuts.0.cornerRadius corner.too-big',
    ],
    [
      'a hole with sharp corners',
      { cutOuts: [{ ...hole, shape: 'rectangle', width: '100 mm', cornerRadius: '1 mm' }] },
      'piece.cutOuts.0.cornerRadius corner.inside-tight',
    ],
    [
      'a hole over the left edge',
      { cutOuts: [{ ...hole, fromLeft: '10 mm' }] },
      'piece.cutOuts.0.fromLeft cut-out.over-edge',
    ],
    [
      'a hole over the front edge',
      { cutOuts: [{ ...hole, fromFront: '10 mm' }] },
      'piece.cutOuts.0.fromFront cut-out.over-edge',
    ],
    [
      'a hole larger than the piece',
      { cutOuts: [{ ...hole, length: '3 m' }] },
      'piece.cutOuts.0.fromLeft cut-out.outside',
    ],
    [
      'two holes in one place',
      { cutOuts: [hole, { ...hole, name: 'second' }] },
      'piece.cutOuts.1.fromLeft cut-out.overlap',
    ],
    [
      'little wood in front',
      { cutOuts: [{ ...hole, fromFront: '200 mm' }] },
      'piece.cutOuts.0.fromFront cut-out.rail-front',
    ],
    [
      'little wood at the side',
      { cutOuts: [{ ...hole, fromLeft: '200 mm' }] },
      'piece.cutOuts.0.fromLeft cut-out.rail-side',
    ],
    [
      'little wood behind',
      { cutOuts: [{ ...hole, fromFront: '420 mm' }] },
      'piece.cutOuts.0.fromFront cut-out.rail-back',
    ],
    [
      'a tap near the back',
      { cutOuts: [{ ...hole, length: '35 mm', fromFront: '560 mm' }] },
      'piece.cutOuts.0.fromFront cut-out.tap-edge',
    ],
    [
      'a tap near the bowl',
      { cutOuts: [hole, { ...hole, name: 'tap', length: '35 mm', fromFront: '490 mm' }] },
      'piece.cutOuts.1.fromLeft cut-out.tap-bowl',
    ],
  ])('%s', (_what, piece, wanted) => {
    expect(told(pieceOf(piece))).toContain(wanted);
  });
});

describe('an edge that is not in the document', () => {
  it('is told at the list of edges, by its name', () => {
    const found = findings(pieceOf({ bodyThickness: '3 mm', edges: [{ edge: 'back', kind: 'wall' }] }));
    expect(found.map((each) => `${each.path} ${each.code}`)).toEqual(
      Array(3).fill('piece.edges profile.sharp'),
    );
    expect(found.map((each) => /^Edge "(\w+)": resin draws back/.exec(each.message)?.[1])).toEqual([
      'front',
      'right',
      'left',
    ]);
  });
});

test('every finding of a typed piece leads to a place that is in the document', () => {
  const mm = (min: number, max: number) => fc.integer({ min, max }).map((size) => `${size} mm`);
  const some = <T>(value: fc.Arbitrary<T>) => fc.oneof(value, fc.constant(''));
  const outline = fc.oneof(
    fc.record({
      shape: fc.constant('rectangle'),
      length: mm(10, 2000),
      width: mm(10, 900),
      cornerRadius: mm(0, 500),
    }),
    fc.record({
      shape: fc.constant('ell'),
      side: fc.constantFrom('left', 'right'),
      length: mm(300, 2000),
      width: mm(100, 900),
      returnLength: mm(300, 2000),
      returnWidth: mm(100, 900),
      cornerRadius: mm(0, 300),
      insideRadius: mm(0, 300),
    }),
    fc.record({ shape: fc.constant('round'), diameter: mm(10, 2000) }),
    fc.record({ shape: fc.constant('ellipse'), length: mm(10, 2000), width: mm(10, 2000) }),
    fc.record({
      shape: fc.constant('polygon'),
      corners: fc.array(fc.record({ x: mm(0, 900), y: mm(0, 900), radius: mm(0, 60) }), {
        minLength: 3,
        maxLength: 7,
      }),
    }),
  );
  const edges = fc.uniqueArray(
    fc.record({
      edge: fc.constantFrom('front', 'right', 'back', 'left', 'rim', 'return front', 'edge 1', 'edge 2'),
      kind: fc.constantFrom('finished', 'wall', 'seam'),
      faceHeight: some(mm(1, 300)),
      profile: fc.constantFrom('square eased', 'round-over', 'bullnose', 'bevel'),
      profileSize: some(mm(1, 100)),
    }),
    { selector: (each) => each.edge, maxLength: 4 },
  );
  const cutOuts = fc.array(
    fc.record({
      shape: fc.constantFrom('rectangle', 'oval', 'round'),
      length: mm(5, 600),
      width: mm(5, 600),
      cornerRadius: mm(0, 200),
      fromLeft: mm(-100, 2000),
      fromFront: mm(-100, 900),
    }),
    { maxLength: 3 },
  );
  let made = 0;
  fc.assert(
    fc.property(fc.record({ outline, edges, cutOuts, bodyThickness: mm(3, 60) }), (typed) => {
      const named = pieceOf(typed);
      // Names of another outline are refused before the piece is measured.
      const document =
        readPiece(named, new Notes()).piece === null ? pieceOf({ ...typed, edges: [] }) : named;
      for (const { path, code } of findings(document)) {
        made += 1;
        expect(at({ piece: document }, path), `${path} ${code}`).toBeDefined();
      }
    }),
    { numRuns: 300, seed: 3 },
  );
  expect(made).toBeGreaterThan(200);
});

function at(value: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((inside, key) => (inside as Record<string, unknown> | undefined)?.[key], value);
}
