/** The one place where the server checks what somebody sends, so that every entry point refuses the same things. */
import type { JobDocument } from '#core/job/document.ts';
import { checkJob } from '#core/job/read-job.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { ResinCardDocument } from '#core/resin/card-document.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import { readCard } from '#core/resin/read-card.ts';
import type { ShopCards } from './shop-cards.ts';

/** A job; its coats may name a generic card or one of the shop, archived ones too: a job that was poured keeps its resin. */
export async function checkDocument(input: unknown, cards: ShopCards): Promise<Result<JobDocument>> {
  const ofShop = await cards.all();
  return checkJob(input, [...GENERIC_CARDS, ...ofShop.map(({ card }) => card)]);
}

/**
 * A resin card: its shape, its label, its observations, and that there is a resin which does all that.
 * @param id the card's own, which its document has to carry; undefined for a new one.
 */
export function checkResin(input: unknown, cards: ShopCards, id?: string): Result<ResinCardDocument> {
  const read = readCard(input);
  if (!read.ok) return read;
  const document = ResinCardDocument.parse(input);
  if (id !== undefined && document.id !== id)
    return bad({
      path: 'id',
      code: 'card.id',
      message: 'The id of a card stays what it was made with.',
      read: document.id,
      allowed: id,
    });
  if (GENERIC_CARDS.some((generic) => generic.id === document.id))
    return bad({
      path: 'id',
      code: 'card.generic-id',
      message: 'This id belongs to a generic card.',
      read: document.id,
      allowed: 'an id of its own',
    });
  try {
    cards.fitted(document);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return bad({
      path: 'label',
      code: 'card.no-resin',
      message: `No resin does what these figures say together (${error.message}).`,
    });
  }
  return good(document, read.warnings);
}
