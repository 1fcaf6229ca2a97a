import type { JobDocumentInput } from '#core/job/document.ts';
import { sayProblem } from '#core/quantity/problem.ts';
import { Shop, type ShopInput } from '#store/shop.ts';
import type { Store } from '#store/store.ts';
import { checkDocument } from './check.ts';

/** A shop to look around in. */
export interface Demo {
  readonly shop: ShopInput;
  readonly jobs: readonly { readonly id: string; readonly document: JobDocumentInput }[];
}

/**
 * Fills an empty store; one that holds anything is left alone.
 * @param at now, ISO 8601.
 * @returns how many jobs were made.
 * @throws Error naming the job and the field if an example is not a job that the server would accept.
 */
export async function seedDemo(store: Store, demo: Demo, at: string, newId: () => string): Promise<number> {
  if ((await store.listJobs()).length > 0 || (await store.getShop()) !== null) return 0;
  const documents = demo.jobs.map(({ id, document }) => {
    const checked = checkDocument(document);
    if (checked.ok) return { id, document: checked.value };
    throw new Error(`Example job ${id} cannot be used: ${checked.problems.map(sayProblem).join(' ')}`);
  });
  await store.saveShop({ baseVersion: 0, shop: Shop.parse(demo.shop), saveId: newId(), at });
  for (const job of documents) await store.createJob({ ...job, saveId: newId(), at });
  return documents.length;
}
