/** Dimension lines with arrows and figures, and notes with a leader. */
import { arrowHead, type PlacedDimension } from './chains.ts';
import { px } from './frame.ts';
import { extensionPieces, type PlacedLeader, type Sheet } from './sheet.ts';

/** Thin lines from the measured points to the dimension lines, broken where a figure stands; drawn under the piece. */
export function ExtensionLines({ sheet }: { readonly sheet: Sheet }) {
  return extensionPieces(sheet).map((pieces, i) => (
    <path
      // biome-ignore lint/suspicious/noArrayIndexKey: two dimensions may be equal in every respect
      key={i}
      className="drawing-extension"
      d={pieces.map(({ from, to }) => `M${px(from.x)} ${px(from.y)}L${px(to.x)} ${px(to.y)}`).join('')}
    />
  ));
}

export function DimensionLines({ sheet }: { readonly sheet: Sheet }) {
  return (
    <g>
      {sheet.dimensions.map((d, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two dimensions may be equal in every respect
        <DimensionLine key={i} placed={d} size={sheet.size} />
      ))}
      {sheet.leaders.map((l, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two notes may be equal in every respect
        <LeaderNote key={i} placed={l} size={sheet.size} />
      ))}
    </g>
  );
}

function DimensionLine({ placed, size }: { readonly placed: PlacedDimension; readonly size: number }) {
  const { from, to, at, turn, past, text } = placed;
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const ux = long > 0 ? (to.x - from.x) / long : 0;
  const uy = long > 0 ? (to.y - from.y) / long : 0;
  const head = Math.min(10, size * 0.75);
  // A short line has its arrows outside, pointing in.
  const outA = { x: from.x - ux * 14, y: from.y - uy * 14 };
  const outB = { x: to.x + ux * 14, y: to.y + uy * 14 };
  const tight = long < head * 3;
  const line = past ? [outA, outB] : [from, to];
  const rise = size * 0.35;
  return (
    <g>
      <line
        className="drawing-dimension"
        x1={px(line[0]!.x)}
        y1={px(line[0]!.y)}
        x2={px(line[1]!.x)}
        y2={px(line[1]!.y)}
      />
      <path
        className="drawing-arrow"
        d={
          past || tight
            ? arrowHead(from, outA, head) + arrowHead(to, outB, head)
            : arrowHead(from, to, head) + arrowHead(to, from, head)
        }
      />
      <text
        className="drawing-figure"
        x={px(at.x)}
        y={px(at.y + rise)}
        fontSize={size}
        textAnchor="middle"
        {...(turn === 0 ? {} : { transform: `rotate(${px(turn)} ${px(at.x)} ${px(at.y)})` })}
      >
        {text}
      </text>
    </g>
  );
}

function LeaderNote({ placed, size }: { readonly placed: PlacedLeader; readonly size: number }) {
  const { tip, at, anchor, text } = placed;
  const gap = anchor === 'start' ? -3 : anchor === 'end' ? 3 : 0;
  return (
    <g>
      <line className="drawing-dimension" x1={px(tip.x)} y1={px(tip.y)} x2={px(at.x + gap)} y2={px(at.y)} />
      <path className="drawing-arrow" d={arrowHead(tip, at, Math.min(9, size * 0.7))} />
      <text
        className="drawing-figure"
        x={px(at.x)}
        y={px(at.y + size * 0.35)}
        fontSize={size}
        textAnchor={anchor}
      >
        {text}
      </text>
    </g>
  );
}
