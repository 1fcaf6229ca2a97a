/** docs/performance.md from one run. */
import type { AppRow } from './app-rows.ts';
import { BOARD_NODES, FILM_NODES } from './forecast/problem.ts';
import { DEFAULT_RELATIVE, type Entry, type Race, type Solver } from './forecast/race.ts';
import { type Run, timeAtError } from './work-precision.ts';

export interface RunFacts {
  readonly machine: string;
  readonly versions: readonly string[];
  readonly missing: readonly string[];
  readonly rounds: number;
  readonly diagram: string;
}

const GOAL_SCIPY = 50;
const GOAL_CVODE = 1;

export const runsBy = (entries: readonly Entry[], error: 'stages' | 'final'): Run[] =>
  entries.map((entry) => ({ tolerance: entry.tolerance, cpu_s: entry.cpu_s, error: entry[error] }));

export const defaultEntry = (race: Race): Entry =>
  race.solvers[0]!.entries.find((entry) => entry.tolerance === DEFAULT_RELATIVE)!;

const ms = (seconds: number | null): string => (seconds === null ? '-' : significant(1000 * seconds));
const significant = (value: number): string => String(Number(value.toPrecision(value < 1 ? 2 : 3)));
const scientific = (value: number): string => value.toExponential(1).replace('+', '');

/** How many times our CPU time a peer needs for the error our default has. */
export function ratioAtDefault(
  race: Race,
  peer: Solver,
  error: 'stages' | 'final' = 'stages',
): number | null {
  const own = defaultEntry(race);
  const time = timeAtError(runsBy(peer.entries, error), own[error]);
  return time === null ? null : time / own.cpu_s;
}

function goalOf(key: string): number {
  return key === 'cvode' ? GOAL_CVODE : GOAL_SCIPY;
}

/** "met", or by how much it is missed. */
function judge(ratio: number | null, goal: number): string {
  if (ratio === null) return 'not reached by the peer';
  return ratio >= goal ? 'met' : `**missed** by a factor of ${significant(goal / ratio)}`;
}

function ratioTable(race: Race): string {
  const own = defaultEntry(race);
  const rows = race.solvers.slice(1).map((peer) => {
    const ratio = ratioAtDefault(race, peer);
    const final = ratioAtDefault(race, peer, 'final');
    const time = timeAtError(runsBy(peer.entries, 'stages'), own.stages);
    const goal = goalOf(peer.key);
    return `| ${peer.name} | ${ms(time)} | ${ratio === null ? '-' : significant(ratio)} | ${final === null ? '-' : significant(final)} | ${goal} | ${judge(ratio, goal)} |`;
  });
  return `| solver | ms at the same error of stage times | times ours | times ours, same error of the final state | goal | |
|---|---|---|---|---|---|
| Pourwright, default tolerance | ${ms(own.cpu_s)} | 1 | 1 | | |
${rows.join('\n')}`;
}

const LEVELS = [1e-3, 1e-4, 1e-5, 1e-6];

function levelTable(race: Race): string {
  const rows = race.solvers.map(
    (solver) =>
      `| ${solver.name} | ${LEVELS.map((level) => ms(timeAtError(runsBy(solver.entries, 'stages'), level))).join(' | ')} |`,
  );
  return `| ms for an error of stage times of | ${LEVELS.map(scientific).join(' | ')} |
|---|${LEVELS.map(() => '---|').join('')}
${rows.join('\n')}`;
}

function runTable(solver: Solver): string {
  const rows = solver.entries.map(
    (entry) =>
      `| ${solver.name} | ${scientific(entry.tolerance)} | ${entry.steps} | ${ms(entry.cpu_s)} | ${scientific(entry.stages)} | ${entry.worst} | ${scientific(entry.peaks)} | ${scientific(entry.final)} |`,
  );
  return rows.join('\n');
}

function appTable(rows: readonly AppRow[]): string {
  const lines = rows.map(({ name, cpu_s, slowest_s, goal_s }) => {
    const verdict = cpu_s <= goal_s ? 'met' : `**missed** by a factor of ${significant(cpu_s / goal_s)}`;
    return `| ${name} | ${significant(1000 * cpu_s)} | ${significant(1000 * slowest_s)} | ${1000 * goal_s} | ${verdict} |`;
  });
  return `| call | median, ms | slowest of 7, ms | goal, ms | |
|---|---|---|---|---|
${lines.join('\n')}`;
}

const NO_PEER = 'No peer was found, so there is nothing to compare with.';

/** What missed its goal, in words; the numbers are those of this run. */
function verdict(races: readonly Race[]): string {
  const sayings = races.flatMap((race) =>
    race.solvers.slice(1).map((peer) => {
      const ratio = ratioAtDefault(race, peer);
      const goal = goalOf(peer.key);
      const times = ratio === null ? 'never gets as exact' : `takes ${significant(ratio)} times as long`;
      return `- ${race.problem.name}, ${peer.name} ${times}; goal ${goal}: ${judge(ratio, goal).replaceAll('**', '')}.`;
    }),
  );
  return sayings.join('\n');
}

export function performancePage(races: readonly Race[], rows: readonly AppRow[], facts: RunFacts): string {
  const withPeers = (races[0]?.solvers.length ?? 0) > 1;
  return `# Speed

Written by \`npm run bench\` (\`node benchmarks/run.ts\`); do not edit by hand. All numbers are from one run on one machine: ${facts.machine}
${facts.versions.map((each) => `- ${each}`).join('\n')}
${facts.missing.map((each) => `- Left out, not found. ${each}`).join('\n')}

CPU time, one thread, medians of ${facts.rounds} rounds in which all solvers take turns; each sample is the mean of many forecasts after
warming up. Ours counts every thread of the process, so the compiler's and the collector's too. The thickness map has its own page,
[performance-film.md](performance-film.md). The chance to finish in time: [performance-chance.md](performance-chance.md).

## Against the goals

The forecast is to be at least ${GOAL_SCIPY} times as fast as SciPy's solve_ivp and no slower than SUNDIALS CVODE at the same error:

${withPeers ? verdict(races) : NO_PEER}

## One forecast

A cup of 500 g and a film of 2.5 mm on 18 mm MDF, steady air, 72 h, all stages that lie in it (a 30-day history, and so "in use"
and "full cure", is not part of it). ${FILM_NODES + BOARD_NODES} nodes and ${FILM_NODES} conversions in the film, one of each in the cup. The peers solve the same equations
with the same tables of heat loss, handed to them ready made; ours makes its tables in the time shown, and the histories with viscosity
and flow budget that the app draws, which the peers do not.

**Error**: the largest relative deviation of a stage time from the reference (${races[0]?.reference ?? ''}; our own solver at its tightest
agrees with it to ${scientific(Math.max(...races.map((race) => race.agreement.stages_s)))} s and, in the state, ${scientific(Math.max(...races.map((race) => race.agreement.final)))}; stage times are sought to 0.01 s, which is the floor of our error). Error of the final state: conversions, and temperatures per 100 K.
Times of the two peaks are listed, but are not part of the error: they lie on the flat top of a curve. A peer's time at the same error is read from its own
runs at several tolerances, between neighbours on logarithmic axes.

- **CVODE (C)**: BDF, Newton with the exact Jacobian, banded direct solver (dense for the cup), its own root finding, memory kept
  from run to run.
- **SciPy, usual**: solve_ivp as it is mostly written: right side in NumPy, stages as event functions, no Jacobian given.
- **SciPy, tuned**: the fastest we found: scalar Python instead of NumPy (a fifth of the time or less for so few unknowns), exact Jacobian (banded for LSODA), stages sought
  on the dense output afterwards.

${withPeers ? races.map((race) => `### ${race.problem.name}\n\n${ratioTable(race)}\n\n${levelTable(race)}`).join('\n\n') : NO_PEER}

![CPU time against error for each solver](${facts.diagram})

Drawn for ${races[0]?.problem.name ?? ''}. Marks are runs, lines join those that no other run of the same solver beats in both error and time.

### Why it is what it is

Why not 50 times against the tuned LSODA: its multistep steps are about as few as ours, and LSODA itself is compiled. A profile of one run (from
which the figures here are taken; they are not measured again) had some 590 calls of a scalar right side, 3 us each for the cup and 8 us for the film, in all
about 3 of its 11 ms; the rest is solve_ivp's own Python about each of some 340 steps, the Jacobian, and the search for the stages. Ours took 0.57 ms: 0.24 ms in the
steps of the film and 0.13 ms in those of the cup (2.2 and 0.6 us a step; a step of CVODE took 2.1 us on the average of both), 0.07 ms for the histories, 0.05 ms for the tables of
heat loss and 0.03 ms for the stages. A fiftieth of LSODA's time would be 0.24 ms, less than the steps alone. The default tolerance is tighter than a forecast needs; the
tolerance of the draws (1e-4) takes two thirds of the time. Ours is of third order: its lead shrinks as the error gets tighter, and below about 1e-6 CVODE's higher order is ahead.

CVODE's error weights are ours. Temperature weights from 10 to 1000 times the relative tolerance instead of 100 were tried once and moved its time at our error by
-9 to +15 %, which changes none of the above.

## What the app calls

${appTable(rows)}

A job whose coat does not fit is planned again for every way out that is tried, which is why it takes longer than one that fits.

## All runs of ${races[0]?.problem.name ?? ''}

| solver | tolerance | steps, cup and film | ms | error of stages | of which stage | error of peak times | error of final state |
|---|---|---|---|---|---|---|---|
${races[0]?.solvers.map(runTable).join('\n') ?? ''}
`;
}
