/**
 * Film that drains from a flat top over a rounded arris down a face, weight and surface tension together: the solver behind the
 * tables of arris-table.ts. Along the surface s, with slope th (0 on the top, 90 degrees on the face) and curvature kappa,
 *   d(h + kappa h^2/2)/dTheta = d/ds[(h^3/3) dp/ds],  p = rho g (y + h cos th) + gamma kappa/(1 + kappa h) - gamma h_ss
 * (Schwartz and Weidner 1995, J. Eng. Math. 29, 91; Weidner, Schwartz and Eley 1996, J. Colloid Interface Sci.; form of
 * equation from memory). Thin-film theory: rough where the film is as thick as the radius, sound well below.
 * Finite volumes, backward Euler with two half steps and one whole step combined to second order in Theta, Newton in each.
 */

import { notNegative, positive } from '#core/quantity/domain.ts';
import { solveFiveDiagonals } from './band-solve.ts';
import { DEFAULT_LIQUID, type Liquid, specificWeight_N_m3 } from './constants.ts';

export interface CurvedFilmInput {
  /** Even film at the start, on top, arris and face, m, above 0. */
  readonly thickness_m: number;
  readonly arrisRadius_m: number;
  readonly faceHeight_m: number;
  /** Flat top seen, m: several times sqrt(rho g h^3 Theta/3) to count as wide. */
  readonly topWidth_m: number;
  /** Rising flow budgets at which to look, 1/Pa. */
  readonly theta_per_Pa: readonly number[];
  /** Size of cell at the arris, m; grows away from it. */
  readonly cell_m: number;
  /** Surface tension 0 leaves weight alone. */
  readonly liquid?: Liquid;
}

export interface CurvedFilmState {
  readonly theta_per_Pa: number;
  /** Least film on the rounded part, m. */
  readonly arrisFilm_m: number;
  /** What the flat top has lost, m2 (negative when the arris has been squeezed onto it). */
  readonly topLoss_m2: number;
}

/** Films below this are not told apart, m: liquid films are not continuous there. */
const MOLECULAR_m = 1e-7;

interface Mesh {
  readonly width: Float64Array;
  /** Distance between the middles of cells i and i + 1. */
  readonly apart: Float64Array;
  readonly height: Float64Array;
  readonly cosine: Float64Array;
  readonly curvature: Float64Array;
  readonly firstOnArris: number;
  readonly firstOnFace: number;
}

/** Cells of an even stretch, or growing by 4 % a cell away from the arris up to a most. */
function mesh(input: CurvedFilmInput): Mesh {
  const { cell_m, arrisRadius_m: radius, topWidth_m, faceHeight_m } = input;
  const growing = (length: number, most: number): number[] => {
    const list: number[] = [];
    let size = cell_m;
    let done = 0;
    while (done < length) {
      list.push(size);
      done += size;
      size = Math.min(size * 1.04, most);
    }
    return list.map((each) => (each * length) / done);
  };
  const arc = (Math.PI / 2) * radius;
  const onArc = Math.max(8, Math.round(arc / cell_m));
  const top = growing(topWidth_m, topWidth_m / 60).reverse();
  const face = growing(faceHeight_m - radius, 1e-3);
  const widths = [...top, ...new Array<number>(onArc).fill(arc / onArc), ...face];
  const n = widths.length;
  const out = {
    width: Float64Array.from(widths),
    apart: new Float64Array(n - 1),
    height: new Float64Array(n),
    cosine: new Float64Array(n),
    curvature: new Float64Array(n),
    firstOnArris: top.length,
    firstOnFace: top.length + onArc,
  };
  let s = -topWidth_m;
  for (let i = 0; i < n; i++) {
    const middle = s + widths[i]! / 2;
    s += widths[i]!;
    if (i + 1 < n) out.apart[i] = (widths[i]! + widths[i + 1]!) / 2;
    const angle = Math.min(Math.max(middle / radius, 0), Math.PI / 2);
    const below = Math.max(0, middle - arc);
    out.height[i] = -radius * (1 - Math.cos(angle)) - below;
    out.cosine[i] = i < top.length ? 1 : i >= out.firstOnFace ? 0 : Math.cos(angle);
    out.curvature[i] = i >= out.firstOnArris && i < out.firstOnFace ? 1 / radius : 0;
  }
  return out;
}

/** One backward Euler step by Newton; false when it does not settle or leaves the positive films. */
function step(
  m: Mesh,
  from: Float64Array,
  to: Float64Array,
  by: number,
  weight: number,
  tension: number,
): boolean {
  const n = from.length;
  const pressure = new Float64Array(n);
  const band = new Float64Array(5 * n);
  const right = new Float64Array(n);
  // p_i = a_i h_{i-1} + b_i h_i + c_i h_{i+1} + curved part
  const left = new Float64Array(n);
  const next = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    if (i > 0) left[i] = tension / (m.apart[i - 1]! * m.width[i]!);
    if (i + 1 < n) next[i] = tension / (m.apart[i]! * m.width[i]!);
  }
  to.set(from);
  for (let pass = 0; pass < 12; pass++) {
    for (let i = 0; i < n; i++) {
      const h = to[i]!;
      const k = m.curvature[i]!;
      let p = weight * (m.height[i]! + h * m.cosine[i]!) + (tension * k) / (1 + k * h);
      if (i > 0) p += left[i]! * (h - to[i - 1]!);
      if (i + 1 < n) p += next[i]! * (h - to[i + 1]!);
      pressure[i] = p;
    }
    band.fill(0);
    for (let i = 0; i < n; i++) {
      const h = to[i]!;
      const k = m.curvature[i]!;
      band[5 * i + 2] = m.width[i]! * (1 + k * h);
      right[i] = -m.width[i]! * (h - from[i]!) * (1 + (k * (h + from[i]!)) / 2);
    }
    // dp_i/dh_i
    const own = (i: number): number => {
      const k = m.curvature[i]!;
      return weight * m.cosine[i]! - tension * (k / (1 + k * to[i]!)) ** 2 + left[i]! + next[i]!;
    };
    for (let i = 0; i + 1 < n; i++) {
      const a = to[i]!;
      const b = to[i + 1]!;
      const mobility = ((a + b) * (a * a + b * b)) / 12;
      const drop = (pressure[i + 1]! - pressure[i]!) / m.apart[i]!;
      const flux = -mobility * drop;
      const scale = (by * mobility) / m.apart[i]!;
      const da = (-by * drop * (3 * a * a + 2 * a * b + b * b)) / 12;
      const db = (-by * drop * (a * a + 2 * a * b + 3 * b * b)) / 12;
      // flux change by h_{i-1}, h_i, h_{i+1}, h_{i+2}
      const by0 = -scale * left[i]!;
      const by1 = da + scale * (own(i) + left[i + 1]!);
      const by2 = db - scale * (own(i + 1) + next[i]!);
      const by3 = scale * next[i + 1]!;
      const r = 5 * i;
      if (i > 0) band[r + 1]! += by0;
      band[r + 2]! += by1;
      band[r + 3]! += by2;
      if (i + 2 < n) band[r + 4]! += by3;
      const q = 5 * (i + 1);
      if (i > 0) band[q]! -= by0;
      band[q + 1]! -= by1;
      band[q + 2]! -= by2;
      if (i + 2 < n) band[q + 3]! -= by3;
      right[i]! -= by * flux;
      right[i + 1]! += by * flux;
    }
    const last = n - 1;
    right[last]! -= (by * weight * to[last]! ** 3) / 3;
    band[5 * last + 2]! += by * weight * to[last]! ** 2;
    solveFiveDiagonals(band, right);
    let moved = 0;
    for (let i = 0; i < n; i++) {
      const change = right[i]!;
      to[i]! += change;
      if (!(to[i]! > 0)) return false;
      moved = Math.max(moved, Math.abs(change) / (to[i]! + MOLECULAR_m));
    }
    if (moved < 1e-8) return true;
  }
  return false;
}

/**
 * State of the film at each flow budget asked for. Films and losses within about 0.5 % at cells of radius/20; films change by under
 * 2 % when the cell is halved.
 * @throws RangeError unless film, radius, face (above the radius), top and cell are positive and the budgets rise from above 0.
 */
export function curvedFilm(input: CurvedFilmInput): CurvedFilmState[] {
  const film_m = positive('thickness_m', input.thickness_m, 'm');
  positive('arrisRadius_m', input.arrisRadius_m, 'm');
  positive('cell_m', input.cell_m, 'm');
  positive('topWidth_m', input.topWidth_m, 'm');
  positive('faceHeight_m - arrisRadius_m', input.faceHeight_m - input.arrisRadius_m, 'm');
  const liquid = input.liquid ?? DEFAULT_LIQUID;
  const weight = specificWeight_N_m3(liquid);
  const tension = notNegative('surfaceTension_N_m', liquid.surfaceTension_N_m, 'N/m');
  const m = mesh(input);
  const n = m.width.length;
  let h = new Float64Array(n).fill(film_m);
  const whole = new Float64Array(n);
  const half = new Float64Array(n);
  const twice = new Float64Array(n);
  let theta = 0;
  let by = 1e-5;
  const out: CurvedFilmState[] = [];
  for (const stop of input.theta_per_Pa) {
    if (!(stop > theta)) throw new RangeError(`theta_per_Pa ${stop}: allowed rising from above 0`);
    while (theta < stop) {
      const now = stop - theta <= by * 1.0001 ? stop - theta : by;
      const solved =
        step(m, h, whole, now, weight, tension) &&
        step(m, h, half, now / 2, weight, tension) &&
        step(m, half, twice, now / 2, weight, tension);
      let error = 4;
      if (solved) {
        error = 0;
        for (let i = 0; i < n; i++)
          error = Math.max(error, Math.abs(twice[i]! - whole[i]!) / (twice[i]! + MOLECULAR_m));
        error /= 2e-3;
      }
      if (error <= 1) {
        for (let i = 0; i < n; i++) h[i] = Math.max(2 * twice[i]! - whole[i]!, twice[i]! / 2);
        theta = now < by ? stop : theta + now;
        if (Math.abs(theta - stop) < 1e-12 * stop) theta = stop;
      }
      if (error > 1 || now === by) by = now * Math.min(2, Math.max(0.2, 0.9 / Math.sqrt(error + 1e-9)));
      if (by < 1e-14)
        throw new RangeError(`curvedFilm: no step at theta ${theta} with cell_m ${input.cell_m}`);
    }
    out.push(lookAt(m, h, film_m, theta));
    h = h.slice();
  }
  return out;
}

function lookAt(m: Mesh, h: Float64Array, film_m: number, theta_per_Pa: number): CurvedFilmState {
  let topLoss_m2 = 0;
  for (let i = 0; i < m.firstOnArris; i++) topLoss_m2 += (film_m - h[i]!) * m.width[i]!;
  let arrisFilm_m = Number.POSITIVE_INFINITY;
  for (let i = m.firstOnArris; i < m.firstOnFace; i++) arrisFilm_m = Math.min(arrisFilm_m, h[i]!);
  return { theta_per_Pa, arrisFilm_m, topLoss_m2 };
}
