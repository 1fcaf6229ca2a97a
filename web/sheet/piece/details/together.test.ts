import { describe, expect, it } from 'vitest';
import { withPiece } from '#core/job/pieces.ts';
import { newShopBody } from '#core/job/shop-body.ts';
import type { Offcut, OffcutMovement } from '#core/shelf/offcuts.ts';
import { vanityVesselSink } from '#examples/jobs.ts';
import { jobCuts, shelfBeforeTogether, togetherKey } from './together.ts';

const JOB = '0190d000-0000-7000-8000-000000000001';
const SECOND = '0190d000-0000-7000-8000-0000000000b2';
const { survey: _, fit: __, ...like } = vanityVesselSink.piece;
const two = withPiece(vanityVesselSink, SECOND, { ...like, name: 'second' });

describe('the cut list of a job', () => {
  it('holds the parts of every piece, each named by its own', () => {
    const { lists, waiting } = jobCuts(two, newShopBody(), []);
    expect(waiting).toEqual([]);
    expect(lists).toHaveLength(1);
    expect(lists[0]!.pieces).toEqual(['piece', SECOND]);
    const fields = lists[0]!.parts.map(({ name }) => name).filter((name) => name.endsWith(': field'));
    expect(fields).toEqual(['piece 1: field', 'second: field']);
  });

  it('names a piece that waits for its sizes, and lists the others', () => {
    const { lists, waiting } = jobCuts(withPiece(two, SECOND.replace('b2', 'b3')), newShopBody(), []);
    expect(waiting).toEqual(['piece 3']);
    expect(lists[0]!.pieces).toEqual(['piece', SECOND]);
  });

  it('sees the shelf as it was before its own cut, which another cut does not change', () => {
    const offcut = (end: string): Offcut => ({
      ...{ id: `0190d000-0000-7000-8000-0000000000${end}`, board: 'MDF' as const },
      ...{ thickness_m: 0.019, length_m: 1, width_m: 0.3 },
    });
    const cut = (end: string, piece: string, puts: Offcut[]): OffcutMovement => ({
      ...{ id: `0190d000-0000-7000-8000-0000000000${end}`, jobId: JOB, piece, why: 'cut as planned' },
      ...{ puts, takes: [], reverses: null },
    });
    const moved = [cut('01', togetherKey('MDF', 0.019), [offcut('c1')]), cut('02', '', [offcut('c2')])];
    expect(shelfBeforeTogether(moved, JOB).map(({ id }) => id)).toEqual([offcut('c2').id]);
  });
});
