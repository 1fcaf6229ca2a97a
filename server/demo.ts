import type { JobDocument, JobDocumentInput } from '#core/job/document.ts';
import { type Result, sayProblem } from '#core/quantity/problem.ts';
import type { ResinCardDocumentInput } from '#core/resin/card-document.ts';
import { Shop, type ShopInput } from '#store/shop.ts';
import type { Store } from '#store/store.ts';
import { checkDocument, checkResin } from './check.ts';
import { shopCards } from './shop-cards.ts';

/** A shop to look around in. */
export interface Demo {
  readonly shop: ShopInput;
  readonly resins?: readonly ResinCardDocumentInput[];
  readonly jobs: readonly { readonly id: string; readonly document: JobDocumentInput }[];
}

/**
 * Fills an empty store; one that holds anything is left alone.
 * @param at now, ISO 8601.
 * @returns how many jobs were made.
 * @throws Error naming the example and the field if the server would not accept it.
 */
export async function seedDemo(store: Store, demo: Demo, at: string, newId: () => string): Promise<number> {
  const empty = (await store.listJobs()).length === 0 && (await store.listResins()).length === 0;
  if (!empty || (await store.getShop()) !== null) return 0;
  const cards = shopCards(store);
  const resins = (demo.resins ?? []).map((input) => must(checkResin(input, cards), `card ${input.id}`));
  const known = {
    ...cards,
    all: async () => resins.map((r) => ({ archived: false, card: cards.fitted(r) })),
  };
  const documents: { readonly id: string; readonly document: JobDocument }[] = [];
  for (const { id, document } of demo.jobs)
    documents.push({ id, document: must(await checkDocument(document, known), `job ${id}`) });
  await store.saveShop({ baseVersion: 0, shop: Shop.parse(demo.shop), saveId: newId(), at });
  for (const document of resins) await store.createResin({ id: document.id, document, saveId: newId(), at });
  for (const job of documents) await store.createJob({ ...job, saveId: newId(), at });
  return documents.length;
}

function must<T>(checked: Result<T>, what: string): T {
  if (checked.ok) return checked.value;
  throw new Error(`Example ${what} cannot be used: ${checked.problems.map(sayProblem).join(' ')}`);
}
