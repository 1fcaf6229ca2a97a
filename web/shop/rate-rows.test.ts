import { describe, expect, it } from 'vitest';
import { SHOP_DEFAULTS } from '#core/pour/shop-rates.ts';
import { SaveShopBody } from '#server/schemas.ts';
import { RATE_ROWS, readRate, showRate } from './rate-rows.ts';

describe('the working speeds of the shop', () => {
  it('are all on the form, each once', () => {
    expect(RATE_ROWS.map((row) => row.key).sort()).toEqual(Object.keys(SHOP_DEFAULTS).sort());
  });

  it.each(['us', 'metric'] as const)(
    'show every default so that it reads back within 0.5 %% (%s)',
    (system) => {
      for (const row of RATE_ROWS) {
        const read = readRate(row, system, showRate(row, system, SHOP_DEFAULTS[row.key]));
        if (!read.ok) throw new Error(`${row.key}: ${read.problems[0]?.message}`);
        expect(Math.abs(read.value - SHOP_DEFAULTS[row.key])).toBeLessThanOrEqual(
          0.005 * SHOP_DEFAULTS[row.key],
        );
      }
    },
  );

  it('are spread in square feet a minute', () => {
    const row = RATE_ROWS.find((each) => each.key === 'spread_m2_per_s')!;
    // 0.01 m2/s x 60 s / 0.09290304 m2 = 6.458 sq ft/min
    expect(showRate(row, 'us', 0.01)).toBe('6.46');
    const read = readRate(row, 'us', '6.458 sq ft/min');
    expect(read.ok && read.value).toBeCloseTo(0.01, 5);
  });

  it('refuse what makes no sense, with what is allowed in the unit on screen', () => {
    const row = RATE_ROWS.find((each) => each.key === 'mix_s')!;
    expect(readRate(row, 'us', 'soon')).toMatchObject({
      ok: false,
      problems: [{ path: 'rates.mix_s', read: 'soon', allowed: '1 to 3600 s' }],
    });
    expect(readRate(row, 'us', '0').ok).toBe(false);
    expect(readRate(row, 'us', '4000').ok).toBe(false);
  });

  it('have the bounds of the store', () => {
    const taken = (rates: object) =>
      SaveShopBody.safeParse({
        baseVersion: 0,
        saveId: '0190d000-0000-7000-8000-000000000001',
        shop: { name: '', system: 'us', currency: 'USD', rates: { ...SHOP_DEFAULTS, ...rates } },
      }).success;
    for (const row of RATE_ROWS) {
      expect(taken({ [row.key]: row.min }), row.key).toBe(true);
      expect(taken({ [row.key]: row.max }), row.key).toBe(true);
      expect(taken({ [row.key]: row.max * 1.01 }), row.key).toBe(false);
    }
  });
});
