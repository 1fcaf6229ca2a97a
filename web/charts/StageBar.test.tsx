import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { badAttributes } from './bad-attributes.ts';
import { StageBar } from './StageBar.tsx';
import { range, samplePlan } from './sample-plan.ts';
import { stageRows, stageSays, stageSpan_s } from './stage-rows.ts';

const { stages } = samplePlan();
const HOUR = 3600;
const start_ms = new Date('2026-03-04T09:30').getTime();

describe('rows after a pour', () => {
  it('are the recoat window and from when the film is hard, sanded, handled, used, cured', () => {
    expect(stageRows(stages, [], null, 'us').map((r) => r.name)).toEqual([
      'Next coat without sanding',
      'Dry hard',
      'Can be sanded',
      'Can be handled',
      'In use',
      'Full cure',
    ]);
  });

  it('say ranges, the best time, and the safe window on the clock', () => {
    const [recoat, dry] = stageRows(stages, [], start_ms, 'us');
    expect(recoat!.values).toEqual([
      'opens 4 h (3 to 5.5 h)',
      'best 6 h to 10 h',
      'closes 14 h (9 to 20 h)',
      'sure from Wed Mar 4, 3:00 pm',
      'until 6:30 pm',
    ]);
    expect(stageSays(dry!)).toBe('Dry hard: 25 h (18 to 36 h); about Thu Mar 5, 11:00 am');
  });

  it('say to abrade when the window may be closed before it is surely open', () => {
    const shut = stages.map((s) => (s.key === 'recoat closes' ? { ...s, at: range(4, 6, 8, HOUR) } : s));
    expect(stageRows(shut, [], start_ms, 'us')[0]!.values.at(-1)).toContain('abrade first');
    expect(stageRows(shut, [], null, 'us')[0]!.values.at(-1)).toContain('abrade first');
  });

  it('say the clock no finer than the range allows', () => {
    const wide = stages.map((s) => (s.key === 'dry hard' ? { ...s, at: range(4, 19, 144, HOUR) } : s));
    expect(stageRows(wide, [], start_ms, 'metric')[1]!.values).toEqual([
      '19 h (4 h to 6 d)',
      'about Thu 5 Mar',
    ]);
  });

  it('mark a label figure only where it lies outside the range', () => {
    const label = (hours: number) => ({ key: 'dry hard' as const, at_s: hours * HOUR, text: `${hours} h` });
    expect(stageRows(stages, [label(24)], null, 'us')[1]!.disagrees).toEqual([]);
    const early = stageRows(stages, [label(12)], null, 'us')[1]!;
    expect(early.disagrees).toHaveLength(1);
    expect(stageSays(early)).toContain('the label says 12 h');
  });

  it('fit on an axis that runs forward', () => {
    const [low, high] = stageSpan_s(stageRows(stages, [], null, 'us'));
    expect(low).toBeLessThanOrEqual(HOUR);
    expect(high).toBeGreaterThan(7 * 24 * HOUR);
    expect(stageSpan_s([])[1]).toBeGreaterThan(stageSpan_s([])[0]);
  });
});

describe('stage bar', () => {
  it('says everything in its label and in a list, and shows dates when the start is known', () => {
    const markup = renderToStaticMarkup(
      <StageBar
        stages={stages}
        system="us"
        clockStart="2026-03-04T09:30"
        labels={[{ key: 'dry hard', at_s: 14 * HOUR, text: 'recoat 14 h' }]}
      />,
    );
    expect(markup).toContain('>label: recoat 14 h<');
    expect(markup).toContain('>Thu Mar 5<');
    expect(markup.match(/<li>/g)!.length).toBeGreaterThanOrEqual(6);
    expect(markup).toMatch(/role="img" aria-label="After the pour\. Next coat without sanding: opens 4 h/);
    expect(badAttributes(markup)).toEqual([]);
  });

  it('draws odd times without a broken attribute', () => {
    const time = fc.oneof(
      fc.double({ min: -1e3, max: 1e8, noNaN: true }),
      fc.constantFrom(0, Number.NaN, Number.POSITIVE_INFINITY, 1e-300, 1e300),
    );
    fc.assert(
      fc.property(time, time, time, (low_s, mid_s, high_s) => {
        const odd = stages.map((s, i) => ({ ...s, at: i % 4 === 0 ? null : { low_s, mid_s, high_s } }));
        const markup = renderToStaticMarkup(
          <StageBar stages={odd} system="metric" labels={[{ key: 'handle', at_s: mid_s, text: 'odd' }]} />,
        );
        expect(badAttributes(markup)).toEqual([]);
      }),
      { numRuns: 80 },
    );
    expect(badAttributes(renderToStaticMarkup(<StageBar stages={[]} system="us" />))).toEqual([]);
  });
});
