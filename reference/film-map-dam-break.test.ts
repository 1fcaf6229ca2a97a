/**
 * Thickness map against a viscous dam break on a level plane: the isoviscous dam-break case of the lava benchmarks of Cordonnier, Lev
 * and Garel 2015 (Benchmarking lava-flow models, Geol. Soc. London Spec. Publ. 426, 425-445). The paper was not opened: density 2700 kg/m3 and
 * viscosity 10^4 Pa s are those a public implementation of the case states, the reservoir (6.6 m long, 1 m high) and the two laws
 * are from memory, so nothing here is compared with a figure or curve printed there. What is compared is the map with exact
 * solutions of the equation it solves, h_Theta = (rho g/3) (h^3 h_x)_x:
 *  - early, until the ebb reaches the back wall: h = H f(x/sqrt(rho g H^3 Theta/3)), with f worked out below by an integration
 *    of its own;
 *  - late, once the reservoir is forgotten: Huppert 1982 (J. Fluid Mech. 121, 43), front 1.41124 (rho g A^3 Theta/3)^(1/5).
 * Both hold where the film is thin for its length; a true reservoir of 1 by 6.6 m is steeper than that at first, in any such model.
 */
import { describe, expect, it } from 'vitest';
import { specificWeight_N_m3 } from '#core/film/constants.ts';
import { filmMapAtOnce } from '#core/film/film-map.ts';
import { ridgeHalfWidth_m } from '#core/film/puddle.ts';

const LAVA = { density_kg_m3: 2700, surfaceTension_N_m: 0.35 };
const VISCOSITY_Pa_s = 1e4;
const HEIGHT_m = 1;
const LENGTH_m = 6.6;
const MOBILITY = specificWeight_N_m3(LAVA) / 3;

/**
 * The exact early profile: -s/2 f' = (f^3 f')', f = 1 far behind, f = 0 at the front. With the flux q = -f^3 f':
 * ds/df = -f^3/q, dq/df = s/2 from the front (s = 1, f = q = 0); further back df/ds = -q/f^3, dq/ds = -(s/2) q/f^3.
 * The level far behind is then scaled to 1: f = F(s c^(3/2))/c.
 */
function exactProfile() {
  let [f, s, q] = [0, 1, 0];
  const back: { s: number; f: number }[] = [{ s, f }];
  const byFilm = (at: number, place: number, flux: number) =>
    [at === 0 ? 0 : -(at ** 3) / flux, place / 2] as const;
  const step = 1e-4;
  while (f < 0.6) {
    // midpoint rule; at the front the flux is f s/2
    const [ds, dq] = byFilm(f, s, q);
    const [ds2, dq2] = byFilm(f + step / 2, s + (ds * step) / 2, q + (dq * step) / 2);
    f += step;
    s += ds2 * step;
    q += dq2 * step;
    back.push({ s, f });
  }
  const byPlace = (place: number, film: number, flux: number) => {
    const slope = -flux / film ** 3;
    return [slope, (place / 2) * slope] as const;
  };
  while (s > -14) {
    const [df, dq] = byPlace(s, f, q);
    const [df2, dq2] = byPlace(s - step / 2, f - (df * step) / 2, q - (dq * step) / 2);
    s -= step;
    f -= df2 * step;
    q -= dq2 * step;
    back.push({ s, f });
  }
  const level = f;
  const profile = back.map((point) => ({ s: point.s * level ** -1.5, f: point.f / level })).reverse();
  const front = level ** -1.5;
  /** f at a place, by linear interpolation. */
  const at = (place: number): number => {
    if (place >= front) return 0;
    if (place <= profile[0]!.s) return 1;
    let low = 0;
    let high = profile.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (profile[middle]!.s <= place) low = middle;
      else high = middle;
    }
    const [a, b] = [profile[low]!, profile[high]!];
    return a.f + ((b.f - a.f) * (place - a.s)) / (b.s - a.s);
  };
  return { front, at };
}

/**
 * All lengths go into the map a twentieth as long, since its pieces end at 10 m, and Theta twenty times as large: by the equation the same
 * flow, every length a twentieth.
 */
const MODEL = 1 / 20;

/** A dammed trough; the reservoir stands at its left end, one puddle a cell, so that its face is upright. Lengths of the lava. */
function release(plane_m: number, cells: number, theta_per_Pa: number, growth: number) {
  const cell_m = (MODEL * plane_m) / cells;
  const rows = Math.ceil(0.01 / cell_m);
  const columns = Math.round((MODEL * LENGTH_m) / cell_m);
  const puddles = Array.from({ length: columns * rows }, (_, i) => ({
    x_m: ((i % columns) + 0.5) * cell_m,
    y_m: (Math.floor(i / columns) + 0.5) * cell_m,
    volume_m3: MODEL * HEIGHT_m * cell_m ** 2,
    radius_m: cell_m / 100,
  }));
  const map = filmMapAtOnce({
    piece: {
      outline: { shape: 'rectangle', length_m: MODEL * plane_m, width_m: rows * cell_m },
      cutOuts: [],
    },
    cell_m,
    theta_per_Pa: theta_per_Pa / MODEL,
    puddles,
    liquid: LAVA,
    growth,
  });
  const film_m = Array.from(map.thickness_m.slice(0, map.columns), (film) => film / MODEL);
  const front_m = ((film_m.findLastIndex((film) => film > 1e-3 * HEIGHT_m) + 1) * cell_m) / MODEL;
  return { map, film_m, cell_m: cell_m / MODEL, front_m };
}

describe('early: an upright reservoir lets go', () => {
  const { front, at } = exactProfile();
  // 1 s of the benchmark lava
  const theta_per_Pa = 1 / VISCOSITY_Pa_s;
  const width_m = Math.sqrt(MOBILITY * HEIGHT_m ** 3 * theta_per_Pa);
  const run = (cells: number, growth: number) => {
    const { map, film_m, cell_m, front_m } = release(8.8, cells, theta_per_Pa, growth);
    let error_m2 = 0;
    for (const [i, film] of film_m.entries())
      error_m2 += Math.abs(film - HEIGHT_m * at(((i + 0.5) * cell_m - LENGTH_m) / width_m)) * cell_m;
    return {
      map,
      cell_m,
      off_m: front_m - LENGTH_m - front * width_m,
      error: error_m2 / (HEIGHT_m * LENGTH_m),
    };
  };
  const runs = [run(200, 0.08), run(400, 0.04), run(800, 0.02), run(1600, 0.01)] as const;

  it('is compared with a profile that keeps its resin: what lies before the gate came from behind it, to 0.1 %', () => {
    let before = 0;
    let missing = 0;
    for (let place = 0.0005; place < 15; place += 0.001) {
      before += at(place) * 0.001;
      missing += (1 - at(-place)) * 0.001;
    }
    expect(Math.abs(before / missing - 1)).toBeLessThan(1e-3);
  });
  it('is met within 0.05 % of the resin by the finest cells, the front within two cells, the mass to rounding', () => {
    const finest = runs[3];
    expect(finest.error).toBeLessThan(5e-4);
    for (const { off_m, cell_m, map } of runs) {
      expect(Math.abs(off_m)).toBeLessThan(2 * cell_m);
      expect(Math.abs(map.balance)).toBeLessThan(1e-11);
    }
  });
  it('converges with order 0.9 or more from 22 mm cells on, cells and steps halved together', () => {
    for (const i of [1, 2] as const)
      expect(Math.log2(runs[i].error / runs[i + 1]!.error)).toBeGreaterThan(0.9);
  });
});

describe('late: the reservoir is forgotten', () => {
  const area_m2 = HEIGHT_m * LENGTH_m;
  // (1 - u^2)^(1/3) integrated from 0 to 1
  const SHAPE = 0.84131;
  // 300 cells. A front goes at most one cell a step, so a step must stay under 5 cells/front of Theta: 2/300 here.
  it.each([
    [1e3, 26.4, 0.005, 0.004],
    [1e4, 39.6, 0.005, 0.002],
    [1e5, 66, 0.005, 0.002],
    [1e6, 99, 0.005, 0.002],
    [1e7, 165, 0.006, 0.002],
  ])(
    'after %d s the front and the depth at the wall follow t^(1/5)',
    (time_s, plane_m, frontWithin, depthWithin) => {
      const theta_per_Pa = time_s / VISCOSITY_Pa_s;
      const { front_m, film_m } = release(plane_m, 300, theta_per_Pa, 2 / 300);
      const law_m = ridgeHalfWidth_m(area_m2, theta_per_Pa, LAVA);
      expect(Math.abs(front_m / law_m - 1)).toBeLessThan(frontWithin);
      expect(Math.abs((film_m[0]! * law_m * SHAPE) / area_m2 - 1)).toBeLessThan(depthWithin);
    },
  );
});
