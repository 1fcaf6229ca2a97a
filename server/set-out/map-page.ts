/** The first page of a template: how the sheets lie, and how to put them together. */
import type { Piece, Point } from '#core/piece/piece.ts';
import type { Tiling } from '#core/piece/set-out/template-tiles.ts';
import { checkBar } from './check-bar.ts';
import { BLACK, GREY, type Ink, PALE } from './ink.ts';
import { trace } from './pen.ts';
import { head, MARGIN, type SheetWords } from './sheet-head.ts';
import type { Spot } from './text-boxes.ts';

export function mapPage(
  ink: Ink,
  piece: Piece,
  tiling: Tiling,
  words: SheetWords,
  what = 'True-scale template',
): void {
  const { tiles, rows, columns } = tiling;
  const count = tiles.length;
  const style = { size: 10 } as const;
  let y = MARGIN + 44;
  const left = MARGIN;
  const wide = ink.width - 2 * MARGIN;
  const blank = rows * columns - count;
  const text = [
    `${count} ${count === 1 ? 'sheet' : 'sheets'} at true scale${blank > 0 ? `; ${blank} more that nothing falls on are left out` : ''}. ` +
      'Print at 100 % (no "fit to page") and measure the bar on every sheet before you trust it.',
    ...(count > 1
      ? [
          'Cut each sheet along its frame on the side of its neighbour, lay it over the neighbour so that crosses of the same ' +
            'name meet, and tape. The dashed line shows where the next frame comes to lie. Check the overall length and depth with a tape before you cut.',
        ]
      : []),
  ];
  for (const paragraph of text) {
    for (const each of ink.wrap(paragraph, wide, style)) {
      ink.write(each, left, y, style);
      y += 13;
    }
    y += 4;
  }
  const windows = tiles.map((t) => t.window);
  const minX = Math.min(...windows.map((w) => w.minX_m));
  const maxX = Math.max(...windows.map((w) => w.maxX_m));
  const minY = Math.min(...windows.map((w) => w.minY_m));
  const maxY = Math.max(...windows.map((w) => w.maxY_m));
  const bottom = ink.height - MARGIN - 44;
  const scale = Math.min(wide / (maxX - minX), (bottom - y) / (maxY - minY));
  const x0 = left + (wide - (maxX - minX) * scale) / 2;
  const y0 = y + 2;
  const at = (p: Point): Spot => ({ x: x0 + (p.x_m - minX) * scale, y: y0 + (maxY - p.y_m) * scale });
  const { doc } = ink;
  for (const t of tiles) {
    const a = at({ x_m: t.window.minX_m, y_m: t.window.maxY_m });
    const w = (t.window.maxX_m - t.window.minX_m) * scale;
    const h = (t.window.maxY_m - t.window.minY_m) * scale;
    doc.rect(a.x, a.y, w, h).lineWidth(0.5).undash().strokeColor(PALE).stroke();
  }
  for (const t of tiles)
    for (const { segment } of t.parts) {
      trace(ink, segment, at);
      doc.lineWidth(1).undash().strokeColor(BLACK).stroke();
    }
  for (const t of tiles) {
    const a = at({ x_m: t.window.minX_m, y_m: t.window.maxY_m });
    const b = at({ x_m: t.window.maxX_m, y_m: t.window.minY_m });
    const size = Math.min(16, (b.x - a.x) / 3, (b.y - a.y) / 2);
    const [x, middle] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
    const half = ink.measure(t.label, { size }) / 2 + 2;
    doc.rect(x - half, middle - size * 0.5, 2 * half, size).fill('#ffffff');
    ink.write(t.label, x, middle + size / 3, { size, align: 'middle', colour: GREY });
  }
  checkBar(ink, left, ink.height - MARGIN - 26);
  ink.write(
    `Seen from above, front edge below; ${piece.cutOuts.length} ${piece.cutOuts.length === 1 ? 'cut-out' : 'cut-outs'}.`,
    ink.width - MARGIN,
    ink.height - MARGIN - 12,
    { size: 8, align: 'right' },
  );
  head(ink, what, words, 0, count + 1);
}
