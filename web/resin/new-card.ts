/** A new card: its address from its name. Pure. */
import { GENERIC_CARDS } from '#core/resin/cards.ts';

/** "Shop slow 40" becomes "shop-slow-40"; the second of a name gets "-2". Never that of a generic card. */
export function cardIdOf(name: string, count = 1): string {
  const words = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 50)
    .replace(/-+$/, '');
  const plain = words === '' ? 'resin' : words;
  const id = count === 1 ? plain : `${plain}-${count}`;
  return GENERIC_CARDS.some((card) => card.id === id) ? `shop-${id}` : id;
}
