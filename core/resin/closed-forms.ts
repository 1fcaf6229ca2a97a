import { gaussRule, integrate } from '#core/numeric/quadrature.ts';
import { requirePositive, requireRange } from './check.ts';
import { arrheniusFactor } from './kinetics.ts';
import type { ResinModel } from './model.ts';

/**
 * Conversion of an n-th order reaction from 0: 1 - exp(-kt), or 1 - (1 + (n-1)kt)^(1/(1-n)). 1 once an order below 1 has
 * used everything up. `k_per_s` and `time_s` 0 or more, order 0 or more; RangeError otherwise.
 */
export function nthOrderConversion(k_per_s: number, order: number, time_s: number): number {
  requireRange('k_per_s', k_per_s, 0, Number.MAX_VALUE);
  requireRange('time_s', time_s, 0, Number.MAX_VALUE);
  requireRange('order', order, 0, 10);
  const x = k_per_s * time_s;
  if (order === 1) return -Math.expm1(-x);
  const base = 1 + (order - 1) * x;
  return base <= 0 ? 1 : 1 - base ** (1 / (1 - order));
}

/**
 * Conversion of da/dt = (k1 + k2 a)(1 - a) from 0: (1 - X)/(1 + (k2/k1) X), X = exp(-(k1 + k2) t) (Kamal and Sourour's form
 * with m = n = 1, integrated by partial fractions). k1 > 0, k2 >= 0, time >= 0; RangeError otherwise.
 */
export function kamalConversion(k1_per_s: number, k2_per_s: number, time_s: number): number {
  requirePositive('k1_per_s', k1_per_s);
  requireRange('k2_per_s', k2_per_s, 0, Number.MAX_VALUE);
  requireRange('time_s', time_s, 0, Number.MAX_VALUE);
  const x = Math.exp(-(k1_per_s + k2_per_s) * time_s);
  return (1 - x) / (1 + (k2_per_s / k1_per_s) * x);
}

/**
 * Time to a conversion by Horie's mechanism da/dt = (k1 + k2 a)(1 - a)(B - a) (J. Polym. Sci. A-1 8 (1970) 1357), integrated
 * by partial fractions, s.
 *
 * @param balance B, amine hydrogen / epoxide equivalents.
 * @throws RangeError unless k1, k2, B > 0 and 0 <= conversion < min(1, B).
 */
export function horieTime(k1_per_s: number, k2_per_s: number, conversion: number, balance: number): number {
  requirePositive('k1_per_s', k1_per_s);
  requirePositive('k2_per_s', k2_per_s);
  requirePositive('balance', balance);
  if (!(conversion >= 0 && conversion < Math.min(1, balance))) {
    throw new RangeError(`conversion is ${conversion}; allowed 0 to below ${Math.min(1, balance)}`);
  }
  const a = conversion;
  const sum = k1_per_s + k2_per_s;
  const grown = k1_per_s + k2_per_s * a;
  if (balance === 1) {
    return (k2_per_s / sum ** 2) * Math.log(grown / (k1_per_s * (1 - a))) + a / (sum * (1 - a));
  }
  const sumB = k1_per_s + k2_per_s * balance;
  const c0 = k2_per_s ** 2 / (sum * sumB);
  const c1 = 1 / (sum * (balance - 1));
  const c2 = 1 / (sumB * (1 - balance));
  return (
    (c0 / k2_per_s) * Math.log(grown / k1_per_s) -
    c1 * Math.log1p(-a) -
    c2 * Math.log((balance - a) / balance)
  );
}

/**
 * Conversion at which da/dt = k1 (1 + a/rho)(1 - a)^n is fastest: (1 - n rho)/(1 + n), 0 when it only slows down.
 * rho, order > 0; RangeError otherwise.
 */
export function fastestConversion(rho: number, order: number): number {
  requirePositive('rho', rho);
  requirePositive('order', order);
  return Math.max(0, (1 - order * rho) / (1 + order));
}

const rule = gaussRule(16);

/**
 * I(a) = integral from 0 to a of dx/((1 + x/rho)(1 - x)^n) = k1 t at constant temperature before vitrification. In
 * y = -ln(1 - x) the integrand is smooth; 16-point Gauss on graded pieces agrees with the closed forms to 1e-12.
 *
 * @param conversion 0 to 0.999999.
 * @throws RangeError outside, or unless 1e-6 <= rho <= 1e6 and 0 <= order <= 6.
 */
export function conversionIntegral(rho: number, order: number, conversion: number): number {
  requireRange('rho', rho, 1e-6, 1e6);
  requireRange('order', order, 0, 6);
  requireRange('conversion', conversion, 0, 0.999999);
  const length = -Math.log1p(-conversion);
  const f = (y: number) => Math.exp((order - 1) * y) / (1 - Math.expm1(-y) / rho);
  // The integrand bends on the scale of rho near 0: pieces grow with the distance from its pole at about -rho.
  let sum = 0;
  for (let y = 0; y < length; ) {
    const next = Math.min(length, y + Math.min(1, y + rho));
    sum += integrate(rule, f, y, next);
    y = next;
  }
  return sum;
}

/**
 * Time from one conversion to a later one at constant temperature, before vitrification, s:
 * (I(to) - I(from))/(k1 Arrhenius factor). Negative when `to` lies before `from`.
 */
export function isothermalTime(model: ResinModel, from: number, to: number, temperature_K: number): number {
  const { rho, order } = model;
  const span = conversionIntegral(rho, order, to) - conversionIntegral(rho, order, from);
  return span / (model.kRef_per_s * arrheniusFactor(model.activation_J_mol, temperature_K));
}
