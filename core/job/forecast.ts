/** What is computed for a whole job; what the job sheet, the command line and the printed order show. */

import type { Coat } from '#core/mix/coat.ts';
import type { Piece, PieceMeasures } from '#core/piece/piece.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { PlanRequest } from '#core/pour/plan-coat.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { AirTemperature, Board } from '#core/resin/model.ts';
import type { NextCoat } from './next-coat.ts';
import type { SplashPart } from './read-piece-splash.ts';

/** A section of the sheet that cannot be computed yet, and what it needs. */
export interface Missing {
  readonly path: string;
  readonly needs: string;
}

/** Is the air fit to pour in? */
export interface RoomForecast {
  readonly air_K: number;
  readonly board_K: number;
  /** 0..1; null: not measured. */
  readonly humidity: number | null;
  readonly dewPoint_K: number | null;
  readonly verdict: 'go' | 'caution' | 'stop' | 'not known';
  readonly reasons: readonly string[];
}

/** What a plan was made from, as read, in SI: for those who compute more from the plan (the film). */
export interface CoatPour {
  readonly coat: Coat;
  /** Of its largest piece, where it is poured on several. */
  readonly board: Board;
  /** On the plan's clock. */
  readonly air: AirTemperature;
}

export interface CoatForecast {
  readonly id: string;
  readonly name: string;
  /** Ids of the pieces it is poured on. */
  readonly pieces: readonly string[];
  /** null where something is missing or wrong; then `missing` and `problems` of the job say what. */
  readonly plan: CoatPlan | null;
  /** null where there is no plan. */
  readonly pour: CoatPour | null;
  /** Everything the plan was made from: to freeze it, or to ask for its chances. null where there is no plan. */
  readonly request: PlanRequest | null;
  /** The coat after this one against this one's recoat window; null where it is the last, is not planned, or either has no day and hour. */
  readonly nextCoat: NextCoat | null;
}

/** One piece of the job as read and measured, in SI. */
export interface PieceForecast {
  /** "piece" for the first, its own for each other one. */
  readonly id: string;
  /** Unlike that of any other piece of the job. */
  readonly name: string;
  /** Where it stands in the document, as problems name it: "piece", "otherPieces.0". */
  readonly path: string;
  /** null where it is not complete, not readable or not sound. */
  readonly piece: Piece | null;
  readonly measures: PieceMeasures | null;
  /** Boards of their own, poured beside its top. */
  readonly splashes: readonly SplashPart[];
  readonly board: Board;
}

export interface JobForecast {
  /** Version of the model that computed it; a frozen plan carries it. */
  readonly modelVersion: string;
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
  readonly missing: readonly Missing[];
  /** Every piece of the job, the first one first. */
  readonly pieces: readonly PieceForecast[];
  /** The first piece as read, in SI; the screen draws it with core/piece's drawing functions. */
  readonly piece: Piece | null;
  readonly measures: PieceMeasures | null;
  readonly room: RoomForecast | null;
  readonly coats: readonly CoatForecast[];
  readonly cautions: readonly string[];
}
