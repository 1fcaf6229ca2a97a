/** What to mind of the colourants chosen: how much a mix takes, flame, dust. Pure. */
import type { ColourDocument } from '#core/job/document.ts';
import { TOTAL_COLOURANT_LIMIT } from '#core/mix/colourant-limits.ts';
import { readPercent } from '#core/quantity/read.ts';
import { trimmed } from '#core/quantity/rounding.ts';

type Chosen = Pick<ColourDocument, 'name' | 'colourant' | 'load'>;

/** Cautions for these colours, none where all is clear resin. */
export function lookCautions(colours: readonly Chosen[]): string[] {
  const cautions: string[] = [];
  const loads = colours.flatMap((colour, at) => {
    if (colour.colourant === 'none') return [];
    const read = readPercent(colour.load, { min: 0, max: 1 });
    return read.ok ? [{ name: colour.name || `colour ${at + 1}`, load: read.value }] : [];
  });
  const heaviest = loads.reduce<(typeof loads)[number] | null>(
    (most, one) => (most === null || one.load > most.load ? one : most),
    null,
  );
  if (heaviest !== null) {
    const over = heaviest.load > TOTAL_COLOURANT_LIMIT;
    cautions.push(
      `Everything added to a cup together: at most ${trimmed(TOTAL_COLOURANT_LIMIT * 100, 1)} % of its weight. Above that the ratio of A and B no longer holds and the coat may stay soft. ${
        over ? 'Too much' : 'Most'
      } here: ${heaviest.name}, ${trimmed(heaviest.load * 100, 1)} %. (Common practice, no source; the label stands above it.)`,
    );
  }
  const named = (...kinds: readonly ColourDocument['colourant'][]) =>
    colours
      .map((colour, at) => ({ ...colour, name: colour.name || `colour ${at + 1}` }))
      .filter(({ colourant }) => kinds.includes(colourant))
      .map(({ name }) => name)
      .join(', ');
  const inks = named('alcohol ink');
  if (inks !== '')
    cautions.push(
      `Alcohol ink burns (${inks}): no torch, no flame and no spark while it is wet or can be smelled; lid on the bottle, air moving away from the bench.`,
    );
  const dyes = named('liquid dye');
  if (dyes !== '')
    cautions.push(
      `Liquid dye may hold alcohol or another solvent (${dyes}): read its label, and keep the torch away while it can be smelled.`,
    );
  const powders = named('mica powder', 'dry pigment');
  if (powders !== '')
    cautions.push(
      `Powder makes dust (${powders}): weigh it with a particle mask on and the fans off, wet it into part A first, wipe up damp and never sweep or blow.`,
    );
  return cautions;
}
