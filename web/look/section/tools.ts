/** What is held in the hand before the first move: shop defaults, to be changed before use. Common practice, no source. Pure. */
import type { LookMoveDocument } from '#core/look/look-document.ts';
import type { Place } from '#core/look/move.ts';

export type Tool = LookMoveDocument['kind'] | 'look' | 'lock';

export const TOOL_NAMES: readonly { readonly tool: Tool; readonly name: string; readonly how: string }[] = [
  { tool: 'look', name: 'Look', how: 'Tap a puddle to find it in the list.' },
  { tool: 'puddle', name: 'Pour', how: 'Tap where the cup is emptied; drag to pour a ribbon.' },
  { tool: 'stroke', name: 'Pull', how: 'Drag from where the tool is set down to where it is lifted.' },
  { tool: 'comb', name: 'Comb', how: 'Drag the way the teeth are drawn.' },
  { tool: 'swirl', name: 'Swirl', how: 'Tap the middle; drag outwards for the reach.' },
  { tool: 'tilt', name: 'Tilt', how: 'Drag toward the side the film should run to.' },
  { tool: 'waver', name: 'Natural edges', how: 'The film moves a little everywhere: press the button.' },
  { tool: 'fogged edge', name: 'Fogged edge', how: 'Sprayed along the edges ticked: press the button.' },
  { tool: 'clear buffer', name: 'Clear buffer', how: 'Clear resin over everything: press the button.' },
  {
    tool: 'lock',
    name: 'Lock an area',
    how: 'Drag round the part that stays when the look is composed anew.',
  },
];

export const firstTools = (
  colour: string,
  whole_m3: number,
  middle: Place,
): Readonly<Record<LookMoveDocument['kind'], LookMoveDocument>> => {
  const at: [number, number] = [middle[0], middle[1]];
  const step = { id: 'tool', kept: true, name: '' };
  return {
    puddle: { kind: 'puddle', ...step, colour, volume_m3: Math.min(0.05, 0.02 * whole_m3), path: [at] },
    stroke: { kind: 'stroke', ...step, path: [at, [at[0] + 0.1, at[1]]], width_m: 0.03, depth: 0.8 },
    comb: {
      kind: 'comb',
      ...step,
      through: at,
      heading_rad: 0,
      pull_m: 0.05,
      width_m: 0.005,
      teeth: 5,
      pitch_m: 0.04,
    },
    swirl: { kind: 'swirl', ...step, centre: at, turn_rad: Math.PI, reach_m: 0.05 },
    waver: { kind: 'waver', ...step, amplitude_m: 0.005, wavelength_m: 0.12, seed: 1 },
    tilt: { kind: 'tilt', ...step, centre: at, heading_rad: 0, draw: 1.15 },
    'fogged edge': {
      kind: 'fogged edge',
      ...step,
      colour: '#2b2622',
      edges: [],
      reach_m: 0.06,
      strength: 0.6,
    },
    'clear buffer': { kind: 'clear buffer', ...step, film_m: 0.0003 },
  };
};
