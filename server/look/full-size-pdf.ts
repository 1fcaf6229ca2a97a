/** The look of the first piece at true size, on sheets to tape together: laid on the body it shows where everything goes. */
import { topDrawing } from '#core/look/render/drawing.ts';
import { atPixel, type Window } from '#core/look/render/grid.ts';
import { sceneOf } from '#core/look/render/scene.ts';
import type { Tile } from '#core/piece/set-out/template-tiles.ts';
import { good, type Result } from '#core/quantity/problem.ts';
import { openInk, POINTS_PER_M } from '../set-out/ink.ts';
import { mapPage } from '../set-out/map-page.ts';
import { titleOf } from '../set-out/sheet-head.ts';
import { fewestSheets, type PrintedTemplate } from '../set-out/template-pdf.ts';
import { tilePage } from '../set-out/tile-page.ts';
import type { LookSheet } from './look-sheet.ts';
import { paintScene } from './paint.ts';
import { png } from './png.ts';

/** 64 dots an inch: seen from arm's length, as one pours. */
const PIXEL_M = 0.0004;
/** A larger top is printed coarser, so that no print takes more than about a minute of the server. */
const MOST_PIXELS = 6e6;

/** Pages: the map of the sheets, then one for each sheet in the order of `tiling.tiles`. */
export async function fullSizePdf(sheet: LookSheet): Promise<Result<PrintedTemplate>> {
  const { look, pieces, paper, at } = sheet;
  const { piece } = pieces[0]!;
  const tiled = fewestSheets(piece, paper, true);
  if (!tiled.ok) return tiled;
  const tiling = tiled.value;
  const ink = openInk({
    paper,
    orientation: tiling.orientation,
    title: `Full-size look: ${titleOf(sheet)}`,
    subject: 'Full-size look',
    at,
  });
  const words = { ...sheet, title: `${titleOf(sheet)}, look ${sheet.mark}` };
  mapPage(ink, piece, tiling, words, 'Full-size look');
  const drawing = topDrawing(look.panels.filter(({ kind }) => kind === 'top'));
  const pixel_m = Math.max(PIXEL_M, Math.sqrt((drawing.width_m * drawing.depth_m) / MOST_PIXELS));
  const { grid, window: whole } = atPixel(drawing, pixel_m);
  for (const [i, tile] of tiling.tiles.entries()) {
    const window = pixelsOf(tile, grid, whole);
    const pixels =
      window === null ? null : await paintScene(sceneOf({ look, drawing, sheet: { grid, window } }));
    ink.page();
    tilePage(ink, piece.cutOuts, tiling, tile, i, words, ({ left, top }) => {
      if (window === null || pixels === null) return;
      const image = Buffer.from(png(pixels, window.columns, window.rows, { onWhite: true }));
      const side = pixel_m * POINTS_PER_M;
      ink.doc.image(
        image,
        left + (grid.left_m + window.column * pixel_m - tile.window.minX_m) * POINTS_PER_M,
        top + (tile.window.maxY_m - grid.back_m + window.row * pixel_m) * POINTS_PER_M,
        { width: window.columns * side, height: window.rows * side },
      );
    });
  }
  return good({ bytes: await ink.end(), tiling }, tiled.warnings);
}

/** The pixels of one grid that a sheet shows, so that the picture goes on without a seam from sheet to sheet. */
function pixelsOf(
  { window: { minX_m, maxX_m, minY_m, maxY_m } }: Tile,
  { left_m, back_m, pixel_m }: { readonly left_m: number; readonly back_m: number; readonly pixel_m: number },
  whole: Window,
): Window | null {
  const column = Math.max(0, Math.floor((minX_m - left_m) / pixel_m));
  const row = Math.max(0, Math.floor((back_m - maxY_m) / pixel_m));
  const columns = Math.min(whole.columns, Math.ceil((maxX_m - left_m) / pixel_m)) - column;
  const rows = Math.min(whole.rows, Math.ceil((back_m - minY_m) / pixel_m)) - row;
  return columns > 0 && rows > 0 ? { column, row, columns, rows } : null;
}
