/** What is different now from when a pour was frozen, in words with both figures. */
import {
  formatArea,
  formatFilm,
  formatMass,
  formatPercent,
  formatTemperature,
} from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import type { CoatPlan } from '../plan.ts';
import type { FrozenPour, PourInputs } from './frozen-pour.ts';

export interface Change {
  readonly what: string;
  readonly before: string;
  readonly now: string;
}

/** Empty: nothing that the plan rests on has changed. */
export function changedSince(
  frozen: FrozenPour,
  now: { readonly inputs: PourInputs; readonly plan: CoatPlan; readonly modelVersion: string },
  system: System,
): readonly Change[] {
  const changes: Change[] = [];
  const told = (what: string, before: string, today: string) => {
    if (before !== today) changes.push({ what, before, now: today });
  };
  const [a, b] = [frozen.inputs, now.inputs];
  const degrees = (temperature_K: number) => formatTemperature(temperature_K, system);
  told('Air', degrees(a.air.temperature_K[0]!), degrees(b.air.temperature_K[0]!));
  told('Board', degrees(a.coat.board_K), degrees(b.coat.board_K));
  told('Resin', degrees(a.coat.resin.temperature_K), degrees(b.coat.resin.temperature_K));
  told('Resin card', a.coat.card.name, b.coat.card.name);
  if (a.coat.card.name === b.coat.card.name && !same(a.coat.card.model, b.coat.card.model))
    told('What is known of the resin', 'as then', 'taught since');
  told('Film', formatFilm(a.coat.film_m, system), formatFilm(b.coat.film_m, system));
  told('People', String(a.coat.crew), String(b.coat.crew));
  told('Edges', a.coat.wrapEdges ? 'wrapped' : 'dammed', b.coat.wrapEdges ? 'wrapped' : 'dammed');
  told('Colours', colours(a), colours(b));
  told('Top area and edges', areas(a, system), areas(b, system));
  if (!same(a.rates, b.rates)) told('How fast the shop works', 'as then', 'other rates now');
  told('Mixed in all', formatMass(frozen.plan.quantity.mass_kg), formatMass(now.plan.quantity.mass_kg));
  told('Cups', String(frozen.plan.cups.length), String(now.plan.cups.length));
  told('Version of the model', frozen.modelVersion, now.modelVersion);
  return changes;
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

const colours = ({ coat }: PourInputs) =>
  coat.colours
    .map(
      ({ name, share, load }) =>
        `${name} ${formatPercent(share)}, tint ${formatPercent(load, { decimals: 1 })}`,
    )
    .join('; ');

function areas({ measures }: PourInputs, system: System): string {
  const top = formatArea(measures.topArea_m2, system);
  return `${top}, ${measures.edges.filter(({ kind }) => kind === 'finished').length} wrapped`;
}
