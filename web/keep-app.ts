/** Has the service worker keep the app on this device. Browsers allow it on https and on the machine itself only. */
let asked: Promise<boolean> | null = null;

/** Resolves when the app is kept; false: this browser or this address does not allow it. Asking again is harmless. */
export function keepApp(): Promise<boolean> {
  asked ??= keep();
  return asked;
}

async function keep(): Promise<boolean> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return false;
  try {
    await navigator.serviceWorker.register('/sw.js');
    await navigator.serviceWorker.ready;
    return true;
  } catch {
    return false;
  }
}

/** Not before the first screen stands: the forecast comes first. */
const AFTER_MS = 15_000;

export function keepAppLater(): void {
  setTimeout(() => void keepApp(), AFTER_MS);
}
