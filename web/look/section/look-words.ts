/** Moves and looks in the words of the shop. Pure. */
import type { LookDocument, LookMoveDocument } from '#core/look/look-document.ts';
import type { Speak } from '#web/units/speak.ts';

export const MOVE_NAMES: Readonly<Record<LookMoveDocument['kind'], string>> = {
  puddle: 'Pour',
  stroke: 'Pull',
  comb: 'Comb',
  swirl: 'Swirl',
  waver: 'Natural edges',
  tilt: 'Tilt',
  'fogged edge': 'Fogged edge',
  'clear buffer': 'Clear buffer',
};

/** "12 in from the left, 5 in from the front". */
export function placeWords([x, y]: readonly [number, number], speak: Speak): string {
  return `${speak.length(x)} from the left, ${speak.length(y)} from the front`;
}

const degrees = (rad: number) => `${Math.round((rad * 180) / Math.PI)}°`;

/** "Pour 3.2 fl oz of copper, 12 in from the left, 5 in from the front". */
export function moveWords(move: LookMoveDocument, nameOf: (key: string) => string, speak: Speak): string {
  switch (move.kind) {
    case 'puddle': {
      const shape = move.path.length > 1 ? ' as a ribbon' : '';
      return `Pour ${speak.volume(move.volume_m3)} of ${nameOf(move.colour)}${shape}, ${placeWords(move.path[0]!, speak)}`;
    }
    case 'stroke':
      return `Pull a tool of ${speak.length(move.width_m)} from ${placeWords(move.path[0]!, speak)}, to ${placeWords(move.path.at(-1)!, speak)}, depth ${speak.percent(move.depth)}`;
    case 'comb':
      return move.teeth === 1
        ? `Draw a stick through, ${placeWords(move.through, speak)}`
        : `Comb of ${move.teeth} teeth through, ${placeWords(move.through, speak)}`;
    case 'swirl':
      return `Swirl ${degrees(move.turn_rad)}, ${placeWords(move.centre, speak)}, reach ${speak.length(move.reach_m)}`;
    case 'waver':
      return `Natural edges: wander ${speak.length(move.amplitude_m)} over ${speak.length(move.wavelength_m)}`;
    case 'tilt':
      return `Tilt toward ${degrees(move.heading_rad)}, drawn out ${Math.round(move.draw * 100)} %`;
    case 'fogged edge':
      return `Fog ${move.edges.length === 0 ? 'every finished edge' : move.edges.join(', ')}, ${speak.length(move.reach_m)} in`;
    case 'clear buffer':
      return `Clear buffer of ${speak.thickness(move.film_m)}`;
  }
}

/** "Colour coat: 24 puddles, 12 other moves, seed 7, approved". */
export function lookWords(look: LookDocument, approved: 'no' | 'as it is' | 'changed since'): string {
  const puddles = look.moves.filter((move) => move.kind === 'puddle' && move.kept).length;
  const others = look.moves.filter((move) => move.kind !== 'puddle' && move.kept).length;
  const state = {
    no: 'not approved yet',
    'as it is': 'approved',
    'changed since': 'changed since it was approved',
  };
  return `${puddles} ${puddles === 1 ? 'puddle' : 'puddles'}, ${others} ${others === 1 ? 'other move' : 'other moves'}, ${state[approved]}`;
}
