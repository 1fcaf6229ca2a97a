/** Minutes after the first mix, and under them the clock where the start is known. */
import type { System } from '#core/quantity/units.ts';
import { minuteTicks } from './axis.ts';
import { timeOfDay } from './clock.ts';
import { px } from './curve.ts';
import type { ForecastLayout } from './forecast-layout.ts';
import type { Scale } from './scale.ts';
import { minutesText } from './time-text.ts';

interface TimeAxisProps {
  readonly layout: ForecastLayout;
  readonly x: Scale;
  readonly start_ms: number | null;
  readonly system: System;
}

export function TimeAxis({ layout, x, start_ms, system }: TimeAxisProps) {
  const { left, right, axisY, height, viscosityTop, small, narrow } = layout;
  const apart = small * (start_ms === null ? 3.2 : 5);
  const ticks = minuteTicks(x.low / 60, x.high / 60, Math.max(3, Math.floor((right - left) / apart)));
  return (
    <g className="chart-axis">
      {ticks.map((minutes) => {
        const at = px(x.at(minutes * 60));
        return (
          <g key={minutes}>
            <line className="chart-grid" x1={at} x2={at} y1={viscosityTop} y2={axisY + 5} />
            <line className="chart-grid-soft" x1={at} x2={at} y1={axisY + 5} y2={height} />
            <text
              className="chart-text chart-halo"
              x={at}
              y={px(axisY + small + 6)}
              fontSize={small}
              textAnchor="middle"
            >
              {minutesText(minutes * 60)}
            </text>
            {start_ms !== null && (
              <text
                className="chart-text-2 chart-halo"
                x={at}
                y={px(axisY + small * 2 + 9)}
                fontSize={small}
                textAnchor="middle"
              >
                {timeOfDay(start_ms + minutes * 60_000, system)}
              </text>
            )}
          </g>
        );
      })}
      {!narrow && (
        <text
          className="chart-text"
          x={left - 30}
          y={px(axisY + small + 6)}
          fontSize={small}
          textAnchor="end"
        >
          minutes after the first mix
        </text>
      )}
      {!narrow && start_ms !== null && (
        <text
          className="chart-text-2"
          x={left - 30}
          y={px(axisY + small * 2 + 9)}
          fontSize={small}
          textAnchor="end"
        >
          on the clock
        </text>
      )}
    </g>
  );
}
