/** First coordinates for the adjustment: corner after corner by triangles, both mirror images kept until the corners decide. */
import { crossesItself, shoelace_m2, turnCosine, wrongTurns } from './polygon.ts';
import type { DistanceReading, Reading, Survey, Turn } from './survey.ts';

/** Partial shapes carried along; a dozen corners have a thousand mirror images, nearly all far off the readings. */
const KEPT = 48;
/** Whole shapes handed to the adjustment. */
const TRIED = 6;

interface Partial {
  readonly places: Float64Array;
  /** Sum of |misfit| / sigma over the readings that were not used to place a corner. */
  readonly misfit: number;
}

/**
 * Whole shapes to start from, the likeliest first: those whose corners turn as said and whose sides do not cross, then by how
 * well the spare readings fit, then by how square they are. The first corner at 0, 0 and the second on +x. Corners that the
 * readings do not reach are put where square walls would have them.
 *
 * @param survey three corners or more.
 * @returns at least one shape, x and y of each corner in turn, m, counter-clockwise.
 */
export function startingShapes(survey: Pick<Survey, 'readings' | 'turns'>): Float64Array[] {
  const { turns, readings } = survey;
  const n = turns.length;
  const seed = seedOf(readings, n);
  const empty = new Float64Array(2 * n);
  empty[2 * seed.to] = seed.value_m;
  let shapes: Partial[] = [{ places: empty, misfit: 0 }];
  const placed = new Set([seed.from, seed.to]);
  while (placed.size < n) {
    const next = nextCorner(readings, n, placed);
    shapes = shapes.flatMap((shape) => extend(shape, next, readings, turns, placed));
    placed.add(next);
    shapes.sort((a, b) => a.misfit - b.misfit);
    shapes = shapes.slice(0, KEPT);
  }
  const whole = shapes.map(({ places, misfit }) => {
    const shape = onAxis(shoelace_m2(places) < 0 ? mirrored(places) : places);
    const strange = wrongTurns(shape, turns).length + (crossesItself(shape) ? 1 : 0);
    return { shape, strange, misfit, skew: skewness(shape) };
  });
  whole.sort(
    (a, b) =>
      Math.sign(a.strange) - Math.sign(b.strange) ||
      Math.round(a.misfit / 3) - Math.round(b.misfit / 3) ||
      a.strange - b.strange ||
      a.skew - b.skew,
  );
  // A fold that turns corners the wrong way, or is far off the readings, cannot win against one that does not.
  const best = whole[0]!;
  const likely = whole.filter(
    ({ strange, misfit }) => Math.sign(strange) === Math.sign(best.strange) && misfit <= 2 * best.misfit + 20,
  );
  const different: Float64Array[] = [];
  for (const { shape } of likely)
    if (different.length < TRIED && !different.some((other) => farthest_m(other, shape) < 1e-6))
      different.push(shape);
  return different;
}

/** Sum of squared cosines of the corners: 0 for a shape of right angles. */
export function skewness(places: Float64Array): number {
  let sum = 0;
  for (let corner = 0; corner < places.length / 2; corner++) sum += turnCosine(places, corner) ** 2;
  return sum;
}

/** Largest difference of a coordinate, m. */
export function farthest_m(a: Float64Array, b: Float64Array): number {
  return a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i]!)), 0);
}

/** The same shape with its first corner at 0, 0 and the second on +x. */
export function onAxis(places: Float64Array): Float64Array {
  const span = Math.hypot(places[2]! - places[0]!, places[3]! - places[1]!);
  const ux = span > 0 ? (places[2]! - places[0]!) / span : 1;
  const uy = span > 0 ? (places[3]! - places[1]!) / span : 0;
  const moved = new Float64Array(places.length);
  for (let i = 0; i < places.length; i += 2) {
    const x = places[i]! - places[0]!;
    const y = places[i + 1]! - places[1]!;
    moved[i] = x * ux + y * uy;
    moved[i + 1] = y * ux - x * uy;
  }
  moved[3] = 0;
  return moved;
}

export function mirrored(places: Float64Array): Float64Array {
  return places.map((value, i) => (i % 2 === 1 && value !== 0 ? -value : value));
}

function distances(readings: readonly Reading[]): DistanceReading[] {
  return readings.filter((reading) => reading.kind === 'distance');
}

function seedOf(readings: readonly Reading[], n: number): { from: number; to: number; value_m: number } {
  const side = distances(readings).find(
    ({ from, to }) => Math.abs(from - to) === 1 || Math.abs(from - to) === n - 1,
  );
  return side ?? distances(readings)[0] ?? { from: 0, to: 1, value_m: 1 };
}

/** The corner with most readings to placed ones; one that no two reach comes last, the neighbour of a placed one first. */
function nextCorner(readings: readonly Reading[], n: number, placed: ReadonlySet<number>): number {
  let best = -1;
  let most = -1;
  for (let corner = 0; corner < n; corner++) {
    if (placed.has(corner)) continue;
    const edge = straightedge(readings, corner, placed) === null ? 0 : 2;
    const reach = 4 * Math.min(2, edge + anchors(readings, corner, placed).length);
    const spare = anchors(readings, corner, placed).length;
    const neighbour = placed.has((corner + n - 1) % n) && placed.has((corner + n - 2) % n) ? 1 : 0;
    const near = placed.has((corner + n - 1) % n) || placed.has((corner + 1) % n) ? 1 : 0;
    const rank = reach >= 8 ? 100 + reach + spare : reach + neighbour + near;
    if (rank > most) {
      most = rank;
      best = corner;
    }
  }
  return best;
}

interface Anchor {
  readonly corner: number;
  readonly length_m: number;
  readonly sigma_m: number;
}

function anchors(readings: readonly Reading[], corner: number, placed: ReadonlySet<number>): Anchor[] {
  const found: Anchor[] = [];
  for (const { from, to, value_m, sigma_m } of distances(readings)) {
    const other = from === corner ? to : to === corner ? from : -1;
    if (placed.has(other) && !found.some((anchor) => anchor.corner === other))
      found.push({ corner: other, length_m: value_m, sigma_m });
  }
  return found;
}

function straightedge(readings: readonly Reading[], corner: number, placed: ReadonlySet<number>) {
  for (const along of readings) {
    if (along.kind !== 'along' || along.corner !== corner) continue;
    if (!placed.has(along.from) || !placed.has(along.to)) continue;
    const offset = readings.find(
      (other) =>
        other.kind === 'offset' &&
        other.corner === corner &&
        other.from === along.from &&
        other.to === along.to,
    );
    if (offset !== undefined)
      return { from: along.from, to: along.to, along: along.value_m, offset: offset.value_m };
  }
  return null;
}

function extend(
  shape: Partial,
  corner: number,
  readings: readonly Reading[],
  turns: readonly Turn[],
  placed: ReadonlySet<number>,
): Partial[] {
  const { places } = shape;
  const near = anchors(readings, corner, placed);
  const spots: [number, number][] = [];
  const edge = straightedge(readings, corner, placed);
  if (edge !== null) {
    const [ux, uy] = direction(places, edge.from, edge.to);
    spots.push([
      places[2 * edge.from]! + edge.along * ux - edge.offset * uy,
      places[2 * edge.from + 1]! + edge.along * uy + edge.offset * ux,
    ]);
  } else if (near.length >= 2) spots.push(...bestCrossing(places, near));
  else spots.push(guess(places, corner, near[0], turns, placed));
  return spots.map(([x, y]) => {
    const next = Float64Array.from(places);
    next[2 * corner] = x;
    next[2 * corner + 1] = y;
    const misfit = near.reduce((sum, anchor) => {
      const d = Math.hypot(x - places[2 * anchor.corner]!, y - places[2 * anchor.corner + 1]!);
      return sum + Math.abs(d - anchor.length_m) / anchor.sigma_m;
    }, shape.misfit);
    return { places: next, misfit };
  });
}

function direction(places: Float64Array, from: number, to: number): [number, number] {
  const dx = places[2 * to]! - places[2 * from]!;
  const dy = places[2 * to + 1]! - places[2 * from + 1]!;
  const size = Math.hypot(dx, dy);
  return size > 0 ? [dx / size, dy / size] : [1, 0];
}

/** Both places where circles about two anchors cross, of the pair that crosses at the steepest angle. */
function bestCrossing(places: Float64Array, near: readonly Anchor[]): [number, number][] {
  let steepest = -1;
  let spots: [number, number][] = [];
  near.forEach((a, i) => {
    for (const b of near.slice(i + 1)) {
      const dx = places[2 * b.corner]! - places[2 * a.corner]!;
      const dy = places[2 * b.corner + 1]! - places[2 * a.corner + 1]!;
      const base = Math.hypot(dx, dy);
      if (!(base > 0)) continue;
      const ux = dx / base;
      const uy = dy / base;
      // Law of cosines; readings that close no triangle put the corner on the line.
      const x = (a.length_m ** 2 + base ** 2 - b.length_m ** 2) / (2 * base);
      const y = Math.sqrt(Math.max(0, a.length_m ** 2 - x ** 2));
      const steep = (base * y) / (a.length_m * b.length_m);
      if (steep <= steepest) continue;
      steepest = steep;
      const put = (side: number): [number, number] => [
        places[2 * a.corner]! + x * ux - side * y * uy,
        places[2 * a.corner + 1]! + x * uy + side * y * ux,
      ];
      spots = y > 0 ? [put(1), put(-1)] : [put(1)];
    }
  });
  return spots.length > 0 ? spots : [[1, 1]];
}

/** Where square walls would put a corner: on from the last placed one, turned as its corner says. */
function guess(
  places: Float64Array,
  corner: number,
  anchor: Anchor | undefined,
  turns: readonly Turn[],
  placed: ReadonlySet<number>,
): [number, number] {
  const n = turns.length;
  const inward = turns.filter((turn) => turn === 'in').length;
  const outTurn = (2 * Math.PI + (inward * Math.PI) / 2) / Math.max(1, n - inward);
  const angle = (at: number) => (turns[at] === 'out' ? outTurn : -Math.PI / 2);
  const length = anchor?.length_m ?? 0.6;
  const before = (corner + n - 1) % n;
  const after = (corner + 1) % n;
  let from = before;
  let heading = 0;
  if (placed.has(before)) {
    const [ux, uy] = direction(places, (before + n - 1) % n, before);
    heading = (placed.has((before + n - 1) % n) ? Math.atan2(uy, ux) : 0) + angle(before);
  } else if (placed.has(after)) {
    from = after;
    const [ux, uy] = direction(places, after, (after + 1) % n);
    heading = (placed.has((after + 1) % n) ? Math.atan2(uy, ux) : 0) - angle(after) + Math.PI;
  } else from = anchor?.corner ?? [...placed][0]!;
  return [places[2 * from]! + length * Math.cos(heading), places[2 * from + 1]! + length * Math.sin(heading)];
}
