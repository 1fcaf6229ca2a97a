import { describe, expect, it } from 'vitest';
import { planCoat } from '../plan-coat.ts';
import { inks, QUICK_20, requestOf } from '../sample-request.check.ts';
import { betterOrder, searchOf, slackAsPlanned_s, WORTH_OFFERING_s } from './order-of-plan.ts';
import { searchOrder } from './search-order.ts';

describe('another order of a planned pour', () => {
  const request = requestOf({ card: QUICK_20, crew: 2, colours: inks });
  const plan = planCoat({ ...request, waysOut: false });

  it('has the durations of the plan, and its slack where the cup decides', () => {
    const search = searchOf(request, plan);
    plan.cups.forEach(({ number }, i) => {
      const pour = plan.steps.find((step) => step.kind === 'pour' && step.cup === number)!;
      const { mix_s, empty_s, spread_s } = search.cups[i]!;
      expect(empty_s + spread_s).toBeCloseTo(pour.end_s - pour.start_s, 6);
      expect(mix_s).toBeGreaterThan(0);
    });
    const cups = plan.steps.filter(({ kind }) => kind === 'pour').map(({ slack_s }) => slack_s);
    expect(slackAsPlanned_s(search)).toBeLessThanOrEqual(Math.min(...cups) + 1e-6);
    expect(slackAsPlanned_s(search)).toBeGreaterThan(Math.min(...cups) - 600);
  });

  it('is never worse than the plan, and is offered only when it is worth it', () => {
    for (const crew of [1, 2, 3]) {
      const asked = requestOf({ card: QUICK_20, crew, colours: inks });
      const made = planCoat({ ...asked, waysOut: false });
      const search = searchOf(asked, made);
      const found = searchOrder(search);
      expect(found.slack_s).toBeGreaterThanOrEqual(slackAsPlanned_s(search) - 1e-6);
      const offer = betterOrder(asked, made);
      expect(offer === null).toBe(found.slack_s < slackAsPlanned_s(search) + WORTH_OFFERING_s);
      if (offer !== null)
        expect(offer.turns.map(({ cup }) => cup).sort()).toEqual(
          made.cups.map(({ number }) => number).sort(),
        );
    }
  });
});
