import type { JobDocument } from '#core/job/document.ts';

/** The columns of `jobs` that lists show, copied out of a document. */
export function summaryColumns(document: JobDocument) {
  const starts = document.coats.map((coat) => coat.startsAt).filter((start) => start !== '');
  return {
    title: storable(document.title),
    customer_name: storable(document.customer.name),
    stage: document.agreed.stage,
    hand_over: document.agreed.handOver,
    first_pour_at: starts.sort()[0] ?? '',
  };
}

/** A text column takes no NUL (PostgreSQL) and no half surrogate pair; the document itself, being JSON, keeps both. */
export function storable(text: string): string {
  return text.replaceAll('\0', '').toWellFormed();
}
