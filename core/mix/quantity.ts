/**
 * How much of a coat to mix, line by line. Areas and lengths come from the piece, the run-off from the film's flow budget,
 * cup film and allowance from shop defaults. The tint counts as part of the coat and is taken to be as dense as the mix.
 */

import type { Liquid } from '#core/film/constants.ts';
import { edgeRunOffs_m3 } from '#core/film/edge-run-off.ts';
import type { EdgeMeasures, PieceMeasures } from '#core/piece/piece.ts';
import { within } from '#core/quantity/domain.ts';
import type { Coat, CoatQuantity, QuantityLine } from './coat.ts';

/** The cup film and allowance figures of the shop's rates. */
export interface CupFilmRates {
  readonly cupFilmShare: number;
  readonly leastCupFilm_kg: number;
}

interface Budget {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

export interface QuantityRequest {
  readonly coat: Pick<Coat, 'film_m' | 'faceFilm_m' | 'wrapEdges' | 'allowance'> & {
    readonly card: {
      readonly model: { readonly density_kg_m3: number; readonly surfaceTension_N_m: number };
    };
  };
  /** Of the piece, or of several poured together (core/piece/together.ts). */
  readonly measures: Pick<PieceMeasures, 'topArea_m2' | 'edges' | 'parts'>;
  /** Flow budget left when the edges are worked, low to high, 1/Pa; not used when they are dammed. */
  readonly thetaWhenWrapped_per_Pa: Budget;
  /** Flow budget spent before that on dry edges, from the film being down, 1/Pa; none when left out. */
  readonly thetaDry_per_Pa?: Budget;
  /** Number of cups, at least 1. */
  readonly cups: number;
  /** Share of the coat in each cup, summing to 1; equal cups when left out. */
  readonly cupShares?: readonly number[];
  readonly rates: CupFilmRates;
}

/** Edges the coat is carried over: finished edges of the outline and wrapped rims, none when the coat is dammed. */
export function wrappedEdges(
  coat: Pick<Coat, 'wrapEdges'>,
  measures: Pick<PieceMeasures, 'edges'>,
): readonly EdgeMeasures[] {
  return coat.wrapEdges ? measures.edges.filter((edge) => edge.kind === 'finished') : [];
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/**
 * The bill of a coat:
 * - top: area times film;
 * - faces, rims, underside: developed area of wrapped edges (nothing counted twice with the top) times the face film;
 * - run-off: what drains over the edges, dry until they are wrapped, by the time the film gels (edge-run-off.ts, goes with film^(5/2)
 *   and with the square root of the flow budget, so its range is that of the budget), piece by piece, since each has a size of its own;
 * - cup film: per cup the larger of a least mass and a share of the cup's mass (common practice, no source);
 * - allowance: a share of all of it.
 * Volumes and masses of the lines add up to the totals. Low and high of the lines that hang on the run-off move with it.
 * @throws RangeError when a figure is out of range: film above 0, face film and allowance from 0, cups from 1, budget from 0.
 */
export function coatQuantity(request: QuantityRequest): CoatQuantity {
  const { coat, measures, rates } = request;
  check(request);
  const density = coat.card.model.density_kg_m3;
  const liquid: Liquid = coat.card.model;
  const edges = wrappedEdges(coat, measures);
  const outer = edges.filter((edge) => edge.outer);
  const rims = edges.filter((edge) => !edge.outer);
  const lines: QuantityLine[] = [];
  const add = (
    key: QuantityLine['key'],
    label: string,
    [low_m3, volume_m3, high_m3]: readonly [number, number, number],
    basis: QuantityLine['basis'],
    working: Readonly<Record<string, number>>,
  ) => lines.push({ key, label, volume_m3, mass_kg: volume_m3 * density, low_m3, high_m3, basis, working });
  const addArea = (key: QuantityLine['key'], label: string, area_m2: number, film_m: number, more = {}) => {
    const volume_m3 = area_m2 * film_m;
    add(key, label, [volume_m3, volume_m3, volume_m3], 'geometry', { area_m2, film_m, ...more });
  };

  addArea('top', 'Top', measures.topArea_m2, coat.film_m);
  if (coat.wrapEdges) {
    const faces = sum(outer.map((edge) => edge.faceArea_m2));
    addArea('faces', 'Faces of the finished edges', faces, coat.faceFilm_m, {
      length_m: sum(outer.map((edge) => edge.length_m)),
    });
    if (rims.length > 0)
      addArea(
        'rims',
        'Rims of wrapped cut-outs',
        sum(rims.map((edge) => edge.faceArea_m2)),
        coat.faceFilm_m,
        {
          length_m: sum(rims.map((edge) => edge.length_m)),
        },
      );
    const under = sum(edges.map((edge) => edge.undersideReturnArea_m2));
    if (under > 0) addArea('underside', 'Return under the piece', under, coat.faceFilm_m);
    const theta = request.thetaWhenWrapped_per_Pa;
    const dry = request.thetaDry_per_Pa ?? { low: 0, mid: 0, high: 0 };
    const parts = measures.parts ?? [measures];
    const runs = (['low', 'mid', 'high'] as const).map((end) =>
      sum(
        parts.flatMap((part) =>
          edgeRunOffs_m3({
            edges: wrappedEdges(coat, part),
            area_m2: part.topArea_m2,
            film_m: coat.film_m,
            thetaDry_per_Pa: dry[end],
            thetaLeft_per_Pa: theta[end],
            liquid,
          }),
        ),
      ),
    ) as [number, number, number];
    add('run-off', 'Run-off over the edges', runs, 'model', {
      length_m: sum(edges.map((edge) => edge.length_m)),
      film_m: coat.film_m,
      flowBudgetLeft_per_Pa: theta.mid,
      flowBudgetDry_per_Pa: dry.mid,
      ofTop_share: runs[1] / (measures.topArea_m2 * coat.film_m),
    });
  }

  const before = (end: 'low_m3' | 'volume_m3' | 'high_m3') => sum(lines.map((line) => line[end]));
  const net = [before('low_m3'), before('volume_m3'), before('high_m3')] as const;
  const shares = request.cupShares ?? new Array<number>(request.cups).fill(1 / request.cups);
  const films = net.map((volume) => cupFilm_kg(volume * density, shares, coat.allowance, rates) / density);
  add('cup film', 'Left in the cups', [films[0]!, films[1]!, films[2]!], 'shop default', {
    cups: shares.length,
    perCup_share: rates.cupFilmShare,
    least_kg: rates.leastCupFilm_kg,
  });
  const spare = net.map((volume, i) => (volume + films[i]!) * coat.allowance);
  add('allowance', 'Allowance', [spare[0]!, spare[1]!, spare[2]!], 'shop default', {
    spare_share: coat.allowance,
  });
  return total(lines);
}

/** The bill with the line that rounding to the scale adds: the cups as weighed less what was asked. */
export function withRounding(
  quantity: CoatQuantity,
  weighed_kg: number,
  density_kg_m3: number,
): CoatQuantity {
  const mass_kg = weighed_kg - quantity.mass_kg;
  const volume_m3 = mass_kg / density_kg_m3;
  const line: QuantityLine = {
    key: 'rounding',
    label: 'Rounding to the scale',
    volume_m3,
    mass_kg,
    low_m3: volume_m3,
    high_m3: volume_m3,
    basis: 'scale',
    working: { weighed_kg },
  };
  return total([...quantity.lines, line]);
}

function total(lines: readonly QuantityLine[]): CoatQuantity {
  return {
    lines,
    volume_m3: sum(lines.map((line) => line.volume_m3)),
    mass_kg: sum(lines.map((line) => line.mass_kg)),
  };
}

/**
 * Resin left in the cups, kg: per cup max(least, share of its mass), where a cup's mass is its share of the whole coat with
 * this film and the allowance on it. Piecewise linear in the whole, so solved exactly: cups leave the flat part one by one.
 */
function cupFilm_kg(
  net_kg: number,
  shares: readonly number[],
  allowance: number,
  rates: CupFilmRates,
): number {
  const spare = 1 + allowance;
  let flat = shares.length;
  const rising = [...shares].sort((a, b) => a - b);
  for (;;) {
    const proportional = sum(rising.slice(flat)) * rates.cupFilmShare;
    const whole_kg = (spare * (net_kg + flat * rates.leastCupFilm_kg)) / (1 - spare * proportional);
    if (flat === 0 || rates.cupFilmShare * rising[flat - 1]! * whole_kg <= rates.leastCupFilm_kg)
      return flat * rates.leastCupFilm_kg + proportional * whole_kg;
    flat--;
  }
}

function check(request: QuantityRequest): void {
  const { coat, measures, thetaWhenWrapped_per_Pa: theta, cups, cupShares, rates } = request;
  within('film_m', coat.film_m, 1e-6, 0.1);
  within('faceFilm_m', coat.faceFilm_m, 0, 0.1);
  within('allowance', coat.allowance, 0, 2);
  within('topArea_m2', measures.topArea_m2, 1e-6, 1e4);
  within('cups', cups, 1, 1000);
  within('cupFilmShare', rates.cupFilmShare, 0, 0.25);
  within('leastCupFilm_kg', rates.leastCupFilm_kg, 0, 1);
  if (coat.wrapEdges)
    for (const [name, value] of Object.entries(theta))
      within(`thetaWhenWrapped_per_Pa.${name}`, value, 0, 1e9);
  for (const [name, value] of Object.entries(request.thetaDry_per_Pa ?? {}))
    within(`thetaDry_per_Pa.${name}`, value, 0, 1e9);
  if (cupShares !== undefined) {
    if (cupShares.length !== cups)
      throw new RangeError(`cupShares has ${cupShares.length} entries; allowed: one a cup, ${cups}`);
    within('sum of cupShares', sum(cupShares), 1 - 1e-9, 1 + 1e-9);
  }
}
