/**
 * Dew point of shop air and the gate that keeps a coat off a surface that is about to sweat. Formulas of the World
 * Meteorological Organization (Guide to Instruments, WMO-No. 8, Annex 4.B, Magnus form over water; read in a manual citing it).
 */

/** 0 C in K, exact. */
const ICE_K = 273.15;
const MAGNUS_Pa = 611.2;
const MAGNUS_SLOPE = 17.62;
const MAGNUS_OFFSET_K = 243.12;
/** Air temperatures the Magnus form is given for: -45 to 60 C over water. */
export const AIR_RANGE_K = { low: ICE_K - 45, high: ICE_K + 60 } as const;
/** Driest air taken, as a share: below 1 % no shop hygrometer reads. */
export const DRIEST_RELATIVE_HUMIDITY = 0.01;

function within(name: string, value: number, least: number, most: number, unit: string): number {
  if (!(value >= least && value <= most))
    throw new RangeError(`${name} = ${value}: allowed ${least} to ${most} ${unit}`.trimEnd());
  return value;
}

const humidityIn = (relativeHumidity: number): number =>
  within('relativeHumidity', relativeHumidity, DRIEST_RELATIVE_HUMIDITY, 1, '(share of saturation)');

/** Exponent of the Magnus form at a temperature. */
function magnus(temperature_K: number): number {
  const t_C = temperature_K - ICE_K;
  return (MAGNUS_SLOPE * t_C) / (MAGNUS_OFFSET_K + t_C);
}

/**
 * Vapour pressure of saturated air over water, Pa: 611.2 exp(17.62 t/(243.12 + t)), t in C. Within 0.6 % of the ASHRAE
 * 2017 tables from 5 to 50 C; the 0.4 % effect of air pressure on it is left out.
 * @param temperature_K 228.15 to 333.15 (-45 to 60 C)
 * @throws RangeError outside this.
 */
export function saturationVapourPressure_Pa(temperature_K: number): number {
  within('temperature_K', temperature_K, AIR_RANGE_K.low, AIR_RANGE_K.high, 'K');
  return MAGNUS_Pa * Math.exp(magnus(temperature_K));
}

/**
 * Dew point, K: 243.12 g/(17.62 - g) above 0 C, g = ln(RH) + 17.62 t/(243.12 + t). Within 0.02 K of the ASHRAE-based value for
 * 15 to 30 C and 50 to 80 %. Worked: 20 C, 50 % -> 9.26 C.
 * @param air_K 228.15 to 333.15 @param relativeHumidity share, 0.01 to 1
 * @throws RangeError outside these.
 */
export function dewPoint_K(air_K: number, relativeHumidity: number): number {
  within('air_K', air_K, AIR_RANGE_K.low, AIR_RANGE_K.high, 'K');
  const humidity = humidityIn(relativeHumidity);
  if (humidity === 1) return air_K;
  const g = Math.log(humidity) + magnus(air_K);
  return ICE_K + (MAGNUS_OFFSET_K * g) / (MAGNUS_SLOPE - g);
}

/**
 * Relative humidity of air with a known dew point, as a share: the inverse of {@link dewPoint_K}.
 * @param air_K 228.15 to 333.15 @param dewPoint_K 183.15 to air_K
 * @throws RangeError outside these.
 */
export function relativeHumidityFromDewPoint(air_K: number, dewPoint_K: number): number {
  within('air_K', air_K, AIR_RANGE_K.low, AIR_RANGE_K.high, 'K');
  within('dewPoint_K', dewPoint_K, ICE_K - 90, air_K, 'K (the air temperature)');
  return Math.exp(magnus(dewPoint_K) - magnus(air_K));
}

/**
 * Humidity at which a surface stands exactly a margin above the dew point, as a share (at most 1): the wettest air in which it may
 * still be coated. Worked: surface and air 24 C, margin 3 K -> 0.833.
 * @param air_K 228.15 to 333.15 @param surface_K 228.15 to 333.15 @param margin_K 0 to 20
 * @throws RangeError outside these.
 */
export function relativeHumidityForMargin(air_K: number, surface_K: number, margin_K: number): number {
  within('surface_K', surface_K, AIR_RANGE_K.low, AIR_RANGE_K.high, 'K');
  within('margin_K', margin_K, 0, 20, 'K');
  return relativeHumidityFromDewPoint(air_K, Math.min(air_K, surface_K - margin_K));
}
