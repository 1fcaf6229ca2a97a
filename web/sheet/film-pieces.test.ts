import { describe, expect, it } from 'vitest';
import { computeJob } from '#core/job/compute-job.ts';
import { withPiece } from '#core/job/pieces.ts';
import { vanityVesselSink } from '#examples/jobs.ts';
import { filmPieces } from './film-pieces.ts';

const [coat] = vanityVesselSink.coats;
const one = { ...vanityVesselSink, coats: [coat!] };
const outline = { shape: 'rectangle', length: '21 in', width: '21 1/2 in', cornerRadius: '' } as const;
const half = { ...one.piece, name: 'half', cutOuts: [], edges: [], outline };

describe('the pieces whose film can be looked at', () => {
  it('are the one there is, with all that is in the cups', () => {
    expect(filmPieces(computeJob(one), coat!.id)).toMatchObject([{ id: 'piece', share: 1 }]);
  });

  it('share what is in the cups by their tops', () => {
    const found = filmPieces(computeJob(withPiece(one, 'half', half)), coat!.id);
    expect(found.map(({ name }) => name)).toEqual(['piece 1', 'half']);
    expect(found[0]!.share + found[1]!.share).toBeCloseTo(1, 12);
    expect(found[1]!.share).toBeCloseTo(1 / 3, 2);
  });

  it('are none where the coat cannot be planned', () => {
    expect(filmPieces(computeJob(withPiece(one, 'open')), coat!.id)).toEqual([]);
    expect(filmPieces(null, coat!.id)).toEqual([]);
  });
});
