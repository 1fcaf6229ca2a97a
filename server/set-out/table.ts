/** Tables that go on over pages, with their head repeated. */
import { GREY, type Ink, type TextStyle } from './ink.ts';

export interface Column {
  readonly head: string;
  /** Share of the width. */
  readonly share: number;
  readonly align?: 'left' | 'right';
}

/** Lines of a cell; the second and later ones are smaller. */
export type Cell = string | readonly string[];

export interface Flow {
  readonly ink: Ink;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Where the next line begins. */
  y: number;
}

const HEAD: TextStyle = { size: 8, weight: 600 };
const FIRST: TextStyle = { size: 9 };
const LATER: TextStyle = { size: 7.5, colour: GREY };
const PAD = 7;

/** Starts a page when fewer than `high` points are left. */
export function need(flow: Flow, high: number): void {
  if (flow.y + high <= flow.bottom) return;
  flow.ink.page();
  flow.y = flow.top;
}

export function heading(flow: Flow, text: string, keep = 60): void {
  need(flow, 34 + keep);
  flow.y += 22;
  flow.ink.write(text, flow.left, flow.y, { size: 11.5, weight: 600 });
  flow.y += 6;
}

export function paragraph(flow: Flow, text: string, style: TextStyle = { size: 9 }): void {
  for (const line of flow.ink.wrap(text, flow.right - flow.left, style)) {
    need(flow, style.size * 1.4);
    flow.y += style.size * 1.35;
    flow.ink.write(line, flow.left, flow.y, style);
  }
}

export function table(flow: Flow, columns: readonly Column[], rows: readonly (readonly Cell[])[]): void {
  const { ink, left, right } = flow;
  const total = columns.reduce((sum, c) => sum + c.share, 0);
  const edges = [left];
  for (const c of columns) edges.push(edges.at(-1)! + ((right - left) * c.share) / total);
  const room = (i: number): number => edges[i + 1]! - edges[i]! - 2 * PAD;
  const lay = (cells: readonly Cell[], first: TextStyle): { text: string; style: TextStyle }[][] =>
    cells.map((cell, i) => {
      const [main = '', ...more] = typeof cell === 'string' ? [cell] : cell;
      return [
        ...ink.wrap(main, room(i), first).map((text) => ({ text, style: first })),
        ...more.flatMap((m) => ink.wrap(m, room(i), LATER).map((text) => ({ text, style: LATER }))),
      ];
    });
  const highOf = (cells: readonly { style: TextStyle }[][]): number =>
    Math.max(...cells.map((lines) => lines.reduce((sum, l) => sum + l.style.size * 1.2, 0))) + 4;
  const draw = (cells: readonly { text: string; style: TextStyle }[][], high: number, rule: number): void => {
    cells.forEach((lines, i) => {
      let y = flow.y;
      const far = columns[i]!.align === 'right';
      for (const { text, style } of lines) {
        y += style.size * 1.2;
        ink.write(text, far ? edges[i + 1]! - PAD : edges[i]! + PAD, y, {
          ...style,
          align: far ? 'right' : 'left',
        });
      }
    });
    flow.y += high;
    ink.doc.moveTo(left, flow.y).lineTo(right, flow.y).lineWidth(rule).undash().strokeColor(GREY).stroke();
  };
  const head = lay(
    columns.map((c) => c.head),
    HEAD,
  );
  const headHigh = highOf(head);
  const laid = rows.map((row) => lay(row, FIRST));
  flow.y += 3;
  need(flow, headHigh + (laid[0] === undefined ? 0 : highOf(laid[0])));
  draw(head, headHigh, 0.8);
  for (const cells of laid) {
    const high = highOf(cells);
    if (flow.y + high > flow.bottom) {
      ink.page();
      flow.y = flow.top;
      draw(head, headHigh, 0.8);
    }
    draw(cells, high, 0.3);
  }
}
