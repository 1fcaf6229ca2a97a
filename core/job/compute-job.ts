/**
 * The one call behind the job sheet, the command line and the printed order: a job document in, everything that follows
 * from it out. Pure and synchronous; the web runs it in a worker.
 */
import { airFrom } from '#core/pour/clocks.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import { type PlanRequest, planCoat } from '#core/pour/plan-coat.ts';
import { SHOP_DEFAULTS, type ShopRates } from '#core/pour/shop-rates.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import type { AirTemperature, ResinCard } from '#core/resin/model.ts';
import { blushGate } from '#core/room/blush-gate.ts';
import { dewPoint_K } from '#core/room/dew-point.ts';
import { boardDoubt, coatedPieces, measureAt } from './coated-pieces.ts';
import type { JobDocument } from './document.ts';
import type { CoatForecast, CoatPour, JobForecast, RoomForecast } from './forecast.ts';
import { secondsBetween } from './local-time.ts';
import { MODEL_VERSION } from './model-version.ts';
import { judgeNextCoat, type NextCoat } from './next-coat.ts';
import { piecesOf } from './pieces.ts';
import { readJob } from './read-job.ts';
import type { RoomRead } from './read-room.ts';

export interface ShopKnowledge {
  readonly rates?: Partial<ShopRates>;
  /** Cards of the shop; the generic ones are always there. */
  readonly cards?: readonly ResinCard[];
  /** Units of the figures in sentences; US when left out. Changes no number. */
  readonly system?: System;
  /** Whether ways out are looked for where a pour does not fit; default true. */
  readonly waysOut?: boolean;
}

export function shopCards(shop: ShopKnowledge): readonly ResinCard[] {
  return [...GENERIC_CARDS, ...(shop.cards ?? [])];
}

/**
 * Everything that follows from a job document. Never throws on a document of the right shape whose texts say anything at all:
 * what is wrong stands in `problems`, what is not given yet in `missing`, and a coat that cannot be planned has no plan.
 * The same document and shop give the same answer.
 */
export function computeJob(document: JobDocument, shop: ShopKnowledge = {}): JobForecast {
  const cards = shopCards(shop);
  const rates: ShopRates = { ...SHOP_DEFAULTS, ...shop.rates };
  const { system = 'us', waysOut = true } = shop;
  const read = readJob(document, cards, shop.system);
  const problems: Problem[] = [...read.problems];
  const warnings: Problem[] = [...read.warnings];
  const places = piecesOf(document);
  const pieces = read.pieces.map((each, index) => {
    const measured = measureAt(each, places[index]!.document, system, rates);
    const { problems: wrong, warnings: doubts, ...forecast } = measured;
    problems.push(...wrong);
    warnings.push(...doubts);
    return forecast;
  });
  const covered = read.coats.map((coat) => coatedPieces(coat.pieces, pieces));
  covered.forEach((coated, index) => {
    const doubt = coated === null ? null : boardDoubt(coated, `coats.${index}.pieces`);
    if (doubt !== null) warnings.push(doubt);
  });
  const starts = document.coats.map((coat) => coat.startsAt);
  const pours = read.coats.map(({ coat }, index): CoatPour | null => {
    const coated = covered[index] ?? null;
    if (coat === null || coated === null || read.room.air === null) return null;
    const air = airAt(read.room.air, secondsBetween(starts[0] ?? '', starts[index] ?? ''));
    return { coat, board: coated.board, air };
  });
  const requests = pours.map((pour, index): PlanRequest | null => {
    const coated = covered[index] ?? null;
    if (pour === null || coated === null) return null;
    const { coat, board, air } = pour;
    const slowerCards = cards.filter((card) => card.model.kRef_per_s < coat.card.model.kRef_per_s);
    const asked = { coat, measures: coated.measures, board, air, rates, slowerCards, system };
    return waysOut ? asked : { ...asked, waysOut };
  });
  const planned = requests.map((request) => (request === null ? null : planCoat(request)));
  const coats = read.coats.map(
    ({ id, name, pieces: coated }, index): CoatForecast => ({
      id,
      name,
      pieces: coated,
      plan: planned[index] ?? null,
      pour: pours[index] ?? null,
      request: requests[index] ?? null,
      nextCoat: nextCoatOf(document, read.coats, planned, index),
    }),
  );
  return {
    modelVersion: MODEL_VERSION,
    problems,
    warnings,
    missing: read.missing,
    pieces,
    piece: pieces[0]!.piece,
    measures: pieces[0]!.measures,
    room: judgeRoom(read.room),
    coats,
    cautions: GENERAL_CAUTIONS,
  };
}

/** Readings run from the first pour; a later coat with its own hour meets the air of its own hour. */
function airAt(air: AirTemperature, later_s: number | null): AirTemperature {
  return later_s === null || later_s <= 0 ? air : airFrom(air, later_s);
}

function nextCoatOf(
  document: JobDocument,
  names: readonly { readonly name: string }[],
  plans: readonly (CoatPlan | null)[],
  index: number,
): NextCoat | null {
  const [coat, next] = [document.coats[index], document.coats[index + 1]];
  if (coat === undefined || next === undefined) return null;
  return judgeNextCoat(
    plans[index] ?? null,
    { name: names[index + 1]?.name ?? next.name, plan: plans[index + 1] ?? null },
    { coat: coat.startsAt, next: next.startsAt },
  );
}

function judgeRoom(room: RoomRead): RoomForecast | null {
  if (room.air_K === null) return null;
  const board_K = room.board_K ?? room.air_K;
  if (room.humidity === null)
    return {
      air_K: room.air_K,
      board_K,
      humidity: null,
      dewPoint_K: null,
      verdict: 'not known',
      reasons: [],
    };
  const gate = blushGate({ air_K: room.air_K, surface_K: board_K, relativeHumidity: room.humidity });
  return {
    air_K: room.air_K,
    board_K,
    humidity: room.humidity,
    dewPoint_K: dewPoint_K(room.air_K, room.humidity),
    verdict: gate.verdict,
    reasons: gate.reasons.map((reason) => reason.message),
  };
}

/** Said with every plan. */
export const GENERAL_CAUTIONS: readonly string[] = [
  'Follow the safety data sheets of the products you use, local codes, and licensed trades for plumbing and electrical work. They come before anything this plan says.',
  'Uncured resin and hardener sensitise the skin: nitrile gloves, changed at once when splashed; wash with soap, never with solvent.',
  'Sand only fully cured resin, with extraction and a P100 (FFP3) mask: dust of part-cured resin sensitises.',
  'No promise of food safety, fire safety or structural strength follows from this plan.',
];
