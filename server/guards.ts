/** What stands before every request: who may ask, and what a browser may do with the answer. */
import type { MiddlewareHandler } from 'hono';
import { createMiddleware } from 'hono/factory';
import type { AppEnv } from './context.ts';
import { Refusal } from './refusal.ts';

/**
 * react-aria-components puts two fixed style elements into the page (touch on buttons; scrolling behind a dialog). They are allowed
 * by the hash of their text instead of allowing every inline style; guards.test.ts recomputes the hashes from the installed version.
 */
export const INLINE_STYLE_HASHES: readonly string[] = [
  "'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='",
  "'sha256-gYiS/BvZvRcK27JIXTuwhZ3hs2+VJ1X+2gUlE+farlg='",
];

/**
 * Scripts come from this server only. 'wasm-unsafe-eval' lets WebAssembly be compiled, and nothing else: the thickness map's worker holds
 * a small module in its own text. It allows neither eval nor inline script; without it the map uses plain arrays at half the speed.
 */
const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  `style-src 'self' ${INLINE_STYLE_HASHES.join(' ')}`,
  "connect-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "form-action 'self'",
].join('; ');

export const securityHeaders = createMiddleware<AppEnv>(async (c, next) => {
  await next();
  c.header('Content-Security-Policy', CONTENT_SECURITY_POLICY);
  c.header('X-Content-Type-Options', 'nosniff');
  c.header('Referrer-Policy', 'no-referrer');
  c.header('Cross-Origin-Opener-Policy', 'same-origin');
  c.header('Cross-Origin-Resource-Policy', 'same-origin');
  c.header('Permissions-Policy', 'camera=(), geolocation=(), microphone=()');
});

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];

/**
 * Answers only under names that are ours. A hostile page can point a name of its own at this address (DNS rebinding) and would then
 * count as the same origin; but its requests still carry that name in Host.
 * @param more names or addresses besides the loopback ones, without port; `'*address'` allows every numeric address, which no
 * page can rebind.
 */
export function hostGuard(more: readonly string[]): MiddlewareHandler<AppEnv> {
  const names = new Set([...LOOPBACK, ...more.map((name) => name.toLowerCase())]);
  return createMiddleware<AppEnv>(async (c, next) => {
    const name = hostName(c.req.header('host') ?? new URL(c.req.url).host);
    const numeric = /^(\d{1,3}(\.\d{1,3}){3}|\[[0-9a-f:.]+\])$/.test(name);
    if (!names.has(name) && !(numeric && names.has('*address')))
      throw new Refusal(
        403,
        'host.foreign',
        'This server does not answer under that host name. Use its own address, or start it with --allow-host NAME.',
      );
    await next();
  });
}

function hostName(host: string): string {
  return host.toLowerCase().replace(/:\d+$/, '').replace(/\.$/, '');
}

/** A write must come from our own pages, or from a program that is no browser (which sends neither header). */
export const originGuard = createMiddleware<AppEnv>(async (c, next) => {
  if (c.req.method !== 'GET' && c.req.method !== 'HEAD') {
    const site = c.req.header('sec-fetch-site');
    const origin = c.req.header('origin');
    const host = c.req.header('host') ?? new URL(c.req.url).host;
    const foreignSite = site !== undefined && site !== 'same-origin' && site !== 'none';
    // The scheme is not compared: a proxy that ends TLS hands us plain HTTP.
    const foreignOrigin = origin !== undefined && !/^https?:$/.test(schemeFor(origin, host.toLowerCase()));
    if (foreignSite || foreignOrigin)
      throw new Refusal(403, 'origin.foreign', 'Changes are accepted only from this server’s own pages.');
  }
  await next();
});

/** Scheme of the origin if its host and port are `host`, else ''. */
function schemeFor(origin: string, host: string): string {
  if (!URL.canParse(origin)) return '';
  const url = new URL(origin);
  return url.host === host || `${url.hostname}:${url.protocol === 'https:' ? 443 : 80}` === host
    ? url.protocol
    : '';
}
