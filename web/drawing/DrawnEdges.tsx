/** The outline: finished edges heavy, wall edges hatched on the outside, seams dashed; each with its name outside it. */
import type { KeyboardEvent } from 'react';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { textWidth } from '#web/charts/label-places.ts';
import { type EdgeDrawn, STYLE_WORDS } from './describe.ts';
import type { Focus } from './focus.ts';
import { alongEdge, edgeMiddle, type Frame, pathOf, px } from './frame.ts';

interface EdgesProps {
  readonly edges: readonly EdgeDrawn[];
  readonly frame: Frame;
  readonly size: number;
  readonly system: System;
  readonly names: boolean;
  readonly focus: Focus | null;
  readonly onFocus: ((focus: Focus) => void) | undefined;
}

const HATCH_PX = 9;

export function DrawnEdges({ edges, frame, size, system, names, focus, onFocus }: EdgesProps) {
  return edges.map((edge) => {
    const focused = focus?.kind === 'edge' && focus.name === edge.name;
    const d = pathOf(frame, edge.segments, false);
    const words = `${edge.name}, ${STYLE_WORDS[edge.style]}, ${formatLength(edge.length_m, system)} along the edge`;
    const ink = (
      <>
        {focused && <path className="drawing-focus" d={d} />}
        {edge.style === 'wall' && <path className="drawing-hatch" d={hatchOf(frame, edge)} />}
        <path className={`drawing-edge drawing-${edge.style}`} d={d} />
        {names && <EdgeName edge={edge} frame={frame} size={size} focused={focused} />}
      </>
    );
    if (onFocus === undefined) return <g key={edge.name}>{ink}</g>;
    const choose = (): void => onFocus({ kind: 'edge', name: edge.name });
    const press = (event: KeyboardEvent): void => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      choose();
    };
    return (
      // biome-ignore lint/a11y/useSemanticElements: SVG has no button element
      <g
        key={edge.name}
        className="drawing-pick"
        role="button"
        tabIndex={0}
        aria-pressed={focused}
        aria-label={words}
        onClick={choose}
        onKeyDown={press}
      >
        <path className="drawing-hit" d={d} />
        {ink}
      </g>
    );
  });
}

/** Short strokes at 45 degrees on the outside, as a section through a wall is hatched. */
function hatchOf(frame: Frame, edge: EdgeDrawn): string {
  return alongEdge(frame, edge.segments, 7)
    .map(({ at, out }) => {
      // Out, and forward along the edge: 45 degrees to it.
      const x = at.x + (out.x - out.y) * HATCH_PX * 0.75;
      const y = at.y + (out.y + out.x) * HATCH_PX * 0.75;
      return `M${px(at.x)} ${px(at.y)}L${px(x)} ${px(y)}`;
    })
    .join('');
}

interface EdgeNameProps {
  readonly edge: EdgeDrawn;
  readonly frame: Frame;
  readonly size: number;
  readonly focused: boolean;
}

/** Name and kind beside the middle of the edge, turned along upright edges; the name alone where both have no room. */
function EdgeName({ edge, frame, size, focused }: EdgeNameProps) {
  const { at, out } = edgeMiddle(frame, edge.segments);
  const full = `${edge.name}: ${STYLE_WORDS[edge.style]}`;
  const longest = Math.max(
    ...edge.segments.map((s) => Math.hypot(s.to.x_m - s.from.x_m, s.to.y_m - s.from.y_m)),
  );
  const room = longest * frame.pxPerMetre;
  const text = textWidth(full, size) <= room + 8 ? full : edge.name;
  const away = (edge.style === 'wall' ? HATCH_PX : 4) + size * 0.85;
  const x = at.x + out.x * away;
  const y = at.y + out.y * away;
  // Along a straight edge, read from below or from the right; beside a curve, level.
  const straight = edge.segments.some((s) => s.kind === 'line');
  let turn = straight ? (Math.atan2(out.x, -out.y) * 180) / Math.PI : 0;
  if (turn > 89.9) turn -= 180;
  if (turn < -90.1) turn += 180;
  const anchor = straight || Math.abs(out.y) > 0.97 ? 'middle' : out.x > 0 ? 'start' : 'end';
  return (
    <text
      className={focused ? 'drawing-name drawing-name-focused' : 'drawing-name'}
      x={px(x)}
      y={px(y + size * 0.35)}
      fontSize={size}
      textAnchor={anchor}
      {...(Math.abs(turn) < 0.1 ? {} : { transform: `rotate(${px(turn)} ${px(x)} ${px(y)})` })}
    >
      {focused ? `▸ ${text}` : text}
    </text>
  );
}
