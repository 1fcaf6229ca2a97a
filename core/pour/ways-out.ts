/** What a maker can change when a pour is tight or does not fit: each way is planned afresh, so its verdict is what doing it gives. */
import {
  formatFilm,
  formatPercent,
  formatTemperature,
  formatTemperatureDifference,
} from '#core/quantity/format.ts';
import { freshViscosity } from '#core/resin/viscosity.ts';
import { BLUSH_LIMITS } from '#core/room/blush-gate.ts';
import type { CoatPlan, WayOut } from './plan.ts';
import type { PlanRequest } from './plan-coat.ts';

/** Resin is not cooled below this: too thick to mix and full of bubbles. Common practice, no source. */
export const COOLEST_RESIN_K = 291.15;
/** The shop is not cooled below this: blush and no cure. Common practice, no source. */
export const COOLEST_SHOP_K = 288.15;
export const RESIN_COOLER_K = 4;
export const SHOP_COOLER_K = 3;
export const MORE_CUPS = 1.5;
/** Board above dew point, as in core/room/blush-gate.ts (ISO 8502-4). */
const DEW_MARGIN_K = BLUSH_LIMITS.margin_K;

/** A way out and the request that it stands for. */
export interface Way {
  readonly way: Omit<WayOut, 'verdict' | 'slack_s'>;
  readonly request: PlanRequest;
}

const systemOf = (request: PlanRequest) => request.system ?? 'us';
const cooler = (difference_K: number, request: PlanRequest) =>
  formatTemperatureDifference(difference_K, systemOf(request));

function changed(request: PlanRequest, coat: Partial<PlanRequest['coat']>): PlanRequest {
  return { ...request, waysOut: false, coat: { ...request.coat, ...coat } };
}

function coolerResin(request: PlanRequest): Way | null {
  const { coat } = request;
  const now_K = coat.resin.temperature_K;
  const then_K = Math.max(COOLEST_RESIN_K, now_K - RESIN_COOLER_K);
  if (now_K - then_K < 0.5) return null;
  const thicker = freshViscosity(coat.card.model, then_K) / freshViscosity(coat.card.model, now_K) - 1;
  return {
    way: {
      key: 'cooler resin',
      label: 'Cooler resin',
      change: `Bring parts A and B to ${formatTemperature(then_K, systemOf(request))}, ${cooler(now_K - then_K, request)} cooler`,
      note: `It is ${formatPercent(thicker)} thicker when it is poured and lets go of bubbles more slowly; keep the containers closed and above the dew point.`,
    },
    request: changed(request, { resin: { ...coat.resin, temperature_K: then_K } }),
  };
}

function moreCups(request: PlanRequest, plan: CoatPlan): Way {
  const cups = Math.max(plan.cups.length + 1, Math.ceil(plan.cups.length * MORE_CUPS));
  return {
    way: {
      key: 'more cups',
      label: 'More cups',
      change: `Mix ${cups} smaller cups instead of ${plan.cups.length}`,
      note: 'Each heats later and is empty sooner, but all of them take longer, leave more in the cups and ask for more weighings.',
    },
    request: changed(request, { fewestCups: cups }),
  };
}

function helper(request: PlanRequest): Way | null {
  const { crew } = request.coat;
  if (crew >= 3) return null;
  return {
    way: {
      key: 'a helper',
      label: 'One more pair of hands',
      change: `${crew + 1} people instead of ${crew}: one mixes while another pours`,
      note: 'Does nothing for a single cup that gets hot; gloves, sleeves and a word about the resin for them too.',
    },
    request: changed(request, { crew: crew + 1 }),
  };
}

/** The next slower resin of the shop that may be poured this thick. */
function slowerResin(request: PlanRequest): Way | null {
  const { coat } = request;
  const slower = (request.slowerCards ?? [])
    .filter(
      (card) =>
        card.model.kRef_per_s < coat.card.model.kRef_per_s && card.largestFilm_m >= coat.film_m * 0.9999,
    )
    .sort((a, b) => b.model.kRef_per_s - a.model.kRef_per_s)[0];
  if (slower === undefined) return null;
  const times = coat.card.model.kRef_per_s / slower.model.kRef_per_s;
  return {
    way: {
      key: 'slower resin',
      label: 'A slower resin',
      change: `${slower.name} instead of ${coat.card.name}`,
      note: `Everything after the pour takes about ${times.toFixed(1)} times as long, more runs off and the faces hold less; try it on a sample first.`,
    },
    request: changed(request, { card: slower }),
  };
}

function twoStages(request: PlanRequest): Way {
  const half_m = request.coat.film_m / 2;
  return {
    way: {
      key: 'two stages',
      label: 'Two pours',
      change: `Half the film at a time: ${formatFilm(half_m, systemOf(request))} twice`,
      note: 'The verdict is for one of the two, both are alike. A recoat window lies between them, cup film and edge work come twice, and a thinner film levels over less.',
    },
    request: changed(request, { film_m: half_m }),
  };
}

function coolerShop(request: PlanRequest): Way | null {
  const least_K = Math.min(...request.air.temperature_K);
  const by_K = Math.min(SHOP_COOLER_K, least_K - COOLEST_SHOP_K);
  if (by_K < 0.5) return null;
  const { coat, air } = request;
  return {
    way: {
      key: 'cooler shop',
      label: 'A cooler shop',
      change: `Air and board ${cooler(by_K, request)} cooler, the resin as it is`,
      note: `Every wait after the pour grows with it. Watch the board: it must stay ${formatTemperatureDifference(DEW_MARGIN_K, systemOf(request), { decimals: 0 })} above the dew point until tack-free.`,
    },
    request: {
      ...changed(request, { board_K: coat.board_K - by_K }),
      air: { time_s: air.time_s, temperature_K: air.temperature_K.map((temperature) => temperature - by_K) },
    },
  };
}

/**
 * The ways that are open: cooler resin (not below 18 C), half as many cups again, a person more (up to three), the next slower resin, two
 * stages, a cooler shop (not below 15 C). At least two are always open; in a shop between 18 and 30 C with one or two people at least five.
 */
export function openWays(request: PlanRequest, plan: CoatPlan): readonly Way[] {
  return [
    coolerResin(request),
    moreCups(request, plan),
    helper(request),
    slowerResin(request),
    twoStages(request),
    coolerShop(request),
  ].filter((way) => way !== null);
}

/** Each open way with the verdict and slack a fresh plan gives it, the most slack first. */
export function waysOutOf(
  request: PlanRequest,
  plan: CoatPlan,
  planAgain: (request: PlanRequest) => CoatPlan,
): readonly WayOut[] {
  return openWays(request, plan)
    .map(({ way, request: again }) => {
      const { verdict, slack_s } = planAgain(again);
      return { ...way, verdict, slack_s };
    })
    .sort((a, b) => b.slack_s - a.slack_s);
}
