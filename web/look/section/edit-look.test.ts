import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LookDocument } from '#core/look/look-document.ts';
import { pouredShares } from '#core/mix/look-shares.ts';
import { vanityVesselSink as job } from '#examples/jobs.ts';
import {
  addMove,
  freeId,
  keepMove,
  keyed,
  keysOf,
  putLook,
  removeMove,
  replaceMove,
  shiftMove,
  typedShares,
  withShare,
} from './edit-look.ts';

const WHOLE_m3 = 0.001;
const at = job.coats.findIndex((coat) => coat.kind === 'colour coat');
const puddle = (id: string, colour: string, volume_m3: number) => ({
  kind: 'puddle' as const,
  id,
  colour,
  volume_m3,
  path: [[0.3, 0.2]] as [number, number][],
});
const look = LookDocument.parse({
  version: 1,
  moves: [puddle('a', '2', 2.8e-4), puddle('b', '3', 1.2e-4)],
});
const sharesOf = (made: typeof job) => made.coats[at]!.colours.map((colour) => colour.share);

describe('colours of a coat with a look', () => {
  it('get keys by their place, and keep those they have', () => {
    const [one, two, three] = job.coats[at]!.colours;
    expect(keysOf(keyed([one!, two!, three!]))).toEqual(['1', '2', '3']);
    expect(keysOf(keyed([two!, { ...one!, key: '1' }, three!]))).toEqual(['2', '1', '3']);
  });

  it('never share a key, whatever keys they came with', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.constantFrom('', '1', '2', '3', 'x')), fc.nat(4), (own, blanks) => {
        const one = job.coats[at]!.colours[0]!;
        const colours = [...own, ...Array<string>(blanks).fill('')].map((key) => ({ ...one, key }));
        const keys = keysOf(keyed(colours));
        expect(new Set(keys).size).toBe(keys.length);
      }),
    );
  });

  it('need a share each, unless there is only one', () => {
    const [one, two] = job.coats[at]!.colours;
    expect(typedShares([{ ...one!, share: '' }])).toMatchObject({ ok: true });
    const read = typedShares([{ ...one!, share: '' }, two!]);
    expect(read.ok ? [] : read.problems.map(({ path }) => path)).toEqual(['colours.0.share']);
  });
});

describe('a look put on its coat', () => {
  it('leaves shares as typed that its puddles come to', () => {
    expect(sharesOf(putLook(job, at, look, WHOLE_m3))).toEqual(['60 %', '28 %', '12 %']);
  });

  it('types the shares anew when a puddle grows', () => {
    const more = replaceMove(
      look,
      'b',
      LookDocument.parse({ version: 1, moves: [puddle('b', '3', 2e-4)] }).moves[0]!,
    );
    expect(sharesOf(putLook(job, at, more, WHOLE_m3))).toEqual(['52 %', '28 %', '20 %']);
  });

  it('leaves the shares alone when more is poured than the coat holds', () => {
    const far = addMove(look, { ...look.moves[0]!, volume_m3: 2e-3 } as (typeof look.moves)[number]);
    expect(sharesOf(putLook(job, at, far, WHOLE_m3))).toEqual(['60 %', '28 %', '12 %']);
  });

  it('can be taken away', () => {
    expect(putLook(putLook(job, at, look, WHOLE_m3), at, null, WHOLE_m3).coats[at]!.look).toBeNull();
  });
});

describe('a share changed', () => {
  it('is what is then poured, and the others keep their proportions', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.6, noNaN: true }), (share) => {
        const made = withShare(look, ['1', '2', '3'], '3', share, WHOLE_m3);
        if (!made.ok) throw new Error(made.problems[0]!.message);
        const poured = pouredShares(made.value, ['1', '2', '3'], WHOLE_m3);
        expect(poured.get('3')).toBeCloseTo(share, 9);
        expect(poured.get('1')! / poured.get('2')!).toBeCloseTo(0.6 / 0.28, 6);
      }),
    );
  });
});

describe('moves', () => {
  it('are added with an id of their own, kept or dropped, and removed', () => {
    const more = addMove(look, look.moves[0]!);
    expect(new Set(more.moves.map(({ id }) => id)).size).toBe(3);
    expect(keepMove(more, 'a', false).moves.map(({ kept }) => kept)).toEqual([false, true, true]);
    expect(removeMove(more, 'a').moves.map(({ id }) => id)).toEqual(['b', freeId(look, 'puddle')]);
  });

  it('change places, and stay at the ends', () => {
    expect(shiftMove(look, 'a', 1).moves.map(({ id }) => id)).toEqual(['b', 'a']);
    expect(shiftMove(look, 'a', -1)).toBe(look);
    expect(shiftMove(look, 'b', 1)).toBe(look);
  });
});
