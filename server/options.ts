/** The command line of the server. */
import { isIP } from 'node:net';
import { parseArgs } from 'node:util';

export const USAGE = `node server/main.ts [--demo] [--port 4180] [--host 127.0.0.1] [--allow-host NAME] [--data DIR]

  --demo             opens a shop with example jobs, kept apart from your own in demo.sqlite
  --port PORT        1 to 65535; not given: 4180, or the next free one
  --host ADDRESS     address to listen on; not given: this computer only (127.0.0.1)
  --allow-host NAME  also answer under this host name (may be repeated)
  --data DIR         folder of the database file; not given: ./data
  --help             says this

DATABASE_URL=postgres://... keeps the jobs in PostgreSQL instead of a file (not with --demo).`;

export interface Options {
  readonly demo: boolean;
  readonly port: number;
  /** The port was asked for, so no other will do. */
  readonly portGiven: boolean;
  readonly host: string;
  readonly allowHosts: readonly string[];
  readonly data: string;
  readonly help: boolean;
}

export const DEFAULT_PORT = 4180;

/** Thrown on a command line that cannot be followed; the message says what is wrong and what is allowed. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** @param args without the program: `process.argv.slice(2)`. @throws UsageError */
export function readOptions(args: readonly string[]): Options {
  const { values } = parse(args);
  const port = values.port === undefined ? DEFAULT_PORT : Number(values.port);
  if (!/^\d+$/.test(values.port ?? '1') || port < 1 || port > 65535)
    throw new UsageError(`--port was "${values.port}"; allowed: 1 to 65535.`);
  const host = values.host ?? '127.0.0.1';
  if (!/^[A-Za-z0-9.:-]+$/.test(host))
    throw new UsageError(`--host was "${host}"; allowed: an address or a host name, without port.`);
  if (values.data === '') throw new UsageError('--data was empty; allowed: a folder.');
  return {
    demo: values.demo ?? false,
    port,
    portGiven: values.port !== undefined,
    host,
    allowHosts: values['allow-host'] ?? [],
    data: values.data ?? './data',
    help: values.help ?? false,
  };
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      options: {
        demo: { type: 'boolean' },
        port: { type: 'string' },
        host: { type: 'string' },
        'allow-host': { type: 'string', multiple: true },
        data: { type: 'string' },
        help: { type: 'boolean' },
      },
    });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

/** Only this computer can reach it. */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || (isIP(host) === 4 && host.startsWith('127.'));
}

/** Names the app answers under when it listens on `host`; see `hostGuard`. */
export function namesFor(host: string): readonly string[] {
  if (host === '0.0.0.0' || host === '::') return ['*address'];
  return [isIP(host) === 6 ? `[${host}]` : host];
}
