/** The picture a customer and the maker sign: what is planned, what may differ, and which state of the look it is. */

import { unfoldedDrawing } from '#core/look/render/drawing.ts';
import { hexOfLinear } from '#core/look/srgb.ts';
import { formatFilm, formatPercent } from '#core/quantity/format.ts';
import { GREY, type Ink, openInk } from '../set-out/ink.ts';
import { line } from '../set-out/pen.ts';
import { head, MARGIN, titleOf } from '../set-out/sheet-head.ts';
import type { LookSheet } from './look-sheet.ts';
import { drawOutlines, drawPicture, lay, scaleBar } from './picture-box.ts';

const HEAD = 40;
/** Room at the foot for colours, words and signatures. */
const FOOT = 186;

const VARIATION = [
  'Poured resin is never twice the same. The picture shows the plan: colours, their shares of the whole, and the character of the pattern are agreed. Single shapes, their edges, sizes and places will differ on the finished piece, and colours blend where they meet.',
  'Colours on paper and on screens differ from cured resin and change with the light they are seen in. For the colours the sample panel named here counts, seen in the light of the room it goes to. Mica and metallic colours change with the angle they are seen at.',
];

export async function approvalPdf(sheet: LookSheet): Promise<Uint8Array<ArrayBuffer>> {
  const { paper, at, look, system } = sheet;
  const ink = openInk({
    paper,
    orientation: 'landscape',
    title: `Look to approve: ${titleOf(sheet)}`,
    subject: 'Look to approve',
    at,
  });
  const drawing = unfoldedDrawing(look.panels);
  const top = MARGIN + HEAD;
  const wide = ink.width - 2 * MARGIN;
  const laid = lay(drawing, { left: MARGIN, top, wide, high: ink.height - MARGIN - FOOT - top });
  await drawPicture(ink, laid, drawing, look, { gloss: 0.5 });
  drawOutlines(ink, laid, drawing, sheet);
  const y = ink.height - MARGIN - FOOT + 20;
  const bar = scaleBar(ink, laid, MARGIN + 6, y, system);
  ink.write(
    `Seen from above, front edge below; ${drawing.panels.length > sheet.pieces.length ? 'faces folded out beside their edges; ' : ''}about 1 : ${(72 / 0.0254 / laid.scale).toFixed(1)}.`,
    MARGIN + bar + 34,
    y + 2,
    { size: 8 },
  );
  const left = MARGIN;
  const middle = MARGIN + wide * 0.34;
  colours(ink, sheet, left, y + 20, middle - left - 24);
  const signed = words(ink, sheet, middle, y + 20, wide - (middle - left));
  signatures(ink, middle, Math.max(signed + 24, ink.height - MARGIN - 14), ink.width - MARGIN);
  head(ink, 'Look to approve', sheet, 0, 1);
  return ink.end();
}

function colours(
  ink: Ink,
  { colours: list, look, coat, system }: LookSheet,
  x: number,
  top: number,
  wide: number,
) {
  ink.write(ink.wrap(coat, wide, { size: 10, weight: 600 })[0]!, x, top, { size: 10, weight: 600 });
  ink.write(`Film on the top ${formatFilm(look.film_m, system)}`, x, top + 12, { size: 8, colour: GREY });
  // As many as there is room for; the rest in one line.
  const rows = list.length <= 8 ? list : list.slice(0, 7);
  let y = top + 27;
  for (const { label, light, share, colourant } of rows) {
    ink.doc
      .rect(x, y - 8, 16, 10)
      .fillColor(hexOfLinear(light))
      .fill();
    ink.doc
      .rect(x, y - 8, 16, 10)
      .lineWidth(0.4)
      .undash()
      .strokeColor(GREY)
      .stroke();
    const said = colourant === '' ? label : `${label}, ${colourant}`;
    ink.write(ink.wrap(said, wide - 62, { size: 8.5 })[0]!, x + 22, y, { size: 8.5 });
    ink.write(formatPercent(share), x + wide, y, { size: 8.5, align: 'right' });
    y += 14;
  }
  if (rows.length < list.length)
    ink.write(`and ${list.length - rows.length} more, in the pour map`, x + 22, y, { size: 8, colour: GREY });
}

function words(ink: Ink, sheet: LookSheet, x: number, top: number, wide: number): number {
  const style = { size: 8 } as const;
  let y = top;
  for (const text of VARIATION) {
    for (const each of ink.wrap(text, wide, style)) {
      ink.write(each, x, y, style);
      y += 10.5;
    }
    y += 3;
  }
  y += 6;
  const { approved } = sheet.document;
  const sample = approved?.sample.trim() ?? '';
  const label = 'Sample panel ';
  ink.write(label, x, y, { size: 9, weight: 600 });
  const from = x + ink.measure(label, { size: 9, weight: 600 }) + 2;
  if (sample === '') line(ink, { x: from, y: y + 1 }, { x: x + wide * 0.5, y: y + 1 }, 0.5, GREY);
  else ink.write(ink.wrap(sample, wide * 0.5, { size: 9 })[0]!, from, y, { size: 9 });
  ink.write(`Look ${sheet.mark}`, x + wide, y, { size: 9, weight: 600, align: 'right' });
  y += 13;
  const state =
    approved === null
      ? 'Not approved yet.'
      : approved.hash === sheet.mark
        ? 'Approved as it stands here.'
        : `Changed since look ${approved.hash} was approved: to be approved anew.`;
  ink.write(state, x + wide, y, { size: 8, align: 'right', colour: GREY });
  return y;
}

function signatures(ink: Ink, left: number, y: number, right: number): void {
  const gap = 24;
  const each = (right - left - gap) / 2;
  for (const [i, who] of ['Customer', 'For the shop'].entries()) {
    const x = left + i * (each + gap);
    const date = x + each * 0.68;
    line(ink, { x, y: y - 10 }, { x: date - 8, y: y - 10 }, 0.6, GREY);
    line(ink, { x: date, y: y - 10 }, { x: x + each, y: y - 10 }, 0.6, GREY);
    ink.write(`${who}, signature`, x, y, { size: 7.5, colour: GREY });
    ink.write('Date', date, y, { size: 7.5, colour: GREY });
  }
}
