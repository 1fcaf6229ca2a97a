/** Which reasons stand behind a band of the forecast chart: what its plan says, and what the flow of its film adds. */
import type { Reason } from '#core/film/reason.ts';
import type { FilmOutlook } from '#core/pour/film-outlook.ts';
import { type BandsRequest, cupReason, stageReason, workReason } from '#core/pour/film-outlook-bands.ts';
import type { BandOf } from '#web/charts/forecast-rows.ts';
import type { RangeOf } from './reason-words.ts';

export interface ReasonGroup {
  readonly title: string;
  readonly range: RangeOf;
  readonly reasons: readonly Reason[];
}

/** Pairs of colours told under a band; the others stand in the table of the film. */
const PAIRS_TOLD = 3;

/** Why its window opens and closes when it does; known at once. Undefined for a band that the plan does not hold. */
export function planWhy(band: BandOf, request: BandsRequest): Reason | undefined {
  switch (band.kind) {
    case 'cup':
      return cupReason(request, band.number);
    case 'work':
      return workReason(request, band.work);
    case 'film':
      return stageReason(request, band.stage);
  }
}

/** What the film does meanwhile; empty where the plan has said all. */
export function flowWhys(
  band: BandOf,
  outlook: FilmOutlook,
  plan: BandsRequest['plan'],
): readonly ReasonGroup[] {
  const { edges, levelling, puddles, colours, bubbles } = outlook;
  const level: ReasonGroup = { title: 'What still levels', range: 'length', reasons: levelling.reasons };
  if (band.kind === 'film') return band.stage === 'no more levelling' ? [level] : [];
  if (band.kind === 'cup') {
    const cup = puddles.cups[plan.cups.findIndex((each) => each.number === band.number)];
    const reasons = puddles.reasons.map((reason, i) =>
      i > 0 || cup === undefined
        ? reason
        : {
            ...reason,
            numbers: { ...reason.numbers, volume_m3: cup.volume_m3 },
            range: cup.radius_m,
          },
    );
    return [{ title: 'How far its puddle spreads', range: 'length', reasons }];
  }
  switch (band.work) {
    case 'meld':
      return [
        ...colours.pairs.slice(0, PAIRS_TOLD).map(
          ({ top, bottom, answer }): ReasonGroup => ({
            title: `${top.name} over ${bottom.name}`,
            range: 'e-folds',
            reasons: answer.reasons,
          }),
        ),
        level,
      ];
    case 'wrap edges':
      return edges.map(({ names, answers }) => ({
        title: `What stays on ${names.join(', ')}`,
        range: 'film',
        reasons: answers.reasons,
      }));
    case 'torch':
      return [{ title: 'What a flame does', range: 'film', reasons: [bubbles.torch] }, level];
    case 'scrape drips':
      return edges.map(({ names, drips }) => ({
        title: `Drips under ${names.join(', ')}`,
        range: 'e-folds',
        reasons: drips.reasons,
      }));
    case 'hands off':
      return [level];
  }
}
