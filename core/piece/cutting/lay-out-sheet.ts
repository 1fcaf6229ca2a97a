/** One divided sheet in metres: where the parts lie, which cuts in which order, what is left. */
import { type Item, STEP_M } from './counts.ts';
import type { Cut, CutSheet, CutTree, PlacedPart, Rest, StockSheet } from './cutting.ts';
import type { Panel } from './panel.ts';

/** Less than this beyond the last piece is not worth a cut: 10 um. */
const NO_CUT = 80;

export interface SheetFacts {
  readonly stock: number;
  readonly sheet: StockSheet;
  readonly price: number;
  readonly kerf: number;
  readonly trim_m: number;
  readonly keep: { readonly length_m: number; readonly width_m: number };
  readonly items: readonly Item[];
  readonly names: readonly string[];
}

/** Letters for panels: A to Z, then AA, AB and on. */
function letters(number: number): string {
  const last = String.fromCharCode(65 + (number % 26));
  return number < 26 ? last : letters(Math.floor(number / 26) - 1) + last;
}

/** The panel's sizes are one kerf larger than true, as `counts.ts` says. */
export function layOutSheet(root: Panel, facts: SheetFacts): CutSheet {
  const { kerf, trim_m, sheet, items } = facts;
  const parts: PlacedPart[] = [];
  const cuts: Cut[] = [];
  const offcuts: Rest[] = [];
  const scraps: Rest[] = [];
  let kerfArea = 0;
  let panels = 0;
  const metres = (steps: number) => steps * STEP_M;
  const cut = (each: Omit<Cut, 'number'>) => cuts.push({ number: cuts.length + 1, ...each });
  if (trim_m > 0) trims(sheet, trim_m, cut);

  const waiting: { panel: Panel; x: number; y: number; label: string; pieces: CutTree[] }[] = [];
  const lay = (given: Panel, x: number, y: number): CutTree => {
    let panel = given;
    while (panel.pieces.length === 1 && panel.left <= NO_CUT) panel = panel.pieces[0]!;
    if (panel.item >= 0) {
      const item = items[panel.item]!;
      const placed = {
        part: item.part,
        name: facts.names[item.part]!,
        x_m: trim_m + metres(x),
        y_m: trim_m + metres(y),
        alongX_m: metres(panel.x - kerf),
        alongY_m: metres(panel.y - kerf),
        turned: panel.turned,
      };
      return { kind: 'part', placed: parts.push(placed) - 1 };
    }
    const label = given === root ? 'sheet' : letters(panels++);
    const pieces: CutTree[] = [];
    waiting.push({ panel, x, y, label, pieces });
    return { kind: 'panel', label, divided: panel.axis === 0 ? 'x' : 'y', pieces };
  };
  const nameOf = (tree: CutTree): string =>
    tree.kind === 'part' ? parts[tree.placed]!.name : tree.kind === 'panel' ? tree.label : 'scrap';
  const tree = lay(root, 0, 0);
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    const { panel, x, y, label, pieces } = next;
    const alongX = panel.axis === 0;
    const deep = (alongX ? panel.y : panel.x) - kerf;
    const size = (piece: Panel) => (alongX ? piece.x : piece.y);
    // Large to small, so that equal fence settings follow one another.
    const sorted = [...panel.pieces].sort((a, b) => size(b) - size(a));
    const laid: CutTree[] = [];
    const starts: number[] = [];
    let at = 0;
    for (const piece of sorted) {
      starts.push(at);
      laid.push(lay(piece, alongX ? x + at : x, alongX ? y : y + at));
      at += size(piece);
    }
    pieces.push(...laid);
    const left = panel.left - kerf;
    let remains = 'nothing';
    if (left > 0) {
      const rest = {
        x_m: trim_m + metres(alongX ? x + at : x),
        y_m: trim_m + metres(alongX ? y : y + at),
        alongX_m: metres(alongX ? left : deep),
        alongY_m: metres(alongX ? deep : left),
      };
      const kept = worthKeeping(rest, facts.keep);
      (kept ? offcuts : scraps).push(rest);
      pieces.push({ kind: 'rest', rest, kept });
      remains = kept ? 'offcut' : 'scrap';
    }
    const lastCut = panel.left > NO_CUT ? sorted.length - 1 : sorted.length - 2;
    if (panel.left <= NO_CUT) remains = nameOf(laid[laid.length - 1]!);
    sorted.forEach((piece, i) => {
      const width = i === sorted.length - 1 ? Math.min(kerf, panel.left) : kerf;
      kerfArea += width * deep;
      if (i > lastCut) return;
      const across = metres(starts[i]! + size(piece) - kerf + (alongX ? x : y)) + trim_m;
      const start = metres(alongX ? y : x) + trim_m;
      const end = metres((alongX ? y : x) + deep) + trim_m;
      cut({
        kind: alongX ? 'crosscut' : 'rip',
        panel: label,
        fence_m: metres(size(piece) - kerf),
        gives: nameOf(laid[i]!),
        leaves: i === lastCut ? remains : label,
        from: alongX ? { x_m: across, y_m: start } : { x_m: start, y_m: across },
        to: alongX ? { x_m: across, y_m: end } : { x_m: end, y_m: across },
      });
    });
  }
  const whole = sheet.length_m * sheet.width_m;
  return {
    stock: facts.stock,
    name: sheet.name,
    length_m: sheet.length_m,
    width_m: sheet.width_m,
    trim_m,
    price: facts.price,
    parts,
    tree,
    cuts,
    offcuts,
    scraps,
    partsArea_m2: parts.reduce((sum, part) => sum + part.alongX_m * part.alongY_m, 0),
    kerfArea_m2: kerfArea * STEP_M * STEP_M,
    trimArea_m2: whole - (sheet.length_m - 2 * trim_m) * (sheet.width_m - 2 * trim_m),
  };
}

function worthKeeping(rest: Rest, keep: { readonly length_m: number; readonly width_m: number }): boolean {
  const long = Math.max(rest.alongX_m, rest.alongY_m);
  const short = Math.min(rest.alongX_m, rest.alongY_m);
  return long >= Math.max(keep.length_m, keep.width_m) && short >= Math.min(keep.length_m, keep.width_m);
}

/** Both long edges, then both ends; the strip that falls away is the trim with the saw cut inside it. */
function trims(sheet: StockSheet, trim_m: number, cut: (each: Omit<Cut, 'number'>) => unknown): void {
  const { length_m, width_m } = sheet;
  const top = width_m - trim_m;
  const right = length_m - trim_m;
  const ends: [Cut['kind'], number, number, number, number, number][] = [
    ['trim rip', top, 0, trim_m, length_m, trim_m],
    ['trim rip', top - trim_m, 0, top, length_m, top],
    ['trim crosscut', right, trim_m, trim_m, trim_m, top],
    ['trim crosscut', right - trim_m, right, trim_m, right, top],
  ];
  for (const [kind, fence_m, x1, y1, x2, y2] of ends)
    cut({
      kind,
      panel: 'sheet',
      fence_m,
      gives: 'sheet',
      leaves: 'nothing',
      from: { x_m: x1, y_m: y1 },
      to: { x_m: x2, y_m: y2 },
    });
}
