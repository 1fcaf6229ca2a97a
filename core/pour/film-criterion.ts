/** What is compared for each stage of a film, in words with the resin's own figures and the shop's units. */
import { formatPercent, formatTemperatureDifference } from '#core/quantity/format.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import type { System } from '#core/quantity/units.ts';
import type { ResinModel } from '#core/resin/model.ts';
import { FILM_CRITERIA } from '#core/resin/stage-criteria.ts';

export type Criterion = keyof typeof FILM_CRITERIA;

/** One sentence without its full stop. The thresholds are those of core/resin/stage-criteria.ts and of the card. */
export function filmCriterion(key: Criterion, model: ResinModel, system: System): string {
  const apart = (difference_K: number) =>
    formatTemperatureDifference(Math.abs(difference_K), system, { decimals: 0 });
  switch (key) {
    case 'workingEnd':
      return `The resin is ${trimmed(model.workingRatio, 1)} times as viscous as the fresh mix: it can no longer be worked`;
    case 'noMoreLevelling':
      return `The resin is ${FILM_CRITERIA.noMoreLevelling.ratio} times as viscous as the fresh mix`;
    case 'gel':
      return `${formatPercent(model.gelConversion)} of the reaction is done, the gel point: nothing flows any more`;
    case 'recoatOpens':
      return `${formatPercent(model.gelConversion + FILM_CRITERIA.recoatOpens.pastGel)} of the reaction is done, a little past gel: the next coat cannot stir this one`;
    case 'recoatBestFrom':
      return `The glass transition is within ${apart(FILM_CRITERIA.recoatBestFrom.offset_K)} of the film: tacky, and past the opening`;
    case 'recoatBestTo':
      return `The glass transition is within ${apart(FILM_CRITERIA.recoatBestTo.offset_K)} of the film: tack is going`;
    case 'recoatCloses':
      return 'The glass transition is at the temperature of the film: what could bond is freezing. Abrade from here';
    case 'dryHard':
      return `The glass transition is ${apart(model.dryHardOffset_K)} ${model.dryHardOffset_K < 0 ? 'below' : 'above'} the film, as this resin's card has it`;
    case 'sandable':
      return `The glass transition is ${apart(FILM_CRITERIA.sandable.offset_K)} above the film: dust, not gum`;
    case 'handle':
      return `The glass transition is ${apart(FILM_CRITERIA.handle.offset_K)} above the film: firm all through`;
    case 'inUse':
      return `The film has ${formatPercent(FILM_CRITERIA.inUse.share)} of the cure that 30 days give`;
    case 'fullCure':
      return `The film has ${formatPercent(FILM_CRITERIA.fullCure.share, { decimals: 1 })} of the cure that 30 days give`;
  }
}
