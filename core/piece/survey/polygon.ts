/** Small questions about corners in order, as the survey solver asks them. Coordinates x and y of each in turn, m. */
import type { Turn } from './survey.ts';

/** Cross product of the sides before and after a corner over both lengths: sine of the turn, positive to the left; 0 for a side of no length. */
export function turnSine(places: ArrayLike<number>, corner: number): number {
  const n = places.length / 2;
  const [ax, ay, bx, by] = sidesAt(places, corner, n);
  const size = Math.hypot(ax, ay) * Math.hypot(bx, by);
  return size > 0 ? (ax * by - ay * bx) / size : 0;
}

/** Cosine of the turn at a corner: 0 where it is square. */
export function turnCosine(places: ArrayLike<number>, corner: number): number {
  const n = places.length / 2;
  const [ax, ay, bx, by] = sidesAt(places, corner, n);
  const size = Math.hypot(ax, ay) * Math.hypot(bx, by);
  return size > 0 ? (ax * bx + ay * by) / size : 1;
}

function sidesAt(places: ArrayLike<number>, corner: number, n: number): [number, number, number, number] {
  const before = 2 * ((corner + n - 1) % n);
  const at = 2 * corner;
  const after = 2 * ((corner + 1) % n);
  return [
    places[at]! - places[before]!,
    places[at + 1]! - places[before + 1]!,
    places[after]! - places[at]!,
    places[after + 1]! - places[at + 1]!,
  ];
}

/** Area by the shoelace formula, m2; positive when the corners run counter-clockwise. */
export function shoelace_m2(places: ArrayLike<number>): number {
  let twice = 0;
  for (let i = 0; i < places.length; i += 2) {
    const j = (i + 2) % places.length;
    twice += places[i]! * places[j + 1]! - places[j]! * places[i + 1]!;
  }
  return twice / 2;
}

/** Whether two sides that are not neighbours cross. */
export function crossesItself(places: ArrayLike<number>): boolean {
  const n = places.length / 2;
  const side = (a: number, b: number, c: number) =>
    Math.sign(
      (places[2 * b]! - places[2 * a]!) * (places[2 * c + 1]! - places[2 * a + 1]!) -
        (places[2 * b + 1]! - places[2 * a + 1]!) * (places[2 * c]! - places[2 * a]!),
    );
  for (let i = 0; i < n; i++)
    for (let k = i + 2; k < n; k++) {
      if (i === 0 && k === n - 1) continue;
      const j = (i + 1) % n;
      const l = (k + 1) % n;
      if (side(i, j, k) !== side(i, j, l) && side(k, l, i) !== side(k, l, j)) return true;
    }
  return false;
}

/** Corners that turn the other way than they were said to. A corner within a degree of straight is taken either way. */
export function wrongTurns(places: ArrayLike<number>, turns: readonly Turn[]): number[] {
  const slack = Math.sin(Math.PI / 180);
  return turns.flatMap((turn, corner) => {
    const sine = turnSine(places, corner) * (turn === 'out' ? 1 : -1);
    return sine < -slack ? [corner] : [];
  });
}
