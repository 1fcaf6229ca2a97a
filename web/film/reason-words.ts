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
import { minutesRange, minutesWithUnit } from '#web/charts/time-text.ts';
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
  [/ \* /g, ' × '],
];

/** "√(z/(ρ g Θ left))" for "sqrt(z/(rho g Theta left))". */
export function formulaText(formula: string): string {
  return signs.reduce((text, [from, to]) => text.replace(from, to), formula);
}

/** What the signs of a formula mean, those it holds. */
export function signsText(formula: string): string {
  const text = formulaText(formula);
  const word = (sign: string) => new RegExp(`(^|[^\\p{L}])${sign}([^\\p{L}]|$)`, 'u');
  const known: readonly (readonly [RegExp, string])[] = [
    [/\ba gel\b/, 'a is the share of the reaction done'],
    [/\bR ×/, 'R is how many times thicker'],
    [/ΔT/, 'ΔT how much warmer'],
    [word('ρ'), 'ρ density'],
    [word('g'), 'g gravity'],
    [word('γ'), 'γ surface tension'],
    [word('Θ'), 'Θ flow budget: time over viscosity, added up to gel'],
    [word('ℓ'), 'ℓ capillary length, about 1.8 mm'],
    [word('θ'), 'θ contact angle'],
    [word('k'), 'k 2π over the pitch'],
  ];
  return known
    .filter(([sign]) => sign.test(text))
    .map(([, means]) => means)
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
  viscosityRatio: 'times thicker than the fresh mix',
  air: 'air as it is poured',
  filmThen: 'film at that moment',
  conversionThen: 'reaction done at that moment',
  freshViscosity: 'fresh mix at the air',
  opens: 'opens at',
  planned: 'planned at',
  mixed: 'cup mixed at',
  emptied: 'cup empty at',
  cupMass: 'in the cup',
  cupPeak: 'cup left standing gets to',
  cupLimit: 'out of the cup below',
  cupLimitOfReaction: 'or below this share of the reaction',
  cupAtLimit: 'cup there at',
  markPitch: 'marks apart',
  needs: 'flow budget they need',
  recoatConversion: 'next coat from a conversion of',
};
/** Temperatures; what else has kelvin is a difference. */
const temperatures = new Set(['air', 'filmThen', 'cupLimit', 'cupPeak', 'filmPeak']);
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
      case 'kg':
        return speak.mass(value);
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
        return temperatures.has(stem)
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

/** What a range of a kind is over. */
export function rangeName(of: RangeOf): string {
  return of === 'time' ? 'range, 5 to 95 %' : 'range, viscosity off by half';
}

/** The range of a reason by the kind of its value; a time with its middle. */
export function rangeText(spread: Spread, of: RangeOf, system: System): string {
  const { low, value, high } = spread;
  // A pattern shows after four e-folds, and these go with the flow budget: so the share of that budget there is.
  if (of === 'e-folds')
    return `${plainNumber(low / 4)} to ${plainNumber(high / 4)} times the flow it takes to show`;
  if (of === 'time') return minutesRange({ low_s: low, mid_s: value, high_s: high });
  if (of === 'length' && value >= 0.01) return formatRange(low, value, high, 'length', system);
  return low === high ? fineText(value, system) : `${fineText(low, system)} to ${fineText(high, system)}`;
}

/** "-18 % to +22 %": how far the ends of a range lie from its middle; empty where there is no middle to compare with. */
export function movesText({ low, value, high }: Spread): string {
  const by = (end: number) => Math.round((end / value - 1) * 100);
  if (!(value > 0) || low === high) return '';
  return `\u2212${-by(low)} % to +${by(high)} %`;
}
