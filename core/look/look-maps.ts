/**
 * The moves of a look document as maps of the plane. While a coat is poured its level rises: after a share f of the whole is
 * down, the film on the board is f as thick as at the end, so what lies on the board then is drawn together in the plane of
 * the finished film, to f of its area. Colour poured evenly over an ellipse of half axes a and b carries film outwards by
 * amounts that go with x b/(a + b) and y a/(a + b) (the field inside a uniform elliptic cylinder, potential theory; from
 * memory), so lengths along x are drawn together by f^(b/(a + b)), across by f^(a/(a + b)), with the box of the work for the ellipse.
 * A puddle therefore stays near the place it was poured at, and hardly anything but what is really too much runs off. For a
 * round tray poured in its middle this is exact: r' = sqrt(V / (pi h2) + r^2 h1 / h2).
 */
import { positive } from '#core/quantity/domain.ts';
import type { LookMove } from './look.ts';
import type { LookMoveDocument, PuddleMove } from './look-document.ts';
import type { Move, Place } from './move.ts';
import { pouredToLieAt, ribbon } from './pour-places.ts';
import { type Symmetry, twinOf } from './twin.ts';

export interface MapSetting {
  readonly film_m: number;
  /** Of all that is poured on, in the plane, m2. */
  readonly area_m2: number;
  readonly middle: Place;
  /** Half sizes of the box of the work, m, above 0. */
  readonly half_m: Place;
  readonly symmetry: Symmetry;
  /** Number of a colour by its key. */
  readonly colourOf: (key: string) => number;
}

/** What of the coat is down after each move, as a share of the whole; puddles that are not kept add nothing. */
export function downAfter(
  moves: readonly LookMoveDocument[],
  whole_m3: number,
): { readonly ground: number; readonly after: readonly number[] } {
  positive('whole_m3', whole_m3, 'm3');
  const volumes = moves.map((move) => (move.kind === 'puddle' && move.kept ? move.volume_m3 : 0));
  const ground = Math.max(0, 1 - volumes.reduce((sum, volume) => sum + volume, 0) / whole_m3);
  let down = ground;
  return {
    ground,
    after: volumes.map((volume) => {
      down += volume / whole_m3;
      return Math.min(1, down);
    }),
  };
}

/**
 * The kept moves as maps, in order. The puddles may not hold more than the whole coat (the reader says so first).
 * @throws RangeError unless film and area are above 0.
 */
export function lookMaps(moves: readonly LookMoveDocument[], setting: MapSetting): readonly LookMove[] {
  const film_m = positive('film_m', setting.film_m, 'm');
  const whole_m3 = film_m * positive('area_m2', setting.area_m2, 'm2');
  const { after } = downAfter(moves, whole_m3);
  let buffers_m = 0;
  return moves.flatMap((move, at): LookMove[] => {
    if (!move.kept || move.kind === 'fogged edge') return [];
    if (move.kind === 'clear buffer') {
      buffers_m += move.film_m;
      return [];
    }
    const down = after[at]!;
    // Nothing is on the board yet that could be stirred.
    if (down < 1e-6) return [];
    const maps = [move, twinOf(move, setting.symmetry, setting.middle)].filter((one) => one !== null);
    const draw = drawnTogether(down, setting);
    const stands_m = (film_m * down + buffers_m) * draw.size;
    return [
      {
        id: move.id,
        maps:
          move.kind === 'puddle'
            ? puddles(maps as PuddleMove[], film_m, draw, setting)
            : maps.flatMap((one) => tool(one, draw, stands_m)),
      },
    ];
  });
}

/** How the board lies in the plane while only part of the coat is down. */
interface Draw {
  readonly at: (p: Place) => Place;
  readonly heading: (rad: number) => number;
  /** Of lengths without a direction. */
  readonly size: number;
}

function drawnTogether(down: number, { middle, half_m }: Pick<MapSetting, 'middle' | 'half_m'>): Draw {
  const [a, b] = half_m;
  const [sx, sy] = [down ** (b / (a + b)), down ** (a / (a + b))];
  return {
    at: ([x, y]) => [middle[0] + sx * (x - middle[0]), middle[1] + sy * (y - middle[1])],
    heading: (rad) => (sx === sy ? rad : Math.atan2(sy * Math.sin(rad), sx * Math.cos(rad))),
    size: Math.sqrt(down),
  };
}

/** Twins share the cup; where they would run together on the middle they are poured as one there. */
function puddles(twins: readonly PuddleMove[], film_m: number, draw: Draw, setting: MapSetting): Move[] {
  const [first, second] = twins;
  const area_m2 = first!.volume_m3 / film_m;
  const colour = setting.colourOf(first!.colour);
  const path = (move: PuddleMove) => move.path.map(draw.at);
  if (second === undefined) return [...pouredToLieAt(ribbon(path(first!), area_m2, colour))];
  const ribbons = [first!, second].map((move) => ribbon(path(move), area_m2 / 2, colour));
  const [p, q] = [ribbons[0]![0]!, ribbons[1]![0]!];
  const apart = Math.hypot(p.at[0] - q.at[0], p.at[1] - q.at[1]);
  if (ribbons[0]!.length === 1 && apart < p.radius_m) {
    const at: Place = [(p.at[0] + q.at[0]) / 2, (p.at[1] + q.at[1]) / 2];
    return [{ kind: 'puddle', colour, centre: at, radius_m: p.radius_m * Math.SQRT2 }];
  }
  return [...pouredToLieAt(ribbons.flat())];
}

function tool(move: LookMoveDocument, { at, heading, size }: Draw, stands_m: number): Move[] {
  switch (move.kind) {
    case 'stroke':
      return move.path.slice(1).map((to, i) => ({
        kind: 'stroke',
        from: at(move.path[i]!),
        to: at(to),
        width_m: move.width_m * size,
        depth: move.depth,
      }));
    case 'comb':
      return [
        {
          kind: 'drag',
          through: at(move.through),
          heading_rad: heading(move.heading_rad),
          pull_m: move.pull_m * size,
          width_m: move.width_m * size,
          film_m: stands_m,
          teeth: move.teeth,
          pitch_m: move.pitch_m * size,
        },
      ];
    case 'swirl':
      return [
        { kind: 'swirl', centre: at(move.centre), turn_rad: move.turn_rad, reach_m: move.reach_m * size },
      ];
    case 'waver':
      return [
        {
          kind: 'waver',
          amplitude_m: move.amplitude_m * size,
          wavelength_m: move.wavelength_m * size,
          seed: move.seed,
        },
      ];
    case 'tilt':
      return [
        { kind: 'tilt', centre: at(move.centre), heading_rad: heading(move.heading_rad), draw: move.draw },
      ];
    case 'puddle':
    case 'fogged edge':
    case 'clear buffer':
      return [];
  }
}
