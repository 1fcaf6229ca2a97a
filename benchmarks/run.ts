/**
 * Speed of the forecast against SciPy and SUNDIALS CVODE, and of what else has a time to keep. Writes docs/performance.md and its diagram.
 *
 *   node benchmarks/run.ts             runs with the peers that are there, and says how to get the others; writes only with all of them
 *   node benchmarks/run.ts --install   first asks apt-get for the peers' Debian packages (needs root)
 *   node benchmarks/run.ts --quick     one round, writes nothing
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { QUICK_20, REGULAR_50 } from '#core/resin/cards.ts';
import { appRows } from './app-rows.ts';
import { type Panel, workPrecisionSvg } from './chart.ts';
import type { ForecastCase } from './forecast/problem.ts';
import { type Race, race } from './forecast/race.ts';
import { findPeers, installPeers } from './peers.ts';
import { defaultEntry, performancePage, runsBy } from './report.ts';

const FLAGS = ['--install', '--quick'];
const DIAGRAM = 'performance-work-precision.svg';
const CASES: readonly ForecastCase[] = [
  { name: `${REGULAR_50.name} at 24 °C`, model: REGULAR_50.model, air_K: 297.15 },
  { name: `${QUICK_20.name} at 27 °C`, model: QUICK_20.model, air_K: 300.15 },
];

const flags = process.argv.slice(2);
const unknown = flags.find((flag) => !FLAGS.includes(flag));
if (unknown !== undefined) {
  console.error(`${unknown} is not known; there are ${FLAGS.join(' and ')}`);
  process.exit(2);
}
if (flags.includes('--install')) installPeers();
const quick = flags.includes('--quick');
const rounds = quick ? 1 : 5;
const folder = mkdtempSync(join(tmpdir(), 'pourwright-bench-'));
try {
  const peers = findPeers(folder);
  for (const each of peers.missing) console.log(`Left out: ${each}`);
  const rows = await appRows();
  const races = CASES.map((problem) => race(problem, peers, rounds));
  const page = performancePage(races, rows, {
    machine: `${cpus()[0]?.model.trim() ?? 'unknown processor'}, ${cpus().length} cores, ${process.platform}.`,
    versions: [
      `Node ${process.version}`,
      ...[peers.cvode, peers.python].flatMap((peer) => (peer === null ? [] : [peer.versions])),
    ],
    missing: peers.missing,
    rounds,
    diagram: DIAGRAM,
  });
  console.log(page);
  if (!quick && peers.missing.length > 0) console.log('Nothing written: the page compares with all peers.');
  if (!quick && peers.missing.length === 0) {
    const docs = join(import.meta.dirname, '..', 'docs');
    writeFileSync(join(docs, 'performance.md'), page);
    writeFileSync(join(docs, DIAGRAM), workPrecisionSvg(panelsOf(races[0]!)));
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function panelsOf(of: Race): Panel[] {
  const own = defaultEntry(of);
  const panel = (title: string, error: 'stages' | 'final'): Panel => ({
    title,
    series: of.solvers.map(({ key, name, entries }) => ({ key, name, runs: runsBy(entries, error) })),
    marked: { tolerance: own.tolerance, cpu_s: own.cpu_s, error: own[error] },
  });
  return [
    panel('Stage times (largest relative error)', 'stages'),
    panel('State after 72 h (largest error)', 'final'),
  ];
}
