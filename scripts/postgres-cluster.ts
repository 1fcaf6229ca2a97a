/** A PostgreSQL cluster in a temporary folder on a free loopback port, for tests. */
import { execFile } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

const run = promisify(execFile);

export interface Cluster {
  readonly url: string;
  /** Stops the server and removes its folder. */
  stop(): Promise<void>;
}

/**
 * Starts one with the newest of Debian's installed versions.
 * @param root of the versions, as Debian lays them out: `<version>/bin/initdb`.
 * @returns null if none is installed. PostgreSQL refuses to run as root, so root runs it as the user `postgres`.
 */
export async function startCluster(root = '/usr/lib/postgresql'): Promise<Cluster | null> {
  const bin = newestBin(root);
  if (bin === null) return null;
  const isRoot = process.getuid?.() === 0;
  const folder = mkdtempSync(join(tmpdir(), 'pourwright-postgres-'));
  const as = async (program: string, ...args: readonly string[]) => {
    const path = join(bin, program);
    // Not the caller's folder: the user postgres may not be allowed into it.
    // Some shells of root leave the system folders off the path.
    const env = { ...process.env, PATH: `${process.env.PATH ?? ''}:/usr/sbin:/sbin` };
    if (isRoot) await run('runuser', ['-u', 'postgres', '--', path, ...args], { cwd: '/', env });
    else await run(path, [...args], { cwd: '/' });
  };
  try {
    if (isRoot) {
      const { stdout } = await run('id', ['-u', 'postgres']);
      chownSync(folder, Number(stdout), -1);
    }
    const data = join(folder, 'data');
    await as('initdb', '-D', data, '-A', 'trust', '-U', 'postgres', '-E', 'UTF8', '--locale=C', '--no-sync');
    const port = await freePort();
    // -i off: loopback only, no socket files outside our folder.
    const settings = `-c listen_addresses=127.0.0.1 -c port=${port} -c unix_socket_directories=${folder} -c fsync=off`;
    await as('pg_ctl', '-D', data, '-l', join(folder, 'log'), '-o', settings, '-w', '-t', '60', 'start');
    return {
      url: `postgres://postgres@127.0.0.1:${port}/postgres`,
      async stop() {
        await as('pg_ctl', '-D', data, '-m', 'immediate', '-w', 'stop');
        rmSync(folder, { recursive: true, force: true });
      },
    };
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw error;
  }
}

function newestBin(root: string): string | null {
  if (!existsSync(root)) return null;
  const bins = readdirSync(root)
    .filter((version) => /^\d+$/.test(version))
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(root, version, 'bin'));
  return bins.find((bin) => existsSync(join(bin, 'initdb'))) ?? null;
}

/** A port nobody listens on at this moment, on the loopback address. */
export async function freePort(): Promise<number> {
  return await new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() =>
        typeof address === 'object' && address !== null
          ? resolve(address.port)
          : reject(new Error('no port was given')),
      );
    });
  });
}
