/** The placed steps with their windows, labels and rules. */
import type { CupRecipe } from '#core/mix/coat.ts';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import type { TimeRange } from '#core/resin/model.ts';
import type { LaterStep } from './after-pour.ts';
import type { LayOut } from './lay-out.ts';
import type { Step, StepKind } from './plan.ts';
import { stepRule } from './rules.ts';
import {
  type CupLimits,
  type FilmLimits,
  handsOffWindow,
  type Limit,
  meldWindow,
  mixWindow,
  pourWindow,
  scrapeWindow,
  torchWindow,
  wrapWindow,
} from './windows.ts';

/** A step and the time past which it does not fit. */
export interface LimitedStep extends Step {
  readonly hard_s: number;
}

export interface StepsRequest {
  readonly laid: LayOut;
  readonly after: readonly LaterStep[];
  readonly cups: readonly CupRecipe[];
  readonly limits: readonly CupLimits[];
  readonly film: FilmLimits;
  readonly edgeLength_m: number;
  readonly recoatOpens: TimeRange | null;
  /** Units of the figures in labels, limits and rules. */
  readonly system: System;
}

type Placed = Pick<Step, 'id' | 'label' | 'person' | 'cup' | 'start_s' | 'end_s'>;

function limited(
  kind: StepKind,
  placed: Placed,
  limit: Limit,
  system: System,
  optional = false,
): LimitedStep {
  return {
    ...placed,
    kind,
    window: limit.window,
    slack_s: limit.window.closes_s - placed.end_s,
    optional,
    rule: stepRule(kind, system),
    hard_s: limit.hard_s,
  };
}

/** All steps of a coat in the order they start. Hands off starts when the last planned hand leaves and is a wait. */
export function stepsOf(request: StepsRequest): readonly LimitedStep[] {
  const { laid, after, cups, limits, film, edgeLength_m, recoatOpens, system } = request;
  const wraps = laid.steps.filter((step) => step.kind === 'wrap edges').length;
  const steps = laid.steps.map((step): LimitedStep => {
    const { kind, person, cup, start_s, end_s } = step;
    const at = { person, cup, start_s, end_s };
    if (cup !== null) {
      const { colour } = cups[cup - 1]!;
      const of = limits[cup - 1]!;
      if (kind === 'mix')
        return limited(
          kind,
          { ...at, id: `mix-${cup}`, label: `Mix cup ${cup}, ${colour}` },
          mixWindow(start_s, of, film, system),
          system,
        );
      return limited(
        'pour',
        { ...at, id: `pour-${cup}`, label: `Pour and spread cup ${cup}, ${colour}` },
        pourWindow(start_s, of, film, system),
        system,
      );
    }
    if (kind === 'meld')
      return limited(
        kind,
        { ...at, id: 'meld', label: 'Meld the colours' },
        meldWindow(laid.down_s, film),
        system,
      );
    const share = formatLength(edgeLength_m / wraps, system);
    return limited(
      'wrap edges',
      {
        ...at,
        id: wraps > 1 ? `wrap-${person}` : 'wrap',
        label: wraps > 1 ? `Wrap ${share} of edge each` : `Wrap the edges, ${share}`,
      },
      wrapWindow(laid.down_s, film),
      system,
    );
  });
  for (const step of after) {
    const { kind, round, person, start_s, end_s, opens_s, optional } = step;
    const at = { person, cup: null, start_s, end_s };
    steps.push(
      kind === 'torch'
        ? limited(
            kind,
            { ...at, id: `torch-${round}`, label: `Torch, pass ${round}` },
            torchWindow(opens_s, film, system),
            system,
            optional,
          )
        : limited(
            kind,
            { ...at, id: `scrape-${round}`, label: `Scrape drips, round ${round}` },
            scrapeWindow(opens_s, film),
            system,
            optional,
          ),
    );
  }
  const start_s = Math.max(...steps.map((step) => step.end_s));
  if (recoatOpens !== null && recoatOpens.mid_s > start_s)
    steps.push(
      limited(
        'hands off',
        {
          id: 'hands-off',
          label: 'Hands off until the next coat may go on',
          person: 1,
          cup: null,
          start_s,
          end_s: recoatOpens.mid_s,
        },
        handsOffWindow(start_s, recoatOpens),
        system,
        true,
      ),
    );
  return steps.sort((a, b) => a.start_s - b.start_s || a.person - b.person);
}
