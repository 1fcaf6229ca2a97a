/** Lower part of a forecast: temperature of film and cups, with the two lines a cup must not pass. */
import { formatTemperature } from '#core/quantity/format.ts';
import { fromSI, type System, toSI } from '#core/quantity/units.ts';
import { niceTicks } from './axis.ts';
import { px } from './curve.ts';
import { DANGER_K, POUR_NOW_K } from './forecast-curves.ts';
import { CurveLines, type PanelProps } from './ViscosityPanel.tsx';

export function TemperaturePanel({ layout, curves, x, y, system }: PanelProps & { readonly system: System }) {
  const { left, right, temperatureTop, temperatureBottom, small, size, narrow } = layout;
  const unit = system === 'us' ? 'F' : 'C';
  const ticks = niceTicks(fromSI(y.low, unit), fromSI(y.high, unit), 5);
  return (
    <g className="chart-panel">
      <text className="chart-title" x={narrow ? 0 : left} y={temperatureTop - 7} fontSize={size}>
        {`Temperature, °${unit}`}
      </text>
      {ticks.map((value) => {
        const at = y.at(toSI(value, unit));
        return (
          <g key={value}>
            <line className="chart-grid" x1={left} x2={right} y1={px(at)} y2={px(at)} />
            <text
              className="chart-text"
              x={left - 8}
              y={px(at + small * 0.35)}
              fontSize={small}
              textAnchor="end"
            >
              {value}
            </text>
          </g>
        );
      })}
      <rect
        className="chart-frame"
        x={left}
        y={temperatureTop}
        width={right - left}
        height={temperatureBottom - temperatureTop}
      />
      <CurveLines curves={curves} x={x} y={y} series="temperature" />
      {[
        { at_K: POUR_NOW_K, words: 'pour now', line: 'chart-warn-line' },
        { at_K: DANGER_K, words: 'danger', line: 'chart-danger-line' },
      ].map(({ at_K, words, line }) => (
        <g key={words}>
          <line className={line} x1={left} x2={right} y1={px(y.at(at_K))} y2={px(y.at(at_K))} />
          <text
            className={words === 'danger' ? 'chart-label chart-stop-text' : 'chart-label'}
            x={narrow ? right - 4 : right + 6}
            y={px(y.at(at_K) + (narrow ? -3 : small * 0.35))}
            fontSize={small}
            textAnchor={narrow ? 'end' : 'start'}
          >
            {narrow ? `${words} ${formatTemperature(at_K, system)}` : words}
          </text>
        </g>
      ))}
    </g>
  );
}
