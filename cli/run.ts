import { parseArgs } from 'node:util';
import { computeJob, shopCards } from '#core/job/compute-job.ts';
import type { JobDocument } from '#core/job/document.ts';
import { jobSchema } from '#core/job/job-schema.ts';
import { checkJob } from '#core/job/read-job.ts';
import { bad, type Result, sayProblem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { DRAWINGS, exportPiece, isDrawingKind } from './export-piece.ts';
import { planJson } from './plan-json.ts';
import { planText } from './plan-text.ts';

/** Exit codes: 0 all well; 1 the command was not understood; 2 the job file has problems. */
export interface Answer {
  readonly exitCode: 0 | 1 | 2;
  readonly out: string;
  readonly err: string;
}

const HELP = `pourwright: from a piece, a resin and a shop temperature to a pour plan

  pourwright plan JOB.json     what to mix, in which cups, what happens minute by minute, when the next coat goes on
  pourwright check JOB.json    is the job file sound? what is wrong, doubtful or missing
  pourwright export JOB.json   the piece as a drawing file (--as dxf, dxf-r12 or svg)
  pourwright schema            the JSON Schema of a job file

  --piece NAME      the piece to export, by its name or id (the first when left out)
  --json            answer as JSON
  --units us        feet, ounces and Fahrenheit (the default)
  --units metric    millimetres, millilitres and Celsius
  --help

JOB.json may be - for standard input.
Exit codes: 0 all well; 1 the command was not understood; 2 the job file has problems.
`;

/** One run of the command line, without touching the process: arguments in, texts and exit code out. */
export function run(args: readonly string[], read: (path: string) => string): Answer {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(args);
  } catch (error) {
    return confused(error instanceof Error ? error.message : String(error));
  }
  const { values, positionals } = parsed;
  const [command, path, ...rest] = positionals;
  if (values.help === true || command === undefined)
    return command === undefined && values.help !== true ? confused('Say what to do.') : well(HELP);
  const units = values.units;
  if (units !== 'us' && units !== 'metric')
    return confused(`--units is ${JSON.stringify(units)}; allowed: us, metric.`);
  if (command === 'schema') return well(`${JSON.stringify(jobSchema(), null, 2)}\n`);
  if (command !== 'plan' && command !== 'check' && command !== 'export')
    return confused(`There is no command ${JSON.stringify(command)}; allowed: plan, check, export, schema.`);
  if (path === undefined) return confused(`${command} needs the name of a job file.`);
  if (rest.length > 0) return confused(`${command} takes one job file; also read: ${rest.join(' ')}.`);
  const kind = values.as;
  if (!isDrawingKind(kind))
    return confused(`--as is ${JSON.stringify(kind)}; allowed: ${DRAWINGS.join(', ')}.`);

  const job = readJobFile(path, read, units);
  const json = values.json === true;
  if (!job.ok) return refused(job.problems, json);
  const forecast = computeJob(job.value, { system: units });
  if (command === 'export') {
    const wanted = values.piece;
    const { pieces } = forecast;
    const named =
      wanted === undefined ? pieces[0] : pieces.find(({ id, name }) => id === wanted || name === wanted);
    if (named === undefined)
      return confused(
        `--piece is ${JSON.stringify(wanted)}; allowed: ${pieces.map(({ name }) => name).join(', ')}.`,
      );
    if (named.piece !== null) return well(exportPiece(named.piece, kind, units));
    if (forecast.problems.length > 0) return refused(forecast.problems, json);
    return { exitCode: 2, out: '', err: 'There is no sound piece in this job to draw.\n' };
  }
  if (command === 'check') {
    const sound = forecast.problems.length === 0;
    if (json)
      return {
        exitCode: sound ? 0 : 2,
        out: `${JSON.stringify({ ok: sound, problems: forecast.problems, warnings: forecast.warnings, missing: forecast.missing }, null, 2)}\n`,
        err: '',
      };
    if (!sound) return refused(forecast.problems, false);
    const lines = [
      `${path}: sound.`,
      ...forecast.warnings.map((warning) => `  doubtful: ${sayProblem(warning)}`),
      ...forecast.missing.map((missing) => `  still needs ${missing.needs} (${missing.path})`),
    ];
    return well(`${lines.join('\n')}\n`);
  }
  if (forecast.problems.length > 0) return refused(forecast.problems, json);
  if (forecast.coats.every((coat) => coat.plan === null)) {
    const needs = forecast.missing.map((missing) => `  needs ${missing.needs} (${missing.path})`).join('\n');
    return { exitCode: 2, out: '', err: `Not enough in this job for a plan yet.\n${needs}\n` };
  }
  return well(
    json
      ? `${JSON.stringify(planJson(job.value, forecast), null, 2)}\n`
      : planText(job.value, forecast, units),
  );
}

function parse(args: readonly string[]) {
  return parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      json: { type: 'boolean' },
      units: { type: 'string', default: 'us' },
      as: { type: 'string', default: 'dxf' },
      piece: { type: 'string' },
      help: { type: 'boolean', short: 'h' },
    },
  });
}

/** Larger than any job a person writes; a slip of the hand (a video, a disk image) is answered at once. */
const LARGEST_FILE = 2_000_000;

function readJobFile(path: string, read: (path: string) => string, system: System): Result<JobDocument> {
  let text: string;
  try {
    text = read(path);
  } catch (error) {
    const why =
      (error as { code?: string }).code === 'ENOENT' ? 'There is no such file.' : 'The file cannot be read.';
    return bad({
      path: '',
      code: 'file.unreadable',
      message: why,
      read: path,
      allowed: 'a job file, or - for standard input',
    });
  }
  if (text.length > LARGEST_FILE)
    return bad({
      path: '',
      code: 'file.too-large',
      message: 'This is too large for a job file.',
      read: `${text.length} characters`,
      allowed: 'up to 2,000,000 characters',
    });
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return bad({
      path: '',
      code: 'file.not-json',
      message: `This is not JSON: ${error instanceof Error ? error.message : String(error)}.`,
      read: text.slice(0, 60),
      allowed: 'a job file (see pourwright schema)',
    });
  }
  return checkJob(json, shopCards({}), system);
}

function well(out: string): Answer {
  return { exitCode: 0, out, err: '' };
}

function confused(why: string): Answer {
  return { exitCode: 1, out: '', err: `${why}\n\n${HELP}` };
}

function refused(problems: readonly Parameters<typeof sayProblem>[0][], json: boolean): Answer {
  if (json) return { exitCode: 2, out: `${JSON.stringify({ ok: false, problems }, null, 2)}\n`, err: '' };
  const lines = problems.map((problem) => `  ${sayProblem(problem)}`);
  return {
    exitCode: 2,
    out: '',
    err: `${problems.length} ${problems.length === 1 ? 'problem' : 'problems'} in the job file:\n${lines.join('\n')}\n`,
  };
}
