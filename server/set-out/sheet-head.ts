/** What stands at the head of every printed sheet. */
import { GREY, type Ink } from './ink.ts';
import type { Revision } from './revision.ts';

/** Blank border of a page, points. */
export const MARGIN = 32;

export interface SheetWords {
  readonly title: string;
  readonly customer: string;
  readonly revision: Revision;
  /** When it was printed, ISO 8601 UTC; its day stands on the sheet. */
  readonly at: string;
}

export function titleOf({ title }: SheetWords): string {
  return title.trim() === '' ? 'Untitled job' : title.trim();
}

/** Title and customer at the left; what it is, its revision and page at the right. */
export function head(ink: Ink, what: string, words: SheetWords, index: number, count: number): void {
  const right = ink.width - MARGIN;
  const small = { size: 8, align: 'right' } as const;
  const { revision, at } = words;
  ink.write(`${what}, page ${index + 1} of ${count}`, right, MARGIN + 10, { ...small, weight: 600 });
  ink.write(
    `Version ${revision.version}, ${revision.hash}, printed ${at.slice(0, 10)}`,
    right,
    MARGIN + 21,
    small,
  );
  const room = ink.width - 2 * MARGIN - 210;
  ink.write(ink.wrap(titleOf(words), room, { size: 14, weight: 600 })[0]!, MARGIN, MARGIN + 11, {
    size: 14,
    weight: 600,
  });
  ink.write(ink.wrap(words.customer, room, { size: 9 })[0]!, MARGIN, MARGIN + 22, { size: 9 });
  ink.doc
    .moveTo(MARGIN, MARGIN + 27)
    .lineTo(right, MARGIN + 27)
    .lineWidth(0.6)
    .undash()
    .strokeColor(GREY)
    .stroke();
}
