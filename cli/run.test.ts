import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it, test } from 'vitest';
import type { JobDocument } from '#core/job/document.ts';
import { type Answer, run } from './run.ts';

const examples = ['vanity-vessel-sink', 'ell-counter', 'round-table'] as const;
const file = (name: string) => readFileSync(new URL(`../examples/${name}.json`, import.meta.url), 'utf8');
const vanity = JSON.parse(file('vanity-vessel-sink')) as JobDocument;

/** A file system of one file, whatever it is called. */
const holding = (text: string) => () => text;
const asked = (args: string, job: unknown = vanity) =>
  run(args.split(' '), holding(typeof job === 'string' ? job : JSON.stringify(job)));

function gone(): never {
  throw Object.assign(new Error('ENOENT: no such file'), { code: 'ENOENT' });
}

/** Every value in a parsed answer. */
function leaves(value: unknown, path = ''): [string, unknown][] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, inside]) => leaves(inside, `${path}.${key}`));
}

describe('what is asked', () => {
  it.each([
    ['', 'Say what to do.'],
    ['bake JOB.json', 'There is no command "bake"; allowed: plan, check, export, schema.'],
    ['plan', 'plan needs the name of a job file.'],
    ['plan a.json b.json', 'plan takes one job file; also read: b.json.'],
    ['plan a.json --units stone', '--units is "stone"; allowed: us, metric.'],
    ['plan a.json --loud', '--loud'],
  ])('"%s" is not understood: exit code 1, the reason first, then the help', (args, why) => {
    const answer = run(args === '' ? [] : args.split(' '), holding('{}'));
    expect(answer).toMatchObject({ exitCode: 1, out: '' });
    expect(answer.err.split('\n')[0]).toContain(why);
    expect(answer.err).toContain('pourwright plan JOB.json');
  });

  it('gives the help on request, for a command too', () => {
    for (const args of [['--help'], ['-h'], ['plan', '--help']]) {
      const answer = run(args, gone);
      expect(answer).toMatchObject({ exitCode: 0, err: '' });
      expect(answer.out).toContain('Exit codes');
    }
  });

  it('prints the JSON Schema that the examples keep', () => {
    const schema = JSON.parse(asked('schema').out) as object;
    const valid = new Ajv2020({ strict: false }).compile(schema);
    expect(valid(vanity)).toBe(true);
    expect(valid({ ...vanity, colour: 'red' })).toBe(false);
  });
});

describe('a file that is no job', () => {
  const refuses = (answer: Answer, what: string) => {
    expect(answer).toMatchObject({ exitCode: 2, out: '' });
    expect(answer.err).toContain(what);
    expect(answer.err).toMatch(/^\d+ problems? in the job file:\n/);
  };

  it('is not there, cannot be read, is not JSON, is too large, is something else', () => {
    refuses(run(['plan', 'no.json'], gone), 'There is no such file. Read: "no.json"');
    const shut = () => {
      throw Object.assign(new Error('EACCES'), { code: 'EACCES' });
    };
    refuses(run(['plan', 'shut.json'], shut), 'The file cannot be read.');
    refuses(asked('plan a.json', '{"format":'), 'This is not JSON');
    refuses(asked('plan a.json', ''), 'This is not JSON');
    refuses(asked('plan a.json', ' '.repeat(2_000_001)), 'too large for a job file');
    refuses(asked('plan a.json', '[]'), 'A job is an object.');
    refuses(asked('plan a.json', { format: 'something' }), 'format: This is not a job file');
  });

  it('is answered in JSON when JSON is asked for', () => {
    const answer = asked('check a.json --json', '[]');
    expect(answer).toMatchObject({ exitCode: 2, err: '' });
    expect(JSON.parse(answer.out)).toMatchObject({
      ok: false,
      problems: [{ path: '', code: 'job.shape', read: 'a list' }],
    });
  });

  it('names each field, what was read and what is allowed', () => {
    const job = structuredClone(vanity);
    job.piece.bodyThickness = 'thick';
    job.coats[0]!.film = '20 mm';
    const { err, exitCode } = asked('plan a.json', job);
    expect(exitCode).toBe(2);
    expect(err).toMatch(/^2 problems in the job file:/);
    expect(err).toMatch(/piece\.bodyThickness: .* Read: "thick"\. Allowed: /);
    expect(err).toMatch(/coats\.0\.film: .* Read: "20 mm"\. Allowed: up to /);
    expect(asked('plan a.json --units metric', job).err).toMatch(/Allowed: up to [\d.]+ mm\./);
  });

  it('says a piece that cannot be made at the field of the form', () => {
    const job = structuredClone(vanity);
    job.piece.edges[1]!.profileSize = '2 in';
    expect(asked('check a.json', job)).toMatchObject({ exitCode: 2 });
    expect(asked('check a.json', job).err).toContain('piece.edges.1.profileSize: ');
  });
});

describe('check', () => {
  it('says that a sound job is sound, what is doubtful and what is still needed', () => {
    expect(asked('check vanity.json')).toEqual({ exitCode: 0, out: 'vanity.json: sound.\n', err: '' });
    const ell = asked('check ell.json', file('ell-counter'));
    expect(ell.exitCode).toBe(0);
    expect(ell.out).toContain('  doubtful: piece.cutOuts.1.');
    const hall = asked('check hall.json', file('hall-table'));
    expect(hall.exitCode).toBe(0);
    expect(hall.out).toContain('  still needs the air temperature in the shop (room.air)');
  });

  it('says the same in JSON', () => {
    const hall = JSON.parse(asked('check hall.json --json', file('hall-table')).out) as {
      ok: boolean;
      missing: { path: string }[];
    };
    expect(hall.ok).toBe(true);
    expect(hall.missing.map((each) => each.path)).toContain('coats');
  });
});

describe('plan', () => {
  it('asks for what is missing when there is too little for a plan', () => {
    const answer = asked('plan hall.json', file('hall-table'));
    expect(answer).toMatchObject({ exitCode: 2, out: '' });
    expect(answer.err).toContain('Not enough in this job for a plan yet.\n  needs ');
  });

  it('reads standard input when the file is called -', () => {
    let read = '';
    run(['check', '-'], (path) => {
      read = path;
      return JSON.stringify(vanity);
    });
    expect(read).toBe('-');
  });

  describe.each(examples)('of %s', (name) => {
    let us: string;
    let metric: string;
    beforeAll(() => {
      us = asked('plan a.json', file(name)).out;
      metric = asked('plan a.json --units metric', file(name)).out;
    });

    it('keeps to a page’s width and leaves no space at a line’s end', () => {
      for (const line of `${us}${metric}`.split('\n')) {
        expect(line.length, line).toBeLessThanOrEqual(110);
        expect(line).toBe(line.trimEnd());
      }
    });

    it('speaks one system of units', () => {
      expect(us).toContain('°F');
      expect(us).not.toMatch(/°C|\d mm\b|\d mL\b/);
      expect(metric).toContain('°C');
      expect(metric).not.toMatch(/°F|fl oz|\d in\b/);
      for (const text of [us, metric]) expect(text).not.toMatch(/\d [CF]\b|\d %|NaN|Infinity|undefined|null/);
    });

    it('has every section of a work order for every coat', () => {
      const coats = (JSON.parse(file(name)) as JobDocument).coats;
      for (const part of ['HOW MUCH', 'CUPS', 'THE POUR', 'THE FILM', 'AFTER THE POUR', 'MIND'])
        expect(us.split(`\n${part}`)).toHaveLength(coats.length + 1);
      expect(us).toMatch(/CAUTIONS\n {2}- Follow the safety data sheets/);
      expect(us).toMatch(/\nIT (FITS|IS TIGHT|DOES NOT FIT): /);
      expect(us).toMatch(/Hands off until the next +- +- +recoat opens/);
      expect(us).toMatch(/ \d+:\d\d \(to \d+:\d\d\) /);
    });
  });

  it('keeps to the width with long names, a damp room, dates and ways out', () => {
    const job = structuredClone(vanity);
    job.room = { ...job.room, air: '88 F', humidity: '72 %', board: '86 F' };
    job.coats.forEach((coat, index) => {
      Object.assign(coat, { resin: 'quick-20', resinTemperature: '90 F', film: '3 fl oz/sq ft' });
      coat.startsAt = `2026-05-1${index + 4}T09:00`;
    });
    job.title = `Vanity ${'very '.repeat(30)}long`;
    job.coats[0]!.name = 'w'.repeat(80);
    job.coats[0]!.colours[0]!.name = 'a name as long as people type when nobody tells them to stop, or so';
    const { out } = asked('plan a.json', job);
    expect(out).toContain('WAYS OUT');
    expect(out).toContain('IT DOES NOT FIT: ');
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(116);
  });

  it('gives numbers to programs: parsed, finite, nothing null that is a figure', () => {
    const answer = asked('plan a.json --json');
    expect(answer).toMatchObject({ exitCode: 0, err: '' });
    const plan = JSON.parse(answer.out) as { format: string; coats: { plan: { steps: unknown[] } }[] };
    expect(plan.format).toBe('pourwright plan 1');
    expect(plan.coats).toHaveLength(2);
    expect(plan.coats[0]!.plan.steps.length).toBeGreaterThan(5);
    const figures = leaves(plan).filter(([path]) => /_(m|m2|m3|s|K|kg|Pa_s|per_Pa)(\.\d+)?$/.test(path));
    expect(figures.length).toBeGreaterThan(500);
    for (const [path, value] of figures)
      expect(
        typeof value === 'number' ? Number.isFinite(value) : value === null && path.endsWith('lastTouch'),
        path,
      ).toBe(true);
    expect(leaves(plan).some(([, value]) => value === 'NaN')).toBe(false);
  });

  it('gives the same numbers whatever the units of the sentences', () => {
    type Plan = { coats: { plan: { steps: { start_s: number }[]; cups: unknown } }[] };
    const of = (units: string) => JSON.parse(asked(`plan a.json --json --units ${units}`).out) as Plan;
    const [us, metric] = [of('us'), of('metric')];
    expect(metric.coats[0]!.plan.cups).toEqual(us.coats[0]!.plan.cups);
    expect(metric.coats[0]!.plan.steps.map((step) => step.start_s)).toEqual(
      us.coats[0]!.plan.steps.map((step) => step.start_s),
    );
  });

  test.each([
    ['2026-05-14T09:05', 'THE NEXT COAT: TOO EARLY'],
    ['2026-05-16T09:00', 'THE NEXT COAT: ABRADE FIRST'],
  ])('judges a flood coat at %s against the recoat window of the colour coat', (startsAt, says) => {
    const job = structuredClone(vanity);
    job.coats[0]!.startsAt = '2026-05-14T09:00';
    job.coats[1]!.startsAt = startsAt;
    const { out } = asked('plan a.json', job);
    expect(out).toContain('when the parts of the first cup meet on 2026-05-14 at 09:00');
    expect(out).toContain(says);
  });
});
