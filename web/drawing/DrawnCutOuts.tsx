/** Holes: rim, centre mark, name. */
import type { KeyboardEvent } from 'react';
import type { Drawing, DrawnCutOut } from '#core/piece/drawing.ts';
import { bounds } from '#core/piece/path.ts';
import type { CutOut, Piece } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { type Box, placeBeside, textWidth } from '#web/charts/label-places.ts';
import { cutOutSize } from './describe.ts';
import type { ActOn, Focus } from './focus.ts';
import { alongEdge, pathOf, px, toPixel } from './frame.ts';
import type { Sheet } from './sheet.ts';

interface CutOutsProps {
  readonly piece: Piece;
  readonly drawing: Drawing;
  readonly sheet: Sheet;
  readonly system: System;
  readonly names: boolean;
  readonly focus: Focus | null;
  readonly onFocus: ((focus: Focus) => void) | undefined;
  readonly actOn: ActOn | undefined;
}

export function DrawnCutOuts({ piece, drawing, sheet, system, names, focus, onFocus, actOn }: CutOutsProps) {
  const boxes = drawing.cutOuts.map((c) => pixelBox(c, sheet));
  // Names keep clear of other holes and of the outline.
  const taken: Box[] = [
    ...boxes,
    ...alongEdge(sheet.frame, drawing.outline, 6).map(({ at }) => ({
      left: at.x - 4,
      right: at.x + 4,
      top: at.y - 4,
      bottom: at.y + 4,
    })),
  ];
  return drawing.cutOuts.map((cutOut, i) => {
    const box = boxes[i]!;
    const d = pathOf(sheet.frame, cutOut.segments, true);
    const at = toPixel(sheet.frame, cutOut.centre);
    const index = piece.cutOuts.findIndex((c) => c.name === cutOut.name && c.centre === cutOut.centre);
    const spec = piece.cutOuts[index];
    const focused =
      focus?.kind === 'cut-out' &&
      (focus.index === undefined ? focus.name === cutOut.name : focus.index === index);
    const words =
      spec === undefined ? cutOut.name : `${cutOut.name}, ${cutOutSize(spec, system)}, rim ${spec.rim}`;
    const label = names ? placeName(cutOut.name, isTurned(spec), box, sheet, taken) : null;
    if (label !== null) taken.push(label);
    const ink = (
      <>
        {focused && <path className="drawing-focus" d={d} />}
        <path className={`drawing-hole drawing-${cutOut.segments[0]?.style ?? 'dammed'}`} d={d} />
        <path
          className="drawing-centre"
          d={`M${px(box.left - 6)} ${px(at.y)}H${px(box.right + 6)}M${px(at.x)} ${px(box.top - 6)}V${px(box.bottom + 6)}`}
        />
        {label !== null && (
          <text
            className={focused ? 'drawing-name drawing-name-focused' : 'drawing-name'}
            x={px((label.left + label.right) / 2)}
            y={px(label.bottom - sheet.size * 0.2)}
            fontSize={sheet.size}
            textAnchor="middle"
          >
            {focused ? `▸ ${cutOut.name}` : cutOut.name}
          </text>
        )}
      </>
    );
    // By its place in the list: what is dragged stays the same element.
    const key = index < 0 ? `drawn ${i}` : index;
    if (onFocus === undefined) return <g key={key}>{ink}</g>;
    const own: Focus = { kind: 'cut-out', name: cutOut.name, index };
    const choose = (): void => onFocus(own);
    const { onKeyDown, held = false, described, ...acts } = actOn?.(own) ?? {};
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
        key={key}
        className={held ? 'drawing-pick drawing-held' : 'drawing-pick'}
        data-pick={`cut-out ${index}`}
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

/** Turned holes carry their sizes inside. */
function isTurned(cutOut: CutOut | undefined): boolean {
  return (
    cutOut !== undefined && cutOut.shape !== 'round' && Math.abs(Math.sin(cutOut.rotation_rad ?? 0)) > 1e-9
  );
}

function pixelBox(cutOut: DrawnCutOut, sheet: Sheet): Box {
  const b = bounds(cutOut.segments);
  const low = toPixel(sheet.frame, { x_m: b.minX_m, y_m: b.minY_m });
  const high = toPixel(sheet.frame, { x_m: b.maxX_m, y_m: b.maxY_m });
  return { left: low.x, right: high.x, top: high.y, bottom: low.y };
}

/** Inside a hole with room for it, in the upper half clear of the centre mark; else beside the rim. */
function placeName(name: string, turned: boolean, box: Box, sheet: Sheet, taken: readonly Box[]): Box {
  const { size, frame } = sheet;
  const wide = textWidth(name, size) * 1.08 + 4;
  const middle = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
  if (!turned && box.right - box.left > wide + 12 && box.bottom - box.top > size * 4)
    return {
      left: middle.x - wide / 2,
      right: middle.x + wide / 2,
      top: middle.y - size * 1.7,
      bottom: middle.y - size * 0.6,
    };
  const b = frame.bounds;
  const onPiece: Box = {
    left: frame.left + 6,
    top: frame.top + 6,
    right: frame.left + (b.maxX_m - b.minX_m) * frame.pxPerMetre - 6,
    bottom: frame.top + (b.maxY_m - b.minY_m) * frame.pxPerMetre - 6,
  };
  // Beside the hole's upper right, so that the centre lines to left and front stay clear.
  const from = { x: box.right - 4, y: box.top - size * 0.9 };
  return placeBeside(from, wide, size * 1.1, onPiece, taken);
}
