import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { badAttributes } from './bad-attributes.ts';
import { textWidth } from './label-places.ts';
import { StripChart } from './StripChart.tsx';
import { linearScale } from './scale.ts';
import { placeSpans, type StripSpan, shortened, spansOf } from './strip-rows.ts';

const HOUR = 3_600_000;
const now = new Date('2026-03-04T10:10').getTime();
const pour: StripSpan = {
  label: 'Colour coat is poured',
  from: now - HOUR,
  to: now + HOUR,
  kind: 'pour',
  now: true,
};
const wait: StripSpan = { label: 'Hands off', from: now + HOUR, to: now + 44 * HOUR, kind: 'wait' };
const windowSpan: StripSpan = {
  label: 'Next coat',
  from: now + 5 * HOUR,
  to: now + 9 * HOUR,
  kind: 'window',
};

describe('spans on a strip', () => {
  const kinds = fc.constantFrom('pour', 'wait', 'window', 'handle') as fc.Arbitrary<StripSpan['kind']>;
  const span = fc
    .record({
      label: fc.constantFrom('Colour coat is poured', 'Hands off', 'Flood coat: next coat without sanding'),
      start: fc.integer({ min: -80, max: 90 }),
      hours: fc.integer({ min: 0, max: 100 }),
      kind: kinds,
      now: fc.boolean(),
    })
    .map(
      ({ start, hours, ...rest }): StripSpan => ({
        ...rest,
        from: now + start * HOUR,
        to: now + (start + hours) * HOUR,
      }),
    );

  it('keep bars and words of one lane apart, and words on the strip', () => {
    fc.assert(
      fc.property(fc.array(span, { maxLength: 8 }), fc.constantFrom(360, 960, 1900), (spans, width) => {
        const x = linearScale(now - 3 * HOUR, now + 72 * HOUR, 1, width - 1);
        const placed = placeSpans(spans, x, width, 13);
        const boxes = placed.map((p) => {
          const long = textWidth(p.text, 13);
          const [a, b] = p.anchor === 'start' ? [p.textX, p.textX + long] : [p.textX - long, p.textX];
          return { lane: p.lane, from: Math.min(p.x, a), to: Math.max(p.x + p.width, b), a, b };
        });
        boxes.forEach((one, i) => {
          expect(one.a).toBeGreaterThanOrEqual(0);
          expect(one.b).toBeLessThanOrEqual(width + 1e-6);
          for (const other of boxes.slice(i + 1))
            if (other.lane === one.lane) expect(one.to <= other.from || other.to <= one.from).toBe(true);
        });
      }),
    );
  });

  it('outside the time shown are left out', () => {
    const x = linearScale(now, now + 72 * HOUR, 0, 900);
    const past = { ...wait, from: now - 9 * HOUR, to: now - HOUR };
    expect(placeSpans([past, wait], x, 900, 13).map((p) => p.span)).toEqual([wait]);
  });

  it('cut words too long for the strip', () => {
    expect(shortened('Hands off', 400, 13)).toBe('Hands off');
    const cut = shortened('Flood coat: next coat without sanding', 100, 13);
    expect(cut.endsWith('…')).toBe(true);
    expect(textWidth(cut, 13)).toBeLessThanOrEqual(100);
  });

  it('come from the moments of a job: its spans, and what may be sanded, handled, used', () => {
    const spans = spansOf(
      {
        spans: [{ kind: 'hands off', label: 'Hands off', from_ms: now - HOUR, to_ms: now + HOUR }],
        moments: [
          { key: 'handle', label: 'Can be handled', low_ms: now + HOUR, high_ms: now + 4 * HOUR },
          { key: 'pour', label: 'Mix', low_ms: now, high_ms: now },
        ],
      },
      now,
    );
    expect(spans).toEqual([
      { label: 'Hands off', from: now - HOUR, to: now + HOUR, kind: 'wait', now: true },
      { label: 'Can be handled', from: now + HOUR, to: now + 4 * HOUR, kind: 'handle' },
    ]);
  });
});

describe('strip chart', () => {
  const rows = [
    { title: 'Vanity', href: '/jobs/1', spans: [pour, wait, windowSpan] },
    { title: 'Round table', href: '/jobs/2', spans: [] },
  ];
  const markup = renderToStaticMarkup(<StripChart rows={rows} now_ms={now} system="us" />);

  it('links each job and says its spans in words', () => {
    expect(markup).toContain('<a href="/jobs/1">Vanity</a>');
    expect(markup).toContain(
      'Vanity. Colour coat is poured, now: Wed Mar 4, 9:10 am to Wed Mar 4, 11:10 am. Hands off: ',
    );
    expect(markup).toContain('Round table. Nothing in this time.');
    expect(markup).toContain('Now: Colour coat is poured');
  });

  it('marks now, days and hours once', () => {
    expect(markup.match(/>now</g)).toHaveLength(1);
    expect(markup.match(/>Thu Mar 5</g)).toHaveLength(1);
    expect(markup.match(/strip-now-line/g)).toHaveLength(2);
    expect(badAttributes(markup)).toEqual([]);
  });

  it('shows the moments of one job without a title of its own', () => {
    const one = renderToStaticMarkup(
      <StripChart moments={{ moments: [], spans: [] }} now_ms={now} system="metric" />,
    );
    expect(one).not.toContain('<h3>');
    expect(one).toContain('aria-label="Nothing in this time."');
  });
});
