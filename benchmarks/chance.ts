/**
 * Chance to finish: 10,000 pours in one worker, over more workers, and against a plain Monte-Carlo that cures every pour anew:
 * node benchmarks/chance.ts. All in the same run, as ratios too; goal: 10,000 pours under 1 s on one core.
 *
 *   --pours=10000   pours thrown a run
 *   --plain=24      pours of the plain peer (its time is scaled)
 *   --runs=3        runs of each, the fastest counts
 */
import { availableParallelism, cpus } from 'node:os';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';
import { type Batch, batchSeed, tellChance, throwBatch, throwingGround } from '#core/pour/chance/chance.ts';
import { filmEnds, filmMoved, pourNow_s } from '#core/pour/chance/cure-ends.ts';
import { DEFAULT_SPREADS } from '#core/pour/chance/spreads.ts';
import { type PlanRequest, planCoat } from '#core/pour/plan-coat.ts';
import { QUICK_20, requestOf } from '#core/pour/sample-request.check.ts';
import { drawModels } from '#core/resin/ensemble.ts';

const flag = (name: string, without: number) =>
  Number(process.argv.find((each) => each.startsWith(`--${name}=`))?.split('=')[1] ?? without);

type Ground = ReturnType<typeof throwingGround>;
interface Ask {
  readonly ground: Ground;
  readonly seeds: readonly number[];
  readonly size: number;
}

interface Timed<T> {
  readonly ms: number;
  /** Of all threads: what it would take alone on one core, whatever else the machine does. */
  readonly cpu_ms: number;
  readonly of: T;
}

if (!isMainThread)
  parentPort!.on('message', ({ ground, seeds, size }: Ask) =>
    parentPort!.postMessage(seeds.map((seed) => throwBatch(ground, size, seed))),
  );
else await main();

async function main(): Promise<void> {
  const [pours, plain, runs] = [flag('pours', 10_000), flag('plain', 24), flag('runs', 3)];
  const request: PlanRequest = requestOf({ card: QUICK_20, crew: 2 });
  const plan = planCoat({ ...request, waysOut: false });
  const fastest = async <T>(work: () => T | Promise<T>): Promise<Timed<T>> => {
    let best: Timed<T> | null = null;
    for (let i = 0; i < runs; i++) {
      const [from, busy] = [performance.now(), process.cpuUsage()];
      const of = await work();
      const ms = performance.now() - from;
      const { user, system } = process.cpuUsage(busy);
      if (best === null || ms < best.ms) best = { ms, cpu_ms: (user + system) / 1000, of };
    }
    return best!;
  };
  const ask = { request, plan, spreads: DEFAULT_SPREADS };
  const ground = await fastest(() => throwingGround(ask));
  const size = Math.ceil(pours / 10);
  const seeds = Array.from({ length: 10 }, (_, i) => batchSeed(1, i));
  const rows: { readonly workers: number; readonly ms: number; readonly cpu_ms: number }[] = [];
  let told = tellChance(plan, ground.of.frame, [
    throwBatch(ground.of, 100, 1),
    throwBatch(ground.of, 100, 2),
  ]);
  for (let workers = 1; workers <= availableParallelism(); workers++) {
    const pool = Array.from({ length: workers }, () => new Worker(new URL(import.meta.url)));
    const share = (k: number) => seeds.filter((_, i) => i % workers === k);
    const throwAll = () =>
      Promise.all(
        pool.map(
          (worker, k) =>
            new Promise<readonly Batch[]>((resolve, reject) => {
              worker.once('message', resolve);
              worker.once('error', reject);
              worker.postMessage({ ground: ground.of, seeds: share(k), size } satisfies Ask);
            }),
        ),
      );
    // the first question waits for the worker to start
    await throwAll();
    const { ms, cpu_ms, of } = await fastest(throwAll);
    rows.push({ workers, ms, cpu_ms });
    told = tellChance(plan, ground.of.frame, of.flat());
    await Promise.all(pool.map((worker) => worker.terminate()));
  }
  const models = drawModels(request.coat.card, plain + 1, 1).slice(1);
  const { film, masses_kg } = ground.of.frame.response;
  const cured = await fastest(() =>
    models.map((model, i) => {
      const by_K = DEFAULT_SPREADS.temperature_K * ((i % 5) - 2);
      const moved = filmMoved(film, by_K, 1);
      return [filmEnds(model, moved), masses_kg.map((mass_kg) => pourNow_s(model, mass_kg, moved))];
    }),
  );
  const scaled = (each_ms: number) => (each_ms / plain) * pours;
  const one = rows[0]!;
  const round = (ms: number) => (ms >= 1000 ? `${(ms / 1000).toFixed(2)} s` : `${ms.toFixed(0)} ms`);
  console.log(
    `${cpus()[0]?.model ?? 'unknown processor'}, ${availableParallelism()} cores, Node ${process.version}`,
  );
  console.log(
    `${plan.cups.length} cups, ${request.coat.crew} people, ${pours} pours: chance ${told.chance.toFixed(3)} ± ${told.standardError.toFixed(3)} (one standard error)\n`,
  );
  console.log('| what | time | processor time | against the plain peer |');
  console.log('|---|---|---|---|');
  const peer_ms = scaled(cured.cpu_ms);
  const row = (what: string, ms: number, cpu_ms: number) =>
    console.log(
      `| ${what} | ${round(ms)} | ${round(cpu_ms)} | ${(peer_ms / cpu_ms).toFixed(0)} times less |`,
    );
  console.log(
    `| plain: every pour cured anew (${plain} pours, scaled) | ${round(scaled(cured.ms))} | ${round(peer_ms)} | 1 |`,
  );
  row(
    'resins cured at the nodes, then all pours thrown, one worker',
    ground.ms + one.ms,
    ground.cpu_ms + one.cpu_ms,
  );
  row('of it the resins', ground.ms, ground.cpu_ms);
  for (const { workers, ms, cpu_ms } of rows)
    row(
      `pours thrown, ${workers} ${workers === 1 ? 'worker' : `workers: ${(one.ms / ms).toFixed(2)} times as fast as one`}`,
      ms,
      cpu_ms,
    );
}
