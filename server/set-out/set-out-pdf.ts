/** The set-out sheet as PDF: the dimensioned drawing on the first page, then the tables. */
import { type Drawing, dimensionedDrawing } from '#core/piece/drawing.ts';
import type { Piece } from '#core/piece/piece.ts';
import type { PieceRules } from '#core/piece/piece-rules.ts';
import type { Paper } from '#core/piece/set-out/paper.ts';
import { type SetOut, setOut } from '#core/piece/set-out/set-out.ts';
import { type SplashStrip, type StandingSplash, splashStrips } from '#core/piece/splash-strips.ts';
import { bad, good, type Problem, type Result } from '#core/quantity/problem.ts';
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
  /** The least this shop leaves; the usual where it has said nothing. */
  readonly rules?: PieceRules;
}

const HEAD = 34;

export interface SheetPiece {
  /** In the head of its pages; '' where the job has only one. */
  readonly name: string;
  readonly piece: Piece;
  /** Boards that stand on it along its sides. */
  readonly splashes?: readonly StandingSplash[];
  /** Puts what is wrong with it at the field it was typed in. */
  readonly tell?: (problem: Problem) => Problem;
}

/** The sheet's bytes, or what is wrong with the piece. */
export function setOutPdf(piece: Piece, asked: SheetAsked): Promise<Result<Uint8Array<ArrayBuffer>>> {
  return setOutsPdf([{ name: '', piece }], asked);
}

/** Several pieces in one file, each on pages of its own; problems of all of them. At least one piece. */
export async function setOutsPdf(
  pieces: readonly SheetPiece[],
  asked: SheetAsked,
): Promise<Result<Uint8Array<ArrayBuffer>>> {
  const found = pieces.map(({ piece, splashes = [], tell = (problem) => problem }) => {
    const sheet = setOut(piece, asked.rules);
    if (!sheet.ok) return { drawn: null, warnings: [], problems: sheet.problems.map(tell) };
    const drawing = dimensionedDrawing(piece, asked.rules);
    if (!drawing.ok) return { drawn: null, warnings: [], problems: drawing.problems.map(tell) };
    const strips = splashStrips(piece.outline, splashes);
    const drawn = { sheet: sheet.value, drawing: drawing.value, strips };
    return { drawn, warnings: sheet.warnings.map(tell), problems: [] };
  });
  const problems = found.flatMap((each) => each.problems);
  if (problems.length > 0) return bad(...problems);
  const { paper, at } = asked;
  const title = titleOf(asked);
  const ink = openInk({
    paper,
    orientation: 'landscape',
    title: `Set-out sheet: ${title}`,
    subject: 'Set-out sheet',
    at,
  });
  const names: string[] = [];
  found.forEach(({ drawn }, index) => {
    if (drawn === null) return;
    if (index > 0) ink.page();
    drawSheet(ink, drawn, asked.system);
    ink.eachPage((page) => {
      names[page] ??= pieces[index]!.name;
    });
  });
  ink.eachPage((index, count) => {
    const of = names[index] ?? '';
    head(ink, 'Set-out sheet', of === '' ? asked : { ...asked, title: `${title}: ${of}` }, index, count);
  });
  return good(
    await ink.end(),
    found.flatMap(({ warnings }) => warnings),
  );
}

interface Drawn {
  readonly sheet: SetOut;
  readonly drawing: Drawing;
  readonly strips: readonly SplashStrip[];
}

/** One piece on the page that is open and the ones after it. */
function drawSheet(ink: Ink, { sheet, drawing, strips }: Drawn, system: System): void {
  const [top, bottom] = [MARGIN + HEAD, ink.height - MARGIN];
  const legend = 30;
  drawPiece(
    ink,
    { left: MARGIN, top, wide: ink.width - 2 * MARGIN, high: bottom - top - legend },
    drawing,
    sheet,
    system,
    strips,
  );
  lineLegend(ink, bottom - 14, strips.length > 0);
  const { across, up } = sheet.datums;
  ink.write(
    `Seen from above, front edge below. Black triangles: measure from ${sayDatum(across)} and ${sayDatum(up)}.`,
    MARGIN,
    bottom,
    { size: 8 },
  );
  ink.page();
  const flow: Flow = { ink, left: MARGIN, right: ink.width - MARGIN, top, bottom, y: top - 10 };
  writeTables(flow, sheet, system, strips);
}

function lineLegend(ink: Ink, y: number, splashes: boolean): void {
  let x = MARGIN;
  for (const [words, width, dash] of [
    ['finished edge or wrapped rim', 1.6, null],
    ['wall', 0.6, null],
    ['seam', 1, [8, 4]],
    ['dammed rim', 1, [3, 2.5]],
    ...(splashes ? [['splash, stands on the top', 0.6, [5, 3]] as const] : []),
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
