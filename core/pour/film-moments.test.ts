import { expect, it } from 'vitest';
import { edgesWorked_s, spreadEnd_s } from './film-moments.ts';
import { planCoat } from './plan-coat.ts';
import { requestOf } from './sample-request.check.ts';

it('the film lies once its last pour is spread, and the edges are worked in the middle of their steps', () => {
  const plan = planCoat(requestOf());
  const spread = spreadEnd_s(plan)!;
  const worked = edgesWorked_s(plan)!;
  expect(plan.steps.filter((step) => step.kind === 'pour').every((step) => step.end_s <= spread)).toBe(true);
  expect(plan.steps.some((step) => step.kind === 'pour' && step.end_s === spread)).toBe(true);
  const wraps = plan.steps.filter((step) => step.kind === 'wrap edges');
  expect(worked).toBeGreaterThan(Math.min(...wraps.map((step) => step.start_s)));
  expect(worked).toBeLessThan(Math.max(...wraps.map((step) => step.end_s)));
  expect(worked).toBeGreaterThan(spread);
});

it('a plan without such steps has no such moment', () => {
  expect([spreadEnd_s({ steps: [] }), edgesWorked_s({ steps: [] })]).toEqual([undefined, undefined]);
});
