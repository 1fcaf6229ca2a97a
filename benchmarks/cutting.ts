/**
 * How often the cutting planner proves its sheets fewest, on draws of 20, 40 and 50 parts from the ten published classes of
 * two-dimensional bin packing, in processor time of one core: node benchmarks/cutting.ts. Goal: 5 s a draw. The
 * instances are our own draws from the published rules; the published instances were not at hand.
 *
 *   --draws=10    draws a class and size
 *   --rounds=N    rounds of search a draw
 *   --free        parts may be turned (left out: fixed, as most of the published figures are)
 */

import { planCutting } from '#core/piece/cutting/plan-cutting.ts';
import { CLASSES, drawClass } from '#core/piece/cutting/published-classes.check.ts';

const flag = (name: string, without: number) =>
  Number(process.argv.find((each) => each.startsWith(`--${name}=`))?.split('=')[1] ?? without);
const draws = flag('draws', 10);
const rounds = flag('rounds', 90_000);
const grain = process.argv.includes('--free') ? 'free' : 'fixed';

const cpu_s = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

console.log(`Grain ${grain}, ${draws} draws a class and size, up to ${rounds} rounds.`);
console.log('class  parts  proven  sheets  bound  slowest s');
let all = 0;
let proven = 0;
let sheets = 0;
let bounds = 0;
let slowest = 0;
const gaps = new Map<number, number>();
CLASSES.forEach((name, index) => {
  for (const count of [20, 40, 50]) {
    const row = { proven: 0, sheets: 0, bound: 0, slowest: 0 };
    for (let seed = 1; seed <= draws; seed++) {
      const { parts, stock } = drawClass(index, count, seed, grain);
      const before = cpu_s();
      const plan = planCutting(parts, stock, { kerf_m: 0, trim_m: 0, rounds, tidyRounds: 0 });
      row.slowest = Math.max(row.slowest, cpu_s() - before);
      if (!plan.ok) throw new Error(plan.problems[0]!.message);
      const used = plan.value.sheets.length;
      const least = Math.ceil(plan.value.lowerBound - 1e-7);
      row.sheets += used;
      row.bound += least;
      if (used === least) row.proven++;
      gaps.set(used - least, (gaps.get(used - least) ?? 0) + 1);
    }
    console.log(
      `${name.padStart(5)}  ${String(count).padStart(5)}  ${`${row.proven}/${draws}`.padStart(6)}  ${String(row.sheets).padStart(6)}  ${String(row.bound).padStart(5)}  ${row.slowest.toFixed(2)}`,
    );
    all += draws;
    proven += row.proven;
    sheets += row.sheets;
    bounds += row.bound;
    slowest = Math.max(slowest, row.slowest);
  }
});
const listed = [...gaps]
  .sort((a, b) => a[0] - b[0])
  .map(([gap, number]) => `${gap} sheets over the bound: ${number}`);
console.log(`Proven fewest: ${proven} of ${all}; ${listed.join('; ')}.`);
console.log(
  `Sheets ${sheets} against ${bounds}, ${((100 * (sheets - bounds)) / sheets).toFixed(2)} % over. Slowest ${slowest.toFixed(2)} s (goal 5).`,
);
