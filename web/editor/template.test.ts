import { describe, expect, it, vi } from 'vitest';

// Many places are tried for each cut-out: a busy machine needs more than the usual five seconds.
vi.setConfig({ testTimeout: 60_000 });

import type { PieceDocument } from '#core/job/document.ts';
import { cutOutPath } from '#core/piece/outline.ts';
import { bounds } from '#core/piece/path.ts';
import { vanityVesselSink } from '#examples/jobs.ts';
import { readDrawing } from '#web/files/read-drawing.ts';
import { withTemplate } from './holes.ts';
import { aboutCutOut, lookAt } from './look.ts';
import { movedByKey } from './moves.ts';
import { withTurn } from './turn.ts';

const US = { system: 'us', snaps: true } as const;
const piece: PieceDocument = { ...vanityVesselSink.piece, cutOuts: [] };
const drawn = lookAt(piece, 'us')!.piece;

function drawing(svg: string) {
  const read = readDrawing('sink.svg', svg, {});
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}
/** 400 mm along, 200 mm deep, a corner cut off. */
const odd = drawing(
  '<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="200mm" viewBox="0 0 400 200"><path d="M0 0H400V120L330 200H0Z"/></svg>',
);
const boxOf = (of: PieceDocument) => {
  const box = bounds(cutOutPath(lookAt(of, 'us')!.piece.cutOuts[0]!));
  return [box.maxX_m - box.minX_m, box.maxY_m - box.minY_m];
};

describe('a sink template on the drawing', () => {
  const made = withTemplate(piece, drawn, odd, US);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));

  it('comes in at full size where nothing but its sharp corners is against it', () => {
    expect(boxOf(made.value)).toEqual([expect.closeTo(0.4, 5), expect.closeTo(0.2, 5)]);
    const codes = aboutCutOut(lookAt(made.value, 'us')!, 0).map((p) => p.code);
    expect(codes).toEqual(['corner.inside-tight']);
  });

  it('goes a step by key, and stands across after a quarter turn', () => {
    const moved = movedByKey(made.value, { kind: 'cut-out', index: 0 }, 'ArrowLeft', US, true)!;
    expect(moved.cutOuts[0]!.fromLeft).not.toBe(made.value.cutOuts[0]!.fromLeft);
    expect(boxOf(withTurn(moved, 0, 90))).toEqual([expect.closeTo(0.2, 5), expect.closeTo(0.4, 5)]);
  });

  it('has a name of its own beside another, and is refused as the fifty-first', () => {
    const two = withTemplate(made.value, lookAt(made.value, 'us')!.piece, odd, US);
    expect(two.ok && two.value.cutOuts.map(({ name }) => name)).toEqual(['sink', 'sink 2']);
    const full = { ...piece, cutOuts: Array.from({ length: 50 }, () => made.value.cutOuts[0]!) };
    expect(withTemplate(full, drawn, odd, US)).toMatchObject({
      ok: false,
      problems: [{ code: 'cut-out.count', read: '51' }],
    });
  });
});
