import { formatDuration, formatMass, formatRange, formatTemperature } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { COORDINATES, type CoordinateName, indexOf } from './coordinates.ts';
import { type Figure, isCupFigure } from './label.ts';
import { sayFigure } from './label-terms.ts';
import { GAS_CONSTANT_J_molK, REFERENCE_K, type ResinCard } from './model.ts';
import { sayObservation } from './observation-terms.ts';
import { type Outlook, outlookOf } from './outlook.ts';

/** What a card rests on, in sentences for the maker. */
export interface Knowledge {
  /** From the label. */
  readonly known: readonly string[];
  /** From the shop's own observations. */
  readonly learned: readonly string[];
  /** From what such resins usually are, with the figures taken. */
  readonly assumed: readonly string[];
  /** Figures that do not fit together, and figures that tell nothing. */
  readonly doubtful: readonly string[];
  /** What follows for the shop. */
  readonly follows: readonly string[];
}

/** A coordinate counts as assumed while the fit leaves it at least this share of its prior width. */
const STILL_PRIOR = 0.9;

/**
 * Plain-language account of a card: what the label says and leaves unsaid, what the shop learned, what is assumed with its
 * figures, what is doubtful, and what follows. Pass the outlook if it is computed already (about 0.15 s).
 */
export function whatIsKnown(
  card: ResinCard,
  system: System = 'us',
  outlook: Outlook = outlookOf(card),
): Knowledge {
  const account = card.account;
  const told = (said: string) => account?.figures.find((each) => each.said === said);
  const known = (card.figures ?? []).map((figure) => {
    const one = told(sayFigure(figure));
    const most = one === undefined || one.taught === null ? '' : ` It says most about ${one.taught}.`;
    return `The label says ${sayFigure(figure)}${measuredOn(figure, system)}.${unsaid(figure, system)}${most}`;
  });
  const observations = card.observations ?? [];
  const learned = observations
    .filter((seen) => !seen.withdrawn)
    .map((seen) => {
      const one = told(sayObservation(seen));
      const when = seen.date.trim() === '' ? 'The shop saw' : `On ${seen.date.trim()} the shop saw`;
      const most =
        one === undefined || one.taught === null
          ? ' It agrees with what was known and narrows nothing.'
          : ` It says most about ${one.taught}: ${percent(1 - one.narrowedTo)} narrower.`;
      return `${when} ${sayObservation(seen)} at ${formatTemperature(seen.air_K, system)}.${most}`;
    });
  const withdrawn = observations.filter((seen) => seen.withdrawn).length;
  if (withdrawn > 0) learned.push(`Withdrawn and not used: ${withdrawn}.`);
  return {
    known,
    learned,
    assumed: assumptions(card),
    doubtful: [
      ...(account?.tensions.map((tension) => tension.words) ?? []),
      ...(account?.plateau.map(
        (said) =>
          `${said}: by then the reaction has long stopped for cold, so any later time would fit as well. It is not used.`,
      ) ?? []),
      ...(account?.figures
        .filter((each) => each.taught === null && each.source === 'label')
        .map((each) => `${each.said}: agrees with the rest and tells nothing new.`) ?? []),
    ],
    follows: consequences(outlook, system),
  };
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

function measuredOn(figure: Figure, system: System): string {
  const parts = [
    figure.temperature_K === undefined ? '' : ` at ${formatTemperature(figure.temperature_K, system)}`,
    figure.film_m === undefined ? '' : ` in a film of ${Number((1000 * figure.film_m).toFixed(2))} mm`,
    figure.mass_kg === undefined ? '' : ` in a cup of ${formatMass(figure.mass_kg)}`,
  ];
  return parts.join('');
}

function unsaid(figure: Figure, system: System): string {
  const taken: string[] = [];
  const timed = figure.kind !== 'largest film';
  if (timed && figure.temperature_K === undefined)
    taken.push(`${formatTemperature(REFERENCE_K, system)}, 2 K either way`);
  if (isCupFigure(figure)) {
    if (figure.mass_kg === undefined) taken.push('100 to 150 g');
    if ((figure.end ?? 'unknown') === 'unknown') taken.push('an end between 50 °C and gel');
  } else if (figure.film_m === undefined && timed && figure.kind !== 'viscosity') {
    taken.push('a film of 2.5 mm on 18 mm MDF');
  }
  return taken.length === 0 ? '' : ` Not said, and taken as: ${taken.join('; ')}.`;
}

function assumptions(card: ResinCard): string[] {
  const { model, posterior } = card;
  const sd = (name: CoordinateName) => {
    const row = posterior?.cholesky[indexOf(name)];
    return row === undefined ? COORDINATES[indexOf(name)]!.sd : Math.hypot(...row);
  };
  const open = (name: CoordinateName) => sd(name) >= STILL_PRIOR * COORDINATES[indexOf(name)]!.sd;
  const energy = model.activation_J_mol;
  const doubling = (activation: number) => (REFERENCE_K ** 2 * GAS_CONSTANT_J_molK * Math.LN2) / activation;
  const spread = 1000 * sd('activation_kJ_mol');
  const said: string[] = [];
  if (open('activation_kJ_mol')) {
    said.push(
      `Warmth: twice as fast in ${doubling(energy + spread).toFixed(0)} to ${doubling(energy - spread).toFixed(0)} K (${Math.round(energy / 1000)} ± ${Math.round(spread / 1000)} kJ/mol, as published for such resins). Times at two temperatures would tell.`,
    );
  }
  if (open('heatLn')) {
    said.push(
      `Heat: ${Math.round(model.heat_J_kg / 1000)} J/g, ${percent(sd('heatLn'))} either way, from the mix ratio.`,
    );
  }
  if (open('gelConversion')) {
    said.push(
      `Gel when ${percent(model.gelConversion)} has reacted, 2 points either way (Stockmayer, with some diluent).`,
    );
  }
  if (open('rhoLn')) {
    said.push(
      'How much the reaction speeds itself up is open to a factor of two; a cup with a thermometer in it would tell.',
    );
  }
  if (open('tgFull_K')) {
    said.push(
      `Final glass transition ${Math.round(model.tgFull_K - 273.15)} °C, 6 K either way: usual for diluted coating resins.`,
    );
  }
  if (open('viscosityLn')) said.push('Viscosity when fresh: 0.7 to 1.5 Pa s, as the label says none.');
  const cups =
    (card.figures ?? []).some(isCupFigure) ||
    (card.observations ?? []).some((seen) => !seen.withdrawn && 'mass_kg' in seen);
  if (!cups) {
    said.push(
      'No figure for a cup: how soon one gets hot follows from the film alone. A cup test of 100 g with a thermometer narrows it most.',
    );
  }
  return said;
}

function consequences(outlook: Outlook, system: System): string[] {
  const line = (what: string, range: Outlook['gel']): string[] => {
    if (range === null) return [];
    const text =
      range.reached < 0.95
        ? `${formatDuration(range.low_s)} or later`
        : formatRange(range.low_s, range.mid_s, range.high_s, 'duration', system);
    return [`${what}: ${text}.`];
  };
  return [
    ...line('Working time of a 2.5 mm film at 24 °C', outlook.workingTime),
    ...line('Gel of that film', outlook.gel),
    ...line('Dry hard', outlook.dryHard),
    ...line('A full cup of 1 kg is at its hottest after', outlook.flash),
  ];
}
