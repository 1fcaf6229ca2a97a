import { describe, expect, it } from 'vitest';
import { DEFAULT_SPREADS } from '#core/pour/chance/spreads.ts';
import { backToDefault, isOwn, readSpread, SPREAD_ROWS, showSpread } from './spread-rows.ts';

const row = (key: string) => SPREAD_ROWS.find((each) => each.key === key)!;

describe('how evenly a shop works', () => {
  it('is read in the units of the row and kept in SI', () => {
    const read = readSpread(row('temperature'), DEFAULT_SPREADS, '3.6 °F', 'us');
    expect(read.ok && read.value.temperature_K).toBeCloseTo(2, 12);
    const spread = readSpread(row('meld spread'), DEFAULT_SPREADS, '1.5', 'metric');
    expect(spread.ok && spread.value.steps.meld.ln).toBeCloseTo(Math.log(1.5), 12);
  });

  it('says what is allowed when a figure is out of range or none', () => {
    const far = readSpread(row('meld middle'), DEFAULT_SPREADS, '11', 'us');
    expect(!far.ok && far.problems[0]).toMatchObject({
      code: 'spread.range',
      allowed: '0.1 to 10 times as planned',
    });
    const none = readSpread(row('common'), DEFAULT_SPREADS, 'much', 'us');
    expect(!none.ok && none.problems[0]!.code).toBe('spread.unreadable');
  });

  it('shows what may be typed back, in both systems, and finds its way to the default', () => {
    for (const system of ['us', 'metric'] as const)
      for (const each of SPREAD_ROWS) {
        const typed = showSpread(each, DEFAULT_SPREADS, system);
        const read = readSpread(each, DEFAULT_SPREADS, typed, system);
        expect(read.ok && showSpread(each, read.value, system)).toBe(typed);
        const moved = each.put(DEFAULT_SPREADS, each.max(system), system);
        expect(isOwn(each, moved, system)).toBe(true);
        expect(isOwn(each, backToDefault(each, moved, system), system)).toBe(false);
      }
  });

  it('rests on no runs once it was typed', () => {
    const learned = {
      ...DEFAULT_SPREADS,
      steps: { ...DEFAULT_SPREADS.steps, mix: { factor: 1.3, ln: 0.2, runs: 6 } },
    };
    const read = readSpread(row('mix middle'), learned, '1.1', 'us');
    expect(read.ok && read.value.steps.mix).toEqual({ factor: 1.1, ln: 0.2, runs: 0 });
  });
});
