/** Runs a map a little at a time, so that its worker still hears a cancel and the page sees it move. */
import type { FilmMapProgress } from '#core/film/film-map.ts';
import type { FilmMapResult } from '#core/film/map-result.ts';

/** Between two reports, ms. */
export const REPORT_EVERY_ms = 50;

export interface Drive {
  readonly report: (share: number) => void;
  /** False once nobody waits for this map any more. */
  readonly wanted: () => boolean;
  /** Lets waiting messages in. */
  readonly pause: () => Promise<void>;
  readonly now_ms: () => number;
}

/** The finished map, or null when it was no longer wanted. Throws what the map throws. */
export async function driveMap(
  run: Generator<FilmMapProgress, FilmMapResult, void>,
  { report, wanted, pause, now_ms }: Drive,
): Promise<FilmMapResult | null> {
  let last_ms = now_ms();
  for (;;) {
    const next = run.next();
    if (next.done) return next.value;
    if (now_ms() - last_ms < REPORT_EVERY_ms) continue;
    report(next.value.share);
    await pause();
    if (!wanted()) return null;
    last_ms = now_ms();
  }
}
