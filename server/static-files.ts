/** The built web app. Only files found when the server starts can be asked for, so no address leads out of the folder. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import type { Handler } from 'hono';
import type { AppEnv } from './context.ts';
import { Refusal } from './refusal.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.txt': 'text/plain; charset=utf-8',
  '.map': 'application/json',
  '.wasm': 'application/wasm',
};
const COMPRESSIBLE = new Set(['.html', '.js', '.css', '.json', '.webmanifest', '.svg', '.txt', '.map']);

type Bytes = Uint8Array<ArrayBuffer>;

interface StaticFile {
  readonly type: string;
  readonly bytes: Bytes;
  readonly etag: string;
  readonly compressible: boolean;
  /** Its name holds a hash of its content. */
  readonly hashed: boolean;
  /** Made when first asked for. */
  readonly encoded: Map<string, Promise<Bytes>>;
}

const encoders: Readonly<Record<string, (bytes: Bytes) => Promise<Buffer>>> = {
  br: (bytes) =>
    promisify(brotliCompress)(bytes, {
      params: { [constants.BROTLI_PARAM_QUALITY]: 9, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length },
    }),
  gzip: (bytes) => promisify(gzip)(bytes, { level: 9 }),
};

/**
 * Answers GET and HEAD. An address without a file ending gets index.html, since the app does its own routing.
 * @param root folder of the built app; may be missing, then every page says how to build it.
 */
export function staticFiles(root: string | undefined): Handler<AppEnv> {
  const files = readFolder(root);
  return async (c) => {
    const path = decodedPath(c.req.url);
    const file = files.get(path) ?? (extname(path) === '' ? files.get('/index.html') : undefined);
    if (file === undefined) {
      if (files.has('/index.html') || extname(path) !== '')
        throw new Refusal(404, 'page.missing', 'There is nothing at this address.');
      throw new Refusal(503, 'web.unbuilt', 'The web app has not been built yet. Run: npm run build');
    }
    c.header('Cache-Control', file.hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
    c.header('ETag', file.etag);
    if (file.compressible) c.header('Vary', 'Accept-Encoding');
    if (c.req.header('if-none-match')?.includes(file.etag) === true) return c.body(null, 304);
    c.header('Content-Type', file.type);
    const encoding = file.compressible ? chooseEncoding(c.req.header('accept-encoding')) : undefined;
    if (encoding === undefined) return c.body(file.bytes);
    let encoded = file.encoded.get(encoding);
    if (encoded === undefined) {
      encoded = encoders[encoding]!(file.bytes).then((bytes) => new Uint8Array(bytes));
      file.encoded.set(encoding, encoded);
    }
    c.header('Content-Encoding', encoding);
    return c.body(await encoded);
  };
}

function readFolder(root: string | undefined): ReadonlyMap<string, StaticFile> {
  const files = new Map<string, StaticFile>();
  if (root === undefined || !existsSync(root)) return files;
  for (const entry of readdirSync(root, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const full = join(entry.parentPath, entry.name);
    const path = `/${relative(root, full).split(sep).join('/')}`;
    const bytes = new Uint8Array(readFileSync(full));
    const ending = extname(entry.name).toLowerCase();
    files.set(path, {
      type: TYPES[ending] ?? 'application/octet-stream',
      bytes,
      etag: `W/"${createHash('sha256').update(bytes).digest('base64url').slice(0, 27)}"`,
      compressible: COMPRESSIBLE.has(ending) && bytes.length > 1024,
      hashed: /^\/assets\/.+-[\w-]{8}\.\w+$/.test(path),
      encoded: new Map(),
    });
  }
  return files;
}

function decodedPath(url: string): string {
  const { pathname } = new URL(url);
  try {
    return decodeURIComponent(pathname);
  } catch {
    throw new Refusal(400, 'address.encoding', 'The address is not readable.');
  }
}

/** br before gzip, unless the client refuses it with q=0. */
function chooseEncoding(accepted: string | undefined): string | undefined {
  const refused = /;\s*q=0(\.0*)?\s*$/;
  const words = (accepted ?? '')
    .split(',')
    .filter((word) => !refused.test(word))
    .map((word) => word.split(';')[0]!.trim().toLowerCase());
  return Object.keys(encoders).find((encoding) => words.includes(encoding));
}
