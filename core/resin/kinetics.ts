import type { LocalReaction } from '#core/numeric/column.ts';
import { COLDEST_K, HOTTEST_K, requirePositive, requireRange } from './check.ts';
import { GAS_CONSTANT_J_molK, REFERENCE_K, type ResinModel } from './model.ts';

/**
 * Arrhenius factor exp(-(E/R)(1/T - 1/297.15)); 1 at 24 C.
 *
 * @param activation_J_mol 0 or more.
 * @param temperature_K 223.15 to 873.15.
 * @throws RangeError outside these.
 */
export function arrheniusFactor(activation_J_mol: number, temperature_K: number): number {
  requireRange('activation_J_mol', activation_J_mol, 0, 1e6);
  requireRange('temperature_K', temperature_K, COLDEST_K, HOTTEST_K);
  return Math.exp((-activation_J_mol / GAS_CONSTANT_J_molK) * (1 / temperature_K - 1 / REFERENCE_K));
}

/**
 * Glass transition from conversion, K: (Tg - Tg0)/(Tg1 - Tg0) = lambda a/(1 - (1 - lambda) a). DiBenedetto in the form of
 * Pascault and Williams 1990, J. Polym. Sci. B 28, 85.
 *
 * @param conversion 0 to 1.
 * @throws RangeError outside.
 */
export function tgOf(model: ResinModel, conversion: number): number {
  requireRange('conversion', conversion, 0, 1);
  return glassTransition(model, conversion);
}

function glassTransition(model: ResinModel, a: number): number {
  const share = (model.tgLambda * a) / (1 - (1 - model.tgLambda) * a);
  return model.tgStart_K + (model.tgFull_K - model.tgStart_K) * share;
}

/**
 * Conversion at which the glass transition reaches a temperature: the inverse of `tgOf`.
 *
 * @returns null when no conversion from 0 to 1 has that Tg.
 */
export function conversionForTg(model: ResinModel, tg_K: number): number | null {
  const share = (tg_K - model.tgStart_K) / (model.tgFull_K - model.tgStart_K);
  if (!(share >= 0 && share <= 1)) return null;
  return share / (model.tgLambda + (1 - model.tgLambda) * share);
}

/**
 * Vitrification factor f_d = 1/(1 + exp((Tg - T - offset)/width)): near 1 while liquid or rubbery, falling to 0 as the glass
 * transition climbs past the body's temperature. Same logistic shape as Chern and Poehlein 1987 (Polym. Eng. Sci. 27, 788),
 * written in Tg - T so that one pair of constants serves all temperatures. After vitrification it lets Tg grow by
 * width ln 10 a decade of time.
 */
export function diffusionFactor(model: ResinModel, conversion: number, temperature_K: number): number {
  const tg = tgOf(model, conversion);
  const x = (tg - temperature_K - model.vitrificationOffset_K) / model.vitrificationWidth_K;
  return 1 / (1 + Math.exp(x));
}

/**
 * Rate of conversion of epoxide, 1/s:
 *   k1 e^(-(E/R)(1/T - 1/Tref)) (1 + a/rho) (1 - a)^n f_d(a, T)
 * Kamal and Sourour's autocatalytic form (Thermochim. Acta 14 (1976) 41) with m = 1 and one activation energy.
 * For a mix off its ratio (1 - a)^n becomes (1 - a)^(n/2) (B - a)^(n/2), B = amine hydrogen / epoxide equivalents, which is
 * Horie's mechanism (J. Polym. Sci. A-1 8 (1970) 1357) at n = 2.
 *
 * @param conversion 0 to 1.
 * @param temperature_K 223.15 to 873.15.
 * @param balance B, 0.2 to 5; default 1.
 * @throws RangeError outside.
 */
export function rate(model: ResinModel, conversion: number, temperature_K: number, balance = 1): number {
  requireRange('conversion', conversion, 0, 1);
  requireRange('temperature_K', temperature_K, COLDEST_K, HOTTEST_K);
  return reactionOf(model, balance).rate(conversion, temperature_K);
}

/**
 * The same rate with its derivatives, for the integrator: no checks in the inner loop, conversions beyond 1 or B (stage
 * values of the integrator) react no further.
 *
 * @throws RangeError when a constant of the model or the balance is out of range.
 */
export function reactionOf(model: ResinModel, balance = 1): LocalReaction {
  requireKinetics(model);
  requireRange('balance', balance, 0.2, 5);
  const { rho, order, tgStart_K, tgLambda, vitrificationOffset_K } = model;
  const perTemperature = model.activation_J_mol / GAS_CONSTANT_J_molK;
  // k1 e^(E/(R Tref)) folded into one exponent.
  const lnFront = Math.log(model.kRef_per_s) + perTemperature / REFERENCE_K;
  const tgSpan = model.tgFull_K - tgStart_K;
  const perWidth = 1 / model.vitrificationWidth_K;
  const bend = 1 - tgLambda;
  const even = balance === 1;
  const limit = Math.min(1, balance);
  const half = order / 2;

  const rateAt = (a: number, T: number): number => {
    if (a >= limit) return 0;
    const tg = tgStart_K + (tgSpan * tgLambda * a) / (1 - bend * a);
    const frozen = Math.exp((tg - T - vitrificationOffset_K) * perWidth);
    const left = even ? (1 - a) ** order : (1 - a) ** half * (balance - a) ** half;
    return (Math.exp(lnFront - perTemperature / T) * (1 + a / rho) * left) / (1 + frozen);
  };
  return {
    rate: rateAt,
    slopes: (a, T, out) => {
      const f = rateAt(a, T);
      out[0] = f;
      if (f === 0) {
        out[1] = 0;
        out[2] = 0;
        return;
      }
      const room = 1 - bend * a;
      const tg = tgStart_K + (tgSpan * tgLambda * a) / room;
      const stuck = perWidth / (1 + Math.exp(-(tg - T - vitrificationOffset_K) * perWidth));
      const consumed = even ? order / (1 - a) : half / (1 - a) + half / (balance - a);
      out[1] = f * (1 / (rho + a) - consumed - (stuck * tgSpan * tgLambda) / (room * room));
      out[2] = f * (perTemperature / (T * T) + stuck);
    },
  };
}

function requireKinetics(model: ResinModel): void {
  requirePositive('kRef_per_s', model.kRef_per_s);
  requirePositive('rho', model.rho);
  requireRange('order', model.order, 0.5, 6);
  requireRange('activation_J_mol', model.activation_J_mol, 0, 3e5);
  requireRange('heat_J_kg', model.heat_J_kg, 0, 2e6);
  requirePositive('heatCapacity_J_kgK', model.heatCapacity_J_kgK);
  requireRange('tgLambda', model.tgLambda, 0.05, 1);
  requirePositive('vitrificationWidth_K', model.vitrificationWidth_K);
  requireRange('tgFull_K - tgStart_K', model.tgFull_K - model.tgStart_K, 0, 500);
}

/**
 * Equivalent age: time at 24 C that takes the reaction as far as this temperature history does, before vitrification,
 * s. Exact for one activation energy. Temperatures linear between the points (Simpson's rule on each piece).
 *
 * @throws RangeError when the lists differ in length, are empty, or times do not increase.
 */
export function equivalentAge(
  activation_J_mol: number,
  time_s: readonly number[],
  temperature_K: readonly number[],
): number {
  if (time_s.length === 0 || time_s.length !== temperature_K.length) {
    throw new RangeError(
      `${time_s.length} times and ${temperature_K.length} temperatures; as many are needed`,
    );
  }
  let age = 0;
  for (let i = 1; i < time_s.length; i++) {
    const span = time_s[i]! - time_s[i - 1]!;
    if (!(span > 0)) throw new RangeError(`times must increase: ${time_s[i]} follows ${time_s[i - 1]}`);
    const from = temperature_K[i - 1]!;
    const to = temperature_K[i]!;
    // Pieces of at most 2 K keep Simpson's rule exact to 1e-7.
    const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / 2));
    for (let p = 0; p < pieces; p++) {
      const start = from + ((to - from) * p) / pieces;
      const end = from + ((to - from) * (p + 1)) / pieces;
      const sum =
        arrheniusFactor(activation_J_mol, start) +
        4 * arrheniusFactor(activation_J_mol, (start + end) / 2) +
        arrheniusFactor(activation_J_mol, end);
      age += (span / pieces) * (sum / 6);
    }
  }
  return age;
}
