/** The next three days: one strip per job with what is poured, what waits, what opens, and a line at now. */
import { useId } from 'react';
import type { System } from '#core/quantity/units.ts';
import './charts.css';
import { dayAndTime, dayText, hourMarks, hourOfDay } from './clock.ts';
import { px } from './curve.ts';
import { Hatch, type HatchIds, hatchIds } from './Hatch.tsx';
import { linearScale, type Scale } from './scale.ts';
import {
  type PlacedSpan,
  placeSpans,
  type StripMoments,
  type StripRow,
  type StripSpan,
  spansOf,
} from './strip-rows.ts';
import { useWidth } from './use-width.ts';

interface Common {
  /** Epoch ms; the strip begins a little before it. */
  readonly now_ms: number;
  readonly system: System;
  /** How far ahead it shows; 72 when left out. */
  readonly hours?: number;
}

/** Many jobs with their titles, or the moments of one job whose title the page already shows. */
export type StripChartProps = Common &
  ({ readonly rows: readonly StripRow[] } | { readonly moments: StripMoments });

const HOUR_MS = 3_600_000;
const LANE_PX = 26;
const BAR_PX = 20;

export function StripChart(props: StripChartProps) {
  const { now_ms, system, hours = 72 } = props;
  const { box, width, printing } = useWidth<HTMLDivElement>(960);
  const hatch = hatchIds(useId());
  const size = printing ? 11.5 : width >= 1500 ? 15 : 13;
  const x = linearScale(now_ms - hours * HOUR_MS * 0.04, now_ms + hours * HOUR_MS, 1, width - 1);
  const strip = { x, width, size, now_ms, system, hatch };
  if ('moments' in props)
    return (
      <div className="chart strip-chart" ref={box}>
        <Strip {...strip} spans={spansOf(props.moments, now_ms)} title="" axis />
      </div>
    );
  return (
    <div className="chart strip-chart" ref={box}>
      <ol>
        {props.rows.map((row, i) => (
          <li key={row.href} className="strip-row">
            <h3>
              <a href={row.href}>{row.title}</a>
            </h3>
            <Strip {...strip} spans={row.spans} title={row.title} axis={i === 0} />
          </li>
        ))}
      </ol>
    </div>
  );
}

interface StripProps {
  readonly x: Scale;
  readonly width: number;
  readonly size: number;
  readonly now_ms: number;
  readonly system: System;
  readonly hatch: HatchIds;
  readonly spans: readonly StripSpan[];
  readonly title: string;
  /** Hours and days above this strip; the others carry the lines only. */
  readonly axis: boolean;
}

function Strip({ x, width, size, now_ms, system, hatch, spans, title, axis }: StripProps) {
  const placed = placeSpans(spans, x, width, size);
  const lanes = Math.max(1, ...placed.map((p) => p.lane + 1));
  const top = axis ? size * 2 + 14 : 6;
  const height = top + lanes * LANE_PX + 4;
  const ids = { range: `${hatch.range}-${title.length}${placed.length}`, stop: hatch.stop };
  const words = placed.map(({ span }) => spanSays(span, system));
  return (
    <svg
      role="img"
      aria-label={`${title === '' ? '' : `${title}. `}${words.length === 0 ? 'Nothing in this time' : words.join('. ')}.`}
      viewBox={`0 0 ${width} ${px(height)}`}
      width={width}
      height={px(height)}
    >
      <Hatch ids={ids} />
      <StripTicks x={x} top={top} height={height} size={size} system={system} words={axis} now_ms={now_ms} />
      {placed.map((p, i) => (
        <StripBar
          key={`${p.lane} ${p.x}`}
          placed={p}
          y={top + p.lane * LANE_PX + 3}
          size={size}
          hatch={ids}
          says={words[i]!}
        />
      ))}
      <line
        className="strip-now-line"
        x1={px(x.at(now_ms))}
        x2={px(x.at(now_ms))}
        y1={px(top - 4)}
        y2={px(height)}
      />
    </svg>
  );
}

/** "Colour coat is poured, now: Wed Mar 4, 9:30 am to Wed Mar 4, 11:15 am". */
function spanSays(span: StripSpan, system: System): string {
  const time = `${dayAndTime(span.from, system)} to ${dayAndTime(span.to, system)}`;
  return span.kind === 'handle'
    ? `${span.label}: between ${time.replace(' to ', ' and ')}`
    : `${span.label}${span.now === true ? ', now' : ''}: ${time}`;
}

interface StripBarProps {
  readonly placed: PlacedSpan;
  readonly y: number;
  readonly size: number;
  readonly hatch: HatchIds;
  readonly says: string;
}

function StripBar({ placed, y, size, hatch, says }: StripBarProps) {
  const { span, x, width, text, textX, anchor, inside, before, after } = placed;
  // A wait is a line with its words above it.
  const line = span.kind === 'wait';
  const fill = span.kind === 'handle' ? { fill: `url(#${hatch.range})` } : {};
  const midY = line ? y + BAR_PX - 0.5 : y + BAR_PX / 2;
  const dark = inside && span.kind === 'pour';
  return (
    <g>
      <title>{says}</title>
      <rect
        className={`strip-${span.kind}${span.now === true ? ' strip-is-now' : ''}`}
        x={px(x)}
        y={px(line ? y + BAR_PX - 3 : y)}
        width={px(width)}
        height={line ? 5 : BAR_PX}
        {...fill}
      />
      {before && <path className="chart-beyond" d={`M${px(x + 5)} ${px(midY - 7)}l-5 7l5 7z`} />}
      {after && <path className="chart-beyond" d={`M${px(x + width - 5)} ${px(midY - 7)}l5 7l-5 7z`} />}
      <text
        className={
          dark ? 'strip-on-dark' : `chart-text chart-halo${span.now === true ? ' chart-strong' : ''}`
        }
        x={px(textX)}
        y={px(y + BAR_PX / 2 + size * 0.36 - (line && inside ? 4 : 0))}
        fontSize={size}
        textAnchor={anchor}
      >
        {text}
      </text>
    </g>
  );
}

interface StripTicksProps {
  readonly x: Scale;
  readonly top: number;
  readonly height: number;
  readonly size: number;
  readonly system: System;
  readonly words: boolean;
  readonly now_ms: number;
}

/** Days above, hours below; hours only where their words have room, and none under the word "now". */
function StripTicks({ x, top, height, size, system, words, now_ms }: StripTicksProps) {
  const perHour = (x.at(x.high) - x.at(x.low)) / ((x.high - x.low) / HOUR_MS);
  const every = [3, 6, 12].find((n) => n * perHour >= size * 4.4) ?? 24;
  const marks = hourMarks(x.low, x.high, every);
  const nowX = x.at(now_ms);
  const end = x.at(x.high);
  return (
    <g className="chart-axis">
      {marks.map((m) => {
        const at = x.at(m.at_ms);
        const clear = Math.abs(at - nowX) > size * 3.6 && at > size * 2 && at < end - size * 2;
        return (
          <g key={m.at_ms}>
            <line
              className={m.midnight ? 'chart-tick' : 'chart-grid'}
              x1={px(at)}
              x2={px(at)}
              y1={px(words && m.midnight ? 0 : top - 4)}
              y2={px(height)}
            />
            {words && m.midnight && at < end - size * 5 && (
              <text className="chart-text" x={px(at + 5)} y={px(size)} fontSize={size}>
                {dayText(m.at_ms, system)}
              </text>
            )}
            {words && !m.midnight && clear && (
              <text
                className="chart-text-2"
                x={px(at)}
                y={px(size * 2 + 5)}
                fontSize={size - 0.5}
                textAnchor="middle"
              >
                {hourOfDay(m.at_ms, system)}
              </text>
            )}
          </g>
        );
      })}
      {words && (
        <text
          className="strip-now-text"
          x={px(Math.max(0, nowX - size))}
          y={px(size * 2 + 5)}
          fontSize={size}
        >
          now
        </text>
      )}
    </g>
  );
}
