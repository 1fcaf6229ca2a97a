import { describe, expect, it } from 'vitest';
import { DEFAULT_SPREADS } from '#core/pour/chance/spreads.ts';
import { chanceSays, costWords, inHundred, restsOn, slackSays, spreadSays } from './chance-words.ts';

describe('a chance in words', () => {
  it('is so many in a hundred with twice its error, or an end that so few pours cannot tell further', () => {
    expect(chanceSays({ chance: 0.84, standardError: 0.025 })).toBe('about 84 in 100 (± 5)');
    expect(chanceSays({ chance: 1, standardError: 0 })).toBe('more than 99 in 100');
    expect(inHundred(0.001)).toBe('fewer than 1 in 100');
    expect(chanceSays({ chance: 0.5, standardError: 0.0001 })).toBe('about 50 in 100 (± 1)');
  });

  it('tells the slack of the middle pour and of one in twenty', () => {
    expect(slackSays({ low_s: -300, mid_s: 60, high_s: 240 })).toBe(
      'The middle pour has 60 s spare. One in twenty does worse than 5 min short, one in twenty better than 4 min spare.',
    );
  });

  it('names what a way costs, and leaves out what is next to nothing', () => {
    expect(costWords({ resin_kg: 0.075, hands_s: -150, people: 1, recoat_s: 10_004 })).toEqual([
      'one person more',
      '75 g more resin',
      '2 min 30 s less work',
      '2 h 47 min later recoat',
    ]);
    expect(costWords({ resin_kg: 0.0001, hands_s: 1, people: 0, recoat_s: null })).toEqual([
      'nothing to speak of',
    ]);
  });

  it('says what a spread is and what it rests on', () => {
    expect(spreadSays({ factor: 1, ln: 0.25, runs: 0 })).toBe('0.78 to 1.28 times as planned');
    expect(restsOn('mix', DEFAULT_SPREADS.steps.mix)).toBe('shop default: common practice, no source');
    expect(restsOn('mix', { factor: 1.2, ln: 0.2, runs: 4 })).toBe('4 runs of this shop');
    expect(restsOn('mix', { factor: 1.2, ln: 0.2, runs: 0 })).toBe('typed in by the shop');
  });
});
