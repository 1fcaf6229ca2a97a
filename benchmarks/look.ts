/**
 * Speed of the picture of a look by the processor (core/look) against the same maps in C and in NumPy, in one run on one machine: 60
 * moves, 1024 by 768 samples, one a pixel, all in double precision; colours must be the same but for samples on the very border of two.
 * Then whole pictures with anti-aliasing, in one thread and in several. Prints a table in markdown; with a file name as argument
 * writes it there too. Best of several runs, the contenders taking turns. Needs cc and python3 with NumPy; a peer that is missing
 * is left out and named. `node benchmarks/look.ts [file] [rounds]`
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { moveFigures } from '#core/look/moves/carry.ts';
import { paint, type Raster } from '#core/look/picture.ts';
import { anyLook } from '#core/look/render/any-look.ts';
import { anyPattern } from '#core/look/render/any-pattern.ts';
import { topDrawing } from '#core/look/render/drawing.ts';
import { fitInto } from '#core/look/render/grid.ts';
import { sceneOf } from '#core/look/render/scene.ts';

const [file, roundsText = '5'] = process.argv.slice(2);
const ROUNDS = Math.max(1, Number(roundsText));
const MOVES = 60;
const SEEDS = [1, 2, 3];
const RASTER: Raster = { left_m: 0, front_m: 0, width_m: 1.2, depth_m: 0.9, columns: 1024, rows: 768 };
/** Samples that may fall to the other side of a border by the rounding of another program's exp. */
const MAY_DIFFER = 1e-5;

interface Painted {
  readonly seconds: number;
  readonly colours: Uint8Array;
}

const folder = mkdtempSync(join(tmpdir(), 'look-'));
const program = join(folder, 'look');
const here = import.meta.dirname;
const missing: string[] = [];
function there(name: string, make: () => void): boolean {
  try {
    make();
    return true;
  } catch {
    missing.push(name);
    return false;
  }
}
const quiet = { stdio: 'ignore' } as const;
const FLAGS = ['-O3', '-march=native', '-fno-math-errno', '-fno-trapping-math'];
const hasC = there('cc', () =>
  execFileSync('cc', [...FLAGS, '-o', program, join(here, 'look.c'), '-lm'], quiet),
);
const hasNumPy = there('python3 with NumPy', () => execFileSync('python3', ['-c', 'import numpy'], quiet));

function ask(command: string, args: readonly string[], input: string): Painted {
  const answer = execFileSync(command, args, { input, maxBuffer: 1 << 26 });
  const end = answer.indexOf(10);
  return { seconds: Number(answer.subarray(0, end)), colours: new Uint8Array(answer.subarray(end + 1)) };
}

function ours(pattern: Parameters<typeof paint>[0]): Painted {
  const start = performance.now();
  const colours = paint(pattern, RASTER);
  return { seconds: (performance.now() - start) / 1000, colours };
}

const ms = (seconds: number | undefined): string =>
  seconds === undefined ? '-' : (seconds * 1000).toFixed(0);
const over = (a: number | undefined, b: number | undefined): string =>
  a === undefined || b === undefined ? '-' : (a / b).toFixed(2);

const rows: string[] = [];
try {
  for (const seed of SEEDS) {
    const pattern = anyPattern(seed, MOVES, RASTER.width_m, RASTER.depth_m);
    const { figures, waves } = moveFigures(pattern.moves);
    const { columns, rows: high, width_m, depth_m } = RASTER;
    const wavers = pattern.moves.filter(({ kind }) => kind === 'waver').length;
    const input = [columns, high, width_m, depth_m, pattern.ground, MOVES, wavers, ...figures, ...waves].join(
      ' ',
    );
    const contenders: (readonly [string, () => Painted])[] = [
      ['ours', () => ours(pattern)],
      ...(hasC
        ? ([
            ['plain', () => ask(program, ['plain'], input)],
            ['blocks', () => ask(program, ['blocks'], input)],
          ] as const)
        : []),
      ...(hasNumPy ? ([['numpy', () => ask('python3', [join(here, 'look.py')], input)]] as const) : []),
    ];
    const best = new Map<string, number>();
    const truth = ours(pattern).colours;
    for (let round = 0; round < ROUNDS; round++)
      for (const [name, run] of contenders) {
        const { seconds, colours } = run();
        const apart = colours.reduce((sum, colour, i) => sum + (colour === truth[i] ? 0 : 1), 0);
        if (colours.length !== truth.length || apart > MAY_DIFFER * truth.length)
          throw new Error(`${name} shows ${apart} of ${truth.length} samples otherwise`);
        best.set(name, Math.min(seconds, best.get(name) ?? Number.POSITIVE_INFINITY));
      }
    const [own, plain, blocks, numpy] = ['ours', 'plain', 'blocks', 'numpy'].map((name) => best.get(name));
    rows.push(
      `| ${seed} | ${ms(own)} | ${ms(plain)} | ${over(own, plain)} | ${ms(blocks)} | ${over(own, blocks)} | ${ms(numpy)} | ${over(numpy, own)} |`,
    );
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** A whole picture in so many threads, a band of 16 rows at a time each. */
async function inThreads(count: number): Promise<number> {
  const look = anyLook(1, MOVES);
  const drawing = topDrawing(look.panels);
  const scene = sceneOf({ look, drawing, sheet: fitInto(drawing, 1024, 768) });
  const threads = Array.from(
    { length: count },
    () => new Worker(new URL('./look-worker.ts', import.meta.url)),
  );
  for (const thread of threads) thread.postMessage({ scene });
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round <= ROUNDS; round++) {
    const start = performance.now();
    let next = 0;
    await Promise.all(
      threads.map(async (thread) => {
        while (next < 768) {
          const from = next;
          next += 16;
          thread.postMessage({ from, to: Math.min(768, from + 16) });
          await new Promise((resolve) => thread.once('message', resolve));
        }
      }),
    );
    // The first round compiles.
    if (round > 0) best = Math.min(best, (performance.now() - start) / 1000);
  }
  await Promise.all(threads.map((thread) => thread.terminate()));
  return best;
}

const counts = [1, 2, 4, 8].filter((count) => count <= availableParallelism());
const scaling: string[] = [];
let single = 0;
for (const count of counts) {
  const seconds = await inThreads(count);
  if (count === 1) single = seconds;
  scaling.push(`| ${count} | ${ms(seconds)} | ${over(single, seconds)} |`);
}

const table = `# Picture of a look: speed

${MOVES} moves (${MOVES * 0.6} puddles, the rest strokes, combs, swirls, wavers, tilts), 1.2 by 0.9 m at 1024 by 768, one sample a pixel, one thread, double
precision. Ours: Node ${process.version}. C: cc ${FLAGS.join(' ')}, one sample after another ("plain") and in blocks of 32 by 32 move by move, skipping
moves that do not reach a block, as ours does ("blocks"). NumPy takes all samples of a move at once. ${cpus()[0]?.model.trim() ?? 'unknown processor'},
best of ${ROUNDS} runs taking turns, ms. All show the same colours (up to ${MAY_DIFFER * 1e6} in a million samples on a border). The goal: within 2 times of C.

| seed | ours | C plain | of C plain | C blocks | of C blocks | NumPy | NumPy/ours |
|---|---|---|---|---|---|---|---|
${rows.join('\n')}

A whole picture of a top of 1.2 by 0.6 m in 1024 by 768 pixels, 4 samples a pixel and 16 where those differ, with cut-outs, fog and glitter:

| threads | ms | times one |
|---|---|---|
${scaling.join('\n')}
${missing.length > 0 ? `\nLeft out, not found: ${missing.join(', ')}.\n` : ''}`;
console.log(table);
if (file !== undefined) writeFileSync(file, table);
