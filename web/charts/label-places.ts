/** Words beside line ends: moved apart so that none covers another. */

/** Width of a line of text at `size` px. Figures and small letters of the text face average 0.54 em (measured by eye). */
export function textWidth(text: string, size: number): number {
  let em = 0;
  for (const letter of text) em += /[MW@%]/.test(letter) ? 0.86 : /[ilI.,:;'|!1 ]/.test(letter) ? 0.36 : 0.56;
  return em * size;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/**
 * Where a label of this size goes beside a point: to the right of it, above or below it, to the left, then further off;
 * the first place inside `frame` that covers nothing in `taken`, or the one that covers least. Answers its box.
 */
export function placeBeside(at: Spot, width: number, height: number, frame: Box, taken: readonly Box[]): Box {
  let best: Box | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const away of [9, 18, 30, 44]) {
    const spots: readonly Spot[] = [
      { x: at.x + away, y: at.y - height / 2 },
      { x: at.x + away * 0.6, y: at.y - away - height / 2 },
      { x: at.x + away * 0.6, y: at.y + away - height / 2 },
      { x: at.x - width / 2, y: at.y - away - height },
      { x: at.x - width / 2, y: at.y + away },
      { x: at.x - away - width, y: at.y - height / 2 },
      { x: at.x - away * 0.6 - width, y: at.y + away - height / 2 },
      { x: at.x - away * 0.6 - width, y: at.y - away - height / 2 },
    ];
    for (const { x, y } of spots) {
      const box = { left: x, top: y, right: x + width, bottom: y + height };
      const cost = covered(box, taken) + outside(box, frame) * 20 + away * 0.01;
      if (cost < least) {
        least = cost;
        best = box;
      }
    }
    if (least < 1) break;
  }
  return best ?? { left: at.x, top: at.y, right: at.x + width, bottom: at.y + height };
}

/** Area of `box` that lies under the others, px2; touching counts a little. */
export function covered(box: Box, others: readonly Box[]): number {
  let area = 0;
  for (const o of others) {
    const wide = Math.min(box.right, o.right) - Math.max(box.left, o.left);
    const high = Math.min(box.bottom, o.bottom) - Math.max(box.top, o.top);
    if (wide > 0 && high > 0) area += 1 + wide * high;
  }
  return area;
}

function outside(box: Box, frame: Box): number {
  return (
    Math.max(0, frame.left - box.left) +
    Math.max(0, box.right - frame.right) +
    Math.max(0, frame.top - box.top) +
    Math.max(0, box.bottom - frame.bottom)
  );
}

/** Breaks words into lines no wider than `width` px; a single word that is wider stands alone. */
export function wrapped(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${word}`, size) <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
