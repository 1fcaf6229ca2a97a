/** Who this device is, and ids made on it. */
import { uuid7 } from '#web/draft/uuid7.ts';

const KEY = 'pourwright.device';

/** Made once and kept; without storage it lasts as long as the page. */
export function deviceId(): string {
  try {
    const kept = localStorage.getItem(KEY);
    if (kept !== null) return kept;
    const made = uuid7();
    localStorage.setItem(KEY, made);
    return made;
  } catch {
    return uuid7();
  }
}

/** Ids that rise with every one made here, also when the clock of the device is set back: ids decide between events of one moment. */
export function risingIds(now_ms: () => number = Date.now): () => string {
  let last_ms = 0;
  return () => {
    last_ms = Math.max(last_ms + 1, now_ms());
    return uuid7(last_ms);
  };
}
