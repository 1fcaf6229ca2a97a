import { brent } from '#core/numeric/brent.ts';
import { COLDEST_K, HOTTEST_K, requireRange } from './check.ts';
import { GAS_CONSTANT_J_molK, REFERENCE_K, type ResinModel } from './model.ts';

/**
 * Largest viscosity a history stores, Pa s. The model's viscosity is infinite from gel on; histories hold this finite
 * number there and where the formula exceeds it, and `readState` answers null. At 1e9 Pa s a film levels by less than a
 * nanometre in a month.
 */
export const GELLED_VISCOSITY_Pa_s = 1e9;

/**
 * Castro and Macosko's ratio of viscosity to that of the fresh mix at the same temperature:
 * (ag/(ag - a))^(A + B a) (AIChE J. 28 (1982) 250).
 *
 * @param conversion 0 to 1.
 * @returns null from the gel point on.
 * @throws RangeError outside 0..1.
 */
export function viscosityRatio(model: ResinModel, conversion: number): number | null {
  requireRange('conversion', conversion, 0, 1);
  const gel = model.gelConversion;
  if (conversion >= gel) return null;
  return (gel / (gel - conversion)) ** (model.viscosityA + model.viscosityB * conversion);
}

/** Viscosity of the unreacted mix, Pa s: eta_ref exp((E/R)(1/T - 1/297.15)). `temperature_K` 223.15 to 873.15. */
export function freshViscosity(model: ResinModel, temperature_K: number): number {
  requireRange('temperature_K', temperature_K, COLDEST_K, HOTTEST_K);
  const perTemperature = model.viscosityActivation_J_mol / GAS_CONSTANT_J_molK;
  return model.viscosityRef_Pa_s * Math.exp(perTemperature * (1 / temperature_K - 1 / REFERENCE_K));
}

/**
 * Viscosity, Pa s: fresh viscosity at this temperature times Castro and Macosko's ratio.
 *
 * @returns null from the gel point on, and where it exceeds `GELLED_VISCOSITY_Pa_s`.
 */
export function viscosity(model: ResinModel, conversion: number, temperature_K: number): number | null {
  const fluidity = fluidityOf(model)(Math.max(0, conversion), temperature_K);
  return fluidity > 1 / GELLED_VISCOSITY_Pa_s ? 1 / fluidity : null;
}

/** 1/viscosity as a plain function of (conversion, temperature_K) for inner loops; 0 from the gel point on. 1/(Pa s). */
export function fluidityOf(model: ResinModel): (conversion: number, temperature_K: number) => number {
  const { gelConversion, viscosityA, viscosityB } = model;
  const perTemperature = model.viscosityActivation_J_mol / GAS_CONSTANT_J_molK;
  const lnFront = -Math.log(model.viscosityRef_Pa_s) + perTemperature / REFERENCE_K;
  return (a, T) => {
    if (a >= gelConversion) return 0;
    const lnRatio = (viscosityA + viscosityB * a) * Math.log(gelConversion / (gelConversion - a));
    return Math.exp(lnFront - perTemperature / T - lnRatio);
  };
}

/**
 * Conversion at which the viscosity has grown by a ratio at constant temperature.
 *
 * @param ratio 1 to 1e9.
 * @throws RangeError outside.
 */
export function conversionForRatio(model: ResinModel, ratio: number): number {
  requireRange('ratio', ratio, 1, 1e9);
  if (ratio === 1) return 0;
  const gel = model.gelConversion;
  const target = Math.log(ratio);
  const excess = (a: number) =>
    (model.viscosityA + model.viscosityB * a) * Math.log(gel / (gel - a)) - target;
  // (gel/(gel - a))^A alone is below the ratio, so its own root bounds the conversion from above.
  const above = gel * (1 - Math.exp(-target / model.viscosityA));
  return brent(excess, 0, Math.min(above * (1 + 1e-9) + 1e-12, gel * (1 - 1e-15)), 1e-13);
}
