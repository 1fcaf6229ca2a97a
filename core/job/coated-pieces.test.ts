import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measurePiece } from '#core/piece/measure.ts';
import { planCoat } from '#core/pour/plan-coat.ts';
import { SHOP_DEFAULTS } from '#core/pour/shop-rates.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import { computeJob } from './compute-job.ts';
import { emptyPiece, type JobDocument, type PieceDocument } from './document.ts';
import type { CoatForecast } from './forecast.ts';
import { withPiece } from './pieces.ts';
import { changed, job } from './sample.check.ts';

const top = (length: string, width: string, more: Partial<PieceDocument> = {}): PieceDocument => ({
  ...emptyPiece(),
  outline: { shape: 'rectangle', length, width, cornerRadius: '' },
  bodyThickness: '1 1/2 in',
  boardThickness: '3/4 in',
  ...more,
});
/** Only the first coat: planning is what takes time. */
const one: JobDocument = { ...job, coats: job.coats.slice(0, 1) };
const shelf = top('36 in', '10 in', { name: 'shelf' });
const two = withPiece(one, 'shelf', shelf);
const on = (of: JobDocument, pieces: readonly string[]): JobDocument => ({
  ...of,
  coats: of.coats.map((coat) => ({ ...coat, pieces: [...pieces] })),
});
const line = (coat: CoatForecast, key: string) =>
  coat.plan!.quantity.lines.find((each) => each.key === key)?.volume_m3 ?? 0;

describe('a job of one piece', () => {
  it('is planned from the measures of that piece and nothing else', () => {
    const { coats, measures, piece, pieces } = computeJob(one);
    const { plan, pour } = coats[0]!;
    const measured = measurePiece(piece!);
    expect(measured.ok && measured.value).toEqual(measures);
    expect(pieces).toHaveLength(1);
    const slowerCards = GENERIC_CARDS.filter(
      (card) => card.model.kRef_per_s < pour!.coat.card.model.kRef_per_s,
    );
    const request = {
      ...pour!,
      measures: measures!,
      rates: SHOP_DEFAULTS,
      slowerCards,
      system: 'us' as const,
    };
    expect(planCoat(request)).toEqual(plan);
  });

  it('does not change when a coat names its piece', () => {
    expect(computeJob(on(one, ['piece']))).toEqual(computeJob(one));
  });

  it('does not change for a piece that no coat is poured on', () => {
    const alone = computeJob(one);
    const beside = computeJob(on(two, ['piece']));
    expect(beside.coats).toEqual(alone.coats);
    expect([beside.piece, beside.measures]).toEqual([alone.piece, alone.measures]);
  });
});

describe('a coat on several pieces', () => {
  const all = computeJob(two).coats[0]!;

  it('takes tops and faces of all of them, as jobs of their own would', () => {
    const apart = [computeJob(one), computeJob({ ...one, piece: shelf })].map(({ coats }) => coats[0]!);
    for (const key of ['top', 'faces'])
      expect(line(all, key)).toBeCloseTo(line(apart[0]!, key) + line(apart[1]!, key), 12);
    expect(all.pieces).toEqual(['piece', 'shelf']);
  });

  it('comes to the same whichever piece stands first', () => {
    const turned = withPiece({ ...one, piece: shelf }, 'counter', one.piece);
    const other = computeJob(turned).coats[0]!.plan!;
    expect(other.quantity.volume_m3).toBeCloseTo(all.plan!.quantity.volume_m3, 9);
    expect(other.cups.length).toBe(all.plan!.cups.length);
    expect(other.verdict).toBe(all.plan!.verdict);
    expect(other.slack_s).toBeCloseTo(all.plan!.slack_s, 3);
  });

  it('counts a splash once, with the piece it stands on', () => {
    const splash = { side: 'back', height: '4 in', thickness: '3/4 in' } as const;
    const withSplash = changed(two, 'otherPieces.0.splashes', [splash]);
    const inch = 0.0254;
    const area_m2 = 36 * inch * 4.75 * inch;
    const film_m = computeJob(withSplash).coats[0]!.pour!.coat.film_m;
    expect(line(computeJob(withSplash).coats[0]!, 'top') - line(all, 'top')).toBeCloseTo(
      area_m2 * film_m,
      12,
    );
  });

  it('may leave some out', () => {
    const only = computeJob(on(two, ['shelf'])).coats[0]!;
    expect(line(only, 'top')).toBe(line(computeJob({ ...one, piece: shelf }).coats[0]!, 'top'));
  });

  it('is not planned while one of its pieces is not there, and is when it leaves that one out', () => {
    const open = withPiece(one, 'open');
    const { coats, missing, problems } = computeJob(open);
    expect(coats[0]!.plan).toBeNull();
    expect(problems).toEqual([]);
    expect(missing.map(({ path }) => path)).toContain('otherPieces.0.outline');
    expect(computeJob(on(open, ['piece'])).coats[0]!.plan).not.toBeNull();
  });

  it('says of which board its times are, when they differ', () => {
    const thin = changed(two, 'otherPieces.0.boardThickness', '1/2 in');
    const { warnings, coats } = computeJob(thin);
    expect(warnings.find(({ code }) => code === 'warning.boards')).toMatchObject({ path: 'coats.0.pieces' });
    expect(coats[0]!.pour!.board.thickness_m).toBeCloseTo(0.01905, 9);
    expect(computeJob(two).warnings.some(({ code }) => code === 'warning.boards')).toBe(false);
  });
});

describe('what is wrong with a further piece', () => {
  it('stands at its own fields', () => {
    const hole = { ...job.piece.cutOuts[0]!, fromLeft: '1/2 in', fromFront: '5 in' };
    const { problems, piece, pieces } = computeJob(changed(two, 'otherPieces.0.cutOuts', [hole]));
    expect(problems.map(({ path }) => path)).toEqual(['otherPieces.0.cutOuts.0.fromLeft']);
    expect(piece).not.toBeNull();
    expect(pieces[1]).toMatchObject({ id: 'shelf', name: 'shelf', path: 'otherPieces.0', piece: null });
  });

  it('takes no number out of a sound piece, whatever is typed', () => {
    const { piece, measures } = computeJob({ ...one, coats: [] });
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.constantFrom('length', 'width'), (text, field) => {
        const typed = changed({ ...two, coats: [] }, `otherPieces.0.outline.${field}`, text);
        const forecast = computeJob(typed);
        expect([forecast.piece, forecast.measures]).toEqual([piece, measures]);
        for (const { path } of [...forecast.problems, ...forecast.missing])
          expect(path === 'coats' || path.startsWith('otherPieces.0')).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});
