import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movementProblems, Offcut, OffcutMovement, offcutsOnShelf, standingCuts } from './offcuts.ts';

const uuid = (n: number) => `0190d000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const offcut = (n: number, length_m = 0.8): Offcut =>
  Offcut.parse({ id: uuid(n), board: 'MDF', thickness_m: 0.019, length_m, width_m: 0.3 });
const JOB = uuid(900);
const move = (n: number, more: object): OffcutMovement =>
  OffcutMovement.parse({ id: uuid(100 + n), why: 'cut as planned', jobId: JOB, ...more });
const cut = move(1, { puts: [offcut(1), offcut(2)] });
const next = move(2, { puts: [offcut(3)], takes: [uuid(1)] });
const undo = move(3, { why: 'reversed', reverses: next.id });
const ids = (movements: readonly OffcutMovement[]) => offcutsOnShelf(movements).map(({ id }) => id);

describe('offcuts on the shelf', () => {
  it('are what was put and not taken', () => {
    expect(ids([])).toEqual([]);
    expect(ids([cut])).toEqual([uuid(1), uuid(2)]);
    expect(ids([cut, next])).toEqual([uuid(2), uuid(3)]);
  });

  it('are as before once a movement is reversed', () => {
    expect(new Set(ids([cut, next, undo]))).toEqual(new Set([uuid(1), uuid(2)]));
    expect(standingCuts([cut, next, undo], JOB)).toEqual([cut]);
    expect(standingCuts([cut], uuid(901))).toEqual([]);
    expect(standingCuts([cut], JOB, 'shelf')).toEqual([]);
  });
});

describe('a movement is refused', () => {
  const codes = (before: readonly OffcutMovement[], after: OffcutMovement) =>
    movementProblems(before, after).map(({ code }) => code);

  it('that takes what is not there, twice or any more', () => {
    expect(codes([cut], next)).toEqual([]);
    expect(codes([], next)).toEqual(['offcut.gone']);
    expect(codes([cut, next], move(4, { takes: [uuid(1)] }))).toEqual(['offcut.gone']);
    expect(codes([cut], move(4, { takes: [uuid(1), uuid(1)] }))).toEqual(['offcut.gone']);
  });

  it('that puts under an id that was used, or moves nothing', () => {
    expect(codes([cut], move(4, { puts: [offcut(1)] }))).toEqual(['offcut.same-id']);
    expect(codes([cut], move(4, {}))).toEqual(['offcut.empty']);
  });

  it('that undoes what is not there, was undone, is an undoing, or whose offcuts were used', () => {
    expect(codes([cut], undo)).toEqual(['offcut.unknown']);
    expect(codes([cut, next, undo], move(4, { why: 'reversed', reverses: next.id }))).toEqual([
      'offcut.twice',
    ]);
    expect(codes([cut, next, undo], move(4, { why: 'reversed', reverses: undo.id }))).toEqual([
      'offcut.reversal',
    ]);
    expect(codes([cut, next], move(4, { why: 'reversed', reverses: cut.id }))).toEqual(['offcut.used']);
    expect(codes([cut, next, undo], move(4, { why: 'reversed', reverses: cut.id }))).toEqual([]);
  });
});

describe('any accepted history', () => {
  it('never has an offcut twice, and undoing everything from the end leaves an empty shelf', () => {
    const step = fc.record({ puts: fc.nat({ max: 3 }), take: fc.nat({ max: 4 }), undo: fc.boolean() });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 15 }), (steps) => {
        const history: OffcutMovement[] = [];
        let made = 0;
        steps.forEach(({ puts, take, undo: back }, i) => {
          const there = ids(history);
          const standing = standingCuts(history, JOB).at(-1);
          const movement =
            back && standing !== undefined
              ? move(1000 + i, { why: 'reversed', reverses: standing.id })
              : move(1000 + i, {
                  puts: Array.from({ length: puts }, () => offcut(++made)),
                  takes: there.slice(0, take),
                });
          if (movementProblems(history, movement).length === 0) history.push(movement);
          expect(new Set(ids(history)).size).toBe(ids(history).length);
        });
        for (let last = standingCuts(history, JOB).at(-1), i = 0; last !== undefined; i++) {
          const movement = move(5000 + i, { why: 'reversed', reverses: last.id });
          expect(movementProblems(history, movement)).toEqual([]);
          history.push(movement);
          last = standingCuts(history, JOB).at(-1);
        }
        expect(ids(history)).toEqual([]);
      }),
      { seed: 6 },
    );
  });
});
