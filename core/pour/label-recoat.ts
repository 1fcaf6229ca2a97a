/**
 * A label's recoat time, carried to this job. Such a figure is a dry-hard one, not gel: it is turned into the conversion
 * that the label's film has then, and that conversion is looked up in this job's film (equivalent age; exact before the
 * reaction freezes when all of it has one activation energy).
 */
import { formatDuration, formatTemperature } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { BOARDS } from '#core/resin/boards.ts';
import { cureFilm } from '#core/resin/film.ts';
import { firstTime, readState } from '#core/resin/history.ts';
import { type CureHistory, REFERENCE_K, type ResinCard } from '#core/resin/model.ts';

export interface LabelRecoat {
  readonly text: string;
  readonly from_s: number;
  readonly to_s: number;
  readonly temperature_K: number;
  /** Whether the label says it; if not it is taken to be 24 C. */
  readonly temperatureSaid: boolean;
}

/** The label's figure in the shop's units: "24 h at 75 °F". */
export function sayLabelRecoat(label: LabelRecoat, system: System): string {
  const { from_s, to_s, temperature_K } = label;
  const time =
    from_s === to_s ? formatDuration(from_s) : `${formatDuration(from_s)} to ${formatDuration(to_s)}`;
  return label.temperatureSaid ? `${time} at ${formatTemperature(temperature_K, system)}` : time;
}

/** A label without a film means about this one, on 18 mm MDF. Common practice, no source. */
export const LABEL_FILM_m = 0.0025;

const seconds: Readonly<Record<string, number>> = {
  min: 60,
  h: 3600,
  hr: 3600,
  hour: 3600,
  d: 86_400,
  day: 86_400,
};
const time = /(\d+(?:\.\d+)?)(?:\s*(?:to|-|–)\s*(\d+(?:\.\d+)?))?\s*(min|hour|hr|h|day|d)s?\b/i;
const warmth = /(-?\d+(?:\.\d+)?)\s*°?\s*([CF])\b/;

/** Reads "4 to 6 h at 24 C"; the temperature is 24 C when none is printed. null when there is no figure to read. */
export function labelRecoat(card: ResinCard): LabelRecoat | null {
  const figure = card.label.find((each) => each.kind === 'recoat opens');
  const found = figure === undefined ? null : time.exec(figure.text);
  if (figure === undefined || found === null) return null;
  const unit = seconds[found[3]!.toLowerCase()]!;
  const from_s = Number(found[1]) * unit;
  const to_s = found[2] === undefined ? from_s : Number(found[2]) * unit;
  if (!(from_s > 0 && to_s >= from_s && to_s <= 30 * 86_400)) return null;
  const degrees = warmth.exec(figure.text);
  const value = Number(degrees?.[1]);
  const temperature_K =
    degrees === null ? REFERENCE_K : degrees[2] === 'F' ? ((value - 32) * 5) / 9 + 273.15 : value + 273.15;
  if (!(temperature_K > 263.15 && temperature_K < 333.15)) return null;
  return { text: figure.text, from_s, to_s, temperature_K, temperatureSaid: degrees !== null };
}

/** When this film is as far as the label's film is at the label's times, s on the film's clock; null: not within its span. */
export function labelRecoatHere(
  card: ResinCard,
  label: LabelRecoat,
  film: CureHistory,
): { readonly from_s: number; readonly to_s: number } | null {
  const { model } = card;
  const history = cureFilm({
    model,
    thickness_m: LABEL_FILM_m,
    board: BOARDS['mdf-18'],
    air: { time_s: [0], temperature_K: [label.temperature_K] },
    start: { conversion: 0, temperature_K: label.temperature_K },
    start_s: 0,
    duration_s: label.to_s,
  });
  const here = (at_s: number) =>
    firstTime(film, (conversion) => conversion, readState(history, at_s, model).conversion);
  const from_s = here(label.from_s);
  const to_s = here(label.to_s);
  return from_s === null || to_s === null ? null : { from_s, to_s };
}
