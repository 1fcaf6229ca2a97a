/** How much wood this shop leaves. Every figure is a shop default a maker edits, never a fact: common practice, no source. */
import { lengthText } from './length-text.ts';

export interface PieceRules {
  /** From the rim of a bowl or sink to a front edge, m. */
  readonly frontRail_m: number;
  /** To a side or the end of a return, m. */
  readonly sideRail_m: number;
  /** To the back, m. */
  readonly backRail_m: number;
  /** To a seam, m. */
  readonly seamRail_m: number;
  /** From the centre of a tap hole to an edge, to the rim of a bowl and to the next tap hole, m. */
  readonly tapCentre_m: number;
  /** Between the rims of two bowls, m. */
  readonly betweenBowls_m: number;
  /** Radius of an inside corner, m: a tighter one starts cracks. */
  readonly insideRadius_m: number;
}

export const PIECE_RULES: PieceRules = {
  frontRail_m: 0.065,
  sideRail_m: 0.1,
  backRail_m: 0.05,
  seamRail_m: 0.075,
  tapCentre_m: 0.06,
  betweenBowls_m: 0.05,
  insideRadius_m: 0.0125,
};

/** "65 mm (2.559 in) or more (shop default, common practice, no source)": what a rule allows, and whose figure it is. */
export function ruleText(rules: PieceRules, key: keyof PieceRules): string {
  const own = rules[key] !== PIECE_RULES[key];
  const least = !own && key === 'insideRadius_m' ? '13 mm (1/2 in)' : lengthText(rules[key]);
  return `${least} or more (${own ? 'as this shop has it' : 'shop default, common practice, no source'})`;
}
