/**
 * Finds a PostgreSQL for tests, in this order: TEST_DATABASE_URL; a server on 127.0.0.1:5432 that trusts us with its database
 * `test`; a temporary cluster made with Debian's programs in /usr/lib/postgresql, thrown away afterwards. If there is none, CI fails
 * (`CI` is set) and a person's run skips, loudly. Every user of it works in a schema of its own.
 *
 * As a command, `node scripts/postgres.ts -- command ...` runs the command with DATABASE_URL set to a fresh schema.
 */
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { Client } from 'pg';
import { startCluster } from './postgres-cluster.ts';

export interface TestPostgres {
  /** Address of the database with its own empty schema first in the search path. */
  readonly url: string;
  /** Where it was found, for people; holds no password. */
  readonly found: string;
  /** Drops the schema, and the cluster if it was started here. */
  stop(): Promise<void>;
}

/** Where to look; tests of this file look elsewhere. */
export interface Places {
  readonly local: string;
  /** Debian's folder of PostgreSQL versions. */
  readonly programs: string;
}

const PLACES: Places = {
  local: 'postgres://postgres@127.0.0.1:5432/test',
  programs: '/usr/lib/postgresql',
};

/** @returns null when there is none and this is not CI. @throws Error when there is none in CI, or TEST_DATABASE_URL does not answer. */
export async function findPostgres(
  environment: Readonly<Record<string, string | undefined>> = process.env,
  places: Places = PLACES,
): Promise<TestPostgres | null> {
  const given = environment.TEST_DATABASE_URL;
  if (given !== undefined && given !== '') return await ownSchema(given, 'TEST_DATABASE_URL');
  if (await answers(places.local)) return await ownSchema(places.local, 'the server on 127.0.0.1:5432');
  const cluster = await startCluster(places.programs);
  if (cluster !== null) {
    try {
      return await ownSchema(cluster.url, 'a temporary cluster', cluster.stop);
    } catch (error) {
      await cluster.stop();
      throw error;
    }
  }
  const advice = 'set TEST_DATABASE_URL or install PostgreSQL (apt-get install postgresql)';
  if (environment.CI !== undefined && environment.CI !== '')
    throw new Error(`No PostgreSQL to test against: ${advice}.`);
  console.warn(`\n*** SKIPPED: no PostgreSQL to test against; ${advice}. ***\n`);
  return null;
}

async function answers(url: string): Promise<boolean> {
  const client = new Client({ connectionString: url, connectionTimeoutMillis: 2000 });
  client.on('error', () => {});
  try {
    await client.connect();
    return true;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => {});
  }
}

async function ownSchema(url: string, found: string, then = async () => {}): Promise<TestPostgres> {
  const schema = `pourwright_test_${randomBytes(8).toString('hex')}`;
  await run(url, `create schema ${schema}`);
  const own = new URL(url);
  own.searchParams.set('options', `-c search_path=${schema}`);
  return {
    // The driver reads "+" as a plus, not as a space.
    url: own.href.replaceAll('+', '%20'),
    found,
    async stop() {
      await run(url, `drop schema ${schema} cascade`);
      await then();
    },
  };
}

async function run(url: string, statement: string): Promise<void> {
  const client = new Client({ connectionString: url, connectionTimeoutMillis: 10_000 });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}

if (import.meta.main) {
  const [command, ...rest] = process.argv.slice(process.argv[2] === '--' ? 3 : 2);
  if (command === undefined) {
    console.error(
      'node scripts/postgres.ts -- command ...   runs it with DATABASE_URL set to an empty schema',
    );
    process.exit(2);
  }
  const postgres = await findPostgres();
  if (postgres === null) process.exit(1);
  console.log(`PostgreSQL: ${postgres.found}`);
  const child = spawn(command, rest, {
    stdio: 'inherit',
    env: { ...process.env, DATABASE_URL: postgres.url },
  });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal));
  const code = await new Promise<number>((resolve) => {
    child.on('error', (error) => {
      console.error(error.message);
      resolve(1);
    });
    child.on('exit', (exit) => resolve(exit ?? 1));
  });
  await postgres.stop();
  process.exitCode = code;
}
