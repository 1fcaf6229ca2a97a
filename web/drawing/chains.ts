/**
 * Dimension lines on the sheet. Core says which sizes are shown and on which side; here they get a place in pixels, so that
 * figures stay readable and clear of each other whatever the scale: short ones inside, overall ones outermost.
 */
import type { Dimension } from '#core/piece/drawing.ts';
import { type Box, textWidth } from '#web/charts/label-places.ts';
import { type Frame, type Pixel, px, toPixel } from './frame.ts';

export type Side = 'front' | 'back' | 'left' | 'right';

export interface PlacedDimension {
  readonly dimension: Dimension;
  readonly text: string;
  /** Ends of the dimension line. */
  readonly from: Pixel;
  readonly to: Pixel;
  /** Extension lines run from here. */
  readonly measuredFrom: Pixel;
  readonly measuredTo: Pixel;
  /** Where the figure's middle stands, and its turn in degrees. */
  readonly at: Pixel;
  readonly turn: number;
  /** The figure has no room between the arrows and stands past the end. */
  readonly past: boolean;
}

/** Side of the piece a dimension's line stands on; null: beside a slanted edge or inside a hole. */
export function sideOf(d: Dimension): Side | null {
  if (d.level < 1 || d.label === 'edge length') return null;
  if (d.offsetDirection.y < -0.99) return 'front';
  if (d.offsetDirection.y > 0.99) return 'back';
  if (d.offsetDirection.x < -0.99) return 'left';
  return d.offsetDirection.x > 0.99 ? 'right' : null;
}

/** The room a level or upright figure takes; null for one written aslant. */
export function figureBox({ at, text, turn }: PlacedDimension, size: number): Box | null {
  if (turn !== 0 && Math.abs(turn) !== 90) return null;
  const long = (textWidth(text, size) * 1.08) / 2 + 2;
  const tall = size / 2;
  const [x, y] = turn === 0 ? [long, tall] : [tall, long];
  return { left: at.x - x, right: at.x + x, top: at.y - y, bottom: at.y + y };
}

export interface ChainStyle {
  readonly size: number;
  /** From the piece to the first line: room for edge names. */
  readonly first: number;
  /** From line to line. */
  readonly step: number;
}

const OVERALL: readonly string[] = ['length', 'width', 'return length', 'diameter'];

/** Lines beside the piece, outside those that stand `along` its edges. `say` gives the figure. */
export function placeChains(
  dimensions: readonly Dimension[],
  frame: Frame,
  style: ChainStyle,
  say: (d: Dimension) => string,
  along: readonly PlacedDimension[],
): PlacedDimension[] {
  const placed: PlacedDimension[] = [];
  const { bounds: b } = frame;
  const box = {
    left: frame.left,
    top: frame.top,
    right: frame.left + (b.maxX_m - b.minX_m) * frame.pxPerMetre,
    bottom: frame.top + (b.maxY_m - b.minY_m) * frame.pxPerMetre,
  };
  for (const side of ['front', 'back', 'left', 'right'] as const) {
    const flat = side === 'front' || side === 'back';
    const first = Math.max(style.first, beyond(along, box)[side] + style.step);
    const taken: (readonly [number, number])[][] = [];
    const mine = dimensions
      .filter((d) => sideOf(d) === side)
      .map((d) => {
        const from = toPixel(frame, d.from);
        const to = toPixel(frame, d.to);
        const [low, high] = flat ? sorted(from.x, to.x) : sorted(from.y, to.y);
        const text = say(d);
        const wide = textWidth(text, style.size) * 1.08 + 6;
        const past = wide + 18 > high - low;
        // Past the end: to the right of a flat line, above an upright one.
        const reach: readonly [number, number] = !past
          ? [low, high]
          : flat
            ? [low - 14, high + 16 + wide]
            : [low - 16 - wide, high + 14];
        return {
          d,
          from,
          to,
          low,
          high,
          text,
          wide,
          past,
          reach,
          overall: OVERALL.includes(d.label) && !past,
        };
      })
      .sort((m, n) => Number(m.overall) - Number(n.overall) || m.high - m.low - (n.high - n.low));
    const levels = mine.map((m) => {
      const fits = (level: readonly (readonly [number, number])[]): boolean =>
        level.every(([l, h]) => m.reach[1] + 6 <= l || m.reach[0] >= h + 6);
      let level = m.overall ? taken.length : taken.findIndex(fits);
      if (level < 0) level = taken.length;
      if (taken[level] === undefined) taken[level] = [];
      taken[level]!.push(m.reach);
      return level;
    });
    mine.forEach((m, i) => {
      const level = levels[i]!;
      const away = first + level * style.step;
      const line = {
        front: box.bottom + away,
        back: box.top - away,
        left: box.left - away,
        right: box.right + away,
      }[side];
      const on = (along: number): Pixel => (flat ? { x: along, y: line } : { x: line, y: along });
      // Extension lines of the lines further out run past this one here.
      const crossed = mine.flatMap((o, j) => (levels[j]! > level ? [o.low, o.high] : []));
      const others = taken[level]!.filter((reach) => reach !== m.reach);
      placed.push({
        dimension: m.d,
        text: m.text,
        from: on(flat ? m.from.x : m.from.y),
        to: on(flat ? m.to.x : m.to.y),
        measuredFrom: m.from,
        measuredTo: m.to,
        at: on(figureAt(m, flat, crossed, others)),
        turn: flat ? 0 : -90,
        past: m.past,
      });
    });
  }
  return placed;
}

interface Figure {
  readonly low: number;
  readonly high: number;
  readonly wide: number;
  readonly past: boolean;
}

/**
 * Where along its line the middle of a figure stands: in the middle, or past the end, unless an extension line would run through it;
 * then the nearest place clear of them, past the other end where nothing else on the level is in the way.
 */
function figureAt(
  { low, high, wide, past }: Figure,
  flat: boolean,
  crossed: readonly number[],
  others: readonly (readonly [number, number])[],
): number {
  const clear = (at: number): boolean => crossed.every((c) => Math.abs(c - at) > wide / 2 + 1);
  if (past) {
    const after = high + 14 + wide / 2;
    const before = low - 14 - wide / 2;
    const [first, second] = flat ? [after, before] : [before, after];
    const free = (at: number): boolean =>
      others.every(([l, h]) => at + wide / 2 + 6 <= l || at - wide / 2 - 6 >= h);
    return !clear(first) && clear(second) && free(second) ? second : first;
  }
  const middle = (low + high) / 2;
  const room = (high - low) / 2 - wide / 2 - 12;
  for (let off = 0; off <= room; off += 4) {
    if (clear(middle + off)) return middle + off;
    if (clear(middle - off)) return middle - off;
  }
  return middle;
}

interface PixelBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** How far lines along edges reach out of the box on each side; far below 0 where there are none. */
function beyond(along: readonly PlacedDimension[], box: PixelBox): Readonly<Record<Side, number>> {
  const out = { front: -1e6, back: -1e6, left: -1e6, right: -1e6 };
  for (const d of along)
    for (const p of [d.from, d.to, d.at]) {
      out.front = Math.max(out.front, p.y - box.bottom);
      out.back = Math.max(out.back, box.top - p.y);
      out.left = Math.max(out.left, box.left - p.x);
      out.right = Math.max(out.right, p.x - box.right);
    }
  return out;
}

/**
 * Lines along slanted edges, outside the edge's name, and inside turned holes, where two sizes cross: their figures stand
 * a quarter of the way from an end, clear of each other.
 */
export function placeAlong(
  dimensions: readonly Dimension[],
  frame: Frame,
  style: ChainStyle,
  say: (d: Dimension) => string,
): PlacedDimension[] {
  const mine = dimensions.filter((d) => sideOf(d) === null);
  return mine.map((d) => {
    const measuredFrom = toPixel(frame, d.from);
    const measuredTo = toPixel(frame, d.to);
    const inside = d.level < 1;
    const out = { x: d.offsetDirection.x, y: -d.offsetDirection.y };
    const away = style.first + (d.level - 1) * style.step;
    const from = inside ? toPixel(frame, d.line.from) : moved(measuredFrom, out, away);
    const to = inside ? toPixel(frame, d.line.to) : moved(measuredTo, out, away);
    const text = say(d);
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const past = textWidth(text, style.size) * 1.08 + 24 > length * (inside ? 0.5 : 1);
    const part = inside ? clearPart(d, mine) : 0.5;
    const on = { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part };
    let turn = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
    if (turn > 89.9) turn -= 180;
    if (turn < -90.1) turn += 180;
    return {
      dimension: d,
      text,
      from,
      to,
      measuredFrom,
      measuredTo,
      // No room on the line: beside it, a figure's height further out; in a hole past its far end.
      at: !past ? on : inside ? pastEnd(from, to, textWidth(text, style.size)) : moved(on, out, style.size),
      turn,
      past,
    };
  });
}

/** A quarter or three quarters along a line in a hole: whichever end lies further from the middle of the line across it. */
function clearPart(d: Dimension, all: readonly Dimension[]): number {
  const other = all.find((o) => o !== d && o.level < 1 && o.of === d.of);
  if (other === undefined) return 0.5;
  const { from: a, to: b } = d.line;
  const { from: c, to: e } = other.line;
  // Where the two lines cross, as a part of this one.
  const across = (b.x_m - a.x_m) * (e.y_m - c.y_m) - (b.y_m - a.y_m) * (e.x_m - c.x_m);
  if (across === 0) return 0.5;
  const part = ((c.x_m - a.x_m) * (e.y_m - c.y_m) - (c.y_m - a.y_m) * (e.x_m - c.x_m)) / across;
  return part > 0.5 ? 0.26 : 0.74;
}

/** Beyond the end of a line, clear of a rim and an arrow, for a figure this wide. */
function pastEnd(from: Pixel, to: Pixel, wide: number): Pixel {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const far = (length + 22 + wide / 2) / length;
  return { x: from.x + (to.x - from.x) * far, y: from.y + (to.y - from.y) * far };
}

function sorted(a: number, b: number): readonly [number, number] {
  return a <= b ? [a, b] : [b, a];
}

function moved(p: Pixel, out: Pixel, away: number): Pixel {
  return { x: p.x + out.x * away, y: p.y + out.y * away };
}

/** Filled arrowhead with its tip at `tip`, pointing away from `from`. */
export function arrowHead(tip: Pixel, from: Pixel, length: number): string {
  const size = Math.hypot(tip.x - from.x, tip.y - from.y);
  if (!(size > 0)) return '';
  const ux = ((tip.x - from.x) / size) * length;
  const uy = ((tip.y - from.y) / size) * length;
  const side = 0.28;
  return `M${px(tip.x)} ${px(tip.y)}L${px(tip.x - ux - uy * side)} ${px(tip.y - uy + ux * side)}L${px(tip.x - ux + uy * side)} ${px(tip.y - uy - ux * side)}Z`;
}
