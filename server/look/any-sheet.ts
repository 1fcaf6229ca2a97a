/** For tests: the sheet of a small worked look, and cups it is poured from. */
import type { LookColour } from '#core/look/look.ts';
import { LookDocument, type LookDocumentInput } from '#core/look/look-document.ts';
import { type LaidPiece, laidEdges, panelsOf } from '#core/look/panels.ts';
import { readLook } from '#core/look/read-look.ts';
import { VANITY } from '#core/look/render/any-look.ts';
import { linearOfHex } from '#core/look/srgb.ts';
import type { CupRecipe } from '#core/mix/coat.ts';
import { lookPours } from '#core/mix/look-pours.ts';
import { pouredShares } from '#core/mix/look-shares.ts';
import type { LookSheet } from './look-sheet.ts';

const COLOURS = [
  ['dark', 'slate', '#23262b', 'pigment paste, 3 %'],
  ['green', 'moss', '#2e5a4b', 'pigment paste, 2 %'],
  ['warm', 'bronze', '#b79a4a', 'mica powder, 4 %'],
] as const;

export const LOOK: LookDocumentInput = {
  version: 1,
  ground: 'dark',
  moves: [
    {
      kind: 'puddle',
      id: 'a',
      colour: 'green',
      volume_m3: 9e-5,
      path: [[0.2, 0.3]],
      name: 'under the window',
    },
    {
      kind: 'puddle',
      id: 'b',
      colour: 'warm',
      volume_m3: 6e-5,
      path: [
        [0.1, 0.06],
        [0.6, 0.05],
        [1.1, 0.08],
      ],
    },
    {
      kind: 'stroke',
      id: 'c',
      path: [
        [0.15, 0.1],
        [0.35, 0.45],
      ],
      width_m: 0.03,
      depth: 0.9,
    },
    {
      kind: 'comb',
      id: 'd',
      through: [0.9, 0.3],
      heading_rad: 1.2,
      pull_m: 0.05,
      width_m: 0.004,
      teeth: 3,
      pitch_m: 0.04,
    },
    { kind: 'swirl', id: 'e', centre: [1.0, 0.45], turn_rad: 2, reach_m: 0.05 },
    { kind: 'waver', id: 'f', amplitude_m: 0.006, wavelength_m: 0.12, seed: 4 },
    { kind: 'puddle', id: 'g', colour: 'green', volume_m3: 5e-5, path: [[0.9, 0.3]] },
    { kind: 'tilt', id: 'h', centre: [0.6, 0.3], heading_rad: 0.2, draw: 1.05 },
    { kind: 'fogged edge', id: 'i', colour: '#1c1410', reach_m: 0.05, strength: 0.5, edges: ['front'] },
    { kind: 'puddle', id: 'x', kept: false, colour: 'green', volume_m3: 5e-5, path: [[0.5, 0.5]] },
  ],
};

const cup = (number: number, colour: string, mass_kg: number): CupRecipe => ({
  number,
  colour,
  swatch: '#888888',
  partA_kg: mass_kg * 0.64,
  partB_kg: mass_kg * 0.32,
  tint_kg: mass_kg * 0.04,
  colourant: 'pigment paste',
  mass_kg,
  volume_m3: mass_kg / 1100,
  ratioError: 0,
  scaleError: 0,
});

export function anySheet(change: Partial<LookSheet> = {}, moves = LOOK.moves): LookSheet {
  const laid: LaidPiece = { name: 'Vanity top', piece: VANITY, at: [0, 0], turn_rad: 0, splashes: [] };
  const panels = panelsOf([laid], { film_m: 0.0013, faceFilm_m: 0.0005 });
  const colours: LookColour[] = COLOURS.map(([key, name, hex]) => ({
    key,
    name,
    light: linearOfHex(hex),
    flake:
      key === 'warm' ? { cover: 0.3, gleam: linearOfHex('#f0dfae'), spread_rad: 0.15, size_m: 4e-5 } : null,
  }));
  const document = LookDocument.parse({ ...LOOK, moves });
  const read = readLook(document, { colours, film_m: 0.0013, panels, edges: laidEdges([laid]) });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const look = read.value;
  const whole_m3 = look.area_m2 * look.film_m;
  const keys = COLOURS.map(([key]) => key);
  const shares = pouredShares(document, keys, whole_m3);
  const cups = [cup(1, 'slate', 0.7), cup(2, 'moss', 0.09), cup(3, 'moss', 0.1), cup(4, 'bronze', 0.08)];
  const labels = COLOURS.map(([key, label]) => ({ key, label }));
  return {
    title: 'Vanity for the hall',
    customer: 'Zoë Łaska',
    revision: { version: 3, hash: 'a1b2c3d4e5f6' },
    at: '2026-05-14T09:00:00.000Z',
    paper: 'Letter',
    system: 'us',
    coat: 'Colour coat',
    look,
    document,
    pieces: [laid],
    colours: COLOURS.map(([key, label, hex, colourant]) => ({
      ...{ key, label, colourant },
      light: linearOfHex(hex),
      share: shares.get(key)!,
    })),
    mark: '0f1e2d3c4b5a',
    cups,
    pours: lookPours({ look: document, colours: labels, cups, whole_m3 }),
    ...change,
  };
}
