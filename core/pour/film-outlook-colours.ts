/** Which colours of a coat make cells where one lies over the other, from the densities their tints give them. */
import { type CellsAnswer, cellsAnswer, mixtureDensity_kg_m3 } from '#core/film/two-layer.ts';
import type { Coat, Colour, ColourantKind } from '#core/mix/coat.ts';

/**
 * Density of a colourant as it goes into the cup, kg/m3, from memory: dry pigment that of titanium dioxide (4000 to 4200; iron
 * oxides 4500 to 5200, organic and carbon black 1500 to 1900), mica with its oxide coat 2900, pigment paste half pigment 1800, dyes and
 * inks about that of their carrier. A bottle's own figure may differ by half; which of two colours is the heavier mostly does not.
 */
export const COLOURANT_kg_m3: Readonly<Record<Exclude<ColourantKind, 'none'>, number>> = {
  'dry pigment': 4000,
  'mica powder': 2900,
  'pigment paste': 1800,
  'liquid dye': 1000,
  'alcohol ink': 1000,
};

export interface ColourDensity {
  readonly name: string;
  readonly swatch: string;
  readonly density_kg_m3: number;
}

export interface ColourPair {
  /** Poured first, and over it; the heavier is `top`, the order that makes cells. Equal densities: in the order of the coat. */
  readonly bottom: ColourDensity;
  readonly top: ColourDensity;
  readonly answer: CellsAnswer;
}

export interface ColoursOutlook {
  readonly densities: readonly ColourDensity[];
  /** Every pair, those of the largest shares first. */
  readonly pairs: readonly ColourPair[];
  /** Names from heavy to light: poured in this order no colour lies over a lighter one. */
  readonly crispOrder: readonly string[];
}

/** Density of a tinted mix, kg/m3: volumes add. @throws RangeError for a load below 0. */
export function tintedDensity_kg_m3(colour: Pick<Colour, 'colourant' | 'load'>, resin_kg_m3: number): number {
  if (colour.colourant === 'none') return resin_kg_m3;
  const share = colour.load / (1 + colour.load);
  return mixtureDensity_kg_m3(share, COLOURANT_kg_m3[colour.colourant], resin_kg_m3);
}

/**
 * Every pair of colours, the heavier on top, where both meet in the film with the thicknesses of their shares. Same viscosity for both.
 * @param theta_per_Pa flow budget from the pour to gel, above 0
 * @throws RangeError outside that.
 */
export function coloursOutlook(coat: Coat, theta_per_Pa: number): ColoursOutlook {
  const densities = coat.colours.map((colour) => ({
    name: colour.name,
    swatch: colour.swatch,
    density_kg_m3: tintedDensity_kg_m3(colour, coat.card.model.density_kg_m3),
    share: colour.share,
  }));
  const told = [...densities].sort((a, b) => b.share - a.share);
  const pairs = told.flatMap((one, i) =>
    told.slice(i + 1).map((other): ColourPair => {
      const [top, bottom] = other.density_kg_m3 > one.density_kg_m3 ? [other, one] : [one, other];
      const layer = (of: typeof one) => ({
        name: of.name,
        density_kg_m3: of.density_kg_m3,
        thickness_m: (coat.film_m * of.share) / (one.share + other.share),
      });
      return {
        bottom: plain(bottom),
        top: plain(top),
        answer: cellsAnswer({ bottom: layer(bottom), top: layer(top), theta_per_Pa }),
      };
    }),
  );
  const byWeight = [...densities].sort((a, b) => b.density_kg_m3 - a.density_kg_m3);
  return { densities: densities.map(plain), pairs, crispOrder: byWeight.map(({ name }) => name) };
}

function plain({ name, swatch, density_kg_m3 }: ColourDensity): ColourDensity {
  return { name, swatch, density_kg_m3 };
}
