import { colourDifference } from '#core/look/colour-difference.ts';
import { filmContrast, pickedPaste } from '#core/look/colourant.ts';
import { absorptionToScattering, layer, masstone, over } from '#core/look/kubelka-munk.ts';
import { labOfLinear } from '#core/look/lab.ts';
import { carry } from '#core/look/moves/carry.ts';
import { dragShare } from '#core/look/moves/drag-carry.ts';
import { linearOfHex } from '#core/look/srgb.ts';
import { mirrored, seen } from '#core/look/surface.ts';
import { type Row, row } from './row.ts';

const film = (sx: number, kx: number) => layer({ scattering_per_m: sx, absorption_per_m: kx }, 1);

/** Where a puddle of radius 2 at the origin pushes (3, 4). */
function pushed(): number {
  const speck = Float64Array.of(3, 4);
  carry({ kind: 'puddle', colour: 1, centre: [0, 0], radius_m: 2 }).on(speck);
  return speck[0]!;
}

export function lookRows(): readonly Row[] {
  const equation = 'Kubelka and Munk 1931, the equation integrated by another program';
  const sharma = 'Sharma, Wu and Dalal 2005, Table 1';
  const paste = pickedPaste(linearOfHex('#1f3a5f'), 1, 0.9);
  const grey = { ...paste, scattering_per_m: [4, 4, 4], absorption_per_m: [0.08, 0.08, 0.08] } as const;
  return [
    row(
      'IEC 61966-2-1, ISO/CIE 11664-4',
      'L* of #c0392b',
      '',
      44.6753,
      labOfLinear(linearOfHex('#c0392b'))[0],
      5e-5,
    ),
    row(
      'IEC 61966-2-1, ISO/CIE 11664-4',
      'b* of #0000ff',
      '',
      -107.8602,
      labOfLinear(linearOfHex('#0000ff'))[2],
      5e-5,
    ),
    row(
      sharma,
      'pair 1: Delta E 2000',
      '',
      2.0425,
      colourDifference([50, 2.6772, -79.7751], [50, 0, -82.7485]),
      5e-5,
    ),
    row(sharma, 'pair 17: Delta E 2000', '', 27.1492, colourDifference([50, 2.5, 0], [73, 25, -18]), 5e-5),
    row(equation, 'SX 1, KX 0.1 over 0.8: reflectance', '', 0.71234729, over(film(1, 0.1), 0.8), 5e-9),
    row(equation, 'SX 3, KX 0.05 over black: reflectance', '', 0.72309077, over(film(3, 0.05), 0), 5e-9),
    row(
      'Kubelka and Munk 1931, closed form',
      'masstone of K/S 0.1',
      '',
      0.64174243,
      masstone({ scattering_per_m: 1, absorption_per_m: 0.1 }),
      5e-9,
    ),
    row(
      'Kubelka and Munk 1931, closed form',
      'K/S of an opaque film of 0.3',
      '',
      0.81666667,
      absorptionToScattering(0.3),
      5e-9,
    ),
    row('Saunderson 1942, gloss left out', 'internal 0.4 looks', '', 0.20369748, seen(0.4), 5e-9),
    row("Fresnel's law, n 1.5", 'mirrored at 60 degrees', '', 0.08919, mirrored(Math.PI / 3), 5e-6),
    row(
      'ISO 6504-3, ASTM D2805, over white 0.80',
      'contrast ratio, SX 4, KX 0.08',
      '',
      0.807597,
      filmContrast(grey, 1, 1, { black: 0, white: 0.8 }),
      5e-7,
    ),
    row(
      'Same, worked by another program',
      '#1f3a5f hiding 0.90 in 1 mm: S',
      '1/mm',
      0.63280981,
      paste.scattering_per_m[0] / 1000,
      5e-9,
    ),
    row('Lu et al. 2012, as quoted', 'puddle of radius 2 pushes (3, 4): x', '', 3.231099, pushed(), 5e-7),
    row(
      "Laplace's equation, finite differences",
      'surface beside a blade at one film thickness',
      '',
      0.261,
      dragShare(1, 1),
      5e-5,
    ),
  ];
}
