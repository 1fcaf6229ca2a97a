/**
 * The one call behind the job sheet, the command line and the printed order: a job document in, everything that follows
 * from it out. Pure and synchronous; the web runs it in a worker.
 */
import { measurePiece } from '#core/piece/measure.ts';
import type { Piece, PieceMeasures } from '#core/piece/piece.ts';
import { planCoat } from '#core/pour/plan-coat.ts';
import { SHOP_DEFAULTS, type ShopRates } from '#core/pour/shop-rates.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import type { ResinCard } from '#core/resin/model.ts';
import { blushGate } from '#core/room/blush-gate.ts';
import { dewPoint_K } from '#core/room/dew-point.ts';
import type { JobDocument } from './document.ts';
import type { CoatForecast, JobForecast, RoomForecast } from './forecast.ts';
import { MODEL_VERSION } from './model-version.ts';
import { readJob } from './read-job.ts';
import type { RoomRead } from './read-room.ts';

export interface ShopKnowledge {
  readonly rates?: Partial<ShopRates>;
  /** Cards of the shop; the generic ones are always there. */
  readonly cards?: readonly ResinCard[];
}

export function shopCards(shop: ShopKnowledge): readonly ResinCard[] {
  return [...GENERIC_CARDS, ...(shop.cards ?? [])];
}

export function computeJob(document: JobDocument, shop: ShopKnowledge = {}): JobForecast {
  const cards = shopCards(shop);
  const rates: ShopRates = { ...SHOP_DEFAULTS, ...shop.rates };
  const read = readJob(document, cards);
  const problems: Problem[] = [...read.problems];
  const warnings: Problem[] = [...read.warnings];
  let measures: PieceMeasures | null = null;
  let piece: Piece | null = read.piece.piece;
  if (piece !== null) {
    const measured = measurePiece(piece);
    if (measured.ok) {
      measures = measured.value;
      warnings.push(...measured.warnings.map(inPiece));
    } else {
      problems.push(...measured.problems.map(inPiece));
      piece = null;
    }
  }
  const coats = read.coats.map(({ id, name, coat }): CoatForecast => {
    if (coat === null || measures === null || read.room.air === null) return { id, name, plan: null };
    const slower = cards.filter((card) => card.model.kRef_per_s < coat.card.model.kRef_per_s);
    const plan = planCoat({
      coat,
      measures,
      board: read.board,
      air: read.room.air,
      rates,
      slowerCards: slower,
    });
    return { id, name, plan };
  });
  return {
    modelVersion: MODEL_VERSION,
    problems,
    warnings,
    missing: read.missing,
    piece,
    measures,
    room: judgeRoom(read.room),
    coats,
    cautions: GENERAL_CAUTIONS,
  };
}

function inPiece(problem: Problem): Problem {
  return { ...problem, path: problem.path === '' ? 'piece' : `piece.${problem.path}` };
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
