/** Upper part of a forecast: viscosity against minutes, logarithmic; the film heavy, each cup thin with its own dashes. */
import { logTicks } from './axis.ts';
import { pathData, px } from './curve.ts';
import { type ForecastCurve, readingOf, thicknessWord } from './forecast-curves.ts';
import type { ForecastLayout } from './forecast-layout.ts';
import { type Box, placeBeside, type Spot, textWidth } from './label-places.ts';
import type { Scale } from './scale.ts';

/** Dash patterns by cup number; from the seventh on they repeat, the label at the line end still tells them apart. */
export const DASHES = ['7 4', '2 3', '11 3 2 3', '5 2 1 2 1 2', '14 5', '1 5'] as const;

export function dashOf(cup: number | null): string | undefined {
  return cup === null ? undefined : DASHES[(Math.max(1, Math.trunc(cup) || 1) - 1) % DASHES.length];
}

export interface PanelProps {
  readonly layout: ForecastLayout;
  readonly curves: readonly ForecastCurve[];
  readonly x: Scale;
  readonly y: Scale;
}

export function ViscosityPanel({
  layout,
  curves,
  x,
  y,
  pours,
}: PanelProps & { readonly pours: readonly Pour[] }) {
  const { left, right, viscosityTop, viscosityBottom, narrow, small, size } = layout;
  return (
    <g className="chart-panel">
      <text className="chart-title" x={narrow ? 0 : left} y={viscosityTop - 10} fontSize={size}>
        Thickness of the mix (viscosity in Pa s)
      </text>
      <ViscosityAxis layout={layout} y={y} />
      <rect
        className="chart-frame"
        x={left}
        y={viscosityTop}
        width={right - left}
        height={viscosityBottom - viscosityTop}
      />
      <CurveLines curves={curves} x={x} y={y} series="viscosity" />
      <EndLabels layout={layout} curves={curves} x={x} y={y} />
      <PourMarks pours={pours} curves={curves} x={x} y={y} small={small} />
    </g>
  );
}

/** Decades, with 2 and 5 between them where few decades are shown; on a wide chart in words as well. */
function ViscosityAxis({ layout, y }: Pick<PanelProps, 'layout' | 'y'>) {
  const { left, right, narrow, small } = layout;
  const few = y.high / y.low < 200;
  return logTicks(y.low, y.high).map(({ value, major }) => {
    const at = px(y.at(value));
    const figure = major || (few && /^0?[.0]*[25]0*$/.test(String(value)));
    const textY = px(y.at(value) + small * 0.35);
    return (
      <g key={value}>
        <line
          className={major ? 'chart-grid' : 'chart-tick'}
          x1={major ? left : left - 4}
          x2={major ? right : left}
          y1={at}
          y2={at}
        />
        {figure && (
          <text className="chart-text" x={left - 8} y={textY} fontSize={small} textAnchor="end">
            {major && !narrow && thicknessWord(value) !== '' && (
              <tspan className="chart-text-2">{`like ${thicknessWord(value)}\u2002`}</tspan>
            )}
            {value}
          </text>
        )}
      </g>
    );
  });
}

export interface Pour {
  readonly cup: number;
  readonly at_s: number;
}

interface PourMarksProps extends Omit<PanelProps, 'layout'> {
  readonly pours: readonly Pour[];
  readonly small: number;
}

/** Numbered marks where cups are poured; one that would cover the mark before it is left to the cup's own row. */
function PourMarks({ pours, curves, x, y, small }: PourMarksProps) {
  const radius = small * 0.68;
  const marks: { readonly cup: number; readonly at: Spot }[] = [];
  for (const { cup, at_s } of pours) {
    const curve = curves.find((c) => c.cup === cup);
    const reading = curve === undefined ? null : readingOf(curve, 'viscosity_Pa_s', at_s);
    if (reading === null || !(at_s <= x.high)) continue;
    const at = { x: x.at(at_s), y: y.at(reading) };
    const clear = marks.every((m) => Math.hypot(m.at.x - at.x, m.at.y - at.y) > radius * 2);
    if (clear) marks.push({ cup, at });
  }
  return marks.map(({ cup, at }) => (
    <g key={cup}>
      <title>{`Cup ${cup} is poured`}</title>
      <circle className="chart-pour" cx={px(at.x)} cy={px(at.y)} r={px(radius)} />
      <text
        className="chart-pour-text"
        x={px(at.x)}
        y={px(at.y + small * 0.34)}
        fontSize={small - 0.5}
        textAnchor="middle"
      >
        {cup}
      </text>
    </g>
  ));
}

export function CurveLines({
  curves,
  x,
  y,
  series,
}: Omit<PanelProps, 'layout'> & { readonly series: 'viscosity' | 'temperature' }) {
  return curves.map((curve) => (
    <path
      key={curve.key}
      className={curve.film ? 'chart-film' : 'chart-cup'}
      strokeDasharray={dashOf(curve.cup)}
      d={pathData(curve[series].map((p) => ({ x: x.at(p.time_s), y: y.at(p.value) })))}
    />
  ));
}

/** The name of each line at its end, clear of the other lines and names, with a mark for what ends it. */
function EndLabels({ layout, curves, x, y }: PanelProps) {
  const { small, left, viscosityTop, viscosityBottom, width } = layout;
  const frame: Box = { left, top: viscosityTop + 1, right: width, bottom: viscosityBottom - 1 };
  const ends = curves.flatMap((curve) => {
    const last = curve.viscosity.at(-1);
    return last === undefined ? [] : [{ curve, at: { x: x.at(last.time_s), y: y.at(last.value) } }];
  });
  const taken = [
    ...ends.map(({ at }) => around(at, 6)),
    ...curves.flatMap((c) =>
      alongLine(c.viscosity.map((p) => ({ x: x.at(p.time_s), y: y.at(p.value) }))).map((p) => around(p, 2)),
    ),
  ];
  return ends.map(({ curve, at }) => {
    const name = curve.film ? 'film' : curve.name;
    const label = placeBeside(at, textWidth(name, small) + 4, small, frame, taken);
    taken.push(label);
    return (
      <g key={curve.key}>
        <EndMark curve={curve} x={at.x} y={at.y} />
        <text
          className={curve.film ? 'chart-label chart-strong' : 'chart-label'}
          x={px((label.left + label.right) / 2)}
          y={px(label.bottom - small * 0.18)}
          fontSize={small}
          textAnchor="middle"
        >
          {name}
        </text>
      </g>
    );
  });
}

/** The line as points at most 6 px apart, ends left out. */
function alongLine(points: readonly Spot[]): Spot[] {
  return points.slice(1).flatMap((to, i) => {
    const from = points[i]!;
    const parts = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 6));
    return Array.from({ length: parts }, (_, k) => ({
      x: from.x + ((to.x - from.x) * k) / parts,
      y: from.y + ((to.y - from.y) * k) / parts,
    }));
  });
}

function around(at: Spot, reach: number): Box {
  return { left: at.x - reach, top: at.y - reach, right: at.x + reach, bottom: at.y + reach };
}

function EndMark({ curve, x, y }: { readonly curve: ForecastCurve; readonly x: number; readonly y: number }) {
  if (curve.ends === 'danger')
    return <path className="chart-danger" d={`M${px(x - 4)} ${px(y - 4)}l8 8m0 -8l-8 8`} />;
  if (curve.ends === 'gel')
    return <rect className="chart-gel" x={px(x - 3.5)} y={px(y - 3.5)} width="7" height="7" />;
  return null;
}
