import { describe, expect, it, vi } from 'vitest';

// Many places are tried for each cut-out: a busy machine needs more than the usual five seconds.
vi.setConfig({ testTimeout: 60_000 });

import type { CutOutDocument, PieceDocument } from '#core/job/document.ts';
import { ellCounter, vanityVesselSink } from '#examples/jobs.ts';
import { withCutOut, withoutCutOut, withTapHole } from './holes.ts';
import { aboutCutOut, lookAt } from './look.ts';
import { placeOf } from './moves.ts';

const US = { system: 'us', snaps: true } as const;
const drawn = (piece: PieceDocument) => lookAt(piece, 'us')!.piece;
const bare = (piece: PieceDocument): PieceDocument => ({ ...piece, cutOuts: [] });
const against = (piece: PieceDocument) =>
  aboutCutOut(lookAt(piece, 'us')!, piece.cutOuts.length - 1).map((p) => p.code);
const lastOf = (piece: PieceDocument): CutOutDocument => piece.cutOuts.at(-1)!;

describe('a cut-out put in by a button', () => {
  it('stands where nothing is against it, on a top and in an L', () => {
    for (const piece of [bare(vanityVesselSink.piece), bare(ellCounter.piece)])
      for (const shape of ['rectangle', 'oval'] as const) {
        const added = withCutOut(piece, drawn(piece), shape, US);
        expect(against(added)).toEqual([]);
        expect(withoutCutOut(added, 0).cutOuts).toEqual(piece.cutOuts);
      }
  });

  it('keeps clear of the one before it, and has a name of its own', () => {
    const one = withCutOut(bare(ellCounter.piece), drawn(bare(ellCounter.piece)), 'oval', US);
    const two = withCutOut(one, drawn(one), 'oval', US);
    expect(against(two)).toEqual([]);
    expect(two.cutOuts.map(({ name }) => name)).toEqual(['bowl', 'bowl 2']);
  });

  it('is smaller on a small piece', () => {
    const small: PieceDocument = {
      ...bare(vanityVesselSink.piece),
      outline: { shape: 'rectangle', length: '20 in', width: '10 in', cornerRadius: '' },
    };
    expect(lastOf(withCutOut(small, drawn(small), 'rectangle', US))).toMatchObject({
      length: '12 in',
      width: '6 in',
    });
  });
});

describe('tap holes', () => {
  it('stand behind the bowl, the next ones 4 in beside', () => {
    let piece = withCutOut(bare(vanityVesselSink.piece), drawn(bare(vanityVesselSink.piece)), 'oval', US);
    for (let i = 0; i < 3; i += 1) piece = withTapHole(piece, drawn(piece), US);
    const places = [1, 2, 3].map((index) => placeOf(piece, { kind: 'cut-out', index })!);
    const x = places.map(({ x_m }) => x_m);
    expect(x[1]! - x[0]!).toBeCloseTo(0.1016, 9);
    expect(x[2]! - x[0]!).toBeCloseTo(-0.1016, 9);
    expect(new Set(places.map(({ y_m }) => y_m)).size).toBe(1);
    expect(piece.cutOuts.slice(1).map(({ name }) => name)).toEqual(['tap hole', 'tap hole 2', 'tap hole 3']);
  });
});
