import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ASK_FROM_s, type ClockSample, correctClock, startClock, tickClock } from './run-clock.ts';

const at = (wall_s: number, mono_s: number, rest: Partial<ClockSample> = {}): ClockSample => ({
  wall_ms: 1e12 + wall_s * 1000,
  mono_ms: mono_s * 1000,
  page: 'a',
  awake: true,
  ...rest,
});
const from = startClock(at(0, 0));

describe('the clock of a run', () => {
  it('never runs backward, whatever the clocks of the device do', () => {
    const sample = fc.record({
      wall: fc.integer({ min: -100_000, max: 100_000 }),
      mono: fc.integer({ min: 0, max: 100_000 }),
      page: fc.constantFrom('a', 'b', 'c'),
      awake: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(sample, { maxLength: 40 }), (samples) => {
        let state = from;
        for (const { wall, mono, page, awake } of samples) {
          const next = tickClock(state, at(wall, mono, { page, awake })).state;
          expect(next.elapsed_s).toBeGreaterThanOrEqual(state.elapsed_s);
          state = next;
        }
      }),
    );
  });

  it('goes by the monotonic clock when the wall clock is set, either way', () => {
    for (const set_s of [-7200, -60, 60, 3600]) {
      const { state, doubt } = tickClock(from, at(1 + set_s, 1));
      expect(state.elapsed_s).toBe(1);
      expect(doubt).toBeNull();
      // and goes on as if nothing had been
      expect(tickClock(state, at(2 + set_s, 2)).state.elapsed_s).toBe(2);
    }
  });

  it('counts the sleep that the monotonic clock slept through, and asks about a long one', () => {
    const nap = tickClock(from, at(60, 0.5, { awake: false }));
    expect(nap.state.elapsed_s).toBe(60);
    expect(nap.doubt).toBeNull();
    const sleep = tickClock(from, at(3600, 0.5, { awake: false }));
    expect(sleep.state.elapsed_s).toBe(3600);
    expect(sleep.doubt).toEqual({ kind: 'slept or set forward', by_s: 3599.5 });
    expect(correctClock(sleep.state, -sleep.doubt!.by_s).elapsed_s).toBeCloseTo(0.5, 9);
  });

  it('goes on over a reload, a crash and an empty battery by the wall clock', () => {
    expect(tickClock(from, at(8, 0.2, { page: 'b' })).state.elapsed_s).toBe(8);
    const long = tickClock(from, at(ASK_FROM_s + 100, 3, { page: 'b' }));
    expect(long.state.elapsed_s).toBe(ASK_FROM_s + 100);
    expect(long.doubt?.kind).toBe('slept or set forward');
  });

  it('counts nothing and asks when the wall clock went back over a reload', () => {
    const { state, doubt } = tickClock(startClock(at(500, 500), 500), at(100, 1, { page: 'b' }));
    expect(state.elapsed_s).toBe(500);
    expect(doubt).toEqual({ kind: 'set back while away', by_s: 400 });
  });

  it('adds up: many ticks are as one', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 5000 }), { maxLength: 50 }), (steps_ms) => {
        let state = from;
        let sum = 0;
        for (const step of steps_ms) {
          sum += step / 1000;
          state = tickClock(state, at(sum, sum)).state;
        }
        expect(state.elapsed_s).toBeCloseTo(sum, 6);
      }),
    );
  });
});
