import {
  formatArea,
  formatDuration,
  formatFilm,
  formatLength,
  formatMass,
  formatPercent,
  formatVolume,
} from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import type { QuantityLine } from './coat.ts';

/** The working of a quantity line in one readable row: "area 7.2 sq ft, film 4.0 fl oz/sq ft". */
export function sayWorking(line: QuantityLine, system: System): string {
  return Object.entries(line.working)
    .map(([name, value]) => sayFigure(name, value, system))
    .join(', ');
}

/** One named SI figure; the unit is read from the end of its name, as everywhere in core. */
function sayFigure(name: string, value: number, system: System): string {
  const at = name.indexOf('_');
  const words = (at < 0 ? name : name.slice(0, at)).replace(
    /[A-Z]/g,
    (capital) => ` ${capital.toLowerCase()}`,
  );
  const unit = at < 0 ? '' : name.slice(at + 1);
  return `${words} ${figure(words, unit, value, system)}`;
}

function figure(words: string, unit: string, value: number, system: System): string {
  switch (unit) {
    case 'm':
      return /film|thickness|holds/.test(words) ? formatFilm(value, system) : formatLength(value, system);
    case 'm2':
      return formatArea(value, system);
    case 'm3':
      return formatVolume(value, system);
    case 'kg':
      return formatMass(value);
    case 's':
      return formatDuration(value);
    case 'per_Pa':
      return `${Math.round(value)} 1/Pa`;
    case 'share':
      return formatPercent(value);
    default:
      return String(Math.round(value * 1000) / 1000);
  }
}
