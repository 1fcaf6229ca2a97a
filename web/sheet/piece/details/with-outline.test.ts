import { describe, expect, it } from 'vitest';
import { JobDocument, type OutlineDocument } from '#core/job/document.ts';
import { withOutline } from './with-outline.ts';

const corner = (x: string, y: string) => ({ x, y, radius: '', bow: '' });
const measured: OutlineDocument = {
  shape: 'polygon',
  corners: [
    corner('0 in', '0 in'),
    corner('48 in', '0 in'),
    corner('48 1/4 in', '22 in'),
    corner('0 in', '22 in'),
  ],
};
const piece = JobDocument.parse({
  format: 'pourwright job 1',
  piece: {
    outline: { shape: 'rectangle', length: '48 in', width: '22 in' },
    edges: [
      { edge: 'front', faceHeight: '2 in' },
      { edge: 'back', kind: 'wall' },
    ],
    body: { overhangs: [{ edge: 'front', overhang: '10 in' }] },
  },
}).piece;

describe('an outline from elsewhere', () => {
  it('keeps a wall at the back a wall at the back, and every edge is one of the outline', () => {
    const next = withOutline(piece, measured);
    expect(next.edges.map(({ edge, kind, faceHeight }) => [edge, kind, faceHeight])).toEqual([
      ['edge 1', 'finished', '2 in'],
      ['edge 2', 'finished', ''],
      ['edge 3', 'wall', ''],
      ['edge 4', 'finished', ''],
    ]);
    expect(next.body.overhangs).toEqual([]);
  });

  it('that is a rectangle again gives the sides their names back', () => {
    const back = withOutline(withOutline(piece, measured), piece.outline!);
    expect(back.edges.map(({ edge, kind }) => [edge, kind])).toEqual([
      ['front', 'finished'],
      ['right', 'finished'],
      ['back', 'wall'],
      ['left', 'finished'],
    ]);
  });
});
