import { requireRange } from './check.ts';
import { tgOf } from './kinetics.ts';
import type { ResinModel } from './model.ts';

/**
 * Highest glass transition a mix off its ratio can reach, K. Unreacted groups act like missing conversion: excess epoxide
 * stops at conversion r, excess amine at 1/r, and Tg = DiBenedetto(min(r, 1/r)).
 *
 * @param balance r, amine hydrogen / epoxide equivalents relative to the prescribed mix, 0.2 to 5.
 * @throws RangeError outside.
 */
export function tgAtBalance(model: ResinModel, balance: number): number {
  requireRange('balance', balance, 0.2, 5);
  return tgOf(model, Math.min(balance, 1 / balance));
}

/**
 * The constants of a mix off its ratio; integrate it with the same `balance` in the reaction.
 *  - heat: per kg of what is really in the cup, H (1 + w)/(1 + w r), for epoxide conversion 1;
 *  - gel: Stockmayer's sqrt(r) (see `gelPoint`), at most just above min(1, r), which means it never gels;
 *  - Tg: with excess amine the network is only a/r complete; the DiBenedetto curve of a/r is one in a with other constants.
 *
 * @param massRatio w, kg of B to 1 kg of A at the prescribed ratio, 0.01 to 5.
 * @param balance r, 0.2 to 5.
 * @throws RangeError outside.
 */
export function modelOffRatio(model: ResinModel, massRatio: number, balance: number): ResinModel {
  requireRange('massRatio', massRatio, 0.01, 5);
  requireRange('balance', balance, 0.2, 5);
  const excess = Math.max(1, balance);
  const lambda = 1 - (1 - model.tgLambda) / excess;
  const rise = ((model.tgFull_K - model.tgStart_K) * model.tgLambda) / (excess * lambda);
  return {
    ...model,
    heat_J_kg: (model.heat_J_kg * (1 + massRatio)) / (1 + massRatio * balance),
    gelConversion: Math.min(model.gelConversion * Math.sqrt(balance), 1),
    tgLambda: lambda,
    tgFull_K: model.tgStart_K + rise,
  };
}
