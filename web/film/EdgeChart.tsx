/** What gel finds on one kind of edge against the minute it is worked: film on face and arris, and what is on the floor by then. */
import '#web/charts/charts.css';
import { useId } from 'react';
import type { EdgeOutlook } from '#core/pour/film-outlook-edges.ts';
import { fromSI, type System } from '#core/quantity/units.ts';
import { logTicks, minuteTicks, niceTicks } from '#web/charts/axis.ts';
import { pathData, px } from '#web/charts/curve.ts';
import { linearScale, logScale } from '#web/charts/scale.ts';
import { minutesText } from '#web/charts/time-text.ts';
import { useWidth } from '#web/charts/use-width.ts';

interface Props {
  readonly edge: EdgeOutlook;
  readonly system: System;
  readonly words: string;
}

const LEFT = 46;
const TOP = 26;
const FILM_HEIGHT = 190;
const GAP = 44;
const FLOOR_HEIGHT = 90;

export function EdgeChart({ edge, system, words }: Props) {
  const { box, width } = useWidth<HTMLDivElement>(640);
  const hatch = useId();
  const size = width < 480 ? 12 : 13;
  const right = width - 10;
  const filmUnit = system === 'us' ? 'mil' : 'mm';
  const film = (value_m: number) => (system === 'us' ? fromSI(value_m, 'mil') : value_m * 1000);
  const volume = (value_m3: number) => (system === 'us' ? fromSI(value_m3, 'fl oz') : value_m3 * 1e6);
  const volumeUnit = system === 'us' ? 'fl oz' : 'mL';
  const { answers, planned } = edge;
  // At gel itself everything stays where it was put: no place to work at, and off the scale.
  const moments = answers.moments.filter((moment) => moment.thetaLeft_per_Pa > 0);
  const [first, last] = [moments[0], moments.at(-1)];
  if (first === undefined || last === undefined || !(last.time_s > first.time_s)) return null;
  const x = linearScale(first.time_s, last.time_s, LEFT, right);
  const films = moments.flatMap((moment) => [film(moment.faceMean_m), film(moment.arris_m)]);
  const y = logScale(Math.min(...films) * 0.8, Math.max(...films) * 1.3, TOP + FILM_HEIGHT, TOP);
  const floorTop = TOP + FILM_HEIGHT + GAP;
  const floorBottom = floorTop + FLOOR_HEIGHT;
  const most = Math.max(...moments.map((moment) => volume(moment.floor_m3)), 1e-3);
  const floor = linearScale(0, most * 1.1, floorBottom, floorTop);
  const line = (value: (moment: (typeof moments)[number]) => number) =>
    pathData(moments.map((moment) => ({ x: x.at(moment.time_s), y: value(moment) })));
  const filmMarks = logTicks(y.low, y.high).filter(
    ({ value, major }) => major || /^0?[.0]*[25]0*$/.test(String(value)),
  );
  const middle = moments[Math.floor(moments.length * 0.45)]!;
  const best = answers.window;
  return (
    <div className="chart edge-chart" ref={box}>
      <svg
        role="img"
        aria-label={words}
        viewBox={`0 0 ${width} ${floorBottom + 40}`}
        width={width}
        height={floorBottom + 40}
      >
        <defs>
          <pattern
            id={hatch}
            width="7"
            height="7"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line className="chart-hatch" x1="0" x2="0" y1="0" y2="7" strokeOpacity="0.3" />
          </pattern>
        </defs>
        <text className="chart-title" x="0" y={TOP - 10} fontSize={size}>
          Film that stays ({filmUnit})
        </text>
        {best !== undefined && (
          <rect
            fill={`url(#${hatch})`}
            className="chart-window-mark"
            x={px(x.at(best.from_s))}
            y={TOP}
            width={px(Math.max(4, x.at(best.to_s) - x.at(best.from_s)))}
            height={floorBottom - TOP}
          />
        )}
        {filmMarks.map(({ value, major }) => (
          <g key={value}>
            <line
              className={major ? 'chart-grid' : 'chart-grid-soft'}
              x1={LEFT}
              x2={right}
              y1={px(y.at(value))}
              y2={px(y.at(value))}
            />
            <text
              className="chart-text"
              x={LEFT - 6}
              y={px(y.at(value) + size * 0.35)}
              fontSize={size}
              textAnchor="end"
            >
              {value}
            </text>
          </g>
        ))}
        {niceTicks(0, most * 1.1, 4).map((value) => (
          <g key={value}>
            <line
              className="chart-grid"
              x1={LEFT}
              x2={right}
              y1={px(floor.at(value))}
              y2={px(floor.at(value))}
            />
            <text
              className="chart-text"
              x={LEFT - 6}
              y={px(floor.at(value) + size * 0.35)}
              fontSize={size}
              textAnchor="end"
            >
              {value}
            </text>
          </g>
        ))}
        <rect className="chart-frame" x={LEFT} y={TOP} width={right - LEFT} height={FILM_HEIGHT} />
        <rect className="chart-frame" x={LEFT} y={floorTop} width={right - LEFT} height={FLOOR_HEIGHT} />
        {minuteTicks(first.time_s / 60, last.time_s / 60, Math.max(3, Math.floor((right - LEFT) / 64))).map(
          (minutes) => (
            <g key={minutes}>
              <line
                className="chart-tick"
                x1={px(x.at(minutes * 60))}
                x2={px(x.at(minutes * 60))}
                y1={floorBottom}
                y2={floorBottom + 5}
              />
              <text
                className="chart-text"
                x={px(x.at(minutes * 60))}
                y={floorBottom + size + 6}
                fontSize={size}
                textAnchor="middle"
              >
                {minutesText(minutes * 60)}
              </text>
            </g>
          ),
        )}
        <text
          className="chart-text-2"
          x={right}
          y={floorBottom + size * 2 + 9}
          fontSize={size}
          textAnchor="end"
        >
          minutes after the first mix, edge worked
        </text>
        <path className="chart-film" d={line((moment) => y.at(film(moment.faceMean_m)))} />
        <path className="chart-cup" strokeDasharray="7 4" d={line((moment) => y.at(film(moment.arris_m)))} />
        <path className="chart-film" d={line((moment) => floor.at(volume(moment.floor_m3)))} />
        <text
          className="chart-label chart-strong"
          x={px(x.at(middle.time_s))}
          y={px(y.at(film(middle.faceMean_m)) + size * 1.6)}
          fontSize={size}
          textAnchor="middle"
        >
          face
        </text>
        <text
          className="chart-label"
          x={px(x.at(middle.time_s))}
          y={px(y.at(film(middle.arris_m)) - size * 0.6)}
          fontSize={size}
          textAnchor="middle"
        >
          arris
        </text>
        <Mark x={x.at(planned.time_s)} to={floorBottom} text="planned" size={size} right={right} dashed />
        <Mark
          x={x.at(answers.best.time_s)}
          to={floorBottom}
          text={best === undefined ? 'best, short of the film' : 'best'}
          size={size}
          right={right}
        />
        <text className="chart-title chart-halo" x="0" y={floorTop - 10} fontSize={size}>
          On the floor ({volumeUnit})
        </text>
      </svg>
    </div>
  );
}

interface MarkProps {
  readonly x: number;
  readonly to: number;
  readonly text: string;
  readonly size: number;
  readonly right: number;
  readonly dashed?: boolean;
}

function Mark({ x, to, text, size, right, dashed = false }: MarkProps) {
  const leftOf = x + text.length * size * 0.6 > right;
  return (
    <g>
      <line
        className="edge-mark"
        strokeDasharray={dashed ? '3 3' : undefined}
        x1={px(x)}
        x2={px(x)}
        y1={TOP}
        y2={to}
      />
      <text
        className="chart-label"
        x={px(leftOf ? x - 5 : x + 5)}
        y={dashed ? TOP + size + 3 : TOP + FILM_HEIGHT - 7}
        fontSize={size}
        textAnchor={leftOf ? 'end' : 'start'}
      >
        {text}
      </text>
    </g>
  );
}
