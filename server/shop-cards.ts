/**
 * The resin cards of the shop as forecasts use them. A fit takes 0.1 to 0.25 s, so each document is fitted once and the result
 * kept by the document's hash: what is stored is the document alone, and a newer model fits it anew by itself.
 */
import { createHash } from 'node:crypto';
import { sayProblem } from '#core/quantity/problem.ts';
import type { ResinCardDocument } from '#core/resin/card-document.ts';
import { fitCard } from '#core/resin/fit-card.ts';
import type { ResinCard } from '#core/resin/model.ts';
import { readCard } from '#core/resin/read-card.ts';
import type { Store } from '#store/store.ts';

export interface ShopCard {
  readonly archived: boolean;
  readonly card: ResinCard;
}

export interface ShopCards {
  /** Every card that can be fitted, archived ones too, by name. */
  all(): Promise<readonly ShopCard[]>;
  /** @throws RangeError when the document cannot be read or no resin does what it says. */
  fitted(document: ResinCardDocument): ResinCard;
}

/** Fits kept; about 15 kB each. */
const MOST_KEPT = 500;

/** @param log is told of a stored card that no longer fits; it is left out, and a job that names it is told so. */
export function shopCards(store: Store, log: (line: string) => void = () => {}): ShopCards {
  const kept = new Map<string, ResinCard>();
  const fitted = (document: ResinCardDocument): ResinCard => {
    const key = createHash('sha256').update(JSON.stringify(document)).digest('base64');
    const known = kept.get(key);
    if (known !== undefined) return known;
    const read = readCard(document);
    if (!read.ok) throw new RangeError(read.problems.map(sayProblem).join(' '));
    const card = fitCard(read.value);
    kept.set(key, card);
    const oldest = kept.size > MOST_KEPT ? kept.keys().next().value : undefined;
    if (oldest !== undefined) kept.delete(oldest);
    return card;
  };
  return {
    fitted,
    async all() {
      const cards: ShopCard[] = [];
      for (const { id, archived, document } of await store.listResins()) {
        try {
          const before = kept.size;
          cards.push({ archived, card: fitted(document) });
          // Other requests get their turn between two fits.
          if (kept.size !== before) await new Promise((resolve) => setImmediate(resolve));
        } catch (error) {
          if (!(error instanceof RangeError)) throw error;
          log(`resin card ${id} cannot be fitted: ${error.message.slice(0, 300)}`);
        }
      }
      return cards;
    },
  };
}
