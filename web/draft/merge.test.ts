import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyJob, JobDocument } from '#core/job/document.ts';
import { withoutPiece, withPiece } from '#core/job/pieces.ts';
import { vanityVesselSink } from '#examples/jobs.ts';
import { setAt } from './at-path.ts';
import { differences, merge } from './merge.ts';

const base = JobDocument.parse(vanityVesselSink);
const [first, second] = base.coats;

describe('three versions of a job side by side', () => {
  it('finds nothing where both sides are the same', () => {
    const both = setAt(base, ['title'], 'Other');
    expect(differences(base, both, both)).toEqual([]);
    expect(merge(base, both, both)).toEqual(both);
  });

  it('keeps what only one side changed, and says who', () => {
    const mine = setAt(base, ['coats', 0, 'film'], '1.4 mm');
    const theirs = setAt(base, ['customer', 'phone'], '555 0199');
    expect(differences(base, mine, theirs).map(({ key, changedBy }) => [key, changedBy])).toEqual([
      ['customer.phone', 'them'],
      [`coats.#${first!.id}.film`, 'me'],
    ]);
    const merged = merge(base, mine, theirs);
    expect(merged.coats[0]!.film).toBe('1.4 mm');
    expect(merged.customer.phone).toBe('555 0199');
  });

  it('asks where both changed the same field, and follows the choice', () => {
    const mine = setAt(base, ['title'], 'Mine');
    const theirs = setAt(base, ['title'], 'Theirs');
    expect(differences(base, mine, theirs)).toMatchObject([
      { key: 'title', changedBy: 'both', base: base.title, mine: 'Mine', theirs: 'Theirs' },
    ]);
    expect(merge(base, mine, theirs, { title: 'theirs' }).title).toBe('Theirs');
    expect(merge(base, mine, theirs, { title: 'mine' }).title).toBe('Mine');
  });

  it('keeps a coat added on each side', () => {
    const added = (id: string) => ({ ...first!, id, name: id });
    const mine = { ...base, coats: [...base.coats, added('a')] };
    const theirs = { ...base, coats: [added('b'), ...base.coats] };
    expect(merge(base, mine, theirs).coats.map((coat) => coat.id)).toEqual(['b', first!.id, second!.id, 'a']);
  });

  it('asks when one side removed the coat the other changed', () => {
    const mine = setAt(base, ['coats', 1, 'film'], '2 mm');
    const theirs = { ...base, coats: [first!] };
    const [found] = differences(base, mine, theirs);
    expect(found).toMatchObject({ changedBy: 'both', what: 'item', theirs: undefined });
    expect(merge(base, mine, theirs, { [found!.key]: 'theirs' }).coats).toHaveLength(1);
    expect(merge(base, mine, theirs, { [found!.key]: 'mine' }).coats[1]!.film).toBe('2 mm');
  });

  it('takes the order of the side that moved the coats', () => {
    const theirs = { ...base, coats: [second!, first!] };
    const mine = setAt(base, ['title'], 'Mine');
    const merged = merge(base, mine, theirs);
    expect(merged.coats.map((coat) => coat.id)).toEqual([second!.id, first!.id]);
    expect(merged.title).toBe('Mine');
  });

  it('treats another outline as one thing', () => {
    const mine = setAt(base, ['piece', 'outline'], { shape: 'round', diameter: '40 in' });
    const theirs = setAt(base, ['piece', 'outline', 'length'], '50 in');
    expect(differences(base, mine, theirs).map((d) => d.key)).toEqual(['piece.outline']);
  });

  it('follows a further piece by its id, whoever took one away or changed its place', () => {
    const two = withPiece(withPiece(base, 'shelf', { name: 'shelf' }), 'bench', { name: 'bench' });
    const mine = setAt(two, ['otherPieces', 1, 'bodyThickness'], '1 in');
    const theirs = withoutPiece(setAt(two, ['otherPieces', 1, 'board'], 'plywood'), 'shelf');
    expect(differences(two, mine, theirs).map(({ key, changedBy }) => [key, changedBy])).toEqual([
      ['otherPieces.#shelf', 'them'],
      ['otherPieces.#bench.bodyThickness', 'me'],
      ['otherPieces.#bench.board', 'them'],
    ]);
    expect(merge(two, mine, theirs).otherPieces).toEqual([
      { ...two.otherPieces[1]!, bodyThickness: '1 in', board: 'plywood' },
    ]);
  });

  it('never loses or mixes up a title, price or note, whoever changed what', () => {
    const fields = [['title'], ['agreed', 'price'], ['agreed', 'notes'], ['customer', 'name']] as const;
    const change = fc.array(fc.tuple(fc.constantFrom(...fields), fc.string({ maxLength: 8 })), {
      maxLength: 4,
    });
    fc.assert(
      fc.property(change, change, (a, b) => {
        const start = emptyJob('start');
        const apply = (list: typeof a) => list.reduce((d, [path, text]) => setAt(d, path, text), start);
        const mine = apply(a);
        const theirs = apply(b);
        const all = differences(start, mine, theirs);
        const pick = (side: 'mine' | 'theirs') =>
          merge(start, mine, theirs, Object.fromEntries(all.map((d) => [d.key, side])));
        expect(pick('mine')).toEqual(mine);
        expect(pick('theirs')).toEqual(theirs);
      }),
    );
  });
});
