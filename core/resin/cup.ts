import { type EndLoss, linearLoss, surroundingsAt } from '#core/numeric/column.ts';
import { integrateColumn, type Tolerance } from '#core/numeric/rosenbrock.ts';
import { requireRange } from './check.ts';
import { cupLoss, cupShape, innerResistance, scaledLoss } from './cup-loss.ts';
import { checkBody, surroundingsOf } from './film.ts';
import { reactionOf } from './kinetics.ts';
import type { AirTemperature, CureHistory, CureState, ResinModel } from './model.ts';
import { startRecording } from './recording.ts';

/** Most a cup's centre is taken to be above its mean, K; from axisymmetric runs of 20 g to 1 kg. */
export const CENTRE_ALLOWANCE_K = 15;

export interface CupSetup {
  readonly model: ResinModel;
  /** 1e-4 to 200 kg. */
  readonly mass_kg: number;
  /** Without a diameter the filled height equals the diameter. */
  readonly cup?: { readonly diameter_m?: number };
  readonly air: AirTemperature;
  readonly start: CureState;
  readonly start_s: number;
  readonly duration_s: number;
  readonly tolerance?: Tolerance;
  /** Amine hydrogen / epoxide equivalents; default 1. With another value pass `modelOffRatio`'s model. */
  readonly balance?: number;
  /** A fixed loss of the whole cup instead of the computed one, W/K; 0 insulates. */
  readonly loss_W_K?: number;
  /** The computed loss, where it was computed before (`lossOfCup` of the same model, mass, diameter and air at the start). */
  readonly loss?: EndLoss;
}

/** Computed loss of a standing cup, W by its excess over the air. For `CupSetup.loss` where many alike are cured. */
export function lossOfCup(setup: Pick<CupSetup, 'model' | 'mass_kg' | 'cup'>, air_K: number): EndLoss {
  const { model, mass_kg, cup } = setup;
  const shape = cupShape(mass_kg / model.density_kg_m3, cup?.diameter_m);
  return scaledLoss(cupLoss(shape, model.conductivity_W_mK, air_K), model.cupLossFactor ?? 1);
}

/**
 * Cure of what stands in a cup: one mean temperature, heat lost through wall, top and base in series with the liquid's own
 * resistance (`cup-loss.ts`). Against axisymmetric runs the mean peak is within 3 K and gel within a minute from 100 g up;
 * near the critical mass (tens of grams of a slow resin) it is too cool.
 *
 * `hottest_K` is the centre: the mean plus 1.5 times the mean's excess over the liquid's surface, which is exact for an
 * evenly generating sphere in balance, but at most `CENTRE_ALLOWANCE_K` and never above the temperature the centre
 * would have without any loss.
 *
 * @throws RangeError when an input is out of its range or the air series is not increasing.
 */
export function cureCup(setup: CupSetup): CureHistory {
  const { model, mass_kg, start } = setup;
  requireRange('mass_kg', mass_kg, 1e-4, 200);
  checkBody(start, setup.start_s, setup.duration_s);
  const surroundings = surroundingsOf(setup.air);
  const shape = cupShape(mass_kg / model.density_kg_m3, setup.cup?.diameter_m);
  const airStart = surroundingsAt(surroundings, setup.start_s);
  const loss: EndLoss =
    setup.loss_W_K === undefined ? (setup.loss ?? lossOfCup(setup, airStart)) : linearLoss(setup.loss_W_K);
  const inner = innerResistance(shape, model.conductivity_W_mK);
  const rise = model.heat_J_kg / model.heatCapacity_J_kgK;
  const recording = startRecording(model);
  integrateColumn(
    {
      capacity: Float64Array.of(mass_kg * model.heatCapacity_J_kgK),
      conductance: new Float64Array(0),
      heat: Float64Array.of(mass_kg * model.heat_J_kg),
      reaction: reactionOf(model, setup.balance),
      firstLoss: loss,
      lastLoss: linearLoss(0),
    },
    [start.conversion],
    [start.temperature_K],
    {
      start: setup.start_s,
      end: setup.start_s + setup.duration_s,
      surroundings,
      ...(setup.tolerance === undefined ? {} : { tolerance: setup.tolerance }),
    },
    (time, a, T, aRate, TRate) => {
      const mean = T[0]!;
      const warm = loss.flow(mean - surroundingsAt(surroundings, time));
      const above = Math.min(CENTRE_ALLOWANCE_K, Math.max(0, 1.5 * inner * warm));
      const unlost = start.temperature_K + rise * (a[0]! - start.conversion);
      recording.push(time, a[0]!, mean, aRate[0]!, TRate[0]!, Math.max(mean, Math.min(mean + above, unlost)));
    },
  );
  return recording.finish();
}
