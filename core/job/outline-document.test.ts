import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filmGrid } from '#core/film/map-grid.ts';
import { readDxf } from '#core/piece/files/read-dxf.ts';
import { writeDxf } from '#core/piece/files/write-dxf.ts';
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { bounds, distanceToPath_m, flattenPath, movePath, pathArea_m2 } from '#core/piece/path.ts';
import type { CutOut, Outline, Piece } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { JobDocument, type OutlineDocument } from './document.ts';
import { Notes } from './notes.ts';
import { holeDocuments, outlineDocument, polygonDocument, templateDocument } from './outline-document.ts';
import { readCutOut } from './read-cut-out.ts';
import { readOutline } from './read-outline.ts';

const piece = (outline: Outline, cutOuts: readonly CutOut[] = []): Piece => ({
  outline,
  edges: {},
  cutOuts,
  bodyThickness_m: 0.038,
});
function drawn(outline: Outline, cutOuts: readonly CutOut[] = []) {
  const read = readDxf(writeDxf(piece(outline, cutOuts), { version: 'R2000', unit: 'mm' }), {});
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}
function document(outline: Outline, system: System = 'metric'): OutlineDocument {
  const read = outlineDocument(drawn(outline), system);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}
function backAgain(read: OutlineDocument): Outline {
  const notes = new Notes();
  const outline = readOutline(read, notes);
  expect(notes.problems).toEqual([]);
  if (outline === null) throw new Error('not read');
  return outline;
}
/** Largest distance of either from the other, m. */
function apart_m(a: Outline, b: Outline): number {
  const [one, two] = [outlinePath(a), outlinePath(b)];
  return Math.max(
    ...flattenPath(one, 1e-5).map((p) => distanceToPath_m(two, p)),
    ...flattenPath(two, 1e-5).map((p) => distanceToPath_m(one, p)),
  );
}

describe('a drawing as an outline of a job', () => {
  it('is a rectangle, a circle or an ellipse where it is one', () => {
    expect(
      document({ shape: 'rectangle', length_m: 1.2192, width_m: 0.5588, cornerRadius_m: 0.0127 }, 'us'),
    ).toEqual({
      shape: 'rectangle',
      length: '48 in',
      width: '22 in',
      cornerRadius: '1/2 in',
    });
    expect(document({ shape: 'rectangle', length_m: 0.5, width_m: 1.2 })).toMatchObject({
      shape: 'rectangle',
      length: '500 mm',
      width: '1200 mm',
    });
    expect(document({ shape: 'round', diameter_m: 1.0668 }, 'us')).toEqual({
      shape: 'round',
      diameter: '42 in',
    });
    expect(document({ shape: 'ellipse', length_m: 1.5, width_m: 0.9 })).toMatchObject({ shape: 'ellipse' });
  });

  it('comes back within 0.01 mm in both unit systems, arcs of more than half a circle too', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<System>('us', 'metric'),
        fc.double({ min: 0.4, max: 3, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        fc.double({ min: -0.3, max: 0.9, noNaN: true }),
        (system, length_m, width_m, bulge) => {
          const outline: Outline = {
            shape: 'path',
            start: { x_m: 0, y_m: 0 },
            segments: [
              { kind: 'line', to: { x_m: length_m, y_m: 0.01 } },
              Math.abs(bulge) < 1e-3
                ? { kind: 'line', to: { x_m: length_m, y_m: width_m } }
                : { kind: 'arc', to: { x_m: length_m, y_m: width_m }, bulge },
              { kind: 'line', to: { x_m: 0, y_m: width_m } },
              { kind: 'line', to: { x_m: 0, y_m: 0 } },
            ],
          };
          expect(apart_m(backAgain(document(outline, system)), outline)).toBeLessThan(1e-5);
        },
      ),
      { seed: 5, numRuns: 40 },
    );
    const keyhole: Outline = {
      shape: 'path',
      start: { x_m: 0, y_m: 0 },
      segments: [
        { kind: 'line', to: { x_m: 0.6, y_m: 0 } },
        { kind: 'line', to: { x_m: 0.6, y_m: 1 } },
        { kind: 'arc', to: { x_m: 0, y_m: 1 }, bulge: 1.3 },
        { kind: 'line', to: { x_m: 0, y_m: 0 } },
      ],
    };
    const apart = apart_m(backAgain(document(keyhole)), {
      ...keyhole,
      // The arc reaches beyond the straight side, so the drawing is moved to stand on the origin.
      start: { x_m: -leftOf(keyhole), y_m: 0 },
      segments: keyhole.segments.map((s) => ({
        ...s,
        to: { x_m: s.to.x_m - leftOf(keyhole), y_m: s.to.y_m },
      })),
    });
    expect(apart).toBeLessThan(1e-5);
  });

  it('is refused with more corners than a document holds', () => {
    const corners = Array.from({ length: 210 }, (_, i) => ({
      x_m: 1 + Math.cos((2 * Math.PI * i) / 210) * (1 + 0.01 * (i % 2)),
      y_m: 1 + Math.sin((2 * Math.PI * i) / 210) * (1 + 0.01 * (i % 2)),
    }));
    const read = outlineDocument(drawn({ shape: 'polygon', corners }), 'us');
    expect(read).toMatchObject({ ok: false, problems: [{ code: 'file.too-many-parts', read: '210' }] });
  });
});

function leftOf(outline: Outline): number {
  return Math.min(...flattenPath(outlinePath(outline), 1e-6).map((p) => p.x_m));
}

const hole = (more: object): CutOut =>
  ({ name: 'bowl', centre: { x_m: 0.4, y_m: 0.3 }, rim: 'dammed', ...more }) as CutOut;

describe('the holes of a drawing', () => {
  const outline: Outline = { shape: 'rectangle', length_m: 1.2, width_m: 0.6 };
  it('are cut-outs of a document, measured from its lower left corner', () => {
    const { cutOuts, left } = holeDocuments(
      drawn(outline, [
        hole({ shape: 'round', diameter_m: 0.035 }),
        hole({
          shape: 'rectangle',
          ...{ length_m: 0.2, width_m: 0.3, cornerRadius_m: 0.02 },
          ...{ centre: { x_m: 0.8, y_m: 0.3 }, rotation_rad: Math.PI / 2 },
        }),
      ]),
      'metric',
    );
    expect(left).toEqual([]);
    expect(cutOuts).toContainEqual(
      expect.objectContaining({ shape: 'round', length: '35 mm', fromLeft: '400 mm', fromFront: '300 mm' }),
    );
    expect(cutOuts).toContainEqual(
      expect.objectContaining({ shape: 'rectangle', length: '300 mm', width: '200 mm', fromLeft: '800 mm' }),
    );
  });

  it('at an angle keep the angle', () => {
    const turned = hole({
      shape: 'rectangle',
      length_m: 0.3,
      width_m: 0.2,
      cornerRadius_m: 0.02,
      rotation_rad: 0.3,
    });
    const { cutOuts, left } = holeDocuments(drawn(outline, [turned]), 'us');
    expect(left).toEqual([]);
    const notes = new Notes();
    const rim = cutOutPath(readCutOut(cutOuts[0]!, 'piece.cutOuts.0', notes)!);
    expect(notes.problems).toEqual([]);
    const wanted = cutOutPath(turned);
    const stray = Math.max(...flattenPath(rim, 1e-5).map((p) => distanceToPath_m(wanted, p)));
    expect(stray).toBeLessThan(3e-5);
  });

  it('of another shape keep every line and arc, within 0.01 mm of the drawing', () => {
    const dee: Outline = {
      shape: 'path',
      start: { x_m: 0, y_m: 0.25 },
      segments: [
        { kind: 'line', to: { x_m: 0, y_m: 0.1 } },
        { kind: 'arc', to: { x_m: 0.3, y_m: 0.1 }, bulge: 0.5 },
        { kind: 'line', to: { x_m: 0.3, y_m: 0.25 } },
        { kind: 'arc', to: { x_m: 0, y_m: 0.25 }, bulge: 1 },
      ],
    };
    for (const system of ['us', 'metric'] as const) {
      const made = templateDocument(drawn(dee), { x_m: 0.6, y_m: 0.3 }, 'sink', system);
      if (!made.ok) throw new Error(JSON.stringify(made.problems));
      expect(made.value).toMatchObject({ shape: 'template', length: '', width: '' });
      const notes = new Notes();
      const read = readCutOut(made.value, 'piece.cutOuts.0', notes);
      expect(notes.problems).toEqual([]);
      const rim = cutOutPath(read!);
      const path = outlinePath(dee);
      const box = bounds(path);
      const moved = movePath(path, 0, {
        x_m: 0.6 - (box.minX_m + box.maxX_m) / 2,
        y_m: 0.3 - (box.minY_m + box.maxY_m) / 2,
      });
      const stray = Math.max(...flattenPath(rim, 1e-5).map((p) => distanceToPath_m(moved, p)));
      expect(stray).toBeLessThan(1e-5);
      const grid = filmGrid(
        { outline: { shape: 'rectangle', length_m: 1.2, width_m: 0.6 }, cutOuts: [read!] },
        0.005,
      );
      const share = grid.cells * 0.005 ** 2;
      expect(Math.abs(share - (0.72 - pathArea_m2(moved)))).toBeLessThan(0.001);
    }
  });

  it('come as one from a full-size template', () => {
    const read = templateDocument(
      drawn({ shape: 'ellipse', length_m: 0.5, width_m: 0.38 }),
      { x_m: 0.6, y_m: 0.3 },
      'bowl',
      'metric',
    );
    expect(read).toMatchObject({ ok: true, value: { name: 'bowl', shape: 'oval', fromLeft: '600 mm' } });
  });
});

describe('corners of a survey', () => {
  it('are a polygon that a job document takes', () => {
    const polygon = polygonDocument(
      [
        { x_m: 0, y_m: 0 },
        { x_m: 1.2192, y_m: 0 },
        { x_m: 1.22, y_m: 0.5588 },
      ],
      'us',
    );
    expect(polygon).toMatchObject({
      corners: [{ x: '0 in' }, { x: '48 in' }, { x: '48.0315 in', y: '22 in' }],
    });
    const job = JobDocument.parse({ format: 'pourwright job 1', piece: { outline: polygon } });
    expect(job.piece.outline).toEqual(polygon);
  });
});
