import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { checkShape } from '#core/job/check-job.ts';
import { jobSchema } from '#core/job/job-schema.ts';
import counter from './counter-and-shelf.json' with { type: 'json' };
import ell from './ell-counter.json' with { type: 'json' };
import hall from './hall-table.json' with { type: 'json' };
import * as read from './jobs.ts';
import round from './round-table.json' with { type: 'json' };
import vanity from './vanity-vessel-sink.json' with { type: 'json' };

const published = readFileSync(new URL('../docs/job.schema.json', import.meta.url), 'utf8');
const validate = new Ajv2020({ strict: true, allErrors: true }).compile(JSON.parse(published));
const files = Object.entries({ counter, ell, hall, round, vanity });

describe('docs/job.schema.json', () => {
  it('is what this version reads (if not: node scripts/job-schema.ts)', () => {
    expect(published).toBe(`${JSON.stringify(jobSchema(), null, 2)}\n`);
  });

  it.each(files)('accepts the example file %s as it is written', (_name, job) => {
    expect(validate(job), JSON.stringify(validate.errors)).toBe(true);
  });

  it.each(Object.entries(read))('accepts %s with every field filled in', (_name, job) => {
    expect(validate(job), JSON.stringify(validate.errors)).toBe(true);
  });

  it('needs nothing but the format', () => {
    expect(validate({ format: 'pourwright job 1' })).toBe(true);
    expect(validate({})).toBe(false);
  });

  const wrong: readonly (readonly [what: string, job: unknown, at: string])[] = [
    ['a list', [], ''],
    ['another format', { ...vanity, format: 'pourwright job 2' }, '/format'],
    ['an unknown field', { ...vanity, colour: 'blue' }, ''],
    ['an unknown stage', { ...vanity, agreed: { stage: 'sold' } }, '/agreed/stage'],
    ['a number where a text is needed', { ...vanity, room: { air: 73 } }, '/room/air'],
    ['a title of 201 characters', { ...vanity, title: 'x'.repeat(201) }, '/title'],
    ['an unknown outline', { ...vanity, piece: { outline: { shape: 'star' } } }, '/piece/outline'],
    [
      'a size of another outline',
      { ...vanity, piece: { outline: { shape: 'round', diameter: '1 m', length: '1 m' } } },
      '/piece/outline',
    ],
    ['an edge without a name', { ...vanity, piece: { edges: [{ kind: 'wall' }] } }, '/piece/edges/0'],
    ['a coat without an id', { ...vanity, coats: [{ kind: 'flood coat' }] }, '/coats/0'],
    ['a crew of four', { ...vanity, coats: [{ id: 'a', crew: 4 }] }, '/coats/0/crew'],
    ['half a person', { ...vanity, coats: [{ id: 'a', crew: 1.5 }] }, '/coats/0/crew'],
    [
      'a start without a time',
      { ...vanity, coats: [{ id: 'a', startsAt: '2026-05-14' }] },
      '/coats/0/startsAt',
    ],
    [
      'a colour by name',
      { ...vanity, coats: [{ id: 'a', colours: [{ swatch: 'red' }] }] },
      '/coats/0/colours/0/swatch',
    ],
    [
      'thirteen coats',
      { ...vanity, coats: Array.from({ length: 13 }, (_, i) => ({ id: `${i}` })) },
      '/coats',
    ],
  ];

  it.each(wrong)('refuses %s, as the reader does', (_what, job, at) => {
    expect(validate(job)).toBe(false);
    expect(validate.errors!.some((error) => error.instancePath.startsWith(at))).toBe(true);
    expect(checkShape(job).ok).toBe(false);
  });
});
