import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { vanityVesselSink } from '#examples/jobs.ts';
import { turnOf_degrees, withTurn } from './turn.ts';

const { piece } = vanityVesselSink;
const turn = (times: number, by: number, of = piece) => {
  let next = of;
  for (let i = 0; i < times; i += 1) next = withTurn(next, 0, by);
  return next.cutOuts[0]!;
};

describe('a cut-out turned by a button', () => {
  it('goes a quarter at a time and is as it was after four', () => {
    expect([1, 2, 3, 4].map((n) => turn(n, 90).turned)).toEqual([
      '90 degrees',
      '180 degrees',
      '-90 degrees',
      '',
    ]);
  });

  it('keeps an angle that was typed and adds to it', () => {
    const typed = { ...piece, cutOuts: [{ ...piece.cutOuts[0]!, turned: '22.5°' }] };
    expect(turn(1, 90, typed).turned).toBe('112.5 degrees');
  });

  it('does nothing to an angle that cannot be read, or to what is not there', () => {
    const odd = { ...piece, cutOuts: [{ ...piece.cutOuts[0]!, turned: 'soon' }] };
    expect(withTurn(odd, 0, 90)).toBe(odd);
    expect(turnOf_degrees(odd.cutOuts[0]!)).toBeNull();
    expect(withTurn(piece, 99, 90)).toBe(piece);
  });

  it('comes back from any turn', () => {
    fc.assert(
      fc.property(fc.integer({ min: -720, max: 720 }), (by) => {
        const there = withTurn(piece, 0, by);
        expect(turnOf_degrees(withTurn(there, 0, -by).cutOuts[0]!)).toBe(0);
        expect(Math.abs(turnOf_degrees(there.cutOuts[0]!)!)).toBeLessThanOrEqual(180);
      }),
    );
  });
});
