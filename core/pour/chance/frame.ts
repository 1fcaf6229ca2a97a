/** A plan taken apart into what a thrown pour needs: durations as planned, who depends on whom, which windows count. */
import { oldestCup } from '../oldest-cup.ts';
import type { CoatPlan, Step } from '../plan.ts';
import type { PlanRequest } from '../plan-coat.ts';
import { filmRequestOf } from '../settle.ts';
import type { ResponseRequest } from './response.ts';

export interface CupFrame {
  readonly mix_s: number;
  readonly empty_s: number;
  readonly spread_s: number;
  /** Place of its mass in the response's list. */
  readonly mass: number;
}

export interface PourFrame {
  readonly crew: number;
  readonly cups: readonly CupFrame[];
  readonly meld_s: number;
  /** For one pair of hands, 0: nothing to wrap. */
  readonly wrap_s: number;
  /** The minute the plan gives for the edges, s; null: as soon as hands are free. */
  readonly wrapPlanned_s: number | null;
  readonly torch_s: number;
  /** When the plan lets the torch close, s on its clock: what the crew goes by. */
  readonly torchCloses_s: number;
  readonly scrape_s: number;
  readonly scrapeEvery_s: number;
  readonly gel_s: number;
  readonly spare_s: number;
  /** Place of the cup whose film stops flowing first, from 0, and how long it is planned to stand. */
  readonly oldest: number;
  readonly oldestStands_s: number;
  readonly response: ResponseRequest;
}

const total = (steps: readonly Step[]) => steps.reduce((sum, { start_s, end_s }) => sum + end_s - start_s, 0);

/** @throws RangeError when the plan has no cups, or is of another coat than the request. */
export function frameOf(request: PlanRequest, plan: CoatPlan): PourFrame {
  const { coat, rates } = request;
  if (plan.coatId !== coat.id)
    throw new RangeError(`plan is of coat "${plan.coatId}"; allowed: "${coat.id}", as the request`);
  if (plan.cups.length === 0) throw new RangeError('plan.cups is empty; allowed: one or more');
  const of = (kind: Step['kind']) => plan.steps.filter((step) => step.kind === kind);
  const masses_kg = [...new Set(plan.cups.map(({ mass_kg }) => mass_kg))];
  const cups = plan.cups.map((cup, i): CupFrame => {
    const mix = of('mix').find((step) => step.cup === cup.number)!;
    const pour = of('pour').find((step) => step.cup === cup.number)!;
    const { emptied_s } = plan.cupForecasts[i]!;
    return {
      mix_s: mix.end_s - mix.start_s,
      empty_s: emptied_s - pour.start_s,
      spread_s: pour.end_s - emptied_s,
      mass: masses_kg.indexOf(cup.mass_kg),
    };
  });
  const wraps = of('wrap edges');
  const torch = of('torch')[0];
  const scrape = of('scrape drips')[0];
  const oldest = oldestCup(plan);
  const at = plan.cupForecasts[oldest]!;
  return {
    crew: coat.crew,
    cups,
    meld_s: total(of('meld')),
    wrap_s: total(wraps),
    wrapPlanned_s: wraps.length === 0 ? null : Math.min(...wraps.map(({ start_s }) => start_s)),
    torch_s: torch === undefined ? 0 : torch.end_s - torch.start_s,
    torchCloses_s: torch?.window.closes_s ?? 0,
    scrape_s: scrape === undefined ? 0 : scrape.end_s - scrape.start_s,
    scrapeEvery_s: rates.scrapeEvery_s,
    gel_s: scrape?.window.closes_s ?? 0,
    spare_s: rates.tightUnder_s,
    oldest,
    oldestStands_s: at.emptied_s - at.mixed_s,
    response: {
      film: filmRequestOf(request, plan.cups[oldest]!.mass_kg, {
        mixed_s: at.mixed_s,
        pour_s: at.emptied_s,
        emptied_s: at.emptied_s,
        spread_s: at.emptied_s,
      }),
      masses_kg,
    },
  };
}
