import { requirePositive, requireRange } from './check.ts';

/**
 * Epoxide conversion at the gel point of a step polymerisation without substitution effects or rings:
 * sqrt(r/((fe - 1)(ge - 1))) (Stockmayer 1952, J. Polym. Sci. 9, 69; Macosko and Miller 1976, Macromolecules 9, 199). Real
 * mixes gel a few percent later.
 *
 * @param epoxyFunctionality mass-type mean functionality sum(f^2 N)/sum(f N) of the epoxide side, above 1.
 * @param amineFunctionality the same of the amine side (active hydrogens), above 1.
 * @param balance r, amine hydrogen / epoxide equivalents, 0.05 to 20.
 * @returns null when the mix cannot gel (the conversion would exceed min(1, r)).
 * @throws RangeError outside these.
 */
export function gelPoint(
  epoxyFunctionality: number,
  amineFunctionality: number,
  balance: number,
): number | null {
  if (!(epoxyFunctionality > 1))
    throw new RangeError(`epoxyFunctionality ${epoxyFunctionality} must exceed 1`);
  if (!(amineFunctionality > 1))
    throw new RangeError(`amineFunctionality ${amineFunctionality} must exceed 1`);
  requireRange('balance', balance, 0.05, 20);
  const gel = Math.sqrt(balance / ((epoxyFunctionality - 1) * (amineFunctionality - 1)));
  return gel <= Math.min(1, balance) ? gel : null;
}

/** One ingredient counted by its reactive groups. */
export interface GroupShare {
  /** Groups a molecule. */
  readonly functionality: number;
  /** Share of all reactive groups of its side; the shares of a side add up to 1. */
  readonly equivalents: number;
}

/**
 * Mass-type mean functionality of one side: sum(f^2 N)/sum(f N) = sum of f times the share of equivalents.
 *
 * @throws RangeError unless the shares add up to 1 (to 1e-9).
 */
export function meanFunctionality(parts: readonly GroupShare[]): number {
  let total = 0;
  let mean = 0;
  for (const part of parts) {
    requirePositive('functionality', part.functionality);
    requireRange('equivalents', part.equivalents, 0, 1);
    total += part.equivalents;
    mean += part.functionality * part.equivalents;
  }
  requireRange('sum of equivalents', total, 1 - 1e-9, 1 + 1e-9);
  return mean;
}

/** Parts of hardener to 100 parts of resin by mass at balance: 100 AHEW/EEW. Both g/eq, positive; RangeError otherwise. */
export function partsPerHundred(amineEquivalent_g_eq: number, epoxyEquivalent_g_eq: number): number {
  requirePositive('amineEquivalent_g_eq', amineEquivalent_g_eq);
  requirePositive('epoxyEquivalent_g_eq', epoxyEquivalent_g_eq);
  return (100 * amineEquivalent_g_eq) / epoxyEquivalent_g_eq;
}

/** Mass of one ingredient and its equivalent mass (g/eq); null for one without epoxide groups (filler, inert diluent). */
export interface BlendPart {
  readonly mass: number;
  readonly equivalent_g_eq: number | null;
}

/**
 * Epoxy equivalent of a blend, g/eq: W/sum(Wi/EEWi).
 *
 * @throws RangeError when a mass is negative, an equivalent not positive, or nothing in it reacts.
 */
export function blendEquivalent(parts: readonly BlendPart[]): number {
  let mass = 0;
  let groups = 0;
  for (const part of parts) {
    requireRange('mass', part.mass, 0, Number.MAX_VALUE);
    mass += part.mass;
    if (part.equivalent_g_eq === null) continue;
    requirePositive('equivalent_g_eq', part.equivalent_g_eq);
    groups += part.mass / part.equivalent_g_eq;
  }
  if (!(groups > 0)) throw new RangeError('nothing in the blend reacts');
  return mass / groups;
}
