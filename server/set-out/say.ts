/** Sizes in words for the sheet: the finest fraction a tape shows, and millimetres beside it. */
import type { EdgeProfile } from '#core/piece/piece.ts';
import type { Datum } from '#core/piece/set-out/datum.ts';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';

/** Within this of a 1/16 a size is said in 16ths; otherwise in 32nds, the finest marks of a tape. */
const SAME_M = 0.00005;

/** "25 1⁄2 in" or "647.7 mm" (whole millimetres without a point). Fractions are written with a fraction slash. */
export function sayLength(length_m: number, system: System): string {
  if (system === 'metric') return sayMillimetres(length_m);
  const sixteenths = length_m / (0.0254 / 16);
  const off_m = Math.abs(sixteenths - Math.round(sixteenths)) * (0.0254 / 16);
  const text = formatLength(length_m, 'us', { fraction: off_m <= SAME_M ? 16 : 32 });
  return text.replace(/(\d)\/(\d)/, '$1\u2044$2');
}

export function sayMillimetres(length_m: number): string {
  return formatLength(length_m, 'metric', { decimals: 1 }).replace('.0 mm', ' mm');
}

/** In US units two lines, the second in millimetres for machines and checks. */
export function lengthCell(length_m: number, system: System): string[] {
  return system === 'us' ? [sayLength(length_m, 'us'), sayMillimetres(length_m)] : [sayMillimetres(length_m)];
}

export function sayProfile(profile: EdgeProfile, system: System): string {
  switch (profile.kind) {
    case 'square eased':
      return `square, eased ${sayLength(profile.radius_m, system)}`;
    case 'round-over':
      return `round-over ${sayLength(profile.radius_m, system)}`;
    case 'bullnose':
      return 'bullnose (half round)';
    case 'bevel':
      return `bevel ${sayLength(profile.leg_m, system)} at 45°`;
    case 'chiselled':
      return `chiselled, surface × ${profile.factor.toFixed(2)}`;
  }
}

export function sayAngle(angle_rad: number): string {
  return `${((angle_rad * 180) / Math.PI).toFixed(1)}°`;
}

/** "left edge", or where there is no straight edge, "a square at the left". */
export function sayDatum({ side, edge }: Datum): string {
  if (edge === null) return `a straightedge laid against the ${side}`;
  return edge === side ? `the ${side} edge` : `the ${side} (edge "${edge}")`;
}
