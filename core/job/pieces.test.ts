import { describe, expect, it } from 'vitest';
import { shopCards } from './compute-job.ts';
import type { JobDocument } from './document.ts';
import { coatedIds, MOST_PIECES, piecesOf, withCopy, withoutPiece, withPiece } from './pieces.ts';
import { checkJob } from './read-job.ts';
import { changed, job, withCoat } from './sample.check.ts';

const two = changed(
  withPiece(job, 'shelf-1', { ...structuredClone(job.piece), name: 'shelf' }),
  'piece.name',
  'counter',
);
const poured = (on: readonly string[], of: JobDocument = two): JobDocument => ({
  ...of,
  coats: of.coats.map((coat) => ({ ...coat, pieces: [...on] })),
});

describe('the pieces of a job', () => {
  it('are one in a document from before there could be more', () => {
    const { otherPieces: _none, ...rest } = job;
    const { name: _unnamed, ...piece } = rest.piece;
    const old = { ...rest, piece } as unknown as JobDocument;
    expect(piecesOf(old).map(({ id, name, path }) => [id, name, path])).toEqual([
      ['piece', 'piece 1', 'piece'],
    ]);
    const { pieces: _all, ...coat } = job.coats[0]!;
    expect(coatedIds(coat as (typeof job.coats)[number], piecesOf(old))).toEqual(['piece']);
  });

  it('are called what is typed, and never two the same', () => {
    const three = withPiece(two, 'x', { name: ' shelf' });
    expect(piecesOf(withPiece(three, 'y')).map(({ name }) => name)).toEqual([
      'counter',
      'shelf',
      'shelf (2)',
      'piece 4',
    ]);
  });

  it('end at thirteen', () => {
    let full = job;
    for (let i = 1; i < MOST_PIECES; i++) full = withPiece(full, `p${i}`);
    expect(checkJob(full, shopCards({})).ok).toBe(true);
    expect(() => withPiece(full, 'one more')).toThrow('13');
  });
});

describe('a copy', () => {
  it('is the piece without what was measured at its walls, and coated like it', () => {
    const copied = withCopy(poured(['shelf-1']), 'shelf-1', 'new');
    const copy = copied.otherPieces[1]!;
    expect(copy).toEqual({ ...two.otherPieces[0], id: 'new', name: 'shelf copy', survey: null, fit: null });
    expect(copied.coats[0]!.pieces).toEqual(['shelf-1', 'new']);
    expect(withCopy(two, 'shelf-1', 'new').coats[0]!.pieces).toEqual([]);
  });
});

describe('a piece taken away', () => {
  it('leaves the coats of the others', () => {
    const left = withoutPiece(poured(['piece', 'shelf-1']), 'shelf-1');
    expect(left.otherPieces).toEqual([]);
    expect(left.coats[0]!.pieces).toEqual(['piece']);
  });

  it('makes the next one the first, for its coats too', () => {
    const left = withoutPiece(poured(['shelf-1']), 'piece');
    expect(left.piece.name).toBe('shelf');
    expect('id' in left.piece).toBe(false);
    expect(left.coats[0]!.pieces).toEqual(['piece']);
    expect(checkJob(left, shopCards({})).ok).toBe(true);
  });

  it('does not have its coat poured on all others: the coat says that its piece is gone', () => {
    for (const id of ['piece', 'shelf-1']) {
      const left = withoutPiece(poured([id]), id);
      const checked = checkJob(left, shopCards({}));
      expect(checked).toMatchObject({
        ok: false,
        problems: left.coats.map((_, i) => ({
          path: `coats.${i}.pieces`,
          code: 'coat.piece',
          allowed: 'piece',
        })),
      });
    }
  });

  it('is not the last one', () => {
    expect(withoutPiece(job, 'piece')).toBe(job);
    expect(withoutPiece(two, 'no such')).toBe(two);
  });
});

describe('what a job file may say of its pieces', () => {
  it('is an id for each', () => {
    const twice = withPiece(two, 'shelf-1');
    const first = withPiece(two, 'piece');
    for (const wrong of [twice, first])
      expect(checkJob(wrong, shopCards({}))).toMatchObject({
        ok: false,
        problems: [{ path: 'otherPieces.1.id', code: 'piece.same-id' }],
      });
  });

  it('is read field by field at the place of the piece', () => {
    const wrong = changed(
      changed(two, 'otherPieces.0.bodyThickness', 'thick'),
      'otherPieces.0.edges.1.edge',
      'bow',
    );
    const checked = checkJob(wrong, shopCards({}));
    expect(checked.ok ? [] : checked.problems.map(({ path }) => path)).toEqual([
      'otherPieces.0.bodyThickness',
      'otherPieces.0.edges.1.edge',
    ]);
  });

  it('is no coat on a piece that is not there', () => {
    const checked = checkJob(withCoat({ pieces: ['shelf-1'] }), shopCards({}));
    expect(checked).toMatchObject({
      ok: false,
      problems: [{ path: 'coats.0.pieces', code: 'coat.piece', read: 'shelf-1', allowed: 'piece' }],
    });
  });
});
