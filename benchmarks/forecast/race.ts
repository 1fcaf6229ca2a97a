/** The same forecast by all solvers, round after round in one process tree, so that a busy minute of the machine hits all of them. */
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import type { Peers } from '../peers.ts';
import { median } from '../work-precision.ts';
import { solveOurs } from './ours.ts';
import { type ForecastCase, problemText } from './problem.ts';
import { type Answer, deviation, stagesOf } from './solution.ts';

export interface Entry {
  readonly tolerance: number;
  /** Medians over the rounds. */
  readonly cpu_s: number;
  readonly stages: number;
  readonly peaks: number;
  readonly final: number;
  readonly worst: string;
  readonly steps: number;
}

export interface Solver {
  readonly name: string;
  readonly key: string;
  readonly entries: readonly Entry[];
}

export interface Race {
  readonly problem: ForecastCase;
  readonly reference: string;
  /** Ours at its tightest against the reference. */
  readonly agreement: { readonly stages_s: number; readonly final: number };
  readonly solvers: readonly Solver[];
}

export const DEFAULT_RELATIVE = 1e-5;
const OURS = [1e-2, 1e-3, 3e-4, 1e-4, 3e-5, DEFAULT_RELATIVE, 3e-6, 1e-6, 1e-7];
const CVODE = [1e-3, 1e-4, 3e-5, 1e-5, 3e-6, 1e-6, 3e-7, 1e-7, 1e-8, 1e-9];
const SCIPY = [1e-2, 1e-3, 1e-4, 1e-5, 3e-6, 1e-6, 3e-7, 1e-7, 1e-8];
/** CPU time a sample of one tolerance aims at, s. */
const SAMPLE_s = 0.12;
/**
 * The solvers must agree this well when pressed, or they do not solve the same equations: the state to 1e-9, stage times to the 0.01 s
 * to which `firstTime` looks for them.
 */
const AGREEMENT = { stages_s: 0.01, final: 1e-9 } as const;

type Ask = (tolerances: readonly number[]) => Answer[];

export function race(problem: ForecastCase, peers: Peers, rounds: number): Race {
  const text = problemText(problem);
  const told = (file: string, args: readonly string[], tolerances: readonly number[]): Answer[] =>
    execFileSync(file, [...args, ...tolerances.map(String)], {
      input: text,
      encoding: 'utf8',
      env: { ...process.env, OPENBLAS_NUM_THREADS: '1', OMP_NUM_THREADS: '1' },
    })
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Answer);
  const { cvode, python } = peers;
  const tightest = solveOurs(problem, 1e-11, 1);
  const reference = cvode === null ? tightest : told(cvode.path, ['1'], [1e-12])[0]!;
  const agreement = agreementOf(tightest, reference);
  if (!(agreement.stages_s <= AGREEMENT.stages_s && agreement.final <= AGREEMENT.final))
    throw new Error(`${problem.name}: ours and CVODE differ by ${JSON.stringify(agreement)}`);

  solveOurs(problem, DEFAULT_RELATIVE, 400);
  const ours: Ask = (tolerances) =>
    tolerances.map((each) => {
      const once = solveOurs(problem, each, 10).cpu_s;
      return solveOurs(problem, each, Math.max(5, Math.round(SAMPLE_s / once)));
    });
  const field: { name: string; key: string; tolerances: readonly number[]; ask: Ask }[] = [
    { name: 'Pourwright', key: 'ours', tolerances: OURS, ask: ours },
  ];
  if (cvode !== null)
    field.push({
      name: 'CVODE (C)',
      key: 'cvode',
      tolerances: CVODE,
      ask: (tolerances) => told(cvode.path, ['120'], tolerances),
    });
  if (python !== null) {
    const script = join(import.meta.dirname, 'scipy_forecast.py');
    for (const way of ['tuned', 'usual'])
      for (const method of ['LSODA', 'BDF'])
        field.push({
          name: `SciPy ${method}, ${way}`,
          key: `${method.toLowerCase()}-${way}`,
          tolerances: SCIPY,
          ask: (tolerances) =>
            told(python.path, [script, way, method, way === 'tuned' ? '3' : '1'], tolerances),
        });
  }
  const answers = field.map(() => [] as Answer[][]);
  for (let round = 0; round < rounds; round++)
    field.forEach(({ ask, tolerances }, i) => {
      answers[i]!.push(ask(tolerances));
    });
  return {
    problem,
    reference: cvode === null ? 'Pourwright at tolerance 1e-11' : 'CVODE at tolerance 1e-12',
    agreement,
    solvers: field.map(({ name, key, tolerances }, i) => ({
      name,
      key,
      entries: tolerances.map((tolerance, k) => {
        const of = answers[i]!.map((round) => round[k]!);
        const { stages, peaks, final, worst } = deviation(of[0]!, reference);
        const cpu_s = median(of.map((each) => each.cpu_s));
        return { tolerance, cpu_s, stages, peaks, final, worst, steps: of[0]!.cup.steps + of[0]!.film.steps };
      }),
    })),
  };
}

function agreementOf(one: Answer, other: Answer): Race['agreement'] {
  const times = stagesOf(one);
  const apart = Object.entries(stagesOf(other)).map(([name, time]) => Math.abs(times[name]! - time));
  return { stages_s: Math.max(...apart), final: deviation(one, other).final };
}
