/** Drips under an edge as a maker asks: how far apart, when they show, when to scrape, how much they hold. */

import { notNegative, positive } from '#core/quantity/domain.ts';
import { DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { DRIP_E_FOLDS, DRIP_SCRAPE_THETA_per_Pa, dripTime_s, fastestDrips, hangingDrop } from './drips.ts';
import { type FlowBudget, thetaLeftAt, thetaTotal, timeWhenThetaLeft } from './flow-budget.ts';
import { rangeFromViscosity } from './ranges.ts';
import type { Reason } from './reason.ts';

export interface DripRequest {
  readonly series: FlowBudget;
  /** When the edge is wiped over and resin starts to come down it, s, within the series. */
  readonly from_s: number;
  /** Resin that comes down the edge by gel, m2 (m3 per metre): run-off of the top and what the face sheds. From 0. */
  readonly comesDown_m2: number;
  readonly liquid?: Liquid;
}

export interface DripAnswers {
  /** Distance between drips, m. */
  readonly pitch_m: number;
  /** Film under the edge that the figures are for, m: what comes down, over half a pitch, at most what drops hold. */
  readonly hangingFilm_m: number;
  /** When drips show, s; undefined when the film gels smooth. */
  readonly show_s?: number;
  /** Earliest scrape after which drips do not form again, s; undefined when nothing needs scraping. */
  readonly scrapeFirst_s?: number;
  /** Last useful scrape, s: later the resin no longer closes behind the tool. Undefined as above. */
  readonly scrapeLast_s?: number;
  /** Held as drops along the edge, m2 (m3 per metre). */
  readonly stored_m2: number;
  /** Falls to the floor, m2 (m3 per metre). */
  readonly falls_m2: number;
  readonly reasons: readonly Reason[];
}

/**
 * What comes down is taken to arrive as the square root of the flow budget (run-off, draining) and to hang as a film half a pitch
 * wide (an estimate). Drips show after four e-folds of the fastest pattern. A scrape is early enough to be the only one from the moment
 * on when what still comes makes no drips, and late when less than 10 1/Pa are left (rules of judgement).
 * Accuracy: pitch exact for the liquid; times by the viscosity; the width of the film by a factor of two.
 * @throws RangeError outside the ranges of {@link DripRequest}.
 */
export function dripAnswers(request: DripRequest): DripAnswers {
  const { series, from_s } = request;
  const liquid = request.liquid ?? DEFAULT_LIQUID;
  const comes_m2 = notNegative('comesDown_m2', request.comesDown_m2, 'm2');
  const left = thetaLeftAt(series, from_s);
  const drop = hangingDrop(liquid);
  const thin_m = fastestDrips(1e-6, liquid).pitch_m;
  const stored_m2 = Math.min(comes_m2, drop.storedPerMetre_m2);
  const film = (area_m2: number): number => (2 * Math.min(area_m2, drop.storedPerMetre_m2)) / thin_m;
  const hangingFilm_m = film(comes_m2);
  const base = {
    hangingFilm_m,
    stored_m2,
    falls_m2: comes_m2 - stored_m2,
  };
  const store: Reason = {
    says:
      comes_m2 > drop.storedPerMetre_m2
        ? 'More comes down than drops can hold: some falls to the floor.'
        : 'The drops hold all that comes down: they set as nibs unless scraped.',
    formula: 'one drop of 18.96 lc^3 to each pitch',
    numbers: { comesDown_m2: comes_m2, holds_m2: drop.storedPerMetre_m2 },
    source:
      'largest hanging drop: own solution of Young-Laplace, agrees with Padday and Pitt 1973 (from memory)',
  };
  if (hangingFilm_m === 0 || left === 0) return { pitch_m: thin_m, ...base, reasons: [store] };
  const fastest = fastestDrips(hangingFilm_m, liquid);
  const show_s = dripTime_s(series, hangingFilm_m, from_s, liquid);
  const shows: Reason = {
    says:
      show_s === undefined
        ? 'The film under the edge gels before drips show.'
        : 'Drips show once the ripple under the edge has grown about 55 times.',
    formula:
      'growth = (rho g - gamma k^2)/(2k) (sinh x cosh x - x)/(cosh^2 x + x^2), x = k h, at its greatest',
    numbers: { film_m: hangingFilm_m, growth_Pa: fastest.growth_Pa, thetaLeft_per_Pa: left },
    source: 'Fermigier et al. 1992; Orchard 1962 with the weight turned round',
    range: rangeFromViscosity(fastest.growth_Pa * left, 1),
    rule: 'Knock the drips off before the resin stops running (common practice, no source).',
  };
  if (show_s === undefined) return { pitch_m: fastest.pitch_m, ...base, reasons: [shows, store] };
  // after a scrape with `rest` left, comes (1 - sqrt(1 - rest/left)) of what comes in all
  const again = (rest: number): boolean => {
    const still_m = film(comes_m2 * (1 - Math.sqrt(Math.max(0, 1 - rest / left))));
    return still_m > 0 && fastestDrips(still_m, liquid).growth_Pa * rest > DRIP_E_FOLDS;
  };
  let low = 0;
  let high = left;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (again(middle)) high = middle;
    else low = middle;
  }
  const last_s = timeWhenThetaLeft(series, Math.min(DRIP_SCRAPE_THETA_per_Pa, left, thetaTotal(series)));
  const first_s = Math.max(show_s, timeWhenThetaLeft(series, Math.min(low, left)));
  return {
    pitch_m: fastest.pitch_m,
    ...base,
    show_s,
    scrapeFirst_s: Math.min(first_s, last_s),
    scrapeLast_s: last_s,
    reasons: [
      shows,
      {
        says: 'Scraped earlier, drips form again; later, the scraped place no longer closes.',
        formula: `what still comes after a scrape grows by less than ${DRIP_E_FOLDS} e-folds; at least ${DRIP_SCRAPE_THETA_per_Pa} 1/Pa left`,
        numbers: { thetaLeftAtFirst_per_Pa: low, thetaLeftAtLast_per_Pa: DRIP_SCRAPE_THETA_per_Pa },
        source: 'own estimate on the growth above',
      },
      store,
    ],
  };
}

/**
 * Hanging film that just shows drips by the time a flow budget is spent, m, with the exact growth. Bisection to 1e-9 m.
 * @param theta_per_Pa above 0
 * @throws RangeError outside this.
 */
export function dripFilm_m(theta_per_Pa: number, liquid: Liquid = DEFAULT_LIQUID): number {
  positive('theta_per_Pa', theta_per_Pa, '1/Pa');
  let low = 0;
  let high = 1;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (fastestDrips(middle, liquid).growth_Pa * theta_per_Pa > DRIP_E_FOLDS) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
