/** Everything the panel shows of the walls and the way in, worked out from what is typed so far. */
import type { FitDocument } from '#core/job/fit-document.ts';
import { Notes } from '#core/job/notes.ts';
import { takeFit } from '#core/job/read-fit.ts';
import { largestSwing, type Swing, tiltIn } from '#core/piece/fit-to-wall/alcove.ts';
import type { Load } from '#core/piece/fit-to-wall/carry-in.ts';
import { type PieceForWalls, pieceForWalls, type WallFit } from '#core/piece/fit-to-wall/wall-fit.ts';
import { type WayAnswers, type WayIn, wayIn } from '#core/piece/fit-to-wall/way-in.ts';
import type { Point } from '#core/piece/piece.ts';
import type { Problem } from '#core/quantity/problem.ts';

/** The piece as it is drawn so far. */
export interface FitTop {
  /** Seen from above, back towards +y, round edges flattened. */
  readonly corners: readonly Point[];
  readonly load: Load;
  /** The weight counts the resin of its coats. */
  readonly withResin: boolean;
}

export interface Turning {
  readonly corners: readonly Point[];
  readonly width_m: number;
  readonly reach_m: number;
  readonly length_m: number;
  readonly swing: Swing;
  readonly tilt: { readonly goes: boolean; readonly spare_m: number };
  /** The piece as drawn, or the one these walls ask for. */
  readonly of: 'drawn' | 'walls';
}

export interface FitPicture {
  readonly walls: WallFit;
  readonly way: WayIn;
  readonly piece: PieceForWalls | null;
  readonly problems: readonly Problem[];
  readonly turning: Turning | null;
  readonly answers: WayAnswers | null;
}

/** Thickness counted for tilting in until the body has one: 1 1/2 in (common practice, no source). */
const USUAL_THICKNESS_M = 0.0381;

export function fitPicture(document: FitDocument, top: FitTop | null): FitPicture {
  const { walls, way } = takeFit(document, 'fit', new Notes());
  const made = pieceForWalls(walls);
  const piece = made.ok ? made.value : null;
  return {
    walls,
    way,
    piece,
    problems: made.ok ? [] : made.problems,
    turning: turningOf(walls, piece, top),
    answers: top === null ? null : wayIn(top.load, way),
  };
}

function turningOf(walls: WallFit, piece: PieceForWalls | null, top: FitTop | null): Turning | null {
  const corners = top?.corners ?? piece?.corners ?? null;
  const width = piece?.width ?? null;
  if (walls.ends !== 'both' || corners === null || width === null || walls.alcove.reach_m === null)
    return null;
  const xs = corners.map(({ x_m }) => x_m);
  const length_m = Math.max(...xs) - Math.min(...xs);
  return {
    corners,
    width_m: width.usable_m,
    reach_m: walls.alcove.reach_m,
    length_m,
    swing: largestSwing(corners, width.usable_m, walls.alcove.reach_m),
    tilt: tiltIn(length_m, top?.load.thickness_m ?? USUAL_THICKNESS_M, width.usable_m),
    of: top === null ? 'walls' : 'drawn',
  };
}
