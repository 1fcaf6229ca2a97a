/** Which bubbles get out before gel, here and in other coats, and what a torch can and cannot do. */
import { smallestEscapingBubble_m, VISIBLE_BUBBLE_m } from './bubbles.ts';
import { DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { rangeFromViscosity, type Spread } from './ranges.ts';
import type { Reason } from './reason.ts';

/** A coat to look at: this one, a thinner one, colder or warmer resin. */
export interface BubbleCase {
  readonly label: string;
  readonly thickness_m: number;
  /** Flow budget from the pour to gel at the film's own temperature, 1/Pa, above 0. */
  readonly theta_per_Pa: number;
}

export interface BubbleAnswer {
  readonly label: string;
  /** Smallest that escapes with a stiff skin (the safe case), and its range by viscosity, m. */
  readonly smallest_m: Spread;
  /** The same with a clean skin, m. */
  readonly smallestMobile_m: number;
  /** Whether bubbles stay that can be seen (0.12 mm and more; common practice, no source). */
  readonly staysVisible: boolean;
}

export interface BubbleAnswers {
  readonly cases: readonly BubbleAnswer[];
  readonly torch: Reason;
  readonly reasons: readonly Reason[];
}

/**
 * Smallest escaping bubble of each coat, worst first in the reasons. Goes with the root of thickness and the inverse root of the budget.
 * @throws RangeError when there is no case, or outside the ranges of {@link BubbleCase}.
 */
export function bubbleAnswers(cases: readonly BubbleCase[], liquid: Liquid = DEFAULT_LIQUID): BubbleAnswers {
  if (cases.length === 0) throw new RangeError('cases is empty: allowed one or more');
  const answers = cases.map(({ label, thickness_m, theta_per_Pa }): BubbleAnswer => {
    const value = smallestEscapingBubble_m(thickness_m, theta_per_Pa, 'rigid', liquid);
    return {
      label,
      smallest_m: rangeFromViscosity(value, -0.5),
      smallestMobile_m: smallestEscapingBubble_m(thickness_m, theta_per_Pa, 'mobile', liquid),
      staysVisible: value > VISIBLE_BUBBLE_m,
    };
  });
  const first = cases[0]!;
  return {
    cases: answers,
    torch: TORCH,
    reasons: [
      {
        says: answers[0]!.staysVisible
          ? 'Bubbles that can be seen stay in the film.'
          : 'Every bubble that can be seen gets out.',
        formula: 'd = sqrt(18 h/(rho g Theta))',
        numbers: {
          thickness_m: first.thickness_m,
          theta_per_Pa: first.theta_per_Pa,
          visible_m: VISIBLE_BUBBLE_m,
        },
        source: 'Stokes; Hadamard 1911, Rybczynski 1911 for a clean skin (from memory)',
        range: answers[0]!.smallest_m,
        rule: 'Warm resin and thin coats let go of their air (common practice, no source).',
      },
      TORCH,
    ],
  };
}

/** A rule with its basis, not a simulation: the heat of a flame on a film is not known to a factor of three. */
export const TORCH: Reason = {
  says: 'A pass of the torch breaks bubbles that lie at the surface in the next few seconds; it does not bring deep ones up. Each pass is worth at most one to three minutes of extra flow and warms the cure by about 5 K for a minute. Keep moving, stop when marks 50 mm apart no longer level.',
  formula: 'dT = 2 q sqrt(t/pi)/e at the surface, then Q/(e sqrt(pi t)); viscosity falls 8 % a kelvin',
  numbers: {
    flameHeat_J_m2: 30000,
    effusivity: 646.5,
    surfaceAfter10s_K: 8.7,
    filmBaseAfter60s_K: 4.3,
    coldFlowWorth_s: 176,
  },
  source:
    'conduction into a half space (Carslaw and Jaeger); flame heat 10 to 60 kJ/m2 a pass and resin properties from memory',
  rule: 'Torch lightly within the first quarter of an hour; late torching leaves waves (common practice, no source).',
};
