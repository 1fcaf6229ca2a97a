/**
 * The forecast all peers solve: a 500 g cup and a 2.5 mm film on 18 mm MDF, both mixed at the temperature of a steady shop and
 * followed for 72 h, with every stage. Here it is taken apart into the plain numbers the C and Python peers read.
 */
import type { EndLoss } from '#core/numeric/column.ts';
import { BOARDS } from '#core/resin/boards.ts';
import { cupLoss, cupShape, scaledLoss } from '#core/resin/cup-loss.ts';
import { filmColumn, filmLoss } from '#core/resin/film.ts';
import {
  type AirTemperature,
  type CureState,
  GAS_CONSTANT_J_molK,
  REFERENCE_K,
  type ResinModel,
} from '#core/resin/model.ts';
import { CUP_CRITERIA, FILM_CRITERIA } from '#core/resin/stage-criteria.ts';
import { freshViscosity } from '#core/resin/viscosity.ts';

export const SPAN_s = 72 * 3600;
export const CUP_kg = 0.5;
export const FILM_m = 0.0025;
export const FILM_NODES = 4;
export const BOARD_NODES = 8;
export const BOARD = BOARDS['mdf-18'];

export interface ForecastCase {
  readonly name: string;
  readonly model: ResinModel;
  readonly air_K: number;
}

export const airOf = (problem: ForecastCase): AirTemperature => ({
  time_s: [0],
  temperature_K: [problem.air_K],
});

export const startOf = (problem: ForecastCase): CureState => ({
  conversion: 0,
  temperature_K: problem.air_K,
});

/** Numbers of the events, as in column.h. */
const [WARMED_TO, CONVERTED_TO, HARDENED_BY, THICKENED_BY, MEAN_PEAK] = [0, 1, 2, 3, 4] as const;
type Event = readonly [kind: number, level: number];

export function cupEvents(model: ResinModel): readonly Event[] {
  const { warm, pourNow, danger } = CUP_CRITERIA;
  return [
    ...[warm, pourNow, danger].flatMap((each): Event[] => [
      [WARMED_TO, each.temperature_K],
      [CONVERTED_TO, each.conversion],
    ]),
    [CONVERTED_TO, model.gelConversion],
    [MEAN_PEAK, 0],
  ];
}

export function filmEvents(model: ResinModel): readonly Event[] {
  const offsets = [
    FILM_CRITERIA.recoatBestFrom.offset_K,
    FILM_CRITERIA.recoatBestTo.offset_K,
    FILM_CRITERIA.recoatCloses.offset_K,
    model.dryHardOffset_K,
    FILM_CRITERIA.handle.offset_K,
  ];
  return [
    [THICKENED_BY, model.workingRatio],
    [THICKENED_BY, FILM_CRITERIA.noMoreLevelling.ratio],
    [CONVERTED_TO, model.gelConversion],
    [CONVERTED_TO, model.gelConversion + FILM_CRITERIA.recoatOpens.pastGel],
    ...offsets.map((offset): Event => [HARDENED_BY, offset]),
    [MEAN_PEAK, 0],
  ];
}

/** Points of the loss tables, K: those of core/resin/loss-table.ts, which `table` checks. */
const EXCESS_K = [0, 0.1, 0.4, 1, 2, 4, 7, 11, 17, 26, 40, 60, 90, 130, 180, 240, 320];

function table(loss: EndLoss): { readonly flow: number[]; readonly slope: number[] } {
  const flow = EXCESS_K.map((excess) => loss.flow(excess));
  const slope = EXCESS_K.map((excess) => loss.slope(excess));
  EXCESS_K.slice(1).forEach((to, i) => {
    const from = EXCESS_K[i]!;
    // A cubic that has these values and slopes has this one in its middle.
    const middle = (flow[i]! + flow[i + 1]!) / 2 + ((to - from) * (slope[i]! - slope[i + 1]!)) / 8;
    const is = loss.flow((from + to) / 2);
    if (!(Math.abs(middle - is) <= 1e-9 * is))
      throw new Error(`the loss is not a cubic from ${from} to ${to} K: the table's points have changed`);
  });
  return { flow, slope };
}

interface Chain {
  readonly capacity: ArrayLike<number>;
  readonly conductance: ArrayLike<number>;
  readonly heat: ArrayLike<number>;
}

function told(
  { model, air_K }: ForecastCase,
  chain: Chain,
  loss: EndLoss,
  last: number,
  list: readonly Event[],
) {
  const { flow, slope } = table(loss);
  const perTemperature = model.activation_J_mol / GAS_CONSTANT_J_molK;
  const perTemperatureEta = model.viscosityActivation_J_mol / GAS_CONSTANT_J_molK;
  const reacting = chain.heat.length;
  const start: number[] = [];
  for (let j = 0; j < chain.capacity.length; j++) start.push(...(j < reacting ? [0, air_K] : [air_K]));
  const line = (name: string, values: ArrayLike<number>) =>
    `${name} ${values.length} ${Array.from(values).join(' ')}\n`;
  return [
    line('capacity', chain.capacity),
    line('conductance', chain.conductance),
    line('heat', chain.heat),
    line('excess', EXCESS_K),
    line('flow', flow),
    line('slope', slope),
    line('surroundings', [last, air_K, SPAN_s]),
    line('kinetics', [
      Math.log(model.kRef_per_s) + perTemperature / REFERENCE_K,
      perTemperature,
      model.rho,
      model.order,
      model.tgStart_K,
      model.tgFull_K - model.tgStart_K,
      model.tgLambda,
      model.vitrificationOffset_K,
      model.vitrificationWidth_K,
    ]),
    line('viscosity', [
      Math.log(model.viscosityRef_Pa_s) - perTemperatureEta / REFERENCE_K,
      perTemperatureEta,
      model.gelConversion,
      model.viscosityA,
      model.viscosityB,
      freshViscosity(model, air_K),
    ]),
    line('start', start),
    line(
      'kind',
      list.map(([kind]) => kind),
    ),
    line(
      'level',
      list.map(([, level]) => level),
    ),
  ].join('');
}

/** Cup and film as the peers read them. */
export function problemText(problem: ForecastCase): string {
  const { model, air_K } = problem;
  const shape = cupShape(CUP_kg / model.density_kg_m3);
  const cup = {
    capacity: [CUP_kg * model.heatCapacity_J_kgK],
    conductance: [],
    heat: [CUP_kg * model.heat_J_kg],
  };
  const cupLossNow = scaledLoss(cupLoss(shape, model.conductivity_W_mK, air_K), model.cupLossFactor ?? 1);
  const half = FILM_m / FILM_NODES / (2 * model.conductivity_W_mK);
  const film = filmColumn(
    { model, thickness_m: FILM_m, board: BOARD },
    FILM_NODES,
    BOARD_NODES,
    filmLoss(undefined, half, air_K),
  );
  return (
    told(problem, cup, cupLossNow, 0, cupEvents(model)) +
    told(problem, film, film.firstLoss, film.lastLoss.flow(1), filmEvents(model))
  );
}
