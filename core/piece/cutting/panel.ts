/**
 * A sheet being divided: a tree of panels whose pieces lie side by side along x (axis 0) or y (axis 1), alternating from
 * level to level, with what is left of each panel kept together at its far end. Any such tree can be cut with guillotine
 * cuts, and taking a piece out always gives back one connected rest.
 */
import type { Item } from './counts.ts';

export interface Panel {
  x: number;
  y: number;
  axis: 0 | 1;
  /** Place in the items, or -1 for a divided panel. */
  item: number;
  turned: boolean;
  pieces: Panel[];
  /** Not yet given away, along the axis. */
  left: number;
}

export function emptyPanel(x: number, y: number, axis: 0 | 1): Panel {
  return { x, y, axis, item: -1, turned: false, pieces: [], left: axis === 0 ? x : y };
}

export function copyPanel(panel: Panel): Panel {
  return {
    x: panel.x,
    y: panel.y,
    axis: panel.axis,
    item: panel.item,
    turned: panel.turned,
    pieces: panel.pieces.length === 0 ? [] : panel.pieces.map(copyPanel),
    left: panel.left,
  };
}

/** A way to put an item into the rest of a panel. */
export interface Place {
  panel: Panel;
  turned: boolean;
  /** true: first a cut across the axis, the rest stays full height; false: first a cut along the axis. */
  across: boolean;
  /** Smaller is better: worth of the rest before, less that of the two rests after. */
  cost: number;
}

/** Calls `offer` with every panel of the tree that has a rest. */
export function eachRest(panel: Panel, offer: (panel: Panel) => void): void {
  if (panel.item >= 0) return;
  if (panel.left > 0) offer(panel);
  for (const piece of panel.pieces) eachRest(piece, offer);
}

export function eachItem(panel: Panel, offer: (item: number) => void): void {
  if (panel.item >= 0) offer(panel.item);
  else for (const piece of panel.pieces) eachItem(piece, offer);
}

/** Puts the item where `place` says; the place must come from the tree as it is now. */
export function putIn(place: Place, item: Item, index: number): void {
  const { panel, turned } = place;
  const itemX = turned ? item.y : item.x;
  const itemY = turned ? item.x : item.y;
  const axis = panel.axis;
  const other = axis === 0 ? 1 : 0;
  const leaf: Panel = { x: itemX, y: itemY, axis: other, item: index, turned, pieces: [], left: 0 };
  const along = axis === 0 ? itemX : itemY;
  const deep = axis === 0 ? itemY : itemX;
  const height = axis === 0 ? panel.y : panel.x;
  const rest = panel.left;
  if (deep === height) {
    panel.pieces.push(leaf);
    panel.left -= along;
    return;
  }
  if (place.across || along === rest) {
    const strip = axis === 0 ? emptyPanel(along, height, 1) : emptyPanel(height, along, 0);
    strip.pieces.push(leaf);
    strip.left = height - deep;
    panel.pieces.push(strip);
    panel.left -= along;
    return;
  }
  const block = axis === 0 ? emptyPanel(rest, height, 1) : emptyPanel(height, rest, 0);
  const row = axis === 0 ? emptyPanel(rest, deep, 0) : emptyPanel(deep, rest, 1);
  row.pieces.push(leaf);
  row.left = rest - along;
  block.pieces.push(row);
  block.left = height - deep;
  if (panel.pieces.length === 0) {
    // The panel is one whole rest: divide it the other way instead of nesting a copy of it.
    panel.axis = other;
    panel.pieces.push(row);
    panel.left = height - deep;
    return;
  }
  panel.pieces.push(block);
  panel.left = 0;
}

/** Takes the piece at the end of `way` (panels from the root down) out of the tree. The root stays. */
export function takeOut(way: readonly Panel[]): void {
  let depth = way.length - 1;
  while (depth > 0) {
    const piece = way[depth]!;
    const parent = way[depth - 1]!;
    parent.pieces.splice(parent.pieces.indexOf(piece), 1);
    parent.left += parent.axis === 0 ? piece.x : piece.y;
    if (parent.pieces.length > 0) break;
    depth--;
  }
  if (depth < 2) return;
  tighten(way[depth - 1]!, way[depth - 2]!);
}

/** Gives what none of its pieces needs of a panel's height back to the panel it was cut from. */
function tighten(panel: Panel, parent: Panel): void {
  let spare = Number.POSITIVE_INFINITY;
  for (const piece of panel.pieces) spare = Math.min(spare, piece.item >= 0 ? 0 : piece.left);
  if (!(spare > 0 && Number.isFinite(spare))) return;
  shrink(panel, parent.axis, spare);
  parent.left += spare;
  for (let i = panel.pieces.length - 1; i >= 0; i--) {
    const piece = panel.pieces[i]!;
    shrink(piece, parent.axis, spare);
    piece.left -= spare;
    if (piece.left > 0 || piece.pieces.length !== 1) continue;
    const only = piece.pieces[0]!;
    if (only.item >= 0) panel.pieces[i] = only;
    else {
      panel.pieces.splice(i, 1, ...only.pieces);
      panel.left += only.left;
    }
  }
}

function shrink(panel: Panel, axis: 0 | 1, by: number): void {
  if (axis === 0) panel.x -= by;
  else panel.y -= by;
}
