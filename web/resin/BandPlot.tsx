/** A chart of bands: a middle line with its 5 to 95 % band, and what was read over it. Ink on paper; words and dashes before colour. */
import '#web/charts/charts.css';
import { pathData, px } from '#web/charts/curve.ts';
import { linearScale, logScale, type Scale } from '#web/charts/scale.ts';
import { useWidth } from '#web/charts/use-width.ts';

export interface Axis {
  readonly kind: 'linear' | 'log';
  readonly low: number;
  readonly high: number;
  readonly title: string;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
}

export interface PlotBand {
  readonly name: string;
  readonly dashed?: boolean;
  readonly points: readonly {
    readonly x: number;
    readonly low: number;
    readonly mid: number;
    readonly high: number;
  }[];
}

export interface PlotMark {
  readonly x: number;
  /** null: a time alone, drawn as a line from top to bottom. */
  readonly y: number | null;
  /** Number in the list under the chart; null for one of many readings. */
  readonly number: number | null;
  readonly faint: boolean;
}

export interface BandPlotProps {
  readonly says: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly bands: readonly PlotBand[];
  readonly marks?: readonly PlotMark[];
  /** A level across, with its name. */
  readonly levels?: readonly { readonly at: number; readonly name: string }[];
}

const scaleOf = (axis: Axis, from: number, to: number): Scale =>
  axis.kind === 'log' ? logScale(axis.low, axis.high, from, to) : linearScale(axis.low, axis.high, from, to);

export function BandPlot({ says, x: xAxis, y: yAxis, bands, marks = [], levels = [] }: BandPlotProps) {
  const { box, width, printing } = useWidth<HTMLDivElement>(640);
  const size = printing ? 12 : 13.5;
  const left = 52;
  const right = width - 14;
  const top = size + 14;
  const bottom = top + (printing ? 330 : Math.max(190, Math.min(360, (right - left) * 0.5)));
  const height = bottom + size * 2 + 18;
  const x = scaleOf(xAxis, left, right);
  const y = scaleOf(yAxis, bottom, top);
  return (
    <div className="chart band-plot" ref={box}>
      <svg
        role="img"
        aria-label={says}
        viewBox={`0 0 ${width} ${px(height)}`}
        width={width}
        height={px(height)}
      >
        <text className="chart-text" x={0} y={size} fontSize={size}>
          {yAxis.title}
        </text>
        {yAxis.ticks.map(({ at, text }) => (
          <g key={text}>
            <line className="chart-grid" x1={left} x2={right} y1={px(y.at(at))} y2={px(y.at(at))} />
            <text
              className="chart-text"
              x={left - 7}
              y={px(y.at(at) + size * 0.35)}
              fontSize={size}
              textAnchor="end"
            >
              {text}
            </text>
          </g>
        ))}
        {apart(xAxis.ticks, x, size).map(({ at, text }) => (
          <g key={text}>
            <line className="chart-grid" x1={px(x.at(at))} x2={px(x.at(at))} y1={top} y2={px(bottom + 4)} />
            <text
              className="chart-text"
              x={px(x.at(at))}
              y={px(bottom + size + 6)}
              fontSize={size}
              textAnchor="middle"
            >
              {text}
            </text>
          </g>
        ))}
        <text className="chart-text" x={right} y={px(height - 6)} fontSize={size} textAnchor="end">
          {xAxis.title}
        </text>
        {bands.map((band) => (
          <Band key={band.name} band={band} x={x} y={y} />
        ))}
        <rect className="chart-frame" x={left} y={top} width={px(right - left)} height={px(bottom - top)} />
        {levels.map(({ at, name }) => (
          <g key={name}>
            <line className="chart-warn-line" x1={left} x2={right} y1={px(y.at(at))} y2={px(y.at(at))} />
            <text className="chart-label" x={right - 5} y={px(y.at(at) - 4)} fontSize={size} textAnchor="end">
              {name}
            </text>
          </g>
        ))}
        {marks.map((mark) => (
          <Mark
            key={`${mark.number} ${mark.x} ${mark.y}`}
            mark={mark}
            x={x}
            y={y}
            top={top}
            bottom={bottom}
            size={size}
          />
        ))}
      </svg>
    </div>
  );
}

/** Ticks whose words have room; the last of two that touch is left out. */
function apart(ticks: Axis['ticks'], x: Scale, size: number): Axis['ticks'] {
  const kept: { at: number; text: string }[] = [];
  for (const tick of ticks) {
    const before = kept.at(-1);
    const room = before === undefined ? Infinity : x.at(tick.at) - x.at(before.at);
    if (room > (tick.text.length + (before?.text.length ?? 0)) * size * 0.3 + 8) kept.push(tick);
  }
  return kept;
}

function Band({ band, x, y }: { readonly band: PlotBand; readonly x: Scale; readonly y: Scale }) {
  const at = (pick: 'low' | 'mid' | 'high') =>
    band.points.map((point) => ({ x: x.at(point.x), y: y.at(point[pick]) }));
  // The middle is drawn until it leaves the chart; the band is held at its edge.
  const leaves = band.points.findIndex((point) => point.mid > y.high);
  const mid = leaves < 0 ? at('mid') : at('mid').slice(0, leaves + 1);
  const area = `${pathData(at('high'))}${pathData(at('low').reverse()).replace('M', 'L')}Z`;
  return (
    <g>
      <title>{band.name}</title>
      <path className={band.dashed ? 'plot-band plot-band-dashed' : 'plot-band'} d={area} />
      <path className="plot-mid" d={pathData(mid)} strokeDasharray={band.dashed ? '8 4' : undefined} />
    </g>
  );
}

interface MarkProps {
  readonly mark: PlotMark;
  readonly x: Scale;
  readonly y: Scale;
  readonly top: number;
  readonly bottom: number;
  readonly size: number;
}

function Mark({ mark, x, y, top, bottom, size }: MarkProps) {
  const at = x.at(mark.x);
  const high = mark.y === null ? top + size : y.at(mark.y);
  const look = mark.faint ? 'plot-mark plot-faint' : 'plot-mark';
  if (mark.number === null) return <circle className="plot-dot" cx={px(at)} cy={px(high)} r="2.6" />;
  return (
    <g className={look}>
      {mark.y === null && <line className="plot-time" x1={px(at)} x2={px(at)} y1={top} y2={bottom} />}
      <circle className="chart-pour" cx={px(at)} cy={px(high)} r={px(size * 0.68)} />
      <text
        className="chart-pour-text"
        x={px(at)}
        y={px(high + size * 0.34)}
        fontSize={size - 1.5}
        textAnchor="middle"
      >
        {mark.number}
      </text>
    </g>
  );
}
