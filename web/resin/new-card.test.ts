import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ResinCardDocument } from '#core/resin/card-document.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import { cardIdOf } from './new-card.ts';

describe('the address of a new card', () => {
  it('is its name in small letters, figures and hyphens, counted from the second on', () => {
    expect(cardIdOf('Shop slow 40')).toBe('shop-slow-40');
    expect(cardIdOf('Zäh & langsam!', 2)).toBe('zah-langsam-2');
    expect(cardIdOf('面')).toBe('resin');
    expect(cardIdOf('Quick 20')).toBe('shop-quick-20');
  });

  it('is one that the server takes, whatever the name', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 100 }),
        fc.integer({ min: 1, max: 99 }),
        (name, count) => {
          const id = cardIdOf(name, count);
          expect(ResinCardDocument.shape.id.safeParse(id).success).toBe(true);
          expect(GENERIC_CARDS.map((card) => card.id)).not.toContain(id);
        },
      ),
    );
  });
});
