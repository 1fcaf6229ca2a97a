/** The formula and the numbers of a reason as people read them: signs for letters, units of the shop. Pure. */
import type { Spread } from '#core/film/ranges.ts';
import {
  formatDensity,
  formatRange,
  formatTemperatureDifference,
  formatViscosity,
} from '#core/quantity/format.ts';
import { fixed, trimmed } from '#core/quantity/rounding.ts';
import { fromSI, type System } from '#core/quantity/units.ts';
import { minutesText, minutesWithUnit } from '#web/charts/time-text.ts';
import { speaker } from '#web/units/speak.ts';

const signs: readonly (readonly [RegExp, string])[] = [
  [/\bdrho\b/g, 'Δρ'],
  [/\brho\b/g, 'ρ'],
  [/\bgamma\b/g, 'γ'],
  [/\bTheta\b/g, 'Θ'],
  [/\btheta\b/g, 'θ'],
  [/\bpsi\b/g, 'ψ'],
  [/\bpi\b/g, 'π'],
  [/\bsqrt\s?/g, '√'],
  [/\blc\b/g, 'ℓ'],
  [/\bdT\b/g, 'ΔT'],
  [/\^2\b/g, '²'],
  [/\^3\b/g, '³'],
  [/\^\(1\/8\)/g, '^⅛'],
  [/ - /g, ' − '],
];

/** "√(z/(ρ g Θ left))" for "sqrt(z/(rho g Theta left))". */
export function formulaText(formula: string): string {
  return signs.reduce((text, [from, to]) => text.replace(from, to), formula);
}

/** What the signs of a formula mean, those it holds. */
export function signsText(formula: string): string {
  const text = formulaText(formula);
  const known: readonly (readonly [string, string])[] = [
    ['ρ', 'density'],
    ['g', 'gravity'],
    ['γ', 'surface tension'],
    ['Θ', 'flow budget: time over viscosity, added up to gel'],
    ['ℓ', 'capillary length, about 1.8 mm'],
    ['θ', 'contact angle'],
    ['k', '2π over the pitch'],
  ];
  return known
    .filter(([sign]) => new RegExp(`(^|[^\\p{L}])${sign}([^\\p{L}]|$)`, 'u').test(text))
    .map(([sign, means]) => `${sign} ${means}`)
    .join('; ');
}

/** A film, a bubble, a radius: thousandths of a millimetre under a tenth; in US units mil, and inches from a tenth on. */
export function fineText(length_m: number, system: System): string {
  if (system === 'us' && length_m >= 0.0025) return speaker(system).length(length_m);
  if (length_m >= 1e-4 || length_m === 0) return speaker(system).thickness(length_m);
  return system === 'us' ? `${fixed(fromSI(length_m, 'mil'), 1)} mil` : `${trimmed(length_m * 1e6, 0)} µm`;
}

/** Volume on a metre or foot of edge. */
export function perRunText(area_m2: number, system: System): string {
  return system === 'us'
    ? `${fixed(fromSI(area_m2 * 0.3048, 'fl oz'), 2)} fl oz a foot`
    : `${fixed(area_m2 * 1e6, 1)} mL a metre`;
}

const spoken: Readonly<Record<string, string>> = {
  thetaLeft: 'flow budget left',
  theta: 'flow budget',
  thetaTotal: 'flow budget from pour to gel',
  thetaLeftAtFirst: 'flow budget left at the first scrape',
  thetaLeftAtLast: 'flow budget left at the last scrape',
  putOn: 'put on the face',
  left: 'stays on the face',
  arris: 'stays on the arris',
  rounded: 'stays on a 3 mm round-over',
  barrier: 'held back by the arris',
  radius: 'radius of the arris',
  comesDown: 'comes down the edge',
  holds: 'holds at most',
  runOff: 'runs off the top',
  shed: 'sheds from the face',
  floor: 'ends on the floor',
  drho: 'difference of density',
  c: 'growth figure c',
  filmToClose: 'film that closes',
  visible: 'seen from',
  gelConversion: 'gel at a conversion of',
  slope: 'fall over run',
  surfaceAfter10s: 'surface warmer after 10 s by',
  filmBaseAfter60s: 'base of the film warmer after 60 s by',
  coldFlowWorth: 'worth of cold flow',
};
const long = new Set(['faceHeight', 'longestWave', 'length']);

/** "thetaLeft_per_Pa" and 240 as a name and a figure with its unit. */
export function numberText(key: string, value: number, system: System): readonly [string, string] {
  const speak = speaker(system);
  const cut = key.indexOf('_');
  const stem = cut < 0 ? key : key.slice(0, cut);
  const name = spoken[stem] ?? stem.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return [name, figure()];

  function figure(): string {
    switch (cut < 0 ? '' : key.slice(cut + 1)) {
      case 'm':
        return long.has(stem) ? speak.length(value) : fineText(value, system);
      case 'm2':
        return stem === 'area' ? speak.area(value) : perRunText(value, system);
      case 'm3':
        return speak.volume(value);
      case 's':
        return minutesWithUnit(value);
      case 'per_Pa':
        return `${plainNumber(value)} per Pa`;
      case 'Pa':
        return `${plainNumber(value)} Pa`;
      case 'Pa_s':
        return formatViscosity(value, system);
      case 'deg':
        return `${plainNumber(value)}°`;
      case 'K':
        return stem.endsWith('Peak')
          ? speak.temperature(value)
          : formatTemperatureDifference(value, system, { decimals: 1 });
      case 'kg_m3':
        return stem === 'drho' ? `${plainNumber(value)} kg/m³` : formatDensity(value, system);
      case 'J_m2':
        return `${plainNumber(value / 1000)} kJ/m²`;
      default:
        return plainNumber(value);
    }
  }
}

/** Three significant digits, without a power of ten. */
export function plainNumber(value: number): string {
  if (value === 0) return '0';
  const decimals = Math.max(0, Math.min(6, 2 - Math.floor(Math.log10(Math.abs(value)))));
  return trimmed(value, decimals);
}

export type RangeOf = 'film' | 'length' | 'e-folds' | 'time';

/** The range of a reason by the kind of its value. */
export function rangeText({ low, value, high }: Spread, of: RangeOf, system: System): string {
  if (of === 'e-folds') return `${plainNumber(low)} to ${plainNumber(high)} growths by e (4 show)`;
  if (of === 'time') return `${minutesText(low)} to ${minutesWithUnit(high)}`;
  if (of === 'length' && value >= 0.01) return formatRange(low, value, high, 'length', system);
  return low === high ? fineText(value, system) : `${fineText(low, system)} to ${fineText(high, system)}`;
}
