/** What is computed for a whole job; what the job sheet, the command line and the printed order show. */
import type { Problem } from '#core/quantity/problem.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { Dimension, DrawnPiece } from '#core/piece/drawing.ts';
import type { PieceMeasures } from '#core/piece/measure.ts';
import type { BlushGate } from '#core/room/blush-gate.ts';

/** A section of the sheet that cannot be computed yet, and what it needs. */
export interface Missing {
  readonly path: string;
  readonly needs: string;
}

export interface CoatForecast {
  readonly id: string;
  readonly name: string;
  /** null where something is missing or wrong; then `missing` and `problems` of the job say what. */
  readonly plan: CoatPlan | null;
}

export interface JobForecast {
  /** Version of the model that computed it; a frozen plan carries it. */
  readonly modelVersion: string;
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
  readonly missing: readonly Missing[];
  readonly measures: PieceMeasures | null;
  readonly drawing: DrawnPiece | null;
  readonly room: BlushGate | null;
  readonly dewPoint_K: number | null;
  readonly coats: readonly CoatForecast[];
  readonly cautions: readonly string[];
}

export type { Dimension };
