/** The line each section of the sheet is folded to: real content, no labels. Pure. */
import type { JobDocument, PieceDocument } from '#core/job/document.ts';
import type { CoatForecast, JobForecast, Missing } from '#core/job/forecast.ts';
import { type PiecePlace, piecesOf } from '#core/job/pieces.ts';
import type { Bounds } from '#core/piece/piece.ts';
import { together } from '#core/piece/together.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import { dayText } from '#web/units/dates.ts';
import { type Speak, signedDuration } from '#web/units/speak.ts';
import { runRows } from './run-rows.ts';

const filled = (...parts: readonly (string | null | undefined | false)[]) =>
  parts.filter((part): part is string => typeof part === 'string' && part.trim() !== '');

export function agreeSummary(document: JobDocument, speak: Speak): string {
  const { customer, agreed } = document;
  return filled(
    customer.name,
    agreed.stage,
    agreed.handOver !== '' && `promised ${dayText(agreed.handOver, speak.system)}`,
    agreed.price,
    firstWords(agreed.look, 8),
  ).join(', ');
}

export function agreeNeeds(document: JobDocument): string[] {
  return [
    document.customer.name === '' && 'a customer',
    document.agreed.handOver === '' && 'a promised day',
    document.agreed.look === '' && 'the look in words',
  ].filter((need): need is string => need !== false);
}

/** "48 in x 22 in, 7.2 sq ft, 3 finished edges (9.4 ft), 1 cut-out"; of several "counter 48 in x 22 in; shelf 36 in x 10 in". */
export function pieceSummary(document: JobDocument, forecast: JobForecast | null, speak: Speak): string {
  const pieces = piecesOf(document);
  if (pieces.length === 1) return onePieceSummary(pieces[0]!, forecast, speak);
  return pieces
    .map(({ id, name, document: piece }) => {
      const bounds = forecast?.pieces.find((each) => each.id === id)?.measures?.bounds;
      const size = bounds === undefined ? outlineTyped(piece) || 'no sizes yet' : sizeText(bounds, speak);
      return `${name} ${size}`;
    })
    .join('; ');
}

/** Of one piece of several, or the only one. */
export function onePieceSummary(place: PiecePlace, forecast: JobForecast | null, speak: Speak): string {
  const piece = place.document;
  const measures = forecast?.pieces.find(({ id }) => id === place.id)?.measures ?? null;
  if (measures === null) return outlineTyped(piece);
  const { bounds } = measures;
  const finished = measures.edges.filter((edge) => edge.outer && edge.kind === 'finished');
  const cutOuts = piece.cutOuts.length;
  return filled(
    sizeText(bounds, speak),
    speak.area(measures.topArea_m2),
    `${counted(finished.length, 'finished edge')} (${speak.run(measures.finishedEdgeLength_m)})`,
    cutOuts > 0 && counted(cutOuts, 'cut-out'),
  ).join(', ');
}

function sizeText(bounds: Bounds, speak: Speak): string {
  return `${speak.length(bounds.maxX_m - bounds.minX_m)} x ${speak.length(bounds.maxY_m - bounds.minY_m)}`;
}

/** "Together: tops 9.2 sq ft, solid bodies would be about 52 lb, the longest diagonal 53 in (counter)." */
export function togetherSummary(forecast: JobForecast | null, speak: Speak): string {
  const known = (forecast?.pieces ?? []).flatMap(({ name, measures }) =>
    measures === null ? [] : [{ name, measures }],
  );
  const [first, ...rest] = known;
  if (first === undefined) return 'Together: no sizes yet.';
  const all = together(known);
  const longest = rest.reduce(
    (most, each) => (each.measures.longestDiagonal_m > most.measures.longestDiagonal_m ? each : most),
    first,
  );
  const open = (forecast?.pieces.length ?? 0) - known.length;
  const without = open === 0 ? '' : `, without ${counted(open, 'piece')} that cannot be measured yet`;
  return `Together: tops ${speak.area(all.topArea_m2)}, solid bodies would be about ${speak.weight(all.bodyMass_kg)}, the longest diagonal ${speak.length(all.longestDiagonal_m)} (${longest.name})${without}.`;
}

/** What the pieces still need; of several, which one. */
export function pieceNeeds(pieces: readonly PiecePlace[], missing: readonly Missing[]): string[] {
  return pieces.flatMap(({ path, name }) =>
    missing
      .filter((each) => each.path === path || each.path.startsWith(`${path}.`))
      .map(({ needs }) => (pieces.length === 1 ? needs : `${name}: ${needs}`)),
  );
}

function outlineTyped({ outline }: PieceDocument): string {
  if (outline === null) return '';
  if ('diameter' in outline) return filled(outline.shape, outline.diameter).join(', ');
  if ('corners' in outline) return `${outline.corners.length} corners`;
  return filled(outline.length, outline.width).join(' x ');
}

export function coatsSummary(document: JobDocument, cardName: (id: string) => string): string {
  return document.coats
    .map((coat) => filled(coat.name || coat.kind, coat.film, cardName(coat.resin)).join(' '))
    .join('; ');
}

export function mixSummary(forecast: JobForecast | null, speak: Speak): string {
  return plans(forecast)
    .map(
      ({ name, plan }) =>
        `${name} ${speak.mass(plan.quantity.mass_kg)} in ${counted(plan.cups.length, 'cup')}`,
    )
    .join('; ');
}

export function forecastSummary(forecast: JobForecast | null): string {
  return plans(forecast)
    .map(({ name, plan }) => `${name} ${plan.verdict} (${signedDuration(plan.slack_s)})`)
    .join('; ');
}

export function stepsSummary(forecast: JobForecast | null, speak: Speak): string {
  const all = plans(forecast);
  if (all.length === 0) return '';
  return all
    .map(
      ({ name, plan }) =>
        `${name} ${counted(runRows(plan).length, 'step')} over ${speak.duration(busy_s(plan))}`,
    )
    .join('; ');
}

/** From the first step to the end of the last one somebody has a hand in. */
export function busy_s(plan: CoatPlan): number {
  return Math.max(0, ...plan.steps.filter((step) => step.kind !== 'hands off').map((step) => step.end_s));
}

export interface PlannedCoat {
  readonly id: string;
  readonly name: string;
  readonly plan: CoatPlan;
  readonly nextCoat: CoatForecast['nextCoat'];
}

export function plans(forecast: JobForecast | null): PlannedCoat[] {
  return (forecast?.coats ?? []).flatMap((coat) =>
    coat.plan === null ? [] : [{ id: coat.id, name: coat.name, plan: coat.plan, nextCoat: coat.nextCoat }],
  );
}

/** "counter and shelf" of a coat in a job of several pieces; '' where there is only one. */
export function coatedNames(forecast: JobForecast | null, coatId: string): string {
  const coat = forecast?.coats.find(({ id }) => id === coatId);
  if (forecast === null || coat === undefined || forecast.pieces.length < 2) return '';
  const names = forecast.pieces.filter(({ id }) => coat.pieces.includes(id)).map(({ name }) => name);
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

export function firstWords(text: string, most: number): string {
  const words = text.trim().split(/\s+/);
  return words.length <= most ? words.join(' ') : `${words.slice(0, most).join(' ')} …`;
}
