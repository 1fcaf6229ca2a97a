/** What a drawing file holds once it is read: closed loops in metres, the largest the outline, the others cut-outs. */

import type { Problem } from '#core/quantity/problem.ts';
import type { Bounds, Path } from '../piece.ts';
import type { DrawingUnit } from './drawing-unit.ts';

export interface ImportedLoop {
  /** Closed, counter-clockwise. */
  readonly path: Path;
  readonly layer: string;
}

export interface ImportedLayer {
  readonly name: string;
  /** Lines, arcs and curves drawn on it. */
  readonly count: number;
  /** false: centre lines, dimensions, hidden layers, or layers the caller did not ask for. */
  readonly used: boolean;
}

export interface ImportedDrawing {
  readonly format: 'dxf' | 'svg';
  readonly unit: DrawingUnit;
  /** Who said the unit: the file, or the person asked. */
  readonly unitFrom: 'file' | 'person';
  readonly outline: ImportedLoop;
  readonly cutOuts: readonly ImportedLoop[];
  readonly bounds: Bounds;
  readonly layers: readonly ImportedLayer[];
  /** What the file holds that is no line of a shape, and how often: TEXT, HATCH, image ... */
  readonly leftOut: Readonly<Record<string, number>>;
  /** Loose ends brought together, and the widest gap among them. */
  readonly joined: { readonly count: number; readonly largestGap_m: number };
  /** Largest distance between a curve of the file and the arcs and lines that stand for it. */
  readonly tolerance_m: number;
}

export interface ReadOptions {
  /** The answer to the unit question; stronger than what the file says. */
  readonly unit?: DrawingUnit;
  /** How far arcs may stray from a spline or an ellipse: 1e-6 to 0.001 m; 5e-6 m (0.005 mm) when left out. */
  readonly tolerance_m?: number;
  /** Loose ends no further apart than this are joined: 0 to 0.005 m; 0.0001 m when left out. */
  readonly join_m?: number;
  /** Only these layers; left out, all but those for centre lines, dimensions and notes. */
  readonly layers?: readonly string[];
}

export const FLATTEN_M = 5e-6;
export const JOIN_M = 1e-4;
/** Larger files are refused unread. */
const LARGEST_FILE_CHARACTERS = 10_000_000;
export const MOST_VERTICES = 100_000;
export const MOST_LOOPS = 500;

/** A file that cannot be used: thrown inside the readers, caught at their door and answered as a Result. */
export class Refused extends Error {
  readonly problems: readonly Problem[];
  constructor(...problems: readonly Problem[]) {
    super(problems[0]?.message ?? 'refused');
    this.problems = problems;
  }
}

export function refuse(code: string, message: string, read?: string, allowed?: string): never {
  throw new Refused({
    path: '',
    code,
    message,
    ...(read === undefined ? {} : { read }),
    ...(allowed === undefined ? {} : { allowed }),
  });
}

/** Throws RangeError when a tolerance is outside its range. */
export function checkOptions(options: ReadOptions): {
  readonly tolerance_m: number;
  readonly join_m: number;
} {
  const tolerance_m = options.tolerance_m ?? FLATTEN_M;
  const join_m = options.join_m ?? JOIN_M;
  if (!(tolerance_m >= 1e-6 && tolerance_m <= 1e-3))
    throw new RangeError(`tolerance_m ${tolerance_m}; allowed: 1e-6 to 0.001 m`);
  if (!(join_m >= 0 && join_m <= 0.005)) throw new RangeError(`join_m ${join_m}; allowed: 0 to 0.005 m`);
  return { tolerance_m, join_m };
}

/** Layers that hold no line to cut: centre lines, dimensions, notes. */
export function isMarkLayer(name: string): boolean {
  return /cent(re|er)|\baxis\b|dimension|\bdims?\b|notes?\b|text|construction|^defpoints$|^edges$/i.test(
    name,
  );
}

/** Why a file of this size (bytes, or characters once read) is refused; null when it is not. */
export function sizeProblem(size: number): Problem | null {
  if (size <= LARGEST_FILE_CHARACTERS) return null;
  return {
    path: '',
    code: 'file.too-large',
    message: 'The file is too large for a drawing of a top.',
    read: `${(size / 1e6).toFixed(1)} MB`,
    allowed: 'up to 10 MB',
  };
}

export function refuseTooLarge(text: string): void {
  const problem = sizeProblem(text.length);
  if (problem !== null) throw new Refused(problem);
}

export function leftOutWarning(leftOut: Readonly<Record<string, number>>): Problem[] {
  const kinds = Object.entries(leftOut);
  if (kinds.length === 0) return [];
  return [
    {
      path: '',
      code: 'file.left-out',
      message: 'Some things in the file are no lines of a shape and were left out.',
      read: kinds
        .slice(0, 10)
        .map(([kind, count]) => `${count} ${kind.slice(0, 40)}`)
        .join(', '),
    },
  ];
}
