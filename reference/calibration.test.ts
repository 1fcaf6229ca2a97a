/**
 * Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari and Gelman 2018): 60 resins drawn from the priors, a label
 * with scatter for each, its fit, and the place of the truth among the draws. An honest 90 % range holds the truth in 54 of 60;
 * bounds are the central 99.8 % of the binomial (46 to 59 of 60), so that an honest fit fails once in 500 changes. The full
 * run with 500 is benchmarks/calibration.ts (docs/calibration.md).
 */
import { describe, expect, it } from 'vitest';
import { recover } from '#core/resin/recovery.ts';

const COUNT = 60;
const all = Array.from({ length: COUNT }, (_, i) => recover(500 + i, 100));

/** Smallest and largest number of hits in `n` trials that leave at most 0.1 % on either side. */
function bounds(n: number, p: number): readonly [number, number] {
  const chance = (k: number) => {
    let ln = k * Math.log(p) + (n - k) * Math.log1p(-p);
    for (let i = 1; i <= k; i++) ln += Math.log((n - k + i) / i);
    return Math.exp(ln);
  };
  let low = 0;
  for (let sum = chance(0); sum < 0.001; sum += chance(low)) low++;
  let high = n;
  for (let sum = chance(n); sum < 0.001; sum += chance(high)) high--;
  return [low, high];
}

describe('ranges of 60 synthetic resins', () => {
  it.each(['workingTime', 'gel', 'flash'] as const)('%s: 90 %% ranges hold the truth', (key) => {
    const hits = all.filter(({ place }) => place[key] > 0.05 && place[key] < 0.95).length;
    const [low, high] = bounds(COUNT, 0.9);
    expect(hits).toBeGreaterThanOrEqual(low);
    expect(hits).toBeLessThanOrEqual(high);
  });

  it.each(['workingTime', 'gel', 'flash'] as const)(
    '%s: half of the truths lie in the middle half',
    (key) => {
      const hits = all.filter(({ place }) => place[key] > 0.25 && place[key] < 0.75).length;
      const [low, high] = bounds(COUNT, 0.5);
      expect(hits).toBeGreaterThanOrEqual(low);
      expect(hits).toBeLessThanOrEqual(high);
    },
  );

  it('writes labels of every kind', () => {
    const kinds = new Set(all.map(({ figures }) => figures.map((figure) => figure.kind).join(' + ')));
    expect(kinds.size).toBe(4);
  });
});
