import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import { checkShape } from './check-job.ts';
import { computeJob } from './compute-job.ts';
import type { JobDocument } from './document.ts';
import { checkJob, readJob } from './read-job.ts';
import { changed, job, withCoat, withPiece } from './sample.check.ts';

function texts(value: unknown, at = ''): string[] {
  if (typeof value === 'string') return [at];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inside]) => texts(inside, at === '' ? key : `${at}.${key}`));
}

const places = texts(job);
/** Where the figures stand that a plan is computed from. */
const computed = places.filter((path) => /^(piece|room|coats)\./.test(path));
const quantity = fc
  .tuple(
    fc.oneof(
      fc.integer({ min: -5, max: 300 }),
      fc.double({ min: -2, max: 400, noNaN: true }).map((value) => Number(value.toPrecision(3))),
    ),
    fc.constantFrom('mm', 'in', 'ft', 'm', 'mil', 'fl oz/sq ft', 'F', 'C', '%', 'g', 'kg', 'lb', 'h', ''),
  )
  .map(([figure, unit]) => `${figure} ${unit}`);
const word = fc.constantFrom(
  ...['', ' ', 'wrapped', 'dammed', 'oval', 'rectangle', 'bullnose', 'chiselled', 'bevel', 'wall', 'seam'],
  ...['quick-20', 'solid wood', 'plywood', 'flood coat', 'none', 'alcohol ink', '2026-02-31T09:00', 'NaN'],
);

describe('whatever a text of a job says', () => {
  it('is answered, never thrown at, in every text field', () => {
    const typed = fc.oneof(fc.string(), fc.string({ unit: 'grapheme', maxLength: 30 }), quantity, word);
    for (const place of places)
      fc.assert(
        fc.property(typed, (text) => {
          const checked = checkJob(changed(job, place, text), GENERIC_CARDS, 'metric');
          if (checked.ok) return;
          for (const problem of checked.problems) {
            expect(problem.read, `${place} ${problem.code}`).toBeDefined();
            expect(problem.allowed, `${place} ${problem.code}`).toBeTruthy();
          }
        }),
        { numRuns: 25, seed: 4 },
      );
  });

  it('is computed or explained: finite figures, and a reason for every coat without a plan', () => {
    let planned = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...computed), fc.oneof(quantity, word)), {
          minLength: 1,
          maxLength: 3,
        }),
        (edits) => {
          const document = edits.reduce<JobDocument>((at, [path, text]) => changed(at, path, text), job);
          const shape = checkShape(document);
          if (!shape.ok) return;
          const forecast = computeJob(shape.value);
          const plans = forecast.coats.filter((coat) => coat.plan !== null).length;
          planned += plans;
          expect(unsound(forecast)).toEqual([]);
          if (plans < forecast.coats.length)
            expect(forecast.problems.length + forecast.missing.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 80, seed: 5 },
    );
    expect(planned).toBeGreaterThan(20);
  }, 60_000);
});

describe('a text of spaces is an empty text', () => {
  it.each([
    'coats.0.allowance',
    'coats.0.resinTemperature',
    'coats.0.largestCup',
    'room.board',
    'piece.edges.0.profileSize',
    'piece.edges.0.undersideReturn',
    'piece.outline.cornerRadius',
  ])('%s', (path) => {
    const empty = readJob(changed(job, path, ''), GENERIC_CARDS);
    expect(readJob(changed(job, path, '  '), GENERIC_CARDS)).toEqual(empty);
    expect(empty.coats[0]!.coat).not.toBeNull();
  });

  it('a resin of spaces is missing, not unknown', () => {
    const { missing, problems } = readJob(withCoat({ resin: ' ' }), GENERIC_CARDS);
    expect(problems).toEqual([]);
    expect(missing.map((each) => each.path)).toEqual(['coats.0.resin']);
  });
});

describe('what is allowed is told', () => {
  const allowed = (document: JobDocument, system?: 'us' | 'metric') => {
    const checked = checkJob(document, GENERIC_CARDS, system);
    return checked.ok ? 'all of it' : checked.problems.map((problem) => problem.allowed).join('; ');
  };

  it('in the units of the shop, whatever was typed', () => {
    const thick = withPiece({ bodyThickness: '2 ft' });
    expect(allowed(thick, 'metric')).toBe('3 mm to 300 mm');
    expect(allowed(thick, 'us')).toBe('0.1182 in to 11.81 in');
    const warm = changed(job, 'room.air', '120 F');
    expect(allowed(warm, 'metric')).toBe('5 °C to 45 °C');
    expect(allowed(warm, 'us')).toBe('41 °F to 113 °F');
  });

  it('in the units that were typed where the shop is not known', () => {
    expect(allowed(withPiece({ bodyThickness: '2 ft' }))).toBe('0.009843 ft to 0.9842 ft');
    expect(allowed(withPiece({ bodyThickness: '2 m' }))).toBe('0.003 m to 0.3 m');
  });

  it('so that the limit of a film may be typed as it is told', () => {
    for (const system of ['us', 'metric'] as const) {
      const limit = allowed(withCoat({ film: '12 mm' }), system);
      const film = /^up to (.*)$/.exec(limit)?.[1];
      expect(film, limit).toBeDefined();
      expect(allowed(withCoat({ film: film! }), system)).toBe('all of it');
    }
  });

  it('and a humidity no air has is refused before a dew point is asked of it', () => {
    expect(allowed(changed(job, 'room.humidity', '0.5 %'))).toBe('1% to 100%');
    expect(computeJob(changed(job, 'room.humidity', '1 %')).room!.dewPoint_K).toBeGreaterThan(200);
  });
});

/** Paths of figures that are no number. */
function unsound(value: unknown, at = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [at];
  if (ArrayBuffer.isView(value))
    return (value as Float64Array).some((figure) => !Number.isFinite(figure)) ? [at] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inside]) => unsound(inside, `${at}.${key}`));
}
