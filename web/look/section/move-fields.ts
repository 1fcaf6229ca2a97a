/** What of a move can be typed: places, volumes and sizes with their units, and what each may be. Pure. */

import { LOOK_LIMITS, type LookMoveDocument } from '#core/look/look-document.ts';
import { formatFilm, formatLength, formatVolume } from '#core/quantity/format.ts';
import { bad, good, type Result } from '#core/quantity/problem.ts';
import { readFilm_m, readLength_m, readPercent, readVolume_m3 } from '#core/quantity/read.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import type { System } from '#core/quantity/units.ts';

type Kind = 'length' | 'volume' | 'film' | 'percent' | 'degrees' | 'count';

export interface MoveField {
  readonly key: string;
  readonly label: string;
  readonly kind: Kind;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly put: (value: number) => LookMoveDocument;
}

const TURN = Math.PI / 180;

export function fieldsOf(move: LookMoveDocument): readonly MoveField[] {
  const far = LOOK_LIMITS.place_m;
  const spot = (
    key: string,
    label: string,
    [x, y]: readonly [number, number],
    put: (place: [number, number]) => LookMoveDocument,
  ): MoveField[] => [
    {
      key: `${key}-x`,
      label: `${label}from the left`,
      kind: 'length',
      value: x,
      least: -far,
      most: far,
      put: (v) => put([v, y]),
    },
    {
      key: `${key}-y`,
      label: `${label}from the front`,
      kind: 'length',
      value: y,
      least: -far,
      most: far,
      put: (v) => put([x, v]),
    },
  ];
  const along = (of: Extract<LookMoveDocument, { readonly path: unknown }>): MoveField[] =>
    of.path.flatMap((place, i) =>
      spot(`place-${i}`, of.path.length === 1 ? '' : `Place ${i + 1}, `, place, (to) => ({
        ...of,
        path: of.path.map((p, at) => (at === i ? to : p)),
      })),
    );
  const field = (
    key: string,
    label: string,
    kind: Kind,
    value: number,
    [least, most]: readonly [number, number],
    put: (value: number) => LookMoveDocument,
  ): MoveField => ({ key, label, kind, value, least, most, put });
  switch (move.kind) {
    case 'puddle':
      return [
        field(
          'volume',
          'Volume in the film',
          'volume',
          move.volume_m3,
          [1e-9, LOOK_LIMITS.volume_m3],
          (volume_m3) => ({ ...move, volume_m3 }),
        ),
        ...along(move),
      ];
    case 'stroke':
      return [
        field('width', 'Width of the tool', 'length', move.width_m, [0.001, 0.5], (width_m) => ({
          ...move,
          width_m,
        })),
        field('depth', 'Depth of drag', 'percent', move.depth, [0, 1], (depth) => ({ ...move, depth })),
        ...along(move),
      ];
    case 'comb':
      return [
        field('teeth', 'Teeth (1: a stick)', 'count', move.teeth, [1, 100], (teeth) => ({ ...move, teeth })),
        field('pitch', 'From tooth to tooth', 'length', move.pitch_m, [0.002, 1], (pitch_m) => ({
          ...move,
          pitch_m,
        })),
        field('width', 'Width of a tooth', 'length', move.width_m, [0, 0.1], (width_m) => ({
          ...move,
          width_m,
        })),
        field('pull', 'How far it pulls', 'length', move.pull_m, [-2, 2], (pull_m) => ({ ...move, pull_m })),
        field(
          'heading',
          'Heading, from the right',
          'degrees',
          move.heading_rad,
          [-LOOK_LIMITS.turn_rad, LOOK_LIMITS.turn_rad],
          (heading_rad) => ({ ...move, heading_rad }),
        ),
        ...spot('through', 'Through, ', move.through, (through) => ({ ...move, through })),
      ];
    case 'swirl':
      return [
        field(
          'turn',
          'Turn, left round',
          'degrees',
          move.turn_rad,
          [-LOOK_LIMITS.turn_rad, LOOK_LIMITS.turn_rad],
          (turn_rad) => ({ ...move, turn_rad }),
        ),
        field('reach', 'Reach', 'length', move.reach_m, [0.001, LOOK_LIMITS.size_m], (reach_m) => ({
          ...move,
          reach_m,
        })),
        ...spot('centre', 'Middle ', move.centre, (centre) => ({ ...move, centre })),
      ];
    case 'waver':
      return [
        field('amplitude', 'How far it wanders', 'length', move.amplitude_m, [0, 0.5], (amplitude_m) => ({
          ...move,
          amplitude_m,
        })),
        field('wavelength', 'From wave to wave', 'length', move.wavelength_m, [0.005, 5], (wavelength_m) => ({
          ...move,
          wavelength_m,
        })),
        field('seed', 'Seed', 'count', move.seed, [0, 4_294_967_295], (seed) => ({ ...move, seed })),
      ];
    case 'tilt':
      return [
        field('draw', 'Drawn out to', 'percent', move.draw, [0.2, 5], (draw) => ({ ...move, draw })),
        field(
          'heading',
          'Heading, from the right',
          'degrees',
          move.heading_rad,
          [-LOOK_LIMITS.turn_rad, LOOK_LIMITS.turn_rad],
          (heading_rad) => ({ ...move, heading_rad }),
        ),
        ...spot('centre', 'Middle ', move.centre, (centre) => ({ ...move, centre })),
      ];
    case 'fogged edge':
      return [
        field('reach', 'From the edge inwards', 'length', move.reach_m, [0.001, 1], (reach_m) => ({
          ...move,
          reach_m,
        })),
        field('strength', 'Covered at the edge', 'percent', move.strength, [0, 1], (strength) => ({
          ...move,
          strength,
        })),
      ];
    case 'clear buffer':
      return [
        field('film', 'Clear film', 'film', move.film_m, [0.00005, 0.003], (film_m) => ({ ...move, film_m })),
      ];
  }
}

/** The value as a person would type it. */
export function fieldText({ kind, value }: Pick<MoveField, 'kind' | 'value'>, system: System): string {
  switch (kind) {
    case 'length':
      return system === 'metric' ? `${trimmed(value * 1000, 1)} mm` : formatLength(value, 'us');
    case 'volume':
      return formatVolume(value, system);
    case 'film':
      return formatFilm(value, system, { as: 'thickness' });
    case 'percent':
      return `${trimmed(value * 100, 1)} %`;
    case 'degrees':
      return `${trimmed(value / TURN, 1)}°`;
    case 'count':
      return String(value);
  }
}

/** What is typed in a field of a move, in SI. */
export function readField(
  text: string,
  field: Omit<MoveField, 'put' | 'value'>,
  system: System,
): Result<number> {
  const { key: path, label: what, least: min, most: max, kind } = field;
  const ask = { path, what, min, max, system };
  switch (kind) {
    case 'length':
      return readLength_m(text, ask);
    case 'volume':
      return readVolume_m3(text, ask);
    case 'film':
      return readFilm_m(text, { ...ask, density_kg_m3: 1100 });
    case 'percent':
      return readPercent(text, { path, what, min, max });
    case 'degrees':
    case 'count': {
      const unit = kind === 'degrees' ? TURN : 1;
      const words = text.trim().replace(/\s*(?:°|deg(?:rees)?)$/i, '');
      const value = /^[+-]?\d+(?:\.\d+)?$/.test(words) ? Number(words) * unit : Number.NaN;
      const whole = kind === 'degrees' || Number.isInteger(value);
      if (whole && value >= min && value <= max) return good(value);
      return bad({
        path,
        code: 'look.field',
        message: `${what}: this cannot be used.`,
        read: text.trim() || 'nothing',
        allowed:
          kind === 'count'
            ? `a whole number from ${min} to ${max}`
            : `degrees from ${trimmed(min / unit, 0)} to ${trimmed(max / unit, 0)}`,
      });
    }
  }
}
