/** The same film poured from another resin, colder or warmer: what a flood coat gains from a regular one, and which bubbles get out. */
import { type BubbleAnswers, type BubbleCase, bubbleAnswers } from '#core/film/bubble-answers.ts';
import { capillaryLength_m, type Liquid } from '#core/film/constants.ts';
import { type FlowBudget, thetaLeftAt, thetaTotal } from '#core/film/flow-budget.ts';
import { ORDERED_THICKNESS_CAPILLARY_LENGTHS } from '#core/film/levelling.ts';
import { type LevellingAnswers, levellingAnswers, TOOLS, type Tool } from '#core/film/levelling-answers.ts';
import type { Coat } from '#core/mix/coat.ts';
import { formatTemperatureDifference } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { QUICK_20, REGULAR_50 } from '#core/resin/cards.ts';
import type { AirTemperature, Board, ResinCard } from '#core/resin/model.ts';
import { filmSeries } from './film-outlook-series.ts';
import { filmOf } from './film-times.ts';
import type { CoatPlan } from './plan.ts';

/** How much colder and warmer the bubbles are asked about, K: a shop on another day. */
export const OTHER_DAY_K = 5;
/** Span in which a film is followed here: all these gel within it unless they never do, s. */
const SPAN_s = 5 * 86_400;

export interface PourPlace {
  readonly coat: Coat;
  readonly plan: CoatPlan;
  readonly board: Board;
  readonly air: AirTemperature;
}

interface Change {
  readonly card?: ResinCard;
  readonly warmer_K?: number;
  readonly film_m?: number;
}

/** Flow budget of this film with something changed; the cup stands as planned. Undefined when it gels in the cup. */
function otherFilm({ coat, plan, board, air }: PourPlace, change: Change): FlowBudget | undefined {
  const { model } = change.card ?? coat.card;
  const by_K = change.warmer_K ?? 0;
  const cup = plan.cupForecasts[0]!;
  const film = filmOf(
    model,
    {
      thickness_m: change.film_m ?? coat.film_m,
      board,
      board_K: coat.board_K + by_K,
      air: { time_s: air.time_s, temperature_K: air.temperature_K.map((kelvin) => kelvin + by_K) },
      resin: { conversion: coat.resin.conversion, temperature_K: coat.resin.temperature_K + by_K },
      cup_kg: plan.cups[0]!.mass_kg,
      mixed_s: cup.mixed_s,
      emptied_s: cup.emptied_s,
    },
    { duration_s: SPAN_s },
  );
  return filmSeries(film, cup.emptied_s);
}

export interface ResinSide {
  readonly name: string;
  /** Whether it is the card of this coat. */
  readonly own: boolean;
  /** Flow budget left when the film is down, 1/Pa; 0 when it gels before. */
  readonly thetaLeft_per_Pa: number;
  /** Gel on the plan's clock, s; undefined when it gels in the cup. */
  readonly gel_s?: number;
  /** Undefined when nothing flows any more once the film is down. */
  readonly levelling?: LevellingAnswers;
}

/** Film that levelling can be asked of, m: no more than four capillary lengths. */
export function levelledFilm_m(film_m: number, liquid: Liquid): number {
  return Math.min(film_m, ORDERED_THICKNESS_CAPILLARY_LENGTHS * capillaryLength_m(liquid) * 0.999999);
}

/** Tools whose last touch is told; with the maker's own when its marks are known. @param pitch_m above 0 */
export function toolsWith(pitch_m: number | undefined): readonly Tool[] {
  return pitch_m === undefined ? TOOLS : [...TOOLS, { label: 'Your own tool', pitch_m }];
}

/** The generic quick and regular resins in the same film, poured, spread and left at the same minutes. */
export function resinSides(
  place: PourPlace,
  down_s: number,
  tools: readonly Tool[] = TOOLS,
): readonly ResinSide[] {
  return [QUICK_20, REGULAR_50].map((card): ResinSide => {
    const base = { name: card.name, own: card.id === place.coat.card.id };
    const series = otherFilm(place, { card });
    if (series === undefined) return { ...base, thetaLeft_per_Pa: 0 };
    const gel_s = series.time_s.at(-1)!;
    const thetaLeft_per_Pa = thetaLeftAt(series, Math.max(down_s, series.time_s[0]!));
    if (!(thetaLeft_per_Pa > 0)) return { ...base, thetaLeft_per_Pa: 0, gel_s };
    const film_m = levelledFilm_m(place.coat.film_m, card.model);
    return {
      ...base,
      thetaLeft_per_Pa,
      gel_s,
      levelling: levellingAnswers(series, film_m, Math.max(down_s, series.time_s[0]!), tools, card.model),
    };
  });
}

/** Bubbles in this film, in one half as thick, and on a colder and a warmer day (resin, board and air together). */
export function bubblesOutlook(place: PourPlace, series: FlowBudget, system: System): BubbleAnswers {
  const { film_m } = place.coat;
  const apart = formatTemperatureDifference(OTHER_DAY_K, system, { decimals: 0 });
  const cases: BubbleCase[] = [{ label: 'This film', thickness_m: film_m, theta_per_Pa: thetaTotal(series) }];
  const others: readonly (readonly [string, Change])[] = [
    ['A coat half as thick', { film_m: film_m / 2 }],
    [`Resin and shop ${apart} colder`, { warmer_K: -OTHER_DAY_K }],
    [`Resin and shop ${apart} warmer`, { warmer_K: OTHER_DAY_K }],
  ];
  for (const [label, change] of others) {
    const other = otherFilm(place, change);
    if (other === undefined || !(thetaTotal(other) > 0)) continue;
    cases.push({ label, thickness_m: change.film_m ?? film_m, theta_per_Pa: thetaTotal(other) });
  }
  return bubbleAnswers(cases, place.coat.card.model);
}
