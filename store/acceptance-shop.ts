/** The part of the acceptance suite about the shop. */
import { describe, expect, it } from 'vitest';
import { newShop } from './shop.ts';
import type { Store } from './store.ts';

const AT = '2026-05-14T09:00:00.000Z';
const LATER = '2026-05-14T10:00:00.000Z';
const uuid = () => crypto.randomUUID();

export function shopAcceptance(store: () => Store): void {
  describe('the shop', () => {
    const shop = (name: string) => ({ ...newShop(), name });

    it('is nothing until it is saved, then follows the version rule', async () => {
      expect(await store().getShop()).toBeNull();
      const wrong = { baseVersion: 3, shop: shop('too early'), saveId: uuid(), at: AT };
      expect(await store().saveShop(wrong)).toEqual({
        outcome: 'conflict',
        current: { version: 0, document: newShop() },
        base: null,
      });
      const first = { baseVersion: 0, shop: shop('Bench One'), saveId: uuid(), at: AT };
      expect(await store().saveShop(first)).toEqual({ outcome: 'saved', version: 1, savedAt: AT });
      expect(await store().getShop()).toEqual({ version: 1, savedAt: AT, shop: shop('Bench One') });
      const second = {
        ...shop('Bench Two'),
        system: 'metric' as const,
        currency: 'EUR',
        timeZone: 'Europe/Berlin',
        spreads: { ...newShop().spreads, temperature_K: 1.5 },
        rates: { ...newShop().rates, mix_s: 200 },
        body: { ...newShop().body, kerf_m: 0.0022, sheets: [] },
      };
      expect(
        await store().saveShop({ baseVersion: 1, shop: second, saveId: uuid(), at: LATER }),
      ).toMatchObject({ outcome: 'saved', version: 2 });
      expect(await store().saveShop({ ...first, shop: shop('changed'), at: LATER })).toEqual({
        outcome: 'saved',
        version: 1,
        savedAt: AT,
      });
      expect(
        await store().saveShop({ baseVersion: 1, shop: shop('late'), saveId: uuid(), at: LATER }),
      ).toEqual({
        outcome: 'conflict',
        current: { version: 2, document: second },
        base: shop('Bench One'),
      });
      expect(await store().getShop()).toEqual({ version: 2, savedAt: LATER, shop: second });
    });

    it('saved by many on the same base at the same moment is stored once', async () => {
      const base = (await store().getShop())?.version ?? 0;
      const outcomes = await Promise.all(
        Array.from({ length: 8 }, (_, i) =>
          store().saveShop({ baseVersion: base, shop: shop(`client ${i}`), saveId: uuid(), at: AT }),
        ),
      );
      const winners = outcomes.flatMap((outcome, i) => (outcome.outcome === 'saved' ? [i] : []));
      expect(winners).toHaveLength(1);
      expect(await store().getShop()).toMatchObject({
        version: base + 1,
        shop: { name: `client ${winners[0]}` },
      });
    });
  });
}
