import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { CoatPlan } from '#core/pour/plan.ts';
import { badAttributes } from './bad-attributes.ts';
import { ForecastChart } from './ForecastChart.tsx';
import { momentAt } from './ForecastReadings.tsx';
import { forecastCurves, thicknessWord, viscosityText } from './forecast-curves.ts';
import { forecastLayout, spanEnd_s, spansDiffer } from './forecast-layout.ts';
import { forecastRows, stepSays } from './forecast-rows.ts';
import { samplePlan } from './sample-plan.ts';

const plan = samplePlan();

describe('rows of a forecast', () => {
  const rows = forecastRows(plan);

  it('go in the order of the work: cups, meld, edges, torch, drips, hands off, film', () => {
    expect(rows.map((r) => r.name)).toEqual([
      'Cup 1: ink blue',
      'Cup 2: sea green',
      'Cup 3: copper',
      'Meld',
      'Wrap edges',
      'Torch',
      'Scrape drips',
      'Hands off',
      'Working time ends',
      'Stops levelling',
      'Gel',
    ]);
  });

  it('say planned time, closing range and what closes a step', () => {
    const wrap = plan.steps.find((s) => s.kind === 'wrap edges')!;
    expect(stepSays(wrap)).toBe(
      'Wrap edges: 18 to 22 min, closes at 32 (26 to 41) min, film of cup 1 stops flowing',
    );
    expect(rows[4]!.values).toBe('18 to 22 min; closes at 32 (26 to 41) min');
    expect(rows[4]!.tightest).toBe(true);
  });

  it('say how much too late a step is', () => {
    const late = {
      ...plan,
      steps: plan.steps.map((s) => (s.kind === 'torch' ? { ...s, slack_s: -180 } : s)),
    };
    const torch = forecastRows(late).find((r) => r.name === 'Torch')!;
    expect(torch.late).toBe(true);
    expect(torch.values).toContain('too late by 3 min');
  });

  it('keep windows that overlap on lanes of their own', () => {
    for (const row of rows)
      for (const lane of row.lanes)
        for (let i = 1; i < lane.length; i += 1)
          expect(lane[i]!.opens_s).toBeGreaterThanOrEqual(lane[i - 1]!.closesHigh_s);
    expect(rows.find((r) => r.name === 'Scrape drips')!.lanes.length).toBe(3);
  });
});

describe('span of a forecast', () => {
  it('ends with the work, or with the gel', () => {
    expect(spanEnd_s(plan, 'pour') / 60).toBeCloseTo(44 * 1.04, 6);
    expect(spanEnd_s(plan, 'gel') / 60).toBeCloseTo(240 * 1.04, 6);
    expect(spansDiffer(plan)).toBe(true);
  });

  it('lays rows out one under the other without overlap at any width', () => {
    fc.assert(
      fc.property(fc.integer({ min: 280, max: 3840 }), fc.boolean(), (width, paper) => {
        const { rows, height, left, right } = forecastLayout(width, forecastRows(plan), {
          clock: true,
          temperature: true,
          paper,
        });
        expect(right - left).toBeGreaterThan(200);
        rows.forEach((r, i) => {
          expect(r.y + r.height).toBeLessThanOrEqual(rows[i + 1]?.y ?? height);
          const lanes = Math.max(1, r.row.lanes.length);
          expect(r.barY + lanes * 19 - 3).toBeLessThanOrEqual(r.y + r.height);
        });
      }),
    );
  });
});

describe('curves of a forecast', () => {
  const curves = forecastCurves(plan, spanEnd_s(plan, 'gel'));

  it('are the film until it gels and each cup until it gets dangerous', () => {
    expect(curves.map((c) => [c.key, c.ends])).toEqual([
      ['film', 'gel'],
      ['cup 1', 'danger'],
      ['cup 2', 'danger'],
      ['cup 3', 'danger'],
    ]);
    expect(curves[1]!.viscosity.at(-1)!.time_s).toBe(18 * 60);
  });

  it('read at a minute: the bodies there are, and the steps planned or open', () => {
    const moment = momentAt(plan, curves, 8 * 60, new Date('2026-03-04T09:30').getTime(), 'us');
    expect(moment.when).toBe('8 min after the first mix, 9:38 am');
    expect(moment.bodies.map((b) => b.name)).toEqual(['film on the piece', 'cup 1', 'cup 2', 'cup 3']);
    for (const b of moment.bodies) expect(b.text).toMatch(/^\d[\d.]* Pa s, \d+ °F$/);
    expect(moment.open).toContain('Pour cup 2: now, 6 min left');
  });

  it('are told in words a maker knows', () => {
    expect([0.853, 1.94, 12.4, 5000].map(viscosityText)).toEqual([
      '0.85 Pa s',
      '1.9 Pa s',
      '12 Pa s',
      'over 1000 Pa s',
    ]);
    expect(thicknessWord(10)).toBe('honey');
    expect(thicknessWord(3)).toBe('');
  });
});

describe('forecast chart', () => {
  const markup = renderToStaticMarkup(
    <ForecastChart plan={plan} system="us" clockStart="2026-03-04T09:30" />,
  );

  it('labels every line, band and axis', () => {
    for (const words of [
      'film',
      'cup 1',
      'cup 2',
      'cup 3',
      'Gel',
      'danger',
      'pour now',
      'Temperature, °F',
      '9:45 am',
    ])
      expect(markup).toContain(`>${words}<`);
    expect(markup).toContain(plan.says);
  });

  it('tells cups apart by dashes, not colour', () => {
    const dashes = [...markup.matchAll(/class="chart-cup" stroke-dasharray="([^"]+)"/g)].map((m) => m[1]);
    expect(new Set(dashes.slice(0, 3)).size).toBe(3);
  });

  it('has a slider that says what holds at its minute, and a table of every band', () => {
    expect(markup).toMatch(
      /type="range"[^>]*aria-valuetext="4 min after the first mix, 9:34 am; film on the piece/,
    );
    const rows = markup.match(/<th scope="row">/g)!;
    expect(rows.length).toBe(13);
  });

  it('shows no clock where none is known, and no temperature where not wanted', () => {
    const plain = renderToStaticMarkup(<ForecastChart plan={plan} system="metric" temperature={false} />);
    expect(plain).not.toContain('on the clock');
    expect(plain).not.toContain('Temperature, ');
  });

  it('draws plans with odd figures without a broken attribute', () => {
    const time = fc.oneof(
      fc.double({ min: -1e4, max: 1e6, noNaN: true }),
      fc.constantFrom(0, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e12),
    );
    fc.assert(
      fc.property(time, time, time, time, fc.boolean(), (a, b, c, d, none) => {
        const odd: CoatPlan = {
          ...plan,
          filmStart_s: a,
          slack_s: b,
          cupForecasts: plan.cupForecasts.map((cup) => ({
            ...cup,
            mixed_s: c,
            emptied_s: d,
            pourNow: none ? null : { low_s: a, mid_s: b, high_s: c },
            danger: none ? null : { low_s: b, mid_s: d, high_s: a },
          })),
          steps: plan.steps.map((step) => ({
            ...step,
            start_s: b,
            end_s: c,
            slack_s: d,
            window: { ...step.window, opens_s: d, closes_s: a, closesMid_s: b, closesHigh_s: c },
          })),
          stages: plan.stages.map((s) => ({ ...s, at: none ? null : { low_s: c, mid_s: a, high_s: d } })),
        };
        expect(
          badAttributes(renderToStaticMarkup(<ForecastChart plan={odd} system="us" span="gel" />)),
        ).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('draws a plan with nothing in it', () => {
    const empty = { ...plan, cupForecasts: [], steps: [], stages: [] };
    expect(badAttributes(renderToStaticMarkup(<ForecastChart plan={empty} system="us" />))).toEqual([]);
  });
});
