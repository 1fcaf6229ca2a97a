/** The bands under a forecast: light where the window is open, hatched where it closes, solid where work is planned. */
import { px } from './curve.ts';
import { type ForecastLayout, laneY, type PlacedRow } from './forecast-layout.ts';
import type { Bar } from './forecast-rows.ts';
import type { HatchIds } from './Hatch.tsx';
import { textWidth } from './label-places.ts';
import type { Scale } from './scale.ts';

interface BandProps {
  readonly layout: ForecastLayout;
  readonly x: Scale;
  readonly hatch: HatchIds;
}

export function BandRows({ layout, x, hatch }: BandProps) {
  return layout.rows.map((placed) => (
    <g key={placed.row.key} className={placed.row.late ? 'chart-row chart-late' : 'chart-row'}>
      <line className="chart-row-rule" x1="0" x2={layout.width} y1={px(placed.y - 5)} y2={px(placed.y - 5)} />
      <RowLabel layout={layout} placed={placed} />
      {placed.row.lanes.map((lane, i) =>
        lane.map((bar) => (
          <Band key={bar.key} bar={bar} y={laneY(placed, i)} height={placed.barHeight} x={x} hatch={hatch} />
        )),
      )}
      <LimitText layout={layout} placed={placed} x={x} />
    </g>
  ));
}

function RowLabel({ layout, placed }: { readonly layout: ForecastLayout; readonly placed: PlacedRow }) {
  const { size, small, width, mark } = layout;
  const { row, y, lines, inline } = placed;
  const textX = row.swatch === null ? 0 : size + 6;
  return (
    <g>
      {row.swatch !== null && (
        <rect className="chart-swatch" x="0.5" y={px(y + 1)} width={size} height={size} fill={row.swatch} />
      )}
      <text className="chart-row-name" x={textX} y={px(y + size)} fontSize={size}>
        {row.tightest ? `${row.name} (least slack)` : row.name}
      </text>
      {lines.map((line, i) => (
        <text
          key={line}
          className={row.late ? 'chart-text chart-stop-text' : 'chart-text'}
          x={inline ? width - mark : 0}
          y={px(inline ? y + size : y + size + (i + 1) * (small + 3))}
          fontSize={small}
          textAnchor={inline ? 'end' : 'start'}
        >
          {line}
        </text>
      ))}
    </g>
  );
}

/** What closes the row's tightest window, to the right of its last band where there is room. */
function LimitText({
  layout,
  placed,
  x,
}: {
  readonly layout: ForecastLayout;
  readonly placed: PlacedRow;
  readonly x: Scale;
}) {
  const { limit, lanes } = placed.row;
  const ends = lanes.flat().map((b) => Math.max(b.closesHigh_s, lastOf(b)));
  if (limit === '' || layout.narrow || ends.length === 0) return null;
  const last = Math.max(...ends);
  if (!(last <= x.high)) return null;
  const at = x.at(last) + 10;
  if (at + textWidth(limit, layout.small) > layout.width - layout.mark) return null;
  return (
    <text
      className="chart-text-2 chart-halo"
      x={px(at)}
      y={px(laneY(placed, (lanes.length - 1) / 2) + placed.barHeight / 2 + layout.small * 0.35)}
      fontSize={layout.small}
    >
      {limit}
    </text>
  );
}

function lastOf(bar: Bar): number {
  return bar.planned.at(-1)?.end_s ?? 0;
}

interface OneBandProps {
  readonly bar: Bar;
  readonly y: number;
  readonly height: number;
  readonly x: Scale;
  readonly hatch: HatchIds;
}

function Band({ bar, y, height, x, hatch }: OneBandProps) {
  const opens = x.at(bar.opens_s);
  const closes = Math.max(opens, x.at(bar.closes_s));
  const high = Math.max(closes, x.at(bar.closesHigh_s));
  const beyond = bar.closesHigh_s > x.high || lastOf(bar) > x.high;
  const inset = bar.wait ? height / 2 - 1.5 : 4;
  const starts = bar.opens_s > x.high;
  return (
    <g>
      <title>{bar.says}</title>
      {!starts && (
        <g>
          <rect className="chart-window" x={px(opens)} y={y} width={px(closes - opens)} height={height} />
          <rect
            className="chart-closing"
            x={px(closes)}
            y={y}
            width={px(high - closes)}
            height={height}
            fill={`url(#${hatch.range})`}
          />
        </g>
      )}
      {bar.planned
        .filter((span) => span.start_s <= x.high)
        .map((span) => (
          <rect
            key={span.start_s}
            className={bar.late ? 'chart-planned-late' : 'chart-planned'}
            x={px(x.at(span.start_s))}
            y={px(y + inset)}
            width={px(Math.max(2.5, x.at(span.end_s) - x.at(span.start_s) - 1))}
            height={px(height - 2 * inset)}
            {...(bar.late ? { fill: `url(#${hatch.stop})` } : {})}
          />
        ))}
      {bar.mark_s !== null && bar.mark_s <= x.high && (
        <line
          className="chart-mark"
          x1={px(x.at(bar.mark_s))}
          x2={px(x.at(bar.mark_s))}
          y1={y}
          y2={y + height}
        />
      )}
      {beyond && (
        <path
          className="chart-beyond"
          d={`M${px(x.at(x.high) + 1)} ${px(y + 2)}l7 ${px(height / 2 - 2)}l-7 ${px(height / 2 - 2)}z`}
        />
      )}
    </g>
  );
}
