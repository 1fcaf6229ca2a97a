import { requireRange } from './check.ts';

/** Stefan and Boltzmann's constant, W/m2/K4 (CODATA 2018, exact from defined constants). */
export const STEFAN_BOLTZMANN_W_m2K4 = 5.670374419e-8;
const GRAVITY_m_s2 = 9.80665;

/** Emissivity of resin, plastic and painted board; from memory. */
export const SURFACE_EMISSIVITY = 0.92;

/** Dry air at 101 325 Pa. */
export interface Air {
  readonly conductivity_W_mK: number;
  readonly kinematicViscosity_m2_s: number;
  readonly prandtl: number;
}

/**
 * Properties of dry air at 101 325 Pa: Sutherland's formulas (White, Viscous Fluid Flow; constants from memory), ideal gas
 * density, cp 1006 J/kg/K. Within 1.5 % of tables from 250 to 450 K.
 *
 * @throws RangeError outside 223.15 to 700 K.
 */
export function airAt(temperature_K: number): Air {
  requireRange('temperature_K', temperature_K, 223.15, 700);
  const T = temperature_K;
  const powered = (T / 273.15) ** 1.5;
  const viscosity = (1.716e-5 * powered * (273.15 + 110.4)) / (T + 110.4);
  const conductivity = (0.0241 * powered * (273.15 + 194)) / (T + 194);
  const density = 101_325 / (287.055 * T);
  return {
    conductivity_W_mK: conductivity,
    kinematicViscosity_m2_s: viscosity / density,
    prandtl: (1006 * viscosity) / conductivity,
  };
}

/**
 * Rayleigh number of air beside a surface, properties at the mean of both temperatures. `length_m` > 0 up to 10.
 */
export function rayleigh(surface_K: number, air_K: number, length_m: number): number {
  requireRange('length_m', length_m, 1e-4, 10);
  const mean = (surface_K + air_K) / 2;
  const { kinematicViscosity_m2_s: nu, prandtl } = airAt(mean);
  return (GRAVITY_m_s2 * Math.abs(surface_K - air_K) * length_m ** 3 * prandtl) / (mean * nu * nu);
}

/**
 * Mean Nusselt number of a vertical plate, free convection, all Rayleigh numbers (Churchill and Chu 1975, Int. J. Heat Mass
 * Transfer 18, 1323, eq. 9). Negative or non-finite arguments throw RangeError.
 */
export function nusseltVertical(rayleighNumber: number, prandtl: number): number {
  requireRange('rayleighNumber', rayleighNumber, 0, 1e14);
  requireRange('prandtl', prandtl, 0.01, 1e4);
  const bracket = (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27);
  return (0.825 + (0.387 * rayleighNumber ** (1 / 6)) / bracket) ** 2;
}

/**
 * Mean Nusselt number of a horizontal surface warmer than the air and facing up, length = area/perimeter (Incropera and
 * DeWitt; McAdams): 0.54 Ra^(1/4) to 1e7, 0.15 Ra^(1/3) above. Below Ra 1e4 the first law is carried on, at least 1.
 */
export function nusseltUp(rayleighNumber: number): number {
  requireRange('rayleighNumber', rayleighNumber, 0, 1e14);
  if (rayleighNumber > 1e7) return 0.15 * rayleighNumber ** (1 / 3);
  return Math.max(1, 0.54 * rayleighNumber ** 0.25);
}

/** The same facing down: 0.27 Ra^(1/4), at least 1. */
export function nusseltDown(rayleighNumber: number): number {
  requireRange('rayleighNumber', rayleighNumber, 0, 1e14);
  return Math.max(1, 0.27 * rayleighNumber ** 0.25);
}

/** Radiation coefficient between a surface and a room at air temperature, W/m2/K: 4 eps sigma Tm^3, Tm their mean. */
export function radiationCoefficient(
  surface_K: number,
  room_K: number,
  emissivity: number = SURFACE_EMISSIVITY,
): number {
  requireRange('surface_K', surface_K, 100, 1500);
  requireRange('room_K', room_K, 100, 1500);
  requireRange('emissivity', emissivity, 0, 1);
  return 4 * emissivity * STEFAN_BOLTZMANN_W_m2K4 * ((surface_K + room_K) / 2) ** 3;
}

/**
 * Convection plus radiation, W/m2/K. `length_m` is the height of a wall, area/perimeter of a horizontal face.
 *
 * @throws RangeError when the mean of both temperatures leaves 223.15 to 700 K or the length is not positive.
 */
export function surfaceCoefficient(
  facing: 'up' | 'down' | 'side',
  surface_K: number,
  air_K: number,
  length_m: number,
): number {
  const ra = rayleigh(surface_K, air_K, length_m);
  const air = airAt((surface_K + air_K) / 2);
  const nusselt =
    facing === 'side' ? nusseltVertical(ra, air.prandtl) : facing === 'up' ? nusseltUp(ra) : nusseltDown(ra);
  return (nusselt * air.conductivity_W_mK) / length_m + radiationCoefficient(surface_K, air_K);
}
