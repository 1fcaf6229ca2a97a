/** Until when tools may touch a film, and what no longer levels. */
import { DEFAULT_LIQUID, type Liquid } from './constants.ts';
import { type FlowBudget, thetaLeftAt } from './flow-budget.ts';
import { lastTouchTime, longestLevellingWave, thetaToLevel } from './levelling.ts';
import type { Reason } from './reason.ts';

/** Marks count as gone at this share of their height (a rule of judgement). */
export const MARK_GONE = 0.01;

export interface Tool {
  readonly label: string;
  /** Distance between its marks, m. */
  readonly pitch_m: number;
}

/** Pitches of marks (common practice, no source). */
export const TOOLS: readonly Tool[] = [
  { label: 'Comb or notched trowel', pitch_m: 0.01 },
  { label: 'Gloved fingers, brush', pitch_m: 0.02 },
  { label: 'Torch', pitch_m: 0.05 },
  { label: 'Pushing resin about', pitch_m: 0.15 },
];

export interface ToolAnswer extends Tool {
  /** Last moment its marks still level by gel, s; undefined when they stay whenever they are made. */
  readonly last_s?: number;
  /** Flow budget they need, 1/Pa. */
  readonly needs_per_Pa: number;
}

export interface LevellingAnswers {
  readonly tools: readonly ToolAnswer[];
  /** Longest wave that levels when left at a time, m: longer ones are uneven spreading and stay. Undefined when no budget is left. */
  readonly longestWave_m?: number;
  readonly reasons: readonly Reason[];
}

/**
 * Last touch for every tool, and the longest wave that still levels from `from_s` on. Call it once with a quick and once with a regular
 * resin to see why a flood coat is a regular one. Accuracy: that of the viscosity (the last moments move little: viscosity climbs fast).
 * @param thickness_m above 0, up to 4 capillary lengths @param from_s within the series
 * @throws RangeError outside these.
 */
export function levellingAnswers(
  series: FlowBudget,
  thickness_m: number,
  from_s: number,
  tools: readonly Tool[] = TOOLS,
  liquid: Liquid = DEFAULT_LIQUID,
): LevellingAnswers {
  const left = thetaLeftAt(series, from_s);
  const answers = tools.map(({ label, pitch_m }): ToolAnswer => {
    const last = lastTouchTime(series, pitch_m, thickness_m, MARK_GONE, liquid);
    const needs_per_Pa = thetaToLevel(pitch_m, thickness_m, MARK_GONE, liquid);
    return { label, pitch_m, needs_per_Pa, ...(last === undefined || last < from_s ? {} : { last_s: last }) };
  });
  const longestWave_m = left > 0 ? longestLevellingWave(thickness_m, left, MARK_GONE, liquid) : undefined;
  return {
    tools: answers,
    ...(longestWave_m === undefined ? {} : { longestWave_m }),
    reasons: [
      {
        says: 'Marks level as long as enough flow is left; what is wider apart than the longest wave stays.',
        formula:
          'r = (rho g + gamma k^2)/(2k) (sinh x cosh x - x)/(cosh^2 x + x^2); gone when r Theta = ln 100',
        numbers: {
          thickness_m,
          thetaLeft_per_Pa: left,
          ...(longestWave_m === undefined ? {} : { longestWave_m }),
        },
        source: 'Orchard 1962, exact for shallow marks',
        rule: 'A quick resin does not lie flat; leave the flood coat alone once it drags (common practice, no source).',
      },
    ],
  };
}
