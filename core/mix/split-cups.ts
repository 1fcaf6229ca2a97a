/** The coat's mass divided into cups: per colour by its share, equal cups within a colour, none above the largest allowed. */
import { roundToStep } from '#core/quantity/rounding.ts';
import type { MixRatio } from '#core/resin/model.ts';
import type { Colour, CupRecipe } from './coat.ts';
import { weighParts } from './parts.ts';

export interface CupShare {
  readonly colour: Colour;
  /** Cups of this colour. */
  readonly cups: number;
  /** Each cup's share of the coat. */
  readonly share: number;
}

/** A coat without colours is poured clear. */
export const CLEAR: Colour = { name: 'clear', share: 1, colourant: 'none', load: 0, swatch: '#c9c4b4' };

/** The most cups a coat is split into; more is a mistake in the figures. */
export const MOST_CUPS = 200;

/** Shares made to sum to exactly one (they may miss by half a percent). A coat without colours is one clear colour. */
export function wholeShares(colours: readonly Colour[]): readonly Colour[] {
  const list = colours.length === 0 ? [CLEAR] : colours;
  const total = list.reduce((sum, colour) => sum + colour.share, 0);
  if (!(total > 0)) throw new RangeError(`shares sum to ${total}; allowed: more than 0`);
  return list.map((colour) => ({ ...colour, share: colour.share / total }));
}

/**
 * How many cups of each colour. Least number that keeps every cup within the largest mass; then, up to `fewestCups`, one cup more for
 * the colour whose cups are heaviest (the first of equals).
 * @param mass_kg of the whole coat, above 0 @param largest_kg above 0 @param fewestCups 1 or more
 * @throws RangeError outside these, or when more than 200 cups would be needed.
 */
export function splitCups(
  colours: readonly Colour[],
  mass_kg: number,
  largest_kg: number,
  fewestCups: number,
): readonly CupShare[] {
  if (!(mass_kg > 0)) throw new RangeError(`mass_kg is ${mass_kg}; allowed: more than 0 kg`);
  if (!(largest_kg > 0)) throw new RangeError(`largest_kg is ${largest_kg}; allowed: more than 0 kg`);
  if (!(fewestCups >= 1 && fewestCups <= MOST_CUPS))
    throw new RangeError(`fewestCups is ${fewestCups}; allowed: 1 to ${MOST_CUPS}`);
  const whole = wholeShares(colours).filter((colour) => colour.share > 0);
  const counts = whole.map((colour) => Math.max(1, Math.ceil((colour.share * mass_kg) / largest_kg - 1e-9)));
  let total = counts.reduce((sum, count) => sum + count, 0);
  if (total > MOST_CUPS)
    throw new RangeError(
      `${mass_kg} kg in cups of ${largest_kg} kg needs ${total} cups; allowed: up to ${MOST_CUPS}`,
    );
  for (; total < fewestCups; total++) {
    let heaviest = 0;
    for (let i = 1; i < whole.length; i++)
      if (whole[i]!.share / counts[i]! > (whole[heaviest]!.share / counts[heaviest]!) * (1 + 1e-12))
        heaviest = i;
    counts[heaviest]! += 1;
  }
  return whole.map((colour, i) => ({ colour, cups: counts[i]!, share: colour.share / counts[i]! }));
}

/**
 * What the scale is told for each cup, in the order they are poured: colour by colour as listed. The tint counts as part of the
 * cup's mass and is taken to be as dense as the mix; it is load times A + B, to the nearest step of the scale. A + B is never less
 * than what is then missing.
 * @param mass_kg of the whole coat, above 0 @param density_kg_m3 of the mix, above 0 @param scaleStep_kg above 0
 * @throws RangeError outside these.
 */
export function weighCups(
  split: readonly CupShare[],
  mass_kg: number,
  mix: MixRatio,
  density_kg_m3: number,
  scaleStep_kg: number,
): readonly CupRecipe[] {
  if (!(density_kg_m3 > 0)) throw new RangeError(`density_kg_m3 is ${density_kg_m3}; allowed: more than 0`);
  const recipes: CupRecipe[] = [];
  for (const { colour, cups, share } of split) {
    const needed_kg = mass_kg * share;
    const tint_kg = roundToStep((needed_kg * colour.load) / (1 + colour.load), scaleStep_kg);
    const parts = weighParts(needed_kg - tint_kg, mix, scaleStep_kg);
    for (let i = 0; i < cups; i++) {
      const cup_kg = parts.partA_kg + parts.partB_kg + tint_kg;
      recipes.push({
        number: recipes.length + 1,
        colour: colour.name,
        swatch: colour.swatch,
        ...parts,
        tint_kg,
        colourant: colour.colourant,
        mass_kg: cup_kg,
        volume_m3: cup_kg / density_kg_m3,
      });
    }
  }
  return recipes;
}
