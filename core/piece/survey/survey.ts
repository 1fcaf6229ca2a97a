/** A survey read into metres: corners in order, and what was measured between them. */
import type { Tape } from './tape.ts';

/** out: the piece has a point there, as at every corner of a rectangle; in: it wraps round a wall corner. */
export type Turn = 'out' | 'in';

/** Corners are told by their place in the order; `cornerName` gives the letter. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

interface Measured extends Span {
  readonly value_m: number;
  /** Standard deviation, > 0. */
  readonly sigma_m: number;
  /** Field of the document it was typed in. */
  readonly path: string;
}

export interface DistanceReading extends Measured {
  readonly kind: 'distance';
}

/**
 * A corner seen from a straightedge laid from one corner to another. along: how far from the first one; offset: how far beside
 * it, positive to the left of the way from the first to the second.
 */
export interface StraightedgeReading extends Measured {
  readonly kind: 'along' | 'offset';
  readonly corner: number;
}

export type Reading = DistanceReading | StraightedgeReading;

/** A gap between a wall and a straightedge laid along it; it shapes the side, and moves no corner. */
export interface WallBow extends Span {
  /** From the first corner. */
  readonly along_m: number;
  /** Positive where the wall stands back (the piece reaches out), negative where it bulges. */
  readonly gap_m: number;
  readonly path: string;
}

export interface Survey {
  readonly turns: readonly Turn[];
  readonly clockwise: boolean;
  readonly tape: Tape;
  readonly readings: readonly Reading[];
  readonly bows: readonly WallBow[];
}

export const MOST_CORNERS = 26;

/** A, B, C ... */
export function cornerName(index: number): string {
  return String.fromCharCode(65 + index);
}

/** "A to C", "C beside A to B", "C along A to B". */
export function readingName(reading: Reading): string {
  const span = `${cornerName(reading.from)} to ${cornerName(reading.to)}`;
  if (reading.kind === 'distance') return span;
  return `${cornerName(reading.corner)} ${reading.kind === 'along' ? 'along' : 'beside'} ${span}`;
}
