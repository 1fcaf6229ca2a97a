import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import { roundTable } from '#examples/jobs.ts';
import { checkShape } from './check-job.ts';
import type { JobDocument } from './document.ts';
import { checkJob } from './read-job.ts';
import { changed, job, withCoat } from './sample.check.ts';

const problemsOf = (input: unknown) => {
  const checked = checkJob(input, GENERIC_CARDS);
  return checked.ok ? [] : checked.problems;
};

describe('the shape', () => {
  it.each([
    [null, '', 'null'],
    [[], '', 'a list'],
    ['job', '', 'string'],
    [{}, 'format', 'nothing'],
    [{ format: { toString: 1 } }, 'format', '{"toString":1}'],
    [{ format: 'pourwright job 2' }, 'format', 'pourwright job 2'],
  ])('refuses %j', (input, path, shown) => {
    expect(problemsOf(input)).toMatchObject([{ path, read: shown }]);
  });

  it('tells the moves a look may have, and the unit of a drawn figure', () => {
    const withMove = (move: object) => ({
      ...job,
      coats: [{ ...job.coats[0], look: { version: 1, moves: [move] } }],
    });
    expect(problemsOf(withMove({ kind: 'sprinkle', id: 'x' }))).toMatchObject([
      {
        path: 'coats.0.look.moves.0.kind',
        read: 'sprinkle',
        allowed: expect.stringContaining('puddle, stroke'),
      },
    ]);
    const far = { kind: 'puddle', id: 'x', colour: '1', volume_m3: 0, path: [[0, 99]] };
    expect(problemsOf(withMove(far)).map((problem) => problem.allowed)).toEqual([
      'at least 1e-9 m3',
      'at most 20 m',
    ]);
  });

  it('names a field that a job does not have, and the shapes an outline may have', () => {
    expect(problemsOf({ ...job, colour: 'red' })).toMatchObject([
      { path: '', allowed: 'no field called colour' },
    ]);
    expect(problemsOf(changed(job, 'piece.outline', { shape: 'star' }))).toMatchObject([
      { path: 'piece.outline.shape', allowed: 'rectangle, ell, round, ellipse, polygon' },
    ]);
    expect(problemsOf(withCoat({ crew: 9 }))).toMatchObject([
      { path: 'coats.0.crew', read: '9', allowed: 'at most 3' },
    ]);
    expect(problemsOf({ ...job, title: 'x'.repeat(300) })).toMatchObject([
      { path: 'title', allowed: 'at most 200 characters' },
    ]);
  });

  it('throws on nothing whatever, and tells path, read and allowed of every problem', () => {
    fc.assert(
      fc.property(fc.oneof(fc.anything(), fc.jsonValue()), (input) => {
        for (const problem of problemsOf(input)) {
          expect(typeof problem.path).toBe('string');
          expect(typeof problem.read).toBe('string');
          expect(problem.allowed).toBeTruthy();
        }
        checkShape(input);
      }),
      { numRuns: 500, seed: 1 },
    );
  });

  it('throws on nothing put in any place of a sound job', () => {
    const places = [...paths(job), ...paths(roundTable).filter((path) => path.startsWith('piece.outline'))];
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.oneof(fc.anything(), fc.string()), (path, value) => {
        let document: JobDocument;
        try {
          document = changed(job, path, value);
        } catch {
          return;
        }
        for (const problem of problemsOf(document)) {
          expect(problem.read, `${path} ${problem.code}`).toBeDefined();
          expect(problem.allowed, `${path} ${problem.code}`).toBeTruthy();
        }
      }),
      { numRuns: 1000, seed: 2 },
    );
  });
});

function paths(value: unknown, at = ''): string[] {
  if (typeof value !== 'object' || value === null) return [at];
  return Object.entries(value).flatMap(([key, inside]) => {
    const path = at === '' ? key : `${at}.${key}`;
    return typeof inside === 'object' ? [path, ...paths(inside, path)] : [path];
  });
}
