import type { JobDocument } from '#core/job/document.ts';
import { localTime_ms } from '#web/units/dates.ts';

/** A pour counts as coming until three hours after it began. */
const UNDER_WAY_MS = 3 * 3_600_000;

/** Start of the next coat to come, or null. Without the document only the first start is known. */
export function nextPour_ms(
  document: JobDocument | undefined,
  firstPourAt: string,
  now_ms: number,
): number | null {
  const starts = document === undefined ? [firstPourAt] : document.coats.map((coat) => coat.startsAt);
  const coming = starts
    .map(localTime_ms)
    .filter((at): at is number => at !== null && at + UNDER_WAY_MS > now_ms)
    .sort((a, b) => a - b);
  return coming[0] ?? null;
}
