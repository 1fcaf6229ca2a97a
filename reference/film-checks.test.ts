/**
 * Closed forms of film flow against values computed by two other implementations (Python and JavaScript) of the same published
 * formulas: Orchard 1962 (levelling), Jeffreys 1930 (faces), Huppert 1982 (puddles), Fermigier et al. 1992 (drips), Stokes and
 * Hadamard-Rybczynski (bubbles), Gibbs pinning, the edge similarity solution and tilt. Agreement 1e-9 relative; angles
 * printed to two decimals are held to half of the last one.
 */
import { describe, expect, it } from 'vitest';
import { smallestEscapingBubble_m } from '#core/film/bubbles.ts';
import { capillaryLength_m } from '#core/film/constants.ts';
import { dripGrowth_Pa, dripPitch_m } from '#core/film/drips.ts';
import { edgeTaper_m, freeEdgeLoss_m2 } from '#core/film/edge-profile.ts';
import { faceFilm, jeffreysThickness_m, sagLength_m } from '#core/film/face.ts';
import { thetaExponential, thetaGelLaw } from '#core/film/flow-budget.ts';
import { orchardRate, orchardRateThin } from '#core/film/levelling.ts';
import { plateLimit, plateScale_m } from '#core/film/plate-limit.ts';
import { puddleRadius_m, puddleThickness_m, ridgeHalfWidth_m } from '#core/film/puddle.ts';
import { pinnedOnRoundArris, pinnedThickness_m, wettingLimit_m } from '#core/film/self-damming.ts';
import { strokeSurfaceShare } from '#core/film/stroke-reach.ts';
import { tiltEndChange_m, tiltFlux_m2_Pa } from '#core/film/tilt.ts';

const face = (height_m: number, appliedThickness_m: number, thetaLeft_per_Pa: number): number =>
  faceFilm({ height_m, appliedThickness_m, thetaLeft_per_Pa }).retained_m2;

const values: readonly (readonly [what: string, computed: () => number, expected: number])[] = [
  ['budget, exponential [2.0, 600.0, 900.0]', () => thetaExponential(2.0, 600.0, 900.0), 233.06095195547107],
  ['budget, gel law [2.0, 1800.0, 2.0, 1800.0]', () => thetaGelLaw(2.0, 1800.0, 2.0, 1800.0), 300.0],
  [
    'budget, exponential [5.0, 1200.0, 3600.0]',
    () => thetaExponential(5.0, 1200.0, 3600.0),
    228.05110359171266,
  ],
  ['levelling [0.01, 0.0015, 1100.0, 0.035]', () => orchardRate(0.01, 0.0015), 4.244330698150843],
  [
    'levelling, thin film [0.01, 0.0015, 1100.0, 0.035]',
    () => orchardRateThin(0.01, 0.0015),
    10.92776665713933,
  ],
  ['levelling [0.02, 0.0015, 1100.0, 0.035]', () => orchardRate(0.02, 0.0015), 1.1313881531103644],
  [
    'levelling, thin film [0.02, 0.0015, 1100.0, 0.035]',
    () => orchardRateThin(0.02, 0.0015),
    1.5812967764456787,
  ],
  ['levelling [0.05, 0.0015, 1100.0, 0.035]', () => orchardRate(0.05, 0.0015), 0.18935891075469877],
  [
    'levelling, thin film [0.05, 0.0015, 1100.0, 0.035]',
    () => orchardRateThin(0.05, 0.0015),
    0.20145859325611445,
  ],
  ['levelling [0.1, 0.0015, 1100.0, 0.035]', () => orchardRate(0.1, 0.0015), 0.04776016241745724],
  [
    'levelling, thin film [0.1, 0.0015, 1100.0, 0.035]',
    () => orchardRateThin(0.1, 0.0015),
    0.048523616493485966,
  ],
  ['levelling [0.3, 0.0015, 1100.0, 0.035]', () => orchardRate(0.3, 0.0015), 0.00532144937147757],
  [
    'levelling, thin film [0.3, 0.0015, 1100.0, 0.035]',
    () => orchardRateThin(0.3, 0.0015),
    0.0053309028426328404,
  ],
  ['levelling [0.01, 0.003, 1100.0, 0.035]', () => orchardRate(0.01, 0.003), 11.763160908348317],
  [
    'levelling, thin film [0.01, 0.003, 1100.0, 0.035]',
    () => orchardRateThin(0.01, 0.003),
    87.42213325711464,
  ],
  ['levelling [0.005, 0.0005, 1100.0, 0.035]', () => orchardRate(0.005, 0.0005), 2.5498376309755137],
  [
    'levelling, thin film [0.005, 0.0005, 1100.0, 0.035]',
    () => orchardRateThin(0.005, 0.0005),
    4.3463829426023395,
  ],
  ['jeffreys [0.038, 60.0, 1100.0]', () => jeffreysThickness_m(0.038, 60.0), 0.00024230339138048973],
  ['jeffreys [0.038, 240.0, 1100.0]', () => jeffreysThickness_m(0.038, 240.0), 0.00012115169569024487],
  ['face retained [0.038, 0.001, 240.0, 1100.0]', () => face(0.038, 0.001, 240.0), 3.0691762908195365e-6],
  ['face retained [0.038, 0.0005, 10.0, 1100.0]', () => face(0.038, 0.0005, 10.0), 1.4505285416666666e-5],
  ['sag [0.0002, 60.0, 1100.0]', () => sagLength_m(0.0002, 60.0), 0.012944778],
  ['puddle radius [1e-05, 60.0, 1100.0]', () => puddleRadius_m(1e-5, 60.0), 0.055339927330154075],
  ['puddle middle [1e-05, 60.0, 1100.0]', () => puddleThickness_m(0, 1e-5, 60.0), 0.0013858355406216971],
  [
    'puddle radius [2.95735295625e-05, 60.0, 1100.0]',
    () => puddleRadius_m(2.95735295625e-5, 60.0),
    0.08310502214290526,
  ],
  [
    'puddle middle [2.95735295625e-05, 60.0, 1100.0]',
    () => puddleThickness_m(0, 2.95735295625e-5, 60.0),
    0.0018173454371333692,
  ],
  ['puddle radius [0.0001, 60.0, 1100.0]', () => puddleRadius_m(0.0001, 60.0), 0.1312316485439542],
  ['puddle middle [0.0001, 60.0, 1100.0]', () => puddleThickness_m(0, 0.0001, 60.0), 0.0024644028075877225],
  ['ridge [5e-05, 60.0, 1100.0]', () => ridgeHalfWidth_m(5e-5, 60.0), 0.04322878412397006],
  ['edge loss [0.001, 240.0, 1100.0]', () => freeEdgeLoss_m2(0.001, 240.0), 1.08199282720472e-5],
  ['edge taper [0.001, 240.0, 1100.0, 1.1672]', () => edgeTaper_m(0.001, 240.0, 0.9), 0.034288378892178145],
  ['edge loss [0.0015, 240.0, 1100.0]', () => freeEdgeLoss_m2(0.0015, 240.0), 2.9816216235033e-5],
  ['edge taper [0.0015, 240.0, 1100.0, 1.1672]', () => edgeTaper_m(0.0015, 240.0, 0.9), 0.06299177429479019],
  ['edge loss [0.003, 240.0, 1100.0]', () => freeEdgeLoss_m2(0.003, 240.0), 0.00016866598951293012],
  ['edge taper [0.003, 240.0, 1100.0, 1.1672]', () => edgeTaper_m(0.003, 240.0, 0.9), 0.17816764305127442],
  [
    'plate limit [0.3, 240.0, 1100.0, 0.8252]',
    () => plateLimit(0.3, 240.0, { aspect: 2 }).centre_m,
    0.0038842359772736984,
  ],
  [
    'plate limit [0.3, 240.0, 1100.0, 0.6453]',
    () => 0.6453 * plateScale_m(0.3, 240.0),
    0.0030374424092761963,
  ],
  ['capillary length [1100.0, 0.035]', () => capillaryLength_m(), 0.0018012638859278656],
  ['drip pitch [1100.0, 0.035]', () => dripPitch_m(), 0.016005609171819504],
  ['drip growth [0.0005, 1100.0, 0.035]', () => dripGrowth_Pa(0.0005), 0.034632787175364575],
  ['drip growth [0.001, 1100.0, 0.035]', () => dripGrowth_Pa(0.001), 0.2770622974029166],
  ['pinned, sharp [1100.0, 0.035, 10.0, 90.0]', () => pinnedThickness_m(10.0, 90.0), 0.0027596963808118762],
  ['wetting limit [1100.0, 0.035, 10.0]', () => wettingLimit_m(10.0), 0.0003139809837251523],
  ['pinned, sharp [1100.0, 0.035, 20.0, 90.0]', () => pinnedThickness_m(20.0, 90.0), 0.002951017988923489],
  ['wetting limit [1100.0, 0.035, 20.0]', () => wettingLimit_m(20.0), 0.0006255723825772546],
  ['pinned, sharp [1100.0, 0.035, 30.0, 90.0]', () => pinnedThickness_m(30.0, 90.0), 0.0031198805682660135],
  ['wetting limit [1100.0, 0.035, 30.0]', () => wettingLimit_m(30.0), 0.000932402797867012],
  [
    'smallest bubble [0.003, 240.0, 1100.0]',
    () => smallestEscapingBubble_m(0.003, 240.0),
    0.00014442240694952424,
  ],
  [
    'smallest bubble [0.0015, 240.0, 1100.0]',
    () => smallestEscapingBubble_m(0.0015, 240.0),
    0.00010212206330929176,
  ],
  [
    'smallest bubble [0.003, 240.0, 1100.0, True]',
    () => smallestEscapingBubble_m(0.003, 240.0, 'mobile'),
    0.00011792040148363922,
  ],
  [
    'tilt end [0.0015, 0.001, 240.0, 1100.0]',
    () => tiltEndChange_m(0.0015, 0.001, 240.0),
    6.0896680785318616e-5,
  ],
  ['tilt flux [0.0015, 0.001, 1100.0]', () => tiltFlux_m2_Pa(0.0015, 0.001), 1.2135729375e-8],
  [
    'tilt end [0.003, 0.005, 240.0, 1100.0]',
    () => tiltEndChange_m(0.003, 0.005, 240.0),
    0.0008612091187010265,
  ],
  ['stroke surface [0.0, 0.0015]', () => strokeSurfaceShare(0.0, 0.0015), 1.0],
  ['stroke surface [0.00075, 0.0015]', () => strokeSurfaceShare(0.00075, 0.0015), 0.544667799226443],
  ['stroke surface [0.0015, 0.0015]', () => strokeSurfaceShare(0.0015, 0.0015), 0.2609637728543127],
  ['stroke surface [0.003, 0.0015]', () => strokeSurfaceShare(0.003, 0.0015), 0.054987458002148985],
];

describe('film formulas against two other implementations', () => {
  it.each(values)('%s', (_, computed, expected) => {
    expect(Math.abs(computed() / expected - 1)).toBeLessThan(1e-9);
  });
});

const round: readonly (readonly [
  angle_deg: number,
  radius_m: number,
  thickness_m: number,
  turn_deg: number,
])[] = [
  [10.0, 0.0005, 0.0022596963808118762, 90.0],
  [20.0, 0.0005, 0.002451017988923489, 90.0],
  [30.0, 0.0005, 0.0026198805682660135, 90.0],
  [10.0, 0.001, 0.0017596963808118764, 90.0],
  [20.0, 0.001, 0.001951017988923489, 90.0],
  [30.0, 0.001, 0.0021259677128983735, 83.11],
  [10.0, 0.002, 0.001087063327073986, 50.92],
  [20.0, 0.002, 0.0013527825869775753, 48.22],
  [30.0, 0.002, 0.0016073495858168335, 45.43],
  [10.0, 0.003, 0.0008366532627163152, 33.85],
  [20.0, 0.003, 0.0011235338470488893, 32.57],
  [30.0, 0.003, 0.0013999308286103476, 31.13],
  [10.0, 0.006, 0.0005788225591548133, 16.97],
  [20.0, 0.006, 0.000881103287013427, 16.56],
  [30.0, 0.006, 0.0011751913918059639, 16.04],
];

describe('pinning on a rounded dry arris', () => {
  // The other implementation searched turns in steps of 0.01 degrees: its thickness is ours at its turn, and our maximum is higher
  // by no more than (R + lc)/2 (0.005 degrees)^2, the bound of its second derivative.
  it.each(round)('%d degrees, radius %d m', (angle_deg, radius_m, thickness_m, turn_deg) => {
    const found = pinnedOnRoundArris(angle_deg, radius_m);
    expect(Math.abs(found.turn_deg - turn_deg)).toBeLessThan(0.00501);
    const turn = (turn_deg * Math.PI) / 180;
    const there = pinnedThickness_m(angle_deg, turn_deg) - radius_m * (1 - Math.cos(turn));
    expect(Math.abs(there / thickness_m - 1)).toBeLessThan(1e-9);
    expect(found.thickness_m).toBeGreaterThanOrEqual(thickness_m * (1 - 1e-12));
    expect(found.thickness_m - thickness_m).toBeLessThanOrEqual(
      ((radius_m + capillaryLength_m()) / 2) * ((0.00501 * Math.PI) / 180) ** 2,
    );
  });
});

describe('the edge taper constant', () => {
  it('is the tabulated 1.1672 for 90 %', () => {
    const spread_m = Math.sqrt((1100 * 9.80665 * 0.001 ** 3 * 240) / 3);
    expect(edgeTaper_m(0.001, 240) / spread_m).toBeCloseTo(1.1672, 9);
  });
});
