/** Starts Pourwright's server: reads the command line, opens the store, listens, and ends cleanly when told to. */
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openPostgres } from '#store/postgres.ts';
import { openSqlite } from '#store/sqlite.ts';
import type { Store } from '#store/store.ts';
import { createApp } from './app.ts';
import { seedDemo } from './demo.ts';
import { listen } from './listen.ts';
import { isLoopback, namesFor, type Options, readOptions, USAGE, UsageError } from './options.ts';

const now = () => new Date().toISOString();
const say = (line: string) => console.log(line);
const log = (line: string) => console.error(line);

async function main(args: readonly string[]): Promise<void> {
  const options = readOptions(args);
  if (options.help) return say(USAGE);
  const store = await openStore(options);
  try {
    if (options.demo) {
      const { demo } = await import('#examples/demo.ts');
      await seedDemo(store, demo(today()), now(), () => crypto.randomUUID());
    }
    const app = createApp({
      store,
      now,
      version: ownVersion(),
      webRoot: join(import.meta.dirname, '..', 'web', 'dist'),
      hosts: [...namesFor(options.host), ...options.allowHosts],
      log,
    });
    const listening = await listen(app, options.host, options.port, options.portGiven);
    if (!isLoopback(options.host))
      log(
        `WARNING: listening on ${options.host}. Anyone on that network can read and change the jobs: there is no ` +
          'sign-in. Use it only on a network you trust.',
      );
    let ending = false;
    const end = async () => {
      if (ending) process.exit(1);
      ending = true;
      await listening.stop();
      await store.close();
    };
    for (const signal of ['SIGTERM', 'SIGINT'] as const) process.on(signal, () => void end());
    // Last: whoever waits for this line may send a signal at once.
    say(`Pourwright is ready at ${listening.address}`);
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function openStore(options: Options): Promise<Store> {
  const url = process.env.DATABASE_URL ?? '';
  if (url !== '' && !options.demo) {
    try {
      return await openPostgres(url, now(), {
        onLostConnection: () => log(`${now()} a connection to PostgreSQL was lost`),
      });
    } catch (error) {
      throw new Error(
        `PostgreSQL (DATABASE_URL) cannot be used: ${messageOf(error).replaceAll(url, 'DATABASE_URL')}`,
      );
    }
  }
  const path = join(options.data, options.demo ? 'demo.sqlite' : 'pourwright.sqlite');
  try {
    // Customers' names and addresses: for the owner of the account only.
    mkdirSync(options.data, { recursive: true, mode: 0o700 });
    return await openSqlite(path, now());
  } catch (error) {
    throw new Error(`The database file ${path} cannot be used: ${messageOf(error)}`);
  }
}

/** The day on the wall, YYYY-MM-DD. */
function today(): string {
  const date = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

function ownVersion(): string {
  const text = readFileSync(join(import.meta.dirname, '..', 'package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

/** Of an error that may be several in one, as a failed connection to a name with two addresses. */
function messageOf(error: unknown): string {
  if (error instanceof AggregateError && error.message === '') return error.errors.map(messageOf).join('; ');
  return error instanceof Error ? error.message : String(error);
}

try {
  await main(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof UsageError ? `${error.message}\n\n${USAGE}` : messageOf(error));
  process.exitCode = error instanceof UsageError ? 2 : 1;
}
