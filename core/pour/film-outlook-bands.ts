/**
 * Why a band of a coat's forecast opens and closes where it does: the window of its work, and the stages of the film. From the plan alone,
 * so a screen has it at once; what the flow adds is in film-outlook.ts.
 */

import { thetaToLevel } from '#core/film/levelling.ts';
import { MARK_GONE } from '#core/film/levelling-answers.ts';
import type { Spread } from '#core/film/ranges.ts';
import type { Reason } from '#core/film/reason.ts';
import type { Coat } from '#core/mix/coat.ts';
import { surroundingsAt } from '#core/numeric/column.ts';
import type { System } from '#core/quantity/units.ts';
import { surroundingsOf } from '#core/resin/film.ts';
import { readState, spanOf } from '#core/resin/history.ts';
import type { AirTemperature, TimeRange } from '#core/resin/model.ts';
import { CUP_CRITERIA, FILM_CRITERIA } from '#core/resin/stage-criteria.ts';
import { freshViscosity } from '#core/resin/viscosity.ts';
import { airFrom } from './clocks.ts';
import { filmCriterion } from './film-criterion.ts';
import { levelledFilm_m } from './film-outlook-resins.ts';
import { TORCH_PITCH_m } from './film-times.ts';
import type { CoatPlan, StageForecast, Step, StepKind } from './plan.ts';
import { NOT_WITHIN_SPAN_s } from './windows.ts';

export interface BandsRequest {
  readonly coat: Coat;
  readonly plan: CoatPlan;
  /** On the plan's clock, as it was planned with. */
  readonly air: AirTemperature;
  readonly system: System;
}

/** Stages of the film that the forecast draws. */
export type FilmBand = 'working end' | 'no more levelling' | 'gel';

/** Work that the forecast draws; cups are told one by one. */
export type WorkBand = Exclude<StepKind, 'mix' | 'pour'>;

const VISCOSITY = 'viscosity = fresh * (a gel/(a gel - a))^(A + B a)';
const VISCOSITY_SOURCE = 'Castro and Macosko 1982, AIChE J. 28, 250';

const criteria = {
  'working end': 'workingEnd',
  'no more levelling': 'noMoreLevelling',
  gel: 'gel',
} as const;

/**
 * Why a stage of the film comes when it does. Times s on the plan's clock, range 5 to 95 % of the draws of the resin.
 * @returns undefined when the plan has no such stage.
 */
export function stageReason(request: BandsRequest, key: FilmBand): Reason | undefined {
  const { plan, coat, system } = request;
  const stage = plan.stages.find((each) => each.key === key);
  if (stage === undefined) return undefined;
  const { model } = coat.card;
  const criterion = filmCriterion(criteria[key], model, system);
  return {
    says: `${stage.at === null ? 'Not within 30 days: ' : ''}${stage.at === null ? criterion[0]!.toLowerCase() + criterion.slice(1) : criterion}.`,
    formula:
      key === 'gel' ? `gel when a = a gel; ${VISCOSITY}` : `viscosity = R * fresh viscosity; ${VISCOSITY}`,
    numbers: {
      ...(key === 'gel'
        ? {
            gelConversion: model.gelConversion,
            filmPeak_K: plan.answers.peak_K,
            thetaTotal_per_Pa: thetaTotal_per_Pa(plan),
          }
        : {
            viscosityRatio: key === 'working end' ? model.workingRatio : FILM_CRITERIA.noMoreLevelling.ratio,
          }),
      ...freshNumbers(request),
      ...filmNumbers(request, stage.at),
    },
    source: `${FILM_CRITERIA[criteria[key]].source}; viscosity ${VISCOSITY_SOURCE}`,
    ...ranged(stage.at),
    rule: stage.rule,
  };
}

/**
 * Why a cup is to be out, and its film spread, by its time: the cup heats up, or the wet edge of the oldest film stops closing.
 * @param number of the cup, from 1 @returns undefined when the plan pours no such cup.
 */
export function cupReason(request: BandsRequest, number: number): Reason | undefined {
  const { plan } = request;
  const cup = plan.cupForecasts.find((each) => each.number === number);
  const pour = plan.steps.find((step) => step.kind === 'pour' && step.cup === number);
  if (cup === undefined || pour === undefined) return undefined;
  const { temperature_K, conversion } = CUP_CRITERIA.pourNow;
  return {
    says: `Poured and spread before ${limitSaid(pour)}.`,
    formula:
      'cup: mass * heat capacity * warming a second = heat of reaction - loss, out at its limit of temperature or of reaction; film: viscosity < R * fresh viscosity',
    numbers: {
      cupMass_kg: plan.cups.find((each) => each.number === number)?.mass_kg ?? 0,
      mixed_s: cup.mixed_s,
      emptied_s: cup.emptied_s,
      cupLimit_K: temperature_K,
      cupLimitOfReaction: conversion,
      cupPeak_K: cup.peak_K,
      ...(cup.pourNow === null ? {} : { cupAtLimit_s: cup.pourNow.mid_s }),
      ...workingNumbers(request),
    },
    source:
      'rate Kamal and Sourour 1976, Thermochim. Acta 14, 41; heat balance of the cup own; its limits common practice, no source',
    ...windowRange(pour),
    rule: pour.rule,
  };
}

/**
 * Why a kind of work is open as long as it is, for the step of it that closes first.
 * @returns undefined when the plan has no such work.
 */
export function workReason(request: BandsRequest, kind: WorkBand): Reason | undefined {
  const steps = request.plan.steps.filter((step) => step.kind === kind);
  if (steps.length === 0) return undefined;
  const step = steps.reduce((a, b) => (b.window.closes_s < a.window.closes_s ? b : a));
  const common = { ...windowRange(step), rule: step.rule };
  const { plan, coat } = request;
  const { model } = coat.card;
  const times = { opens_s: step.window.opens_s, planned_s: step.start_s };
  switch (kind) {
    case 'hands off':
      return {
        says: `${recoatSays(plan)} Until then a touch leaves a mark, and dust and draught do.`,
        formula: 'open from the last work planned; over when a = a gel + 0.05',
        numbers: {
          opens_s: step.window.opens_s,
          gelConversion: model.gelConversion,
          recoatConversion: model.gelConversion + FILM_CRITERIA.recoatOpens.pastGel,
        },
        source: FILM_CRITERIA.recoatOpens.source,
        ...common,
        // A wait ends late rather than early, so its window starts at the middle: the range is that of the stage.
        ...ranged(stageOf(plan, 'recoat opens')?.at ?? null),
      };
    case 'scrape drips':
      return {
        says: 'Drips hang from the first resin over the edge; the last round goes before they gel.',
        formula: 'closes when a = a gel',
        numbers: { ...times, gelConversion: model.gelConversion },
        source: FILM_CRITERIA.gel.source,
        ...common,
      };
    case 'torch':
      if (closesByMarks(plan, step))
        return {
          says: `Closes while the film still flows: ${step.window.limit}.`,
          formula: 'r Theta left = ln 100, r = (rho g + gamma k^2)/(2k) (sinh x cosh x - x)/(cosh^2 x + x^2)',
          numbers: {
            ...times,
            markPitch_m: TORCH_PITCH_m,
            film_m: coat.film_m,
            needs_per_Pa: thetaToLevel(TORCH_PITCH_m, levelledFilm_m(coat.film_m, model), MARK_GONE, model),
            thetaTotal_per_Pa: thetaTotal_per_Pa(plan),
          },
          source: 'Orchard 1962, exact for shallow marks',
          ...common,
        };
      return { ...byFilm(request, step), ...common };
    case 'meld':
      return { ...byFilm(request, step), ...common };
    case 'wrap edges': {
      const found = { ...byFilm(request, step), ...common };
      return plan.wrap == null ? found : { ...found, says: `${found.says} ${plan.wrap.says}` };
    }
  }
}

/** A window that the oldest film closes. */
function byFilm(request: BandsRequest, step: Step): Reason {
  return {
    says: `Open while the film still moves under the hand; closes when ${limitSaid(step)}.`,
    formula: `viscosity = R * fresh viscosity; ${VISCOSITY}`,
    numbers: {
      opens_s: step.window.opens_s,
      planned_s: step.start_s,
      ...workingNumbers(request),
      ...freshNumbers(request),
      ...filmNumbers(request, stageOf(request.plan, 'working end')?.at ?? null),
    },
    source: `${FILM_CRITERIA.workingEnd.source}; viscosity ${VISCOSITY_SOURCE}`,
  };
}

function recoatSays(plan: CoatPlan): string {
  const stage = stageOf(plan, 'recoat opens');
  return stage === undefined ? 'The next coat may not go on yet.' : `${stage.criterion}.`;
}

function stageOf(plan: CoatPlan, key: StageForecast['key']): StageForecast | undefined {
  return plan.stages.find((stage) => stage.key === key);
}

/** The torch closes with the film, or before it because of the marks it would leave. */
function closesByMarks(plan: CoatPlan, step: Step): boolean {
  const working = stageOf(plan, 'working end')?.at;
  return step.window.closes_s < (working?.low_s ?? NOT_WITHIN_SPAN_s);
}

function limitSaid({ window }: Step): string {
  return window.limit.startsWith('film') ? `the ${window.limit}` : window.limit;
}

function workingNumbers({ coat }: BandsRequest): Reason['numbers'] {
  return { viscosityRatio: coat.card.model.workingRatio };
}

/** Flow budget of the film from the board to gel. */
function thetaTotal_per_Pa(plan: CoatPlan): number {
  return plan.film.theta_per_Pa[plan.film.theta_per_Pa.length - 1]!;
}

/** Air as the film is poured, and the fresh mix at that temperature: what the ratios are against. */
function freshNumbers({ plan, coat, air }: BandsRequest): Reason['numbers'] {
  const air_K = surroundingsAt(surroundingsOf(airFrom(air, plan.filmStart_s)), 0);
  return { air_K, freshViscosity_Pa_s: freshViscosity(coat.card.model, air_K) };
}

/** State of the film at the middle of a range. */
function filmNumbers({ plan, coat }: BandsRequest, at: TimeRange | null): Reason['numbers'] {
  if (at === null) return {};
  const { start_s, end_s } = spanOf(plan.film);
  const time_s = Math.min(end_s, Math.max(start_s, at.mid_s - plan.filmStart_s));
  const { conversion, temperature_K } = readState(plan.film, time_s, coat.card.model);
  return { film_m: coat.film_m, filmThen_K: temperature_K, conversionThen: conversion };
}

function ranged(at: TimeRange | null): { readonly range?: Spread } {
  return at === null ? {} : { range: { low: at.low_s, value: at.mid_s, high: at.high_s } };
}

/** The closing of a window; none when nothing closes it. */
function windowRange({ window }: Step): { readonly range?: Spread } {
  if (!(window.closes_s < NOT_WITHIN_SPAN_s)) return {};
  return { range: { low: window.closes_s, value: window.closesMid_s, high: window.closesHigh_s } };
}
