/** The set-out sheet as PDF: the dimensioned drawing on the first page, then the tables. */
import { dimensionedDrawing } from '#core/piece/drawing.ts';
import type { Piece } from '#core/piece/piece.ts';
import type { Paper } from '#core/piece/set-out/paper.ts';
import { setOut } from '#core/piece/set-out/set-out.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { drawPiece } from './drawing-page.ts';
import { type Ink, openInk } from './ink.ts';
import { sayDatum } from './say.ts';
import { writeTables } from './set-out-tables.ts';
import { head, MARGIN, type SheetWords, titleOf } from './sheet-head.ts';
import type { Flow } from './table.ts';

export interface SheetAsked extends SheetWords {
  readonly paper: Paper;
  readonly system: System;
}

const HEAD = 34;

/** The sheet's bytes, or what is wrong with the piece. */
export async function setOutPdf(piece: Piece, asked: SheetAsked): Promise<Result<Uint8Array<ArrayBuffer>>> {
  const sheet = setOut(piece);
  if (!sheet.ok) return sheet;
  const drawing = dimensionedDrawing(piece);
  if (!drawing.ok) return bad(...drawing.problems);
  const { paper, system, at } = asked;
  const title = titleOf(asked);
  const ink = openInk({
    paper,
    orientation: 'landscape',
    title: `Set-out sheet: ${title}`,
    subject: 'Set-out sheet',
    at,
  });
  const [top, bottom] = [MARGIN + HEAD, ink.height - MARGIN];
  const legend = 30;
  drawPiece(
    ink,
    { left: MARGIN, top, wide: ink.width - 2 * MARGIN, high: bottom - top - legend },
    drawing.value,
    sheet.value,
    system,
  );
  lineLegend(ink, bottom - 14);
  const { across, up } = sheet.value.datums;
  ink.write(
    `Seen from above, front edge below. Black triangles: measure from ${sayDatum(across)} and ${sayDatum(up)}.`,
    MARGIN,
    bottom,
    { size: 8 },
  );
  ink.page();
  const flow: Flow = { ink, left: MARGIN, right: ink.width - MARGIN, top, bottom, y: top - 10 };
  writeTables(flow, sheet.value, system);
  ink.eachPage((index, count) => head(ink, 'Set-out sheet', asked, index, count));
  return good(await ink.end(), sheet.warnings);
}

function lineLegend(ink: Ink, y: number): void {
  let x = MARGIN;
  for (const [words, width, dash] of [
    ['finished edge or wrapped rim', 1.6, null],
    ['wall', 0.6, null],
    ['seam', 1, [8, 4]],
    ['dammed rim', 1, [3, 2.5]],
  ] as const) {
    const pen = ink.doc
      .moveTo(x, y - 2.5)
      .lineTo(x + 30, y - 2.5)
      .lineWidth(width)
      .strokeColor('#000000');
    if (dash === null) pen.undash();
    else pen.dash(dash[0], { space: dash[1] });
    pen.stroke().undash();
    ink.write(words, x + 35, y, { size: 8 });
    x += 35 + ink.measure(words, { size: 8 }) + 18;
  }
}
