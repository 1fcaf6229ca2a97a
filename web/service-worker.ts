/**
 * Keeps the app on the device, so that it opens with no network. It answers pages from the server and, where that does not answer, from what
 * was kept; files with a hash in their name always from what was kept. Everything under /api is left to the network: what the shop's
 * server knows is never answered from memory, and nothing sent to it is held back here.
 */

/** Put in when the app is built: every file of it, and a name that changes with any of them. */
declare const __KEPT_FILES__: readonly string[];
declare const __KEPT_AS__: string;

interface Waits extends Event {
  waitUntil(promise: Promise<unknown>): void;
}
interface Asks extends Waits {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Worker {
  readonly location: Location;
  readonly clients: { claim(): Promise<void> };
  addEventListener(kind: 'install' | 'activate', listen: (event: Waits) => void): void;
  addEventListener(kind: 'fetch', listen: (event: Asks) => void): void;
}

const worker = self as unknown as Worker;
const NAME = `pourwright ${__KEPT_AS__}`;
const PAGE = '/index.html';
/** A page that waits longer than this for a bad network is opened from what was kept. */
const PATIENCE_MS = 3000;

worker.addEventListener('install', (event) => {
  event.waitUntil(caches.open(NAME).then((kept) => kept.addAll([...__KEPT_FILES__])));
});

worker.addEventListener('activate', (event) => {
  const tidy = async () => {
    for (const name of await caches.keys())
      if (name.startsWith('pourwright ') && name !== NAME) await caches.delete(name);
    await worker.clients.claim();
  };
  event.waitUntil(tidy());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== worker.location.origin || pathname.startsWith('/api/')) return;
  if (request.mode === 'navigate') event.respondWith(page(request));
  else event.respondWith(file(request));
});

async function file(request: Request): Promise<Response> {
  return (await caches.match(request, { ignoreSearch: true, ignoreVary: true })) ?? fetch(request);
}

async function page(request: Request): Promise<Response> {
  const kept = caches.match(PAGE, { ignoreVary: true });
  const late = new Promise<undefined>((resolve) => setTimeout(resolve, PATIENCE_MS));
  const asked = fetch(request).then(
    (answer) => (answer.ok ? answer : undefined),
    () => undefined,
  );
  return (await Promise.race([asked, late])) ?? (await kept) ?? (await asked) ?? fetch(request);
}
