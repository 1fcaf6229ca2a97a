/** Keeps the screen on while a pour is under way. */
type Lock = { readonly released: boolean; release(): Promise<void> };

let lock: Lock | null = null;
let wanted = false;

/** The screen is kept on and this page is in front: it cannot have slept. */
export function screenAwake(): boolean {
  return lock !== null && !lock.released && document.visibilityState === 'visible';
}

async function acquire(): Promise<void> {
  if (!wanted || document.visibilityState !== 'visible' || screenAwake()) return;
  try {
    const got = await navigator.wakeLock.request('screen');
    if (wanted) lock = got;
    else await got.release();
  } catch {
    // Not every browser has it, and a low battery may refuse; the clock then asks when it is in doubt.
  }
}

const again = () => void acquire();

/** Asks for it, and again each time the page comes back to the front, until the returned function is called. */
export function keepScreenOn(): () => void {
  wanted = true;
  document.addEventListener('visibilitychange', again);
  void acquire();
  return () => {
    wanted = false;
    document.removeEventListener('visibilitychange', again);
    void lock?.release().catch(() => undefined);
    lock = null;
  };
}
