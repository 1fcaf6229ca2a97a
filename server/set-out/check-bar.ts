/** The bar by which a print is judged. */
import { BLACK, type Ink, POINTS_PER_M } from './ink.ts';
import { line } from './pen.ts';

/** On every page of a template. */
export const CHECK_BAR_M = 0.1;

/** 100 mm from the left end of the line to its right end, with a tick every 10 mm. */
export function checkBar(ink: Ink, x: number, y: number): void {
  const { doc } = ink;
  const long = CHECK_BAR_M * POINTS_PER_M;
  doc
    .moveTo(x, y)
    .lineTo(x + long, y)
    .lineWidth(1.4)
    .lineCap('butt')
    .undash()
    .strokeColor(BLACK)
    .stroke();
  for (let i = 0; i <= 10; i += 1) {
    const half = i % 5 === 0 ? 5 : 3;
    // The end ticks lie inside the bar, so that it is 100 mm over everything.
    const tick = x + (long * i) / 10 + (i === 0 ? 0.3 : i === 10 ? -0.3 : 0);
    line(ink, { x: tick, y: y - half }, { x: tick, y: y + half }, 0.6, BLACK);
  }
  ink.write('Print at 100 %, not fitted to the page.', x, y + 14, { size: 8, weight: 600 });
  ink.write('Measure this bar: 100 mm (3 15\u204416 in) from end to end.', x, y + 24, { size: 8 });
}
