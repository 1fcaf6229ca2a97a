/** How long the steps of a pour take in this shop. Every figure comes from the shop's rates: common practice, no source. */

/** The part of the shop's rates that a cup's standing time hangs on. */
export interface CupRates {
  readonly mix_s: number;
  readonly mixExtra_s_per_kg: number;
  readonly tint_s: number;
  readonly pour_kg_per_s: number;
}

/** Mass that the plain mixing time covers. */
export const PLAIN_MIX_kg = 2;

/** From the parts meeting to a mixed, tinted cup: the plain time up to 2 kg, more for every kg beyond. Mass from 0. */
export function mixTime_s(mass_kg: number, tinted: boolean, rates: CupRates): number {
  return (
    rates.mix_s + rates.mixExtra_s_per_kg * Math.max(0, mass_kg - PLAIN_MIX_kg) + (tinted ? rates.tint_s : 0)
  );
}

/** Getting a cup's resin onto the piece. Mass from 0. */
export function emptyTime_s(mass_kg: number, rates: Pick<CupRates, 'pour_kg_per_s'>): number {
  return mass_kg / rates.pour_kg_per_s;
}

/** The least time a mass stands in its cup: mixed, tinted, poured out at once. Rises with the mass. */
export function standTime_s(mass_kg: number, tinted: boolean, rates: CupRates): number {
  return mixTime_s(mass_kg, tinted, rates) + emptyTime_s(mass_kg, rates);
}
