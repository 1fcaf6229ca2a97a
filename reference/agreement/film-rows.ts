import { capillaryLength_m } from '#core/film/constants.ts';
import { dripPitch_m } from '#core/film/drips.ts';
import { jeffreysThickness_m } from '#core/film/face.ts';
import { thetaExponential, thetaGelLaw } from '#core/film/flow-budget.ts';
import { orchardRate } from '#core/film/levelling.ts';
import { puddleRadius_m, ridgeHalfWidth_m } from '#core/film/puddle.ts';
import { pinnedThickness_m } from '#core/film/self-damming.ts';
import { tiltEndChange_m } from '#core/film/tilt.ts';
import { convert } from '#core/quantity/units.ts';
import { dewPoint_K } from '#core/room/dew-point.ts';
import { type Row, row } from './row.ts';

/** Surface tension 0.035 N/m, density 1100 kg/m3 throughout, as in the worked values. */
export function filmRows(): readonly Row[] {
  const budget = 'Flow budget, closed form against quadrature';
  const mm = 1000;
  return [
    row('NIST Handbook 44', '1 US gallon', 'L', 3.785411784, convert(1, 'gal', 'L'), 5e-10),
    row(
      'NIST Handbook 44 (231 cu in, 25.4 mm)',
      '1 fl oz/sq ft',
      'mm',
      0.3183268,
      convert(1, 'fl oz/sq ft', 'mm'),
      5e-8,
    ),
    row(
      budget,
      'exponential: 2 Pa s, 600 s, after 900 s',
      '1/Pa',
      233.061,
      thetaExponential(2, 600, 900),
      5e-4,
    ),
    row(budget, 'gel law: 2 Pa s, 1800 s, n 2', '1/Pa', 300, thetaGelLaw(2, 1800, 2, 1800), 5e-5),
    row(
      'Orchard 1962 (and a direct Stokes solution)',
      'decay, 10 mm wave, 1.5 mm film',
      'Pa',
      4.24433,
      orchardRate(0.01, 0.0015),
      5e-6,
    ),
    row('Orchard 1962', 'decay, 50 mm wave, 1.5 mm film', 'Pa', 0.189359, orchardRate(0.05, 0.0015), 5e-7),
    row(
      'Jeffreys 1930',
      'film 38 mm down a face, budget 240',
      'mm',
      0.1212,
      jeffreysThickness_m(0.038, 240) * mm,
      5e-5,
    ),
    row(
      'Huppert 1982',
      '100 mL puddle, budget 60: radius',
      'mm',
      131.23,
      puddleRadius_m(1e-4, 60) * mm,
      5e-3,
    ),
    row(
      'Huppert 1982',
      'ridge of 50 mm2, budget 60: half width',
      'mm',
      43.23,
      ridgeHalfWidth_m(5e-5, 60) * mm,
      5e-3,
    ),
    row('Fermigier et al. 1992', 'pitch of drips', 'mm', 16.006, dripPitch_m() * mm, 5e-4),
    row('de Gennes, Brochard and Quere', 'capillary length', 'mm', 1.8013, capillaryLength_m() * mm, 5e-5),
    row(
      'Gibbs; Oliver, Huh and Mason 1977',
      'film a dry sharp arris holds, 20 degrees',
      'mm',
      2.951,
      pinnedThickness_m(20) * mm,
      5e-4,
    ),
    row(
      'Lubrication theory, border strip',
      'bench 1 mm/m out, 1.5 mm film, budget 240',
      'mm',
      0.0609,
      tiltEndChange_m(0.0015, 0.001, 240) * mm,
      5e-5,
    ),
    row(
      'WMO No. 8 Annex 4.B',
      'dew point of 20 C at 50 %',
      'C',
      9.26,
      dewPoint_K(293.15, 0.5) - 273.15,
      5e-3,
    ),
    row(
      'ASHRAE-based library, 25 C at 80 %',
      'dew point',
      'C',
      21.309,
      dewPoint_K(298.15, 0.8) - 273.15,
      0.02,
    ),
  ];
}
