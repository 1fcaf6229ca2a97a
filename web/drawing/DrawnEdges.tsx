/** The outline: finished edges heavy, wall edges hatched on the outside, seams dashed; each with its name outside it. */
import type { KeyboardEvent } from 'react';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { textWidth } from '#web/charts/label-places.ts';
import { type EdgeDrawn, STYLE_WORDS } from './describe.ts';
import { crossesBox, extensionEnds } from './extension.ts';
import type { ActOn, Focus } from './focus.ts';
import { alongEdge, edgeMiddle, type Frame, pathOf, px } from './frame.ts';
import type { Sheet } from './sheet.ts';

interface EdgesProps {
  readonly edges: readonly EdgeDrawn[];
  readonly sheet: Sheet;
  readonly system: System;
  readonly names: boolean;
  readonly focus: Focus | null;
  readonly onFocus: ((focus: Focus) => void) | undefined;
  readonly actOn: ActOn | undefined;
}

const HATCH_PX = 9;

export function DrawnEdges({ edges, sheet, system, names, focus, onFocus, actOn }: EdgesProps) {
  const { frame } = sheet;
  return edges.map((edge) => {
    const focused = focus?.kind === 'edge' && focus.name === edge.name;
    const d = pathOf(frame, edge.segments, false);
    const words = `${edge.label}, ${STYLE_WORDS[edge.style]}, ${formatLength(edge.length_m, system)} along the edge`;
    const ink = (
      <>
        {focused && <path className="drawing-focus" d={d} />}
        {edge.style === 'wall' && <path className="drawing-hatch" d={hatchOf(frame, edge)} />}
        <path className={`drawing-edge drawing-${edge.style}`} d={d} />
        {names && <EdgeName edge={edge} sheet={sheet} focused={focused} />}
      </>
    );
    if (onFocus === undefined) return <g key={edge.name}>{ink}</g>;
    const own: Focus = { kind: 'edge', name: edge.name };
    const choose = (): void => onFocus(own);
    const { onKeyDown, held: _, described, ...acts } = actOn?.(own) ?? {};
    const press = (event: KeyboardEvent<SVGElement>): void => {
      onKeyDown?.(event);
      if (event.defaultPrevented) return;
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      choose();
    };
    return (
      // biome-ignore lint/a11y/useSemanticElements: SVG has no button element
      <g
        key={edge.name}
        className="drawing-pick"
        data-pick={`edge ${edge.name}`}
        role="button"
        tabIndex={0}
        aria-pressed={focused}
        aria-label={words}
        aria-describedby={described}
        onClick={choose}
        onKeyDown={press}
        {...acts}
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
  readonly sheet: Sheet;
  readonly focused: boolean;
}

/** Places tried for a name along its edge: the middle, then further and further from it. */
const PARTS = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.2, 0.8];

/**
 * Name and kind beside the edge, turned along upright edges; the name alone where both have no room. In the middle unless an
 * extension line would run through the words there.
 */
function EdgeName({ edge, sheet, focused }: EdgeNameProps) {
  const { frame, size } = sheet;
  const longest = Math.max(
    ...edge.segments.map((s) => Math.hypot(s.to.x_m - s.from.x_m, s.to.y_m - s.from.y_m)),
  );
  const room = longest * frame.pxPerMetre + 8;
  const full = `${edge.label}: ${STYLE_WORDS[edge.style]}`;
  const text = [full, edge.label].find((words) => textWidth(words, size) <= room) ?? edge.name;
  const away = (edge.style === 'wall' ? HATCH_PX : 4) + size * 0.85;
  const straight = edge.segments.some((s) => s.kind === 'line');
  const long = textWidth(text, size) * 1.08;
  const extensions = sheet.dimensions.flatMap(extensionEnds);
  const spot = (part: number) => {
    const { at, out } = edgeMiddle(frame, edge.segments, part);
    return { x: at.x + out.x * away, y: at.y + out.y * away, out };
  };
  const clear = (part: number): boolean => {
    const { x, y, out } = spot(part);
    if (part !== 0.5 && Math.min(part, 1 - part) * room < long / 2) return false;
    const wide = Math.abs(out.y) * long + Math.abs(out.x) * size;
    const tall = Math.abs(out.x) * long + Math.abs(out.y) * size;
    const box = { left: x - wide / 2 - 2, right: x + wide / 2 + 2, top: y - tall / 2, bottom: y + tall / 2 };
    return !extensions.some((line) => crossesBox(line, box));
  };
  const { x, y, out } = spot(straight ? (PARTS.find(clear) ?? 0.5) : 0.5);
  // Along a straight edge, read from below or from the right; beside a curve, level.
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
