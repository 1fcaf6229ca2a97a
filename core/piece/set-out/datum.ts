/** The two edges a tape is hooked on: every coordinate of a set-out sheet is a distance from one of them. */

import { bounds } from '../path.ts';
import type { Path, Point } from '../piece.ts';

export interface Datum {
  readonly side: 'left' | 'right' | 'front' | 'back';
  /** Where its line lies in the piece's own axes (x for left and right, y for front and back). */
  readonly at_m: number;
  /** The straight edge that lies on it; null where the outline only touches it (a square laid against a rim). */
  readonly edge: string | null;
  /** 1 when coordinates grow with the axis, -1 when they grow against it. */
  readonly sign: 1 | -1;
}

export interface Datums {
  readonly across: Datum;
  readonly up: Datum;
}

/** Distances from the two datum lines. Never negative for a point of the outline. */
export interface Coordinates {
  /** From the left (or right) datum. */
  readonly across_m: number;
  /** From the front (or back) datum. */
  readonly up_m: number;
}

/** Straight edges within this of the side of the box lie on it. */
const ON_LINE_M = 1e-7;

/**
 * Of each pair of opposite sides of the box round the outline, the one with more straight edge on it; left and front where
 * both are alike (what a mitre saw calls the reference edge: common practice, no source). The outline in m.
 */
export function chooseDatums(outline: Path): Datums {
  const box = bounds(outline);
  const side = (name: Datum['side'], at_m: number, sign: 1 | -1): Datum & { readonly length_m: number } => {
    const flat = name === 'front' || name === 'back';
    let length_m = 0;
    let edge: string | null = null;
    for (const s of outline) {
      if (s.kind !== 'line') continue;
      const [a, b] = flat ? [s.from.y_m, s.to.y_m] : [s.from.x_m, s.to.x_m];
      if (Math.abs(a - at_m) > ON_LINE_M || Math.abs(b - at_m) > ON_LINE_M) continue;
      length_m += Math.hypot(s.to.x_m - s.from.x_m, s.to.y_m - s.from.y_m);
      edge ??= s.edge;
    }
    return { side: name, at_m, edge, sign, length_m };
  };
  const pick = (first: ReturnType<typeof side>, second: ReturnType<typeof side>): Datum => {
    const { length_m: _, ...datum } = second.length_m > first.length_m + ON_LINE_M ? second : first;
    return datum;
  };
  return {
    across: pick(side('left', box.minX_m, 1), side('right', box.maxX_m, -1)),
    up: pick(side('front', box.minY_m, 1), side('back', box.maxY_m, -1)),
  };
}

export function fromDatums(p: Point, datums: Datums): Coordinates {
  const { across, up } = datums;
  // Adding 0 turns -0 into 0.
  return {
    across_m: (p.x_m - across.at_m) * across.sign + 0,
    up_m: (p.y_m - up.at_m) * up.sign + 0,
  };
}
