/**
 * A puddle poured onto a coat that is still wet: the film equation around an axis, h_Theta = (rho g/3) (r h^3 h_r)_r / r, solved implicitly on
 * rings (backward Euler, mobility of the step's start, volumes exact). Surface tension left out. Depth-mean: what is put ON TOP moves
 * up to 1.5 times as far as the depth mean, so a colour shows a larger spot.
 */

import { notNegative, positive } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';

const RINGS = 400;
const GROWTH = 0.02;

export interface WetPuddleInput {
  /** Above 0. */
  readonly volume_m3: number;
  /** Of the column as poured, m, above 0. */
  readonly startRadius_m: number;
  /** Wet film it falls on, m, above 0. */
  readonly coat_m: number;
  readonly theta_per_Pa: number;
  readonly liquid?: Liquid;
}

export interface WetPuddle {
  /** Radius of the resin that was poured and what lay under it, depth-mean, m. */
  readonly ownRadius_m: number;
  /** Where it ends when all is level, m: sqrt(R0^2 + V/(pi coat)). */
  readonly finalRadius_m: number;
  /** Furthest place with 10 % more film than the coat, m. */
  readonly feltRadius_m: number;
  readonly middle_m: number;
}

/**
 * Spread on a wet coat of great extent. Within 1 % for coats from 2 % of the column's height; below that use the dry puddle.
 * Worked: 30 mL, 30 mm, on 1 mm, Theta 60 -> 73 mm.
 * @param input theta_per_Pa from 0
 * @throws RangeError outside the ranges of {@link WetPuddleInput}.
 */
export function wetPuddle(input: WetPuddleInput): WetPuddle {
  const volume_m3 = positive('volume_m3', input.volume_m3, 'm3');
  const start_m = positive('startRadius_m', input.startRadius_m, 'm');
  const coat_m = positive('coat_m', input.coat_m, 'm');
  const theta = notNegative('theta_per_Pa', input.theta_per_Pa, '1/Pa');
  const mobility = specificWeight_N_m3(input.liquid ?? DEFAULT_LIQUID) / 3;
  const finalRadius_m = Math.sqrt(start_m ** 2 + volume_m3 / (Math.PI * coat_m));
  // wide enough for what is felt: the film diffuses with mobility coat^3
  const reach_m = Math.max(
    2.5 * finalRadius_m,
    1.5 * finalRadius_m + 4 * Math.sqrt(mobility * coat_m ** 3 * theta),
  );
  const ring_m = reach_m / RINGS;
  const h = new Float64Array(RINGS).fill(coat_m);
  const column_m = volume_m3 / (Math.PI * start_m ** 2);
  for (let i = 0; i < RINGS; i++) {
    const inner = Math.min(start_m, i * ring_m);
    const outer = Math.min(start_m, (i + 1) * ring_m);
    h[i]! += (column_m * (outer ** 2 - inner ** 2)) / (ring_m ** 2 * (2 * i + 1));
  }
  const thickest = column_m + coat_m;
  const first = ring_m ** 2 / (2 * mobility * thickest ** 3);
  for (let spent = 0; spent < theta; ) {
    const by = Math.min(Math.max(first, GROWTH * spent), theta - spent);
    step(h, (mobility * by) / ring_m ** 2);
    spent = by === theta - spent ? theta : spent + by;
  }
  const whole = volume_m3 + Math.PI * start_m ** 2 * coat_m;
  let inside = 0;
  let ownRadius_m = reach_m;
  for (let i = 0; i < RINGS; i++) {
    const ring = Math.PI * ring_m ** 2 * (2 * i + 1) * h[i]!;
    if (inside + ring >= whole) {
      ownRadius_m = Math.sqrt((i * ring_m) ** 2 + (whole - inside) / (Math.PI * h[i]!));
      break;
    }
    inside += ring;
  }
  let felt = RINGS - 1;
  while (felt > 0 && h[felt]! < 1.1 * coat_m) felt--;
  const above = felt + 1 < RINGS ? (h[felt]! - 1.1 * coat_m) / (h[felt]! - h[felt + 1]!) : 0;
  const feltRadius_m = h[felt]! < 1.1 * coat_m ? 0 : (felt + 0.5 + Math.min(1, Math.max(0, above))) * ring_m;
  return { ownRadius_m, finalRadius_m, feltRadius_m, middle_m: h[0]! };
}

/** One implicit step; ring i has area 2 i + 1 and outer face i + 1, in squares and lengths of a ring. */
function step(h: Float64Array, by: number): void {
  const n = h.length;
  const give = new Float64Array(n);
  const rest = new Float64Array(n);
  let before = 0;
  for (let i = 0; i < n; i++) {
    const a = h[i]!;
    const b = i + 1 < n ? h[i + 1]! : a;
    const m = i + 1 < n ? (2 * (i + 1) * by * (a + b) * (a * a + b * b)) / 4 : 0;
    const area = 2 * i + 1;
    const gave = i === 0 ? 0 : give[i - 1]!;
    const diagonal = area + m + before * (1 - gave);
    give[i] = m / diagonal;
    rest[i] = (area * a + (i === 0 ? 0 : before * rest[i - 1]!)) / diagonal;
    before = m;
  }
  let film = rest[n - 1]!;
  h[n - 1] = film;
  for (let i = n - 2; i >= 0; i--) {
    film = rest[i]! + give[i]! * film;
    h[i] = film;
  }
}
