/** Where figures stand on a drawing, so that none is put on another or on a line. */

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A text's box, centred on (x, y), turned clockwise on the page. */
export interface TextBox extends Spot {
  readonly wide: number;
  readonly high: number;
  readonly turn_deg: number;
}

export function boxCorners(box: TextBox): Spot[] {
  const turn = (box.turn_deg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([sx, sy]) => {
    const [u, v] = [(sx! * box.wide) / 2, (sy! * box.high) / 2];
    return { x: box.x + u * cos - v * sin, y: box.y + u * sin + v * cos };
  });
}

/** Whether two convex figures share more than a touch (separating axes). A line is a figure of two corners. */
export function overlap(a: readonly Spot[], b: readonly Spot[]): boolean {
  for (const figure of [a, b])
    for (let i = 0; i < figure.length; i += 1) {
      const p = figure[i]!;
      const q = figure[(i + 1) % figure.length]!;
      const [nx, ny] = [q.y - p.y, p.x - q.x];
      if (nx === 0 && ny === 0) continue;
      const spread = (spots: readonly Spot[]): readonly [number, number] => {
        const along = spots.map((s) => s.x * nx + s.y * ny);
        return [Math.min(...along), Math.max(...along)];
      };
      const [a0, a1] = spread(a);
      const [b0, b1] = spread(b);
      const touch = 1e-9 * Math.hypot(nx, ny);
      if (a1 <= b0 + touch || b1 <= a0 + touch) return false;
    }
  return true;
}

/** The first of the places that is clear of everything; the first of all where none is. */
export function firstClear(places: readonly TextBox[], taken: readonly (readonly Spot[])[]): TextBox {
  return (
    places.find((place) => {
      const own = boxCorners(place);
      return taken.every((other) => !overlap(own, other));
    }) ?? places[0]!
  );
}
