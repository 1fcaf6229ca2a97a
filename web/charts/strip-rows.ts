/** One strip per job: which span stands on which lane and where its words go. */
import { textWidth } from './label-places.ts';
import type { Scale } from './scale.ts';

export type StripKind = 'pour' | 'wait' | 'window' | 'handle';

export interface StripSpan {
  readonly label: string;
  /** Epoch ms. */
  readonly from: number;
  readonly to: number;
  readonly kind: StripKind;
  /** It holds at this moment. */
  readonly now?: boolean;
}

export interface StripRow {
  readonly title: string;
  readonly href: string;
  readonly spans: readonly StripSpan[];
}

/** What the Today screen knows of one job: spans, and moments with the range they may fall in. */
export interface StripMoments {
  readonly moments: readonly {
    readonly key: string;
    readonly label: string;
    readonly low_ms: number;
    readonly high_ms: number;
  }[];
  readonly spans: readonly {
    readonly kind: 'pour' | 'hands off' | 'recoat';
    readonly label: string;
    readonly from_ms: number;
    readonly to_ms: number;
  }[];
}

const KIND_OF = { pour: 'pour', 'hands off': 'wait', recoat: 'window' } as const;
/** Moments that no span tells already. */
const POINTS: readonly string[] = ['sandable', 'handle', 'in use'];

export function spansOf({ moments, spans }: StripMoments, now_ms: number): StripSpan[] {
  return [
    ...spans.map(
      (s): StripSpan => ({
        label: s.label,
        from: s.from_ms,
        to: s.to_ms,
        kind: KIND_OF[s.kind],
        now: s.from_ms <= now_ms && now_ms < s.to_ms,
      }),
    ),
    ...moments
      .filter((m) => POINTS.includes(m.key))
      .map((m): StripSpan => ({ label: m.label, from: m.low_ms, to: m.high_ms, kind: 'handle' })),
  ];
}

export interface PlacedSpan {
  readonly span: StripSpan;
  readonly lane: number;
  readonly x: number;
  readonly width: number;
  readonly text: string;
  readonly textX: number;
  readonly anchor: 'start' | 'end';
  readonly inside: boolean;
  /** It goes on before the left or after the right end of the strip. */
  readonly before: boolean;
  readonly after: boolean;
}

const LEAST_PX = 4;
const GAP_PX = 8;

/**
 * Spans inside the strip, each with its words inside the bar, or beside it, on the first lane where bar and words are free;
 * words too long for the strip are cut with an ellipsis (the full words are in the strip's description).
 */
export function placeSpans(spans: readonly StripSpan[], x: Scale, width: number, size: number): PlacedSpan[] {
  const lanes: (readonly [number, number])[][] = [];
  const shown = spans.filter((s) => s.to >= x.low && s.from <= x.high && s.to >= s.from);
  return [...shown]
    .sort((a, b) => a.from - b.from || b.to - a.to)
    .map((span) => {
      const left = x.at(span.from);
      const right = Math.max(left + LEAST_PX, x.at(span.to));
      const whole = span.now === true ? `Now: ${span.label}` : span.label;
      const inside = textWidth(whole, size) * 1.06 + 12 <= right - left;
      const roomRight = width - right - GAP_PX;
      const roomLeft = left - GAP_PX;
      const wanted = textWidth(whole, size) * 1.06;
      const goRight = inside || wanted <= roomRight || roomRight >= roomLeft;
      const text = inside ? whole : shortened(whole, goRight ? roomRight : roomLeft, size);
      const long = textWidth(text, size) * 1.06;
      const textX = inside ? left + 6 : goRight ? right + GAP_PX : left - GAP_PX;
      const from = inside || goRight ? left : textX - long;
      const to = inside ? right : goRight ? textX + long : right;
      let lane = lanes.findIndex((l) => l.every(([a, b]) => to + GAP_PX <= a || from >= b + GAP_PX));
      if (lane < 0) lane = lanes.push([]) - 1;
      lanes[lane]!.push([from, to]);
      return {
        span,
        lane,
        x: left,
        width: right - left,
        text,
        textX,
        anchor: inside || goRight ? 'start' : 'end',
        inside,
        before: span.from < x.low,
        after: span.to > x.high,
      };
    });
}

/** The words cut to the width with an ellipsis. */
export function shortened(text: string, width: number, size: number): string {
  if (textWidth(text, size) * 1.06 <= width) return text;
  let kept = text;
  while (kept.length > 1 && textWidth(`${kept}…`, size) * 1.06 > width) kept = kept.slice(0, -1).trimEnd();
  return `${kept}…`;
}
