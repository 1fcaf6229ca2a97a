/** Where a move takes a speck of the film, and where a speck came from. */

import type { Move } from '../move.ts';
import { dragBack, dragFigures, dragOn, dragReaches } from './drag-carry.ts';
import { puddleBack, puddleFigures, puddleOn } from './puddle-carry.ts';
import { type Box, FIGURES, KIND, type Specks, specksFor } from './specks.ts';
import { strokeBack, strokeFigures, strokeOn, strokeReaches } from './stroke-carry.ts';
import { swirlBack, swirlFigures, swirlOn, swirlReaches } from './swirl-carry.ts';
import { tiltBack, tiltFigures, tiltOn } from './tilt-carry.ts';
import { waverBack, waverFigures, waverOn } from './waver-carry.ts';

/** Moves as figures: one row of FIGURES a move in their order, and the waves of the wavers among them. */
export interface MoveFigures {
  readonly figures: Float64Array;
  readonly waves: Float64Array;
}

/**
 * The figures of moves. Throws RangeError naming the figure that is out of range: all must be finite; radius, width of a
 * stroke, film, wavelength and draw above 0; depth 0 to 1.
 */
export function moveFigures(moves: readonly Move[]): MoveFigures {
  const figures = new Float64Array(moves.length * FIGURES);
  const waves: number[] = [];
  let wavers = 0;
  moves.forEach((move, at) => {
    for (const [name, value] of Object.entries(move))
      for (const figure of Array.isArray(value) ? value : [value])
        if (typeof figure === 'number' && !Number.isFinite(figure))
          throw new RangeError(`${move.kind}: ${name} must be a finite number, not ${figure}`);
    let row: readonly number[];
    if (move.kind === 'waver') {
      const made = waverFigures(move, wavers++);
      row = made.figures;
      for (const value of made.waves) waves.push(value);
    } else row = rowOf(move);
    figures.set(row, at * FIGURES);
  });
  return { figures, waves: Float64Array.from(waves) };
}

function rowOf(move: Exclude<Move, { kind: 'waver' }>): readonly number[] {
  switch (move.kind) {
    case 'puddle':
      return puddleFigures(move);
    case 'drag':
      return dragFigures(move);
    case 'stroke':
      return strokeFigures(move);
    case 'swirl':
      return swirlFigures(move);
    case 'tilt':
      return tiltFigures(move);
  }
}

/** All specks of the list to where they were before a move; those that lie in its puddle get its colour and leave the list. */
export function back(
  { figures, waves }: MoveFigures,
  move: number,
  specks: Specks,
  colours: Uint8Array,
): void {
  const at = move * FIGURES;
  switch (figures[at]) {
    case KIND.puddle:
      puddleBack(figures, at, specks, colours);
      break;
    case KIND.drag:
      dragBack(figures, at, specks);
      break;
    case KIND.stroke:
      strokeBack(figures, at, specks);
      break;
    case KIND.swirl:
      swirlBack(figures, at, specks);
      break;
    case KIND.waver:
      waverBack(figures, at, waves, specks);
      break;
    case KIND.tilt:
      tiltBack(figures, at, specks);
      break;
  }
}

/** Whether a move acts on only a part of the board, so that asking `reaches` pays. */
export function isLocal({ figures }: MoveFigures, move: number): boolean {
  const kind = figures[move * FIGURES];
  return kind === KIND.drag || kind === KIND.stroke || kind === KIND.swirl;
}

/** False when a move surely leaves every speck in the box where it is. */
export function reaches({ figures }: MoveFigures, move: number, box: Box): boolean {
  const at = move * FIGURES;
  switch (figures[at]) {
    case KIND.drag:
      return dragReaches(figures, at, box);
    case KIND.stroke:
      return strokeReaches(figures, at, box);
    case KIND.swirl:
      return swirlReaches(figures, at, box);
    default:
      return true;
  }
}

/** Both ways of one move. A speck is (x, y) in metres in the first two places of `speck`, changed in place. */
export interface Carry {
  /** To where the speck is after the move. */
  readonly on: (speck: Float64Array) => void;
  /** To where the speck was before it; false when it was not on the board yet: it is in the puddle this move pours. */
  readonly back: (speck: Float64Array) => boolean;
}

/** Both ways of a move for one speck at a time. Throws RangeError where `moveFigures` does. */
export function carry(move: Move): Carry {
  const made = moveFigures([move]);
  const one = specksFor(1);
  const colours = new Uint8Array(1);
  return {
    on: onOf(made, move.kind),
    back(speck) {
      one.x[0] = speck[0]!;
      one.y[0] = speck[1]!;
      one.count = 1;
      back(made, 0, one, colours);
      speck[0] = one.x[0];
      speck[1] = one.y[0];
      return one.count === 1;
    },
  };
}

function onOf({ figures, waves }: MoveFigures, kind: Move['kind']): Carry['on'] {
  switch (kind) {
    case 'puddle':
      return (speck) => puddleOn(figures, speck);
    case 'drag':
      return (speck) => dragOn(figures, speck);
    case 'stroke':
      return (speck) => strokeOn(figures, speck);
    case 'swirl':
      return (speck) => swirlOn(figures, speck);
    case 'waver':
      return (speck) => waverOn(figures, waves, speck);
    case 'tilt':
      return (speck) => tiltOn(figures, speck);
  }
}
