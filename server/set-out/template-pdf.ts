/** The true-scale template as PDF: a map of the sheets, then the sheets. */
import type { Piece } from '#core/piece/piece.ts';
import { PIECE_RULES, type PieceRules } from '#core/piece/piece-rules.ts';
import type { Orientation, Paper } from '#core/piece/set-out/paper.ts';
import { type TileWishes, type Tiling, templateTiles } from '#core/piece/set-out/template-tiles.ts';
import { good, type Result } from '#core/quantity/problem.ts';
import { openInk } from './ink.ts';
import { mapPage } from './map-page.ts';
import { type SheetWords, titleOf } from './sheet-head.ts';
import { tilePage } from './tile-page.ts';

export interface TemplateAsked extends SheetWords {
  readonly paper: Paper;
  /** The least this shop leaves; the usual where it has said nothing. */
  readonly rules?: PieceRules;
}

/** Every printer can do this (1/3 in), and two fingers can hold the other: common practice, no source. */
const MARGIN_M = 0.0085;
const OVERLAP_M = 0.015;

export interface PrintedTemplate {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly tiling: Tiling;
}

/** Pages: first the map, then one for each sheet in the order of `tiling.tiles`. */
export async function templatePdf(piece: Piece, asked: TemplateAsked): Promise<Result<PrintedTemplate>> {
  const tiled = fewestSheets(piece, asked.paper, false, asked.rules);
  if (!tiled.ok) return tiled;
  const tiling = tiled.value;
  const { orientation } = tiling;
  const ink = openInk({
    paper: asked.paper,
    orientation,
    title: `True-scale template: ${titleOf(asked)}`,
    subject: 'True-scale template',
    at: asked.at,
  });
  mapPage(ink, piece, tiling, asked);
  tiling.tiles.forEach((tile, i) => {
    ink.page();
    tilePage(ink, piece.cutOuts, tiling, tile, i, asked);
  });
  return good({ bytes: await ink.end(), tiling }, tiled.warnings);
}

/** Upright or across, whichever takes fewer sheets; across when both are alike. */
export function fewestSheets(
  piece: Piece,
  paper: Paper,
  whole = false,
  rules: PieceRules = PIECE_RULES,
): Result<Tiling> {
  const cut = (orientation: Orientation): Result<Tiling> => {
    const wishes: TileWishes = { paper, orientation, margin_m: MARGIN_M, overlap_m: OVERLAP_M, whole };
    return templateTiles(piece, wishes, rules);
  };
  const [across, upright] = [cut('landscape'), cut('portrait')];
  if (!across.ok) return upright;
  return upright.ok && upright.value.tiles.length < across.value.tiles.length ? upright : across;
}
