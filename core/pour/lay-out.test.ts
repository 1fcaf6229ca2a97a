import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LayOut, type LayOutRequest, layOut, withEdgesLater } from './lay-out.ts';

const seconds = (max: number) => fc.integer({ min: 0, max });
const anyRequest: fc.Arbitrary<LayOutRequest> = fc.record({
  cups: fc.array(
    fc.record({ mix_s: fc.integer({ min: 30, max: 400 }), empty_s: seconds(120), spread_s: seconds(300) }),
    { minLength: 1, maxLength: 9 },
  ),
  crew: fc.constantFrom(1, 2, 3),
  meld_s: fc.oneof(fc.constant(0), seconds(900)),
  wrap_s: fc.oneof(fc.constant(0), seconds(900)),
});
const stands = (laid: LayOut) => laid.cups.map((cup) => cup.emptied_s - cup.mixed_s);

describe('who does what when', () => {
  it('never asks two things of one person at once', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const { steps } = layOut(request);
        for (const person of [1, 2, 3]) {
          const own = steps.filter((step) => step.person === person).sort((a, b) => a.start_s - b.start_s);
          for (let i = 1; i < own.length; i++)
            expect(own[i]!.start_s).toBeGreaterThanOrEqual(own[i - 1]!.end_s - 1e-9);
          if (person > request.crew) expect(own).toEqual([]);
        }
      }),
    );
  });

  it('pours every cup once, in order, after it is mixed, and starts the clock with the first', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const { steps, cups, down_s } = layOut(request);
        expect(cups[0]!.mixed_s).toBe(0);
        cups.forEach((cup, i) => {
          const { mix_s, empty_s, spread_s } = request.cups[i]!;
          expect(cup.pour_s).toBeGreaterThanOrEqual(cup.mixed_s + mix_s - 1e-9);
          expect(cup.emptied_s).toBeCloseTo(cup.pour_s + empty_s, 9);
          expect(cup.spread_s).toBeCloseTo(cup.emptied_s + spread_s, 9);
          if (i > 0) expect(cup.pour_s).toBeGreaterThanOrEqual(cups[i - 1]!.spread_s - 1e-9);
          expect(steps.filter((step) => step.kind === 'pour' && step.cup === i + 1)).toHaveLength(1);
        });
        expect(down_s).toBe(cups.at(-1)!.spread_s);
        const late = steps.filter((step) => step.kind === 'meld' || step.kind === 'wrap edges');
        for (const step of late) expect(step.start_s).toBeGreaterThanOrEqual(down_s);
      }),
    );
  });

  it('lets no cup stand longer than mixing and pouring it takes: nothing is mixed before it is needed', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const laid = layOut(request);
        stands(laid).forEach((stood, i) => {
          // a second cup mixed from the start while the first is mixed too may wait for the first one's pour
          const early = request.crew > 1 && laid.cups[i]!.mixed_s === 0 && i > 0;
          const least = request.cups[i]!.mix_s + request.cups[i]!.empty_s;
          if (!early) expect(stood).toBeCloseTo(least, 9);
        });
      }),
    );
  });

  it('with more crew is never later with any cup, with the last of them, or with the edges', () => {
    fc.assert(
      fc.property(anyRequest, (request) => {
        const by = [1, 2, 3].map((crew) => layOut({ ...request, crew }));
        for (let i = 1; i < 3; i++) {
          by[i]!.cups.forEach((cup, n) => {
            expect(cup.spread_s).toBeLessThanOrEqual(by[i - 1]!.cups[n]!.spread_s + 1e-9);
          });
          expect(by[i]!.done_s).toBeLessThanOrEqual(by[i - 1]!.done_s + 1e-9);
        }
      }),
    );
  });

  it('moves the edges only, when they are left to stand', () => {
    fc.assert(
      fc.property(anyRequest, seconds(1800), (request, wait_s) => {
        const soon = layOut(request);
        const late = withEdgesLater(soon, wait_s);
        const others = (laid: LayOut) => laid.steps.filter((step) => step.kind !== 'wrap edges');
        expect(others(late)).toEqual(others(soon));
        expect(late.down_s).toBe(soon.down_s);
        if (request.wrap_s === 0) expect(late).toEqual(soon);
        else expect(late.wrapped_s - soon.wrapped_s).toBeCloseTo(wait_s, 9);
        expect(late.done_s).toBeCloseTo(Math.max(...late.steps.map((step) => step.end_s), late.down_s), 9);
      }),
    );
    expect(() =>
      withEdgesLater(
        layOut({ cups: [{ mix_s: 1, empty_s: 1, spread_s: 1 }], crew: 1, meld_s: 0, wrap_s: 1 }),
        -1,
      ),
    ).toThrow('wait_s');
  });

  it('alone, mixes and pours in turn: 195 + 20 + 30 s twice is 490 s', () => {
    const cups = [0, 1].map(() => ({ mix_s: 195, empty_s: 20, spread_s: 30 }));
    expect(layOut({ cups, crew: 1, meld_s: 160, wrap_s: 70 })).toMatchObject({
      down_s: 490,
      wrapped_s: 490 + 160 + 35,
      done_s: 720,
    });
  });

  it('with a second person has the next cup ready when the pourer is free', () => {
    const cups = [0, 1].map(() => ({ mix_s: 100, empty_s: 60, spread_s: 90 }));
    const laid = layOut({ cups, crew: 2, meld_s: 0, wrap_s: 80 });
    expect(laid.cups[1]).toEqual({ mixed_s: 150, pour_s: 250, emptied_s: 310, spread_s: 400 });
    expect(laid.done_s).toBe(440);
  });

  it('refuses no cups, a crew of four and negative times', () => {
    const cups = [{ mix_s: 1, empty_s: 1, spread_s: 1 }];
    expect(() => layOut({ cups: [], crew: 1, meld_s: 0, wrap_s: 0 })).toThrow('cups');
    expect(() => layOut({ cups, crew: 4, meld_s: 0, wrap_s: 0 })).toThrow('crew');
    expect(() => layOut({ cups: [{ ...cups[0]!, mix_s: -1 }], crew: 1, meld_s: 0, wrap_s: 0 })).toThrow(
      'mix takes -1',
    );
  });
});
