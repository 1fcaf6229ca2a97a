/**
 * One coat in one picture: how thick film and cups get minute by minute, how warm, and under it on the same axis what may
 * be done when. Reads by pointer, finger, keyboard (a slider under the axis) and as a table.
 */
import { type PointerEvent, type ReactNode, useId, useMemo, useRef, useState } from 'react';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { System } from '#core/quantity/units.ts';
import './charts.css';
import { BandButtons, type ButtonsByRow } from './BandButtons.tsx';
import { BandRows } from './BandRows.tsx';
import { BandWhyPanel } from './BandWhyPanel.tsx';
import { clockStart_ms } from './clock.ts';
import { px } from './curve.ts';
import { ForecastTable, momentAt, momentText, Readings } from './ForecastReadings.tsx';
import { forecastCurves, temperatureDomain, viscosityDomain } from './forecast-curves.ts';
import {
  type ForecastLayout,
  type ForecastSpan,
  forecastLayout,
  laneY,
  spanEnd_s,
  spansDiffer,
} from './forecast-layout.ts';
import { forecastRows, type Row } from './forecast-rows.ts';
import { Hatch, hatchIds } from './Hatch.tsx';
import { Legend } from './Legend.tsx';
import { textWidth } from './label-places.ts';
import { linearScale, logScale, within } from './scale.ts';
import { TemperaturePanel } from './TemperaturePanel.tsx';
import { TimeAxis } from './TimeAxis.tsx';
import { minutesWithUnit } from './time-text.ts';
import { useEscape } from './use-escape.ts';
import { useWidth } from './use-width.ts';
import { type Pour, ViscosityPanel } from './ViscosityPanel.tsx';

export interface ForecastChartProps {
  readonly plan: CoatPlan;
  readonly system: System;
  /** Local ISO time of the first mix ("2026-03-04T09:30"); clock labels only when given. */
  readonly clockStart?: string;
  /** Leave the temperature panel out. */
  readonly temperature?: boolean;
  /** What the chart shows first; the reader can change it. */
  readonly span?: ForecastSpan;
  /** Bands that say why they are where they are; left out, they are a picture only. */
  readonly why?: BandsWhy;
}

export interface BandsWhy {
  /** Key of the row that is open, if any. */
  readonly open: string | null;
  readonly onOpen: (key: string | null) => void;
  readonly render: (row: Row) => ReactNode;
}

const STEP_S = 30;

export function ForecastChart({
  plan,
  system,
  clockStart,
  temperature = true,
  span: first = 'pour',
  why,
}: ForecastChartProps) {
  const { box, width, printing } = useWidth<HTMLDivElement>(960);
  const [span, setSpan] = useState<ForecastSpan>(first);
  const [cursor, setCursor] = useState<number | null>(null);
  const id = useId();
  const hatch = hatchIds(id);
  const start_ms = clockStart_ms(clockStart);
  const end_s = spanEnd_s(plan, span);
  const rows = useMemo(() => forecastRows(plan), [plan]);
  const curves = useMemo(() => forecastCurves(plan, end_s), [plan, end_s]);
  // Paper has the run sheet and the stages beside the chart: only rows with something to see stay.
  const shown = printing ? rows.filter((row) => row.lanes.flat().some((bar) => bar.opens_s < end_s)) : rows;
  const asks = printing ? undefined : why;
  const layout = forecastLayout(width, shown, {
    clock: start_ms !== null,
    temperature,
    paper: printing,
    tapped: asks !== undefined,
  });
  const x = linearScale(0, end_s, layout.left, layout.right);
  const [thin, thick] = viscosityDomain(curves);
  const y = logScale(thin, thick, layout.viscosityBottom, layout.viscosityTop);
  const at_s = within(cursor ?? plan.filmStart_s, 0, end_s);
  const moment = momentAt(plan, curves, at_s, start_ms, system);
  const follow = (event: PointerEvent<HTMLElement>): void => {
    if (event.pointerType !== 'mouse' && event.type === 'pointermove' && event.buttons === 0) return;
    const frame = event.currentTarget.getBoundingClientRect();
    if (frame.width > 0)
      setCursor(
        Math.round(x.value(((event.clientX - frame.left) * layout.width) / frame.width) / STEP_S) * STEP_S,
      );
  };
  const buttons = useRef<ButtonsByRow>(new Map());
  const openRow = rows.find((row) => row.key === asks?.open);
  const close = (): void => {
    asks?.onOpen(null);
    if (openRow !== undefined) buttons.current.get(openRow.key)?.focus();
  };
  useEscape(openRow === undefined ? null : close, box);
  return (
    <div className="chart forecast-chart" ref={box}>
      <Legend hatch={hatch} />
      {spansDiffer(plan) && <SpanChoice name={id} span={span} onSpan={setSpan} />}
      <div className="chart-plot" onPointerMove={follow} onPointerDown={follow}>
        <svg
          role="img"
          aria-label={`Forecast of the coat, in minutes after the first mix. ${plan.says} The table under the chart gives every figure.`}
          viewBox={`0 0 ${layout.width} ${layout.height}`}
          width={layout.width}
          height={layout.height}
        >
          <Hatch ids={hatch} />
          <TimeAxis layout={layout} x={x} start_ms={start_ms} system={system} />
          <ViscosityPanel layout={layout} curves={curves} x={x} y={y} pours={poursOf(plan)} />
          {temperature && (
            <TemperaturePanel
              layout={layout}
              curves={curves}
              x={x}
              y={linearScale(...temperatureDomain(curves), layout.temperatureBottom, layout.temperatureTop)}
              system={system}
            />
          )}
          <BandRows layout={layout} x={x} hatch={hatch} />
          <Cursor layout={layout} x={x.at(at_s)} text={minutesWithUnit(at_s)} />
        </svg>
        {asks !== undefined && (
          <BandButtons
            layout={layout}
            open={openRow?.key ?? null}
            panel={`${id}-why`}
            buttons={buttons}
            onPress={(key) => asks.onOpen(key === openRow?.key ? null : key)}
          />
        )}
      </div>
      <input
        className="chart-slider"
        type="range"
        min={0}
        max={Math.floor(end_s / STEP_S) * STEP_S}
        step={STEP_S}
        value={Math.round(at_s / STEP_S) * STEP_S}
        onChange={(event) => setCursor(Number(event.currentTarget.value))}
        aria-label="Minute of the forecast"
        aria-valuetext={momentText(moment)}
        style={{ marginLeft: layout.left - 14, width: layout.right - layout.left + 28 }}
      />
      {asks !== undefined && (
        <BandWhyPanel id={`${id}-why`} row={openRow} onClose={close} render={asks.render} />
      )}
      <Readings moment={moment} />
      <ForecastTable rows={rows} />
    </div>
  );
}

interface CursorProps {
  readonly layout: ForecastLayout;
  readonly x: number;
  readonly text: string;
}

/** The reader's minute: through the panels and across each band, not through words; its figure at the head of the line. */
function Cursor({ layout, x, text }: CursorProps) {
  const bars = layout.rows.map((r) => `M${px(x)} ${px(r.barY - 4)}V${px(laneY(r, r.row.lanes.length) + 1)}`);
  const { small, right, viscosityTop } = layout;
  const leftOf = x + textWidth(text, small) + 10 > right;
  return (
    <g className="chart-cursor">
      <path d={`M${px(x)} ${px(viscosityTop)}V${px(layout.axisY + 5)}${bars.join('')}`} />
      <text
        className="chart-halo"
        x={px(leftOf ? x - 6 : x + 6)}
        y={px(viscosityTop + small + 3)}
        fontSize={small}
        textAnchor={leftOf ? 'end' : 'start'}
      >
        {text}
      </text>
    </g>
  );
}

function poursOf(plan: CoatPlan): Pour[] {
  return plan.steps.flatMap((s) =>
    s.kind === 'pour' && s.cup !== null ? [{ cup: s.cup, at_s: s.start_s }] : [],
  );
}

interface SpanChoiceProps {
  readonly name: string;
  readonly span: ForecastSpan;
  readonly onSpan: (span: ForecastSpan) => void;
}

function SpanChoice({ name, span, onSpan }: SpanChoiceProps) {
  const choices: readonly (readonly [ForecastSpan, string])[] = [
    ['pour', 'The pour'],
    ['gel', 'Until it gels'],
  ];
  return (
    <fieldset className="chart-span">
      <legend>Show</legend>
      {choices.map(([value, label]) => (
        <label key={value}>
          <input
            type="radio"
            name={name}
            value={value}
            checked={span === value}
            onChange={() => onSpan(value)}
          />
          {label}
        </label>
      ))}
    </fieldset>
  );
}
