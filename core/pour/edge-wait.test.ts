import { beforeAll, describe, expect, it } from 'vitest';
import { drawModels } from '#core/resin/ensemble.ts';
import { longestWait_s } from './edge-wait.ts';
import { filmTimes } from './film-times.ts';
import type { CoatPlan } from './plan.ts';
import { type PlanRequest, planCoat } from './plan-coat.ts';
import { clear, coatOf, QUICK_20, requestOf } from './sample-request.check.ts';
import { SHOP_DEFAULTS } from './shop-rates.ts';

const plan = (coat: Parameters<typeof requestOf>[0] = {}, change: Partial<PlanRequest> = {}) =>
  planCoat(requestOf(coat, { waysOut: false, ...change }));
const hasty = { rates: { ...SHOP_DEFAULTS, wrapPatience_s: 0 } };
const runOff = (of: CoatPlan) => of.quantity.lines.find((line) => line.key === 'run-off')!;
const stepOf = (of: CoatPlan, id: string) => of.steps.find((step) => step.id === id)!;
const judged = (verdict: CoatPlan['verdict'], slack_s: number) => ({
  verdict,
  slack_s,
  slackStep: '',
  says: '',
});

describe('the minute the edges are worked', () => {
  let waits: CoatPlan;
  let atOnce: CoatPlan;
  beforeAll(() => {
    waits = plan();
    atOnce = plan({}, hasty);
  });

  it('is later for a slow resin, with no less slack, less run-off and more on the faces than at once', () => {
    expect(waits.wrap!.wait_s).toBeGreaterThanOrEqual(600);
    expect(stepOf(waits, 'wrap').start_s).toBeCloseTo(waits.wrap!.start_s, 6);
    expect(waits.slack_s).toBeGreaterThanOrEqual(atOnce.slack_s - 1e-6);
    expect(waits.verdict).toBe('fits');
    expect(runOff(waits).volume_m3).toBeLessThan(0.95 * runOff(atOnce).volume_m3);
    expect(waits.quantity.mass_kg).toBeLessThan(atOnce.quantity.mass_kg);
    expect(waits.answers.faceHolds_m).toBeGreaterThan(1.1 * atOnce.answers.faceHolds_m);
    expect(waits.answers.faceHolds_m).toBeCloseTo(waits.wrap!.faceHolds_m, 12);
  });

  it('is told in one sentence with what wrapping right away would cost, which is what it does cost', () => {
    const { says, savesRunOff_m3 } = waits.wrap!;
    expect(says).toMatch(/^Wrap the edges at \d+ min, not at 1\d min: .* would cost 0\.\d+ fl oz more/);
    expect(waits.cautions).toContain(says);
    const costs = runOff(atOnce).volume_m3 - runOff(waits).volume_m3;
    expect(savesRunOff_m3 / costs).toBeCloseTo(1, 1);
  });

  it('never comes after a patience of the shop, and at once with none', () => {
    expect(plan({}, { rates: { ...SHOP_DEFAULTS, wrapPatience_s: 900 } }).wrap!.wait_s).toBeLessThanOrEqual(
      900,
    );
    expect(atOnce.wrap!.wait_s).toBe(0);
    expect(atOnce.wrap!.says).toContain('the shop waits for no edge');
  });

  it('leaves room for the torch in the wait and the scraping after it, one thing at a time', () => {
    const own = waits.steps.filter((step) => step.person === 1 && step.kind !== 'hands off');
    for (let i = 1; i < own.length; i++)
      expect(own[i]!.start_s).toBeGreaterThanOrEqual(own[i - 1]!.end_s - 1e-6);
    expect(stepOf(waits, 'torch-1').end_s).toBeLessThanOrEqual(stepOf(waits, 'wrap').start_s);
    expect(stepOf(waits, 'scrape-1').start_s).toBeGreaterThan(stepOf(waits, 'wrap').end_s);
  });

  it('is at once when the pour has no time, and when little is to gain', () => {
    const quick = plan({ card: QUICK_20 });
    expect(quick.wrap).toMatchObject({ wait_s: 0, savesRunOff_m3: 0 });
    expect(quick.wrap!.says).toContain('no time to wait');
    const thin = plan({ film_m: 0.0006, faceFilm_m: 0.0004 });
    expect(thin.wrap!.says).toContain('as soon as hands are free');
    expect(thin.wrap!.wait_s).toBe(0);
  });

  it('is not told for a coat without wrapped edges', () => {
    expect(plan({ wrapEdges: false, colours: [clear] }).wrap).toBeNull();
  });

  it('leaves the ranges of the film right to half a percent', () => {
    const request = requestOf();
    const first = waits.cupForecasts[0]!;
    const again = filmTimes(drawModels(request.coat.card, 32, 1), {
      thickness_m: coatOf().film_m,
      board: request.board,
      board_K: request.coat.board_K,
      air: request.air,
      resin: request.coat.resin,
      cup_kg: waits.cups[0]!.mass_kg,
      mixed_s: first.mixed_s,
      emptied_s: first.emptied_s,
    }).stages.gel_s!;
    const told = waits.stages.find((stage) => stage.key === 'gel')!.at!;
    for (const end of ['low_s', 'mid_s', 'high_s'] as const)
      expect(Math.abs(told[end] / again[end] - 1)).toBeLessThan(0.005);
  });
});

describe('the longest wait', () => {
  it('is the last whole minute with which the tightest step has no less slack', () => {
    const slackUntil = (last_s: number) => (wait_s: number) => judged('fits', wait_s <= last_s ? 300 : 290);
    expect(longestWait_s(1800, judged('fits', 300), slackUntil(730))).toBe(720);
    expect(longestWait_s(1830, judged('fits', 300), slackUntil(9000))).toBe(1800);
    expect(longestWait_s(59, judged('fits', 300), slackUntil(9000))).toBe(0);
    expect(longestWait_s(1800, judged('fits', 300), slackUntil(10))).toBe(0);
  });

  it('is none for a pour that is tight or does not fit', () => {
    for (const verdict of ['tight', 'does not fit'] as const)
      expect(longestWait_s(1800, judged(verdict, 300), () => judged('fits', 900))).toBe(0);
  });
});
