/**
 * What comes hours and days after a pour, on an axis where each step is longer than the last (logarithmic): recoat window,
 * dry hard, sanding, handling, use, full cure; each beginning as the range it may fall in.
 */
import { type ReactNode, useId } from 'react';
import type { StageForecast } from '#core/pour/plan.ts';
import type { System } from '#core/quantity/units.ts';
import './charts.css';
import { afterPourTicks, thinned } from './axis.ts';
import { clockStart_ms, dayText } from './clock.ts';
import { px } from './curve.ts';
import { Hatch, type HatchIds, hatchIds } from './Hatch.tsx';
import { logScale, type Scale } from './scale.ts';
import { type LabelTime, type StageRow, stageRows, stageSays, stageSpan_s } from './stage-rows.ts';
import { useWidth } from './use-width.ts';

export interface StageBarProps {
  readonly stages: readonly StageForecast[];
  readonly system: System;
  /** Local ISO time of the first mix; dates only when given. */
  readonly clockStart?: string;
  /** What the label prints; a figure outside the model's range is marked. */
  readonly labels?: readonly LabelTime[];
  /** What opens under the bar; the stages in words when not given. */
  readonly words?: ReactNode;
}

const BAR_PX = 16;

export function StageBar({ stages, system, clockStart, labels = [], words }: StageBarProps) {
  const { box, width, printing } = useWidth<HTMLDivElement>(960);
  const hatch = hatchIds(useId());
  const start_ms = clockStart_ms(clockStart);
  const rows = stageRows(stages, labels, start_ms, system);
  const narrow = width < 660;
  const size = printing ? 12 : width >= 1500 ? 16 : 13.5;
  const small = printing ? 11 : width >= 1500 ? 14.5 : 12.5;
  const left = narrow ? 8 : Math.round(size * 18);
  const right = width - (narrow ? 14 : 40);
  const x = logScale(...stageSpan_s(rows), left, right);
  const top = small * (start_ms === null ? 1 : 2) + 14;
  const places = placed(rows, top + 12, size, small, narrow);
  const height = (places.at(-1)?.bottom ?? top) + 6;
  return (
    <div className="chart stage-bar" ref={box}>
      <p className="chart-title-line">
        Hours and days after the first mix (logarithmic: each step is longer than the last)
      </p>
      <StageLegend hatch={hatch} disagrees={rows.some((r) => r.disagrees.length > 0)} />
      <svg
        role="img"
        aria-label={`After the pour. ${rows.map(stageSays).join('. ')}.`}
        viewBox={`0 0 ${width} ${px(height)}`}
        width={width}
        height={px(height)}
      >
        <Hatch ids={hatch} />
        <StageAxis x={x} top={top} height={height} small={small} start_ms={start_ms} system={system} />
        {places.map(({ row, y, barY }) => (
          <g key={row.key}>
            <title>{stageSays(row)}</title>
            <line className="chart-row-rule" x1="0" x2={width} y1={px(y - 5)} y2={px(y - 5)} />
            <text className="chart-row-name chart-halo" x="0" y={px(y + size)} fontSize={size}>
              {row.name}
            </text>
            {row.values.map((line, i) => (
              <text
                key={line}
                className="chart-text chart-halo"
                x="0"
                y={px(y + size + (i + 1) * (small + 3))}
                fontSize={small}
              >
                {line}
              </text>
            ))}
            <StageBand row={row} y={barY} x={x} hatch={hatch} small={small} />
          </g>
        ))}
      </svg>
      <details className="chart-table">
        <summary>The same in words, with what it rests on</summary>
        {words ?? (
          <ul className="stage-list">
            {rows.map((row) => (
              <li key={row.key}>
                {stageSays(row)}.<span className="stage-why">{`${row.criterion} (${row.basis})`}</span>
              </li>
            ))}
          </ul>
        )}
      </details>
    </div>
  );
}

interface Placed {
  readonly row: StageRow;
  readonly y: number;
  readonly barY: number;
  readonly bottom: number;
}

function placed(
  rows: readonly StageRow[],
  from: number,
  size: number,
  small: number,
  narrow: boolean,
): Placed[] {
  let y = from;
  return rows.map((row) => {
    const text = size + 5 + row.values.length * (small + 3);
    // A label's own figure stands under the band.
    const band = BAR_PX + (row.disagrees.length > 0 ? small + 6 : 0);
    const height = narrow ? text + band + 14 : Math.max(text, band) + 12;
    const at = {
      row,
      y,
      barY: narrow ? y + text + 2 : y + 4 + (Math.max(text, band) - band) / 2,
      bottom: y + height,
    };
    y += height;
    return at;
  });
}

interface StageAxisProps {
  readonly x: Scale;
  readonly top: number;
  readonly height: number;
  readonly small: number;
  readonly start_ms: number | null;
  readonly system: System;
}

function StageAxis({ x, top, height, small, start_ms, system }: StageAxisProps) {
  const ticks = afterPourTicks(x.low, x.high);
  const told = thinned(ticks, (t) => x.at(t.at_s), small * 3.2);
  const dated = thinned(
    told.filter((t) => t.at_s >= 86_400),
    (t) => x.at(t.at_s),
    small * 6,
  );
  return (
    <g className="chart-axis">
      {ticks.map((t) => (
        <line
          key={t.at_s}
          className="chart-grid"
          x1={px(x.at(t.at_s))}
          x2={px(x.at(t.at_s))}
          y1={px(top)}
          y2={px(height)}
        />
      ))}
      {told.map((t) => (
        <text
          key={t.at_s}
          className="chart-text"
          x={px(x.at(t.at_s))}
          y={small}
          fontSize={small}
          textAnchor="middle"
        >
          {t.text}
        </text>
      ))}
      {start_ms !== null &&
        dated.map((t) => (
          <text
            key={t.at_s}
            className="chart-text-2"
            x={px(x.at(t.at_s))}
            y={px(small * 2 + 4)}
            fontSize={small}
            textAnchor="middle"
          >
            {dayText(start_ms + t.at_s * 1000, system)}
          </text>
        ))}
    </g>
  );
}

interface StageBandProps {
  readonly row: StageRow;
  readonly y: number;
  readonly x: Scale;
  readonly hatch: HatchIds;
  readonly small: number;
}

function StageBand({ row, y, x, hatch, small }: StageBandProps) {
  const { begins, ends, best, disagrees } = row;
  const rect = (name: string, from: number, to: number, more: { readonly fill?: string } = {}) => (
    <rect
      className={name}
      x={px(from)}
      y={px(y)}
      width={px(Math.max(0, to - from))}
      height={BAR_PX}
      {...more}
    />
  );
  const range = (r: { readonly low_s: number; readonly high_s: number }) =>
    rect('chart-closing', x.at(r.low_s), x.at(r.high_s), { fill: `url(#${hatch.range})` });
  const openTo = ends === null ? x.at(x.high) : x.at(ends.low_s);
  return (
    <g>
      {begins !== null && openTo > x.at(begins.high_s) && rect('chart-window', x.at(begins.high_s), openTo)}
      {begins !== null && range(begins)}
      {ends !== null && range(ends)}
      {best !== null && (
        <rect
          className="chart-planned"
          x={px(x.at(best.from_s))}
          y={px(y + 4)}
          width={px(x.at(best.to_s) - x.at(best.from_s))}
          height={BAR_PX - 8}
        />
      )}
      {begins !== null && best === null && (
        <line
          className="chart-mark"
          x1={px(x.at(begins.mid_s))}
          x2={px(x.at(begins.mid_s))}
          y1={px(y)}
          y2={px(y + BAR_PX)}
        />
      )}
      {disagrees.map((label) => {
        const at = x.at(label.at_s);
        const nearEnd = at > (x.at(x.low) + x.at(x.high)) / 2;
        return (
          <g key={`${label.key} ${label.text}`}>
            <path
              className="stage-label-mark"
              d={`M${px(at)} ${px(y - 3)}l6 ${BAR_PX / 2 + 3}l-6 ${BAR_PX / 2 + 3}l-6 -${BAR_PX / 2 + 3}z`}
            />
            <text
              className="chart-stop-text chart-halo"
              x={px(at)}
              y={px(y + BAR_PX + small + 3)}
              fontSize={small}
              textAnchor={nearEnd ? 'end' : 'start'}
            >
              {`label: ${label.text}`}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function StageLegend({ hatch, disagrees }: { readonly hatch: HatchIds; readonly disagrees: boolean }) {
  return (
    <ul className="chart-legend">
      <li>
        <svg width="30" height="16" aria-hidden="true">
          <rect
            className="chart-closing"
            x="0.5"
            y="0.5"
            width="29"
            height="15"
            fill={`url(#${hatch.range})`}
          />
        </svg>
        begins or ends in here (5 to 95 %)
      </li>
      <li>
        <svg width="30" height="16" aria-hidden="true">
          <rect className="chart-window" x="0.5" y="0.5" width="29" height="15" />
        </svg>
        holds
      </li>
      <li>
        <svg width="30" height="16" aria-hidden="true">
          <rect className="chart-planned" x="0" y="4" width="30" height="8" />
        </svg>
        best time
      </li>
      {disagrees && (
        <li>
          <svg width="16" height="16" aria-hidden="true">
            <path className="stage-label-mark" d="M8 0l5 8l-5 8l-5 -8z" />
          </svg>
          the label says otherwise
        </li>
      )}
    </ul>
  );
}
