import { bad, good, type Result } from '#core/quantity/problem.ts';
import { cupLoss, cupShape, scaledLoss } from './cup-loss.ts';
import { arrheniusFactor } from './kinetics.ts';
import type { ResinModel } from './model.ts';
import { type CupReading, checkReadings, type InCup } from './observations.ts';

export interface CupTestRequest extends InCup {
  readonly air_K: number;
  /** From when the parts met; at least three within the first few kelvin. */
  readonly readings: readonly CupReading[];
  /** What is known of the resin: heat, heat capacity, activation, rho, order. */
  readonly model: ResinModel;
  /** Deviation of ln(heat/heat capacity); default 0.095: 8 % of the heat and 5 % of the heat capacity. */
  readonly heatLn?: number;
}

export interface CupTest {
  /** k1 at 24 C. */
  readonly kRef_per_s: number;
  /** Deviation of its logarithm. */
  readonly sdLn: number;
  /** As measured, K/s, and its deviation. */
  readonly slope_K_s: number;
  readonly slopeSd_K_s: number;
  /** Heat lost meanwhile, as a slope: UA (T - Ta)/(m cp), the mean over the readings used; K/s. */
  readonly loss_K_s: number;
  readonly used: number;
}

/** Readings count until the cup would have warmed this far without loss, K: until then the slope is nearly straight. */
const INITIAL_RISE_K = 6;
/** A thermometer's reading scatters by at least this, K. */
const LEAST_SCATTER_K = 0.1;
/** The heat loss of a cup is known to this. */
const LOSS_LN = 0.15;

/**
 * k1 from the first warming of a cup: k1 = (cp/H) (dT/dt + UA (T - Ta)/(m cp)) / (arrhenius (1 + a/rho)(1 - a)^n).
 *
 * The loss is added up along the readings (trapezoids), which gives the temperature the cup would have without it; what it
 * rose by is the conversion, a = cp rise/H. Each interval's rise is divided by the rate at its own temperature and
 * conversion, so that what is left grows in a straight line with time, and its slope by least squares is k1 H/cp. Uncertainty: scatter of
 * the line, heat and heat capacity, loss, and activation where the cup is not at 24 C.
 *
 * A RangeError from the mass or the diameter is a programmer's mistake (`readObservation` checks them).
 */
export function cupTest(request: CupTestRequest): Result<CupTest> {
  const { readings, model, air_K, mass_kg } = request;
  const faults = checkReadings(readings, 'readings');
  if (faults.length > 0) return bad(...faults);
  const shape = cupShape(mass_kg / model.density_kg_m3, request.diameter_m);
  const loss = scaledLoss(cupLoss(shape, model.conductivity_W_mK, air_K), model.cupLossFactor ?? 1);
  const perHeat = 1 / (mass_kg * model.heatCapacity_J_kgK);
  const lossAt = (reading: CupReading) => loss.flow(reading.temperature_K - air_K) * perHeat;
  const first = readings[0]!;
  const time: number[] = [0];
  const rise: number[] = [0];
  const straight: number[] = [0];
  let lost = 0;
  for (let i = 1; i < readings.length; i++) {
    const [from, to] = [readings[i - 1]!, readings[i]!];
    const span = to.time_s - from.time_s;
    lost += 0.5 * span * (lossAt(from) + lossAt(to));
    const total = to.temperature_K - first.temperature_K + lost;
    if (total > INITIAL_RISE_K && rise.length >= 3) break;
    const a = Math.min(
      0.5,
      Math.max(0, (0.5 * (total + rise[i - 1]!) * model.heatCapacity_J_kgK) / model.heat_J_kg),
    );
    const middle_K = 0.5 * (from.temperature_K + to.temperature_K);
    const speed =
      arrheniusFactor(model.activation_J_mol, middle_K) * (1 + a / model.rho) * (1 - a) ** model.order;
    time.push(to.time_s - first.time_s);
    rise.push(total);
    straight.push(straight[i - 1]! + (total - rise[i - 1]!) / speed);
  }
  const used = time.length;
  const line = lineThrough(time, straight);
  const seen = lineThrough(
    time,
    readings.slice(0, used).map((reading) => reading.temperature_K),
  );
  if (!(line.slope > 2 * line.sd)) {
    return bad({
      path: 'readings',
      code: 'cup-test.no-rise',
      message: 'The cup did not warm by more than its readings scatter; wait longer, or use more resin.',
      read: `${(60 * line.slope).toFixed(2)} K/min`,
      allowed: `more than ${(120 * line.sd).toFixed(2)} K/min`,
    });
  }
  const span_s = time[used - 1]!;
  const last = readings[used - 1]!;
  const loss_K_s = (rise[used - 1]! - (last.temperature_K - first.temperature_K)) / span_s;
  const away = Math.log(arrheniusFactor(6000, 0.5 * (first.temperature_K + last.temperature_K)));
  const sdLn = Math.hypot(
    line.sd / line.slope,
    request.heatLn ?? 0.095,
    (LOSS_LN * Math.abs(loss_K_s)) / Math.max(1e-9, rise[used - 1]! / span_s),
    away,
  );
  return good({
    kRef_per_s: (line.slope * model.heatCapacity_J_kgK) / model.heat_J_kg,
    sdLn,
    slope_K_s: seen.slope,
    slopeSd_K_s: seen.sd,
    loss_K_s,
    used,
  });
}

/** Straight line by least squares, and the deviation of its slope with at least `LEAST_SCATTER_K` of scatter. */
function lineThrough(x: readonly number[], y: readonly number[]): { slope: number; sd: number } {
  const n = x.length;
  const meanX = x.reduce((sum, value) => sum + value, 0) / n;
  const meanY = y.reduce((sum, value) => sum + value, 0) / n;
  let across = 0;
  let along = 0;
  x.forEach((value, i) => {
    across += (value - meanX) ** 2;
    along += (value - meanX) * (y[i]! - meanY);
  });
  const slope = along / across;
  const left = y.reduce((sum, value, i) => sum + (value - meanY - slope * (x[i]! - meanX)) ** 2, 0);
  const scatter = Math.max(LEAST_SCATTER_K, Math.sqrt(left / Math.max(1, n - 2)));
  return { slope, sd: scatter / Math.sqrt(across) };
}
