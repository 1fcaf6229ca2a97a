/**
 * Cells where a dense colour lies over a light one: Rayleigh-Taylor growth of a two-layer film, no slip below, free top, the same
 * chemistry (no tension between the layers). Own solution of the two-layer Stokes equations, tabulated; the mechanism as in Zetina, Godinez and Zenit 2015, PLoS ONE
 * 10(5) e0126135 (abstract read): cells only when the denser paint lies on top. Linear stage only; lacing by silicone is another mechanism.
 */

import { positive, within } from '#core/quantity/domain.ts';
import { GRAVITY_m_s2 } from './constants.ts';
import { interpolate, monotoneTable } from './monotone-table.ts';
import { rangeFromViscosity, type Spread } from './ranges.ts';
import type { Reason } from './reason.ts';

/** Growths by e before cells are plain to see (a rule of judgement). */
export const CELL_E_FOLDS = 4;

const shares = [0.2, 1 / 3, 0.5, 2 / 3, 0.8, 0.9] as const;
/** Viscosity ratios top over bottom of the columns. */
const ratios = [0.2, 1, 5] as const;
const pitch: readonly (readonly number[])[] = [
  [0.63, 0.743, 1.043],
  [1.043, 1.197, 1.541],
  [1.456, 1.501, 1.747],
  [1.628, 1.512, 1.634],
  [1.453, 1.254, 1.299],
  [0.887, 0.702, 0.723],
];
const growth: readonly (readonly number[])[] = [
  [0.0281, 0.01942, 0.00899],
  [0.04678, 0.0321, 0.01416],
  [0.06811, 0.04328, 0.01629],
  [0.07836, 0.04192, 0.01332],
  [0.0648, 0.02929, 0.00855],
  [0.03505, 0.01493, 0.00431],
];

function look(table: readonly (readonly number[])[], share: number, ratio: number): number {
  const at = Math.log(ratio);
  const columns = ratios.map((_, c) =>
    interpolate(
      monotoneTable(
        shares,
        table.map((row) => Math.log(row[c]!)),
      ),
      share,
    ),
  );
  return Math.exp(interpolate(monotoneTable(ratios.map(Math.log), columns), at));
}

export interface CellGrowth {
  /** Pitch of the fastest cells over the total film. */
  readonly pitchOverFilm: number;
  /** e-folds per drho g H Theta, Theta of the BOTTOM layer. */
  readonly growth: number;
}

/**
 * Fastest cells of two layers. Interpolated (logarithms) for bottom shares 0.2 to 0.9 and viscosity ratios 0.2 to 5, within 3 %;
 * outside held at the ends, for guidance. Worked: equal layers, equal viscosity -> 1.501 and 0.0433.
 * @param bottomShare of the total film, above 0, below 1 @param viscosityRatio top over bottom, above 0
 * @throws RangeError outside these.
 */
export function cellGrowth(bottomShare: number, viscosityRatio: number): CellGrowth {
  within('bottomShare', bottomShare, Number.MIN_VALUE, 1 - Number.EPSILON, '');
  positive('viscosityRatio', viscosityRatio, '');
  return {
    pitchOverFilm: look(pitch, bottomShare, viscosityRatio),
    growth: look(growth, bottomShare, viscosityRatio),
  };
}

/**
 * Density of a tinted resin, kg/m3: 1/(w/rho_pigment + (1 - w)/rho_resin) (volumes add).
 * Worked: 5 % by weight of 4200 in 1100 -> 1142.
 * @param massShare pigment in the mix, 0 to 1 @param pigment_kg_m3 above 0 @param resin_kg_m3 above 0
 * @throws RangeError outside these.
 */
export function mixtureDensity_kg_m3(massShare: number, pigment_kg_m3: number, resin_kg_m3: number): number {
  within('massShare', massShare, 0, 1, '');
  return (
    1 /
    (massShare / positive('pigment_kg_m3', pigment_kg_m3, 'kg/m3') +
      (1 - massShare) / positive('resin_kg_m3', resin_kg_m3, 'kg/m3'))
  );
}

export interface Layer {
  readonly name: string;
  /** Above 0. */
  readonly thickness_m: number;
  /** Above 0; {@link mixtureDensity_kg_m3} gives it from the tint. */
  readonly density_kg_m3: number;
}

export interface CellsRequest {
  readonly bottom: Layer;
  readonly top: Layer;
  /** Top over bottom, above 0; 1 when left out. */
  readonly viscosityRatio?: number;
  /** Flow budget of the bottom layer from when the second layer is on to gel, 1/Pa, above 0. */
  readonly theta_per_Pa: number;
}

export interface CellsAnswer {
  readonly cells: 'no' | 'maybe' | 'yes';
  /** e-folds by gel with its range; 0 when the heavy colour lies below. */
  readonly eFolds: Spread;
  /** Pitch of the cells, m; undefined when the heavy colour lies below. */
  readonly pitch_m?: number;
  /** Difference of density, top less bottom, from which cells show, kg/m3. */
  readonly critical_kg_m3: number;
  /** Name of the colour to pour first for a crisp boundary: the heavier. Undefined when they weigh the same. */
  readonly goesUnder?: string;
  readonly reasons: readonly Reason[];
}

/**
 * Do cells form when one colour lies over another? e-folds = c drho g H Theta; four or more show.
 * Worked: equal layers, 2 mm in all, drho 42, Theta 240 -> 8.6 e-folds, cells of 3 mm.
 * @throws RangeError outside the ranges of {@link CellsRequest}.
 */
export function cellsAnswer(request: CellsRequest): CellsAnswer {
  const { bottom, top } = request;
  const ratio = request.viscosityRatio ?? 1;
  const theta = positive('theta_per_Pa', request.theta_per_Pa, '1/Pa');
  const below_m = positive('bottom.thickness_m', bottom.thickness_m, 'm');
  const film_m = below_m + positive('top.thickness_m', top.thickness_m, 'm');
  const drho =
    positive('top.density_kg_m3', top.density_kg_m3, 'kg/m3') -
    positive('bottom.density_kg_m3', bottom.density_kg_m3, 'kg/m3');
  const { pitchOverFilm, growth: c } = cellGrowth(below_m / film_m, ratio);
  const perDensity = c * GRAVITY_m_s2 * film_m * theta;
  const eFolds = rangeFromViscosity(Math.max(0, drho) * perDensity, 1);
  const cells = eFolds.low >= CELL_E_FOLDS ? 'yes' : eFolds.high >= CELL_E_FOLDS ? 'maybe' : 'no';
  const heavier = drho > 0 ? top.name : drho < 0 ? bottom.name : undefined;
  return {
    cells,
    eFolds,
    ...(drho > 0 ? { pitch_m: pitchOverFilm * film_m } : {}),
    critical_kg_m3: CELL_E_FOLDS / perDensity,
    ...(heavier === undefined ? {} : { goesUnder: heavier }),
    reasons: [
      {
        says:
          drho > 0
            ? `${top.name} is heavier than ${bottom.name} and lies on top: ${cells === 'no' ? 'too little time for cells' : 'it sinks in cells'}. For a crisp boundary pour ${top.name} first.`
            : drho < 0
              ? `${bottom.name} is the heavier and lies below: no cells. For cells pour ${top.name} first.`
              : 'Both weigh the same: no cells either way.',
        formula: 'e-folds = c drho g H Theta, cells from 4',
        numbers: {
          drho_kg_m3: drho,
          film_m,
          bottomShare: below_m / film_m,
          viscosityRatio: ratio,
          c,
          theta_per_Pa: theta,
        },
        source: 'own solution of two-layer Stokes flow; mechanism Zetina, Godinez and Zenit 2015',
        range: eFolds,
        rule: 'White over a colour makes cells, white under it does not (common practice, no source).',
      },
    ],
  };
}
