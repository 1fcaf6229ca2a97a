/**
 * Offcuts on the shelf, as a list of movements that is only ever added to: what a cut put on the shelf and what it took. What is
 * there now follows from the movements in their order; a movement is undone by another one that reverses it.
 */
import { z } from 'zod';
import { BOARD_NAMES } from '#core/piece/body/board-names.ts';
import type { Problem } from '#core/quantity/problem.ts';

const Id = z.uuid().toLowerCase();
const size = (what: string, least: number, most: number) =>
  z.number().min(least).max(most).describe(`${what}, m, ${least} to ${most}`);

export const Offcut = z.strictObject({
  id: Id.describe('Made by the client'),
  board: z.enum(BOARD_NAMES),
  thickness_m: size('Thickness', 0.003, 0.15),
  length_m: size('Along the grain', 0.01, 20),
  width_m: size('Across the grain', 0.01, 20),
});
export type Offcut = z.infer<typeof Offcut>;

export const OffcutMovement = z
  .strictObject({
    id: Id.describe('Names this movement; sending it again changes nothing'),
    jobId: Id.nullable().default(null).describe('The job it was cut for; null: none'),
    piece: z.string().max(80).default('').describe('The piece of the job; empty: its first'),
    why: z.enum(['cut as planned', 'put by hand', 'taken by hand', 'reversed']),
    puts: z.array(Offcut).max(200).default([]),
    takes: z.array(Id).max(200).default([]).describe('Ids of offcuts that leave the shelf'),
    reverses: Id.nullable()
      .default(null)
      .describe('Id of the movement this one undoes; it then holds nothing of its own'),
  })
  .describe('One movement of offcuts');
export type OffcutMovement = z.infer<typeof OffcutMovement>;

interface Shelf {
  readonly there: Map<string, Offcut>;
  readonly known: Map<string, Offcut>;
  readonly reversed: Set<string>;
}

function follow(movements: readonly OffcutMovement[]): Shelf {
  const shelf: Shelf = { there: new Map(), known: new Map(), reversed: new Set() };
  const byId = new Map(movements.map((movement) => [movement.id, movement]));
  for (const movement of movements) {
    const back = movement.reverses === null ? undefined : byId.get(movement.reverses);
    const puts = back === undefined ? movement.puts : back.takes.flatMap((id) => shelf.known.get(id) ?? []);
    const takes = back === undefined ? movement.takes : back.puts.map(({ id }) => id);
    for (const offcut of puts) {
      shelf.there.set(offcut.id, offcut);
      shelf.known.set(offcut.id, offcut);
    }
    for (const id of takes) shelf.there.delete(id);
    if (movement.reverses !== null) shelf.reversed.add(movement.reverses);
  }
  return shelf;
}

/** What lies on the shelf after these movements, oldest first; the order they are given in is the order they happened in. */
export function offcutsOnShelf(movements: readonly OffcutMovement[]): Offcut[] {
  return [...follow(movements).there.values()];
}

/** Cuts for a piece of a job that still count: neither reversed nor a reversal, newest last. */
export function standingCuts(
  movements: readonly OffcutMovement[],
  jobId: string,
  piece = '',
): OffcutMovement[] {
  const { reversed } = follow(movements);
  return movements.filter(
    (each) =>
      each.why === 'cut as planned' && each.jobId === jobId && each.piece === piece && !reversed.has(each.id),
  );
}

/** Why a movement cannot follow these; empty when it can. Paths are those of the movement. */
export function movementProblems(movements: readonly OffcutMovement[], next: OffcutMovement): Problem[] {
  const { there, known, reversed } = follow(movements);
  const problems: Problem[] = [];
  const say = (path: string, code: string, message: string, read: string, allowed: string) =>
    problems.push({ path, code: `offcut.${code}`, message, read, allowed });
  if (next.reverses !== null) {
    if (next.puts.length > 0 || next.takes.length > 0)
      say('puts', 'reversal', 'A movement that undoes another holds nothing of its own.', 'offcuts', 'none');
    const back = movements.find(({ id }) => id === next.reverses);
    if (back === undefined)
      say(
        'reverses',
        'unknown',
        'There is no such movement.',
        next.reverses,
        'the id of an earlier movement',
      );
    else if (back.reverses !== null)
      say(
        'reverses',
        'reversal',
        'This movement is itself an undoing.',
        next.reverses,
        'a movement that put or took',
      );
    else if (reversed.has(back.id))
      say(
        'reverses',
        'twice',
        'This movement has been undone already.',
        next.reverses,
        'one that still counts',
      );
    else
      for (const { id } of back.puts)
        if (!there.has(id))
          say(
            'reverses',
            'used',
            'An offcut of this cut has left the shelf since.',
            id,
            'undo what took it first',
          );
    return problems;
  }
  if (next.puts.length === 0 && next.takes.length === 0)
    say('puts', 'empty', 'The movement moves nothing.', 'none', 'an offcut put or taken');
  const put = new Set<string>();
  next.puts.forEach(({ id }, i) => {
    if (known.has(id) || put.has(id))
      say(`puts.${i}.id`, 'same-id', 'There is an offcut with this id already.', id, 'an id of its own');
    put.add(id);
  });
  const taken = new Set<string>();
  next.takes.forEach((id, i) => {
    if (!there.has(id) || taken.has(id))
      say(`takes.${i}`, 'gone', 'This offcut is not on the shelf any more.', id, 'an offcut that is there');
    taken.add(id);
  });
  return problems;
}
