/**
 * Kills the server (SIGKILL) at random moments while several clients save, starts it again, and checks that every save it had
 * acknowledged is there, as it was sent.
 *
 *   node scripts/kill-server.ts [N]     N kills, 50 if not given; SQLite, or PostgreSQL by DATABASE_URL (use an empty schema:
 *                                       node scripts/postgres.ts -- node scripts/kill-server.ts)
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Acknowledged, Client, findLost } from './kill-server-clients.ts';
import { ServerProcess } from './kill-server-process.ts';
import { freePort } from './postgres-cluster.ts';

export interface KillReport {
  readonly kills: number;
  readonly acknowledged: number;
  /** One line for each save that is not there, or not as it was sent. */
  readonly lost: readonly string[];
  /** One line for each job whose versions have a gap, or hold a save twice. */
  readonly gaps: readonly string[];
}

export interface KillOptions {
  readonly kills: number;
  /** How long the clients save before a kill: a random time up to this. */
  readonly between_ms?: number;
  /** Gives up after this. */
  readonly limit_ms?: number;
  readonly databaseUrl?: string | undefined;
}

/** @throws Error if the server does not start, a save gets an answer that makes no sense, or the time is up. */
export async function killServer(options: KillOptions): Promise<KillReport> {
  const { kills, between_ms = 400, limit_ms = 20_000 + kills * 8000 } = options;
  const data = mkdtempSync(join(tmpdir(), 'pourwright-kill-'));
  const server = new ServerProcess(await freePort(), data, options.databaseUrl);
  const deadline = performance.now() + limit_ms;
  const acknowledged: Acknowledged[] = [];
  try {
    await server.start();
    const shared = crypto.randomUUID();
    // Two on one job, so that conflicts happen, and two with a job each.
    const clients = [shared, shared, crypto.randomUUID(), crypto.randomUUID()].map(
      (job, i) => new Client(server.address, `client ${i}`, job, acknowledged),
    );
    for (let kill = 0; kill < kills; kill += 1) {
      if (performance.now() > deadline) throw new Error(`time is up after ${kill} kills (${limit_ms} ms)`);
      const saving = Promise.all(clients.map((client) => client.saveUntilDown()));
      // Awaited below, after the kill; until then a failure must not end this process with the server left running.
      saving.catch(() => {});
      await new Promise((resolve) => setTimeout(resolve, 20 + Math.random() * between_ms));
      await server.kill();
      await saving;
      await server.start();
    }
    // What was in the air at the last kill is sent again; then nobody saves any more.
    for (const client of clients) await client.finish();
    const jobs = new Set(clients.map((client) => client.job));
    return {
      kills,
      acknowledged: acknowledged.length,
      ...(await findLost(server.address, jobs, acknowledged)),
    };
  } finally {
    await server.kill();
    rmSync(data, { recursive: true, force: true });
  }
}

if (import.meta.main) {
  const kills = Number(process.argv[2] ?? 50);
  if (!Number.isInteger(kills) || kills < 1 || kills > 10_000) {
    console.error(`How often to kill was "${process.argv[2]}"; allowed: 1 to 10000.`);
    process.exit(2);
  }
  const databaseUrl = process.env.DATABASE_URL;
  console.log(
    `Killing the server ${kills} times over ${databaseUrl === undefined ? 'SQLite' : 'PostgreSQL'} ...`,
  );
  const report = await killServer({ kills, databaseUrl });
  for (const line of [...report.lost, ...report.gaps]) console.error(line);
  console.log(
    `${report.kills} kills, ${report.acknowledged} acknowledged saves, ${report.lost.length} lost` +
      (report.gaps.length === 0 ? '' : `, ${report.gaps.length} jobs with gaps or repeats`),
  );
  process.exitCode = report.lost.length + report.gaps.length === 0 ? 0 : 1;
}
