/** What the editor draws over the piece: corners to take hold of, and of a picked cut-out its centre lines and what is left round it. */
import type { KeyboardEvent } from 'react';
import type { PieceDocument } from '#core/job/document.ts';
import type { Piece } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { textWidth } from '#web/charts/label-places.ts';
import { arrowHead } from '#web/drawing/chains.ts';
import type { Acts } from '#web/drawing/focus.ts';
import { type Pixel, px, toPixel } from '#web/drawing/frame.ts';
import type { Sheet } from '#web/drawing/sheet.ts';
import { cornerPlaces } from './corners.ts';
import { gapsOf } from './gaps.ts';
import { lengthWords } from './grid.ts';
import { type Movable, type Pick, placeWords } from './moves.ts';

/** More corners than this are drawn without numbers, and smaller. */
const MOST_NUMBERED = 24;

interface CornersProps {
  readonly document: PieceDocument;
  readonly sheet: Sheet;
  readonly system: System;
  readonly picked: Pick | null;
  readonly onPick: (pick: Movable) => void;
  readonly actOn: (pick: Movable) => Acts;
}

export function CornerHandles({ document, sheet, system, picked, onPick, actOn }: CornersProps) {
  const places = cornerPlaces(document) ?? [];
  const numbered = places.length <= MOST_NUMBERED;
  return places.map((place, index) => {
    const pick = { kind: 'corner', index } as const;
    const chosen = picked?.kind === 'corner' && picked.index === index;
    const at = toPixel(sheet.frame, place);
    const { onKeyDown, held: _, described, ...acts } = actOn(pick);
    const press = (event: KeyboardEvent<SVGElement>): void => onKeyDown?.(event);
    return (
      // biome-ignore lint/a11y/useSemanticElements: SVG has no button element
      <g
        // biome-ignore lint/suspicious/noArrayIndexKey: corners have no name but their place
        key={index}
        className="editor-corner drawing-held"
        data-pick={`corner ${index}`}
        data-chosen={chosen || undefined}
        role="button"
        tabIndex={0}
        aria-pressed={chosen}
        aria-label={`Corner ${index + 1}, ${placeWords(place, system)}`}
        aria-describedby={described}
        onClick={() => onPick(pick)}
        onKeyDown={press}
        {...acts}
      >
        <circle className="editor-hit" cx={px(at.x)} cy={px(at.y)} r={22} />
        <circle className="editor-dot" cx={px(at.x)} cy={px(at.y)} r={numbered ? 10 : 6} />
        {chosen && <circle className="editor-ring" cx={px(at.x)} cy={px(at.y)} r={numbered ? 15 : 11} />}
        {numbered && (
          <text x={px(at.x)} y={px(at.y + 4)} fontSize={12} textAnchor="middle">
            {index + 1}
          </text>
        )}
      </g>
    );
  });
}

interface GapsProps {
  readonly piece: Piece;
  readonly index: number;
  readonly sheet: Sheet;
  readonly system: System;
}

/** Centre lines through the hole, and from its rim to the edges. */
export function CutOutGaps({ piece, index, sheet, system }: GapsProps) {
  const cutOut = piece.cutOuts[index];
  if (cutOut === undefined) return null;
  const gaps = gapsOf(cutOut, piece.outline).map((gap) => ({
    ...gap,
    a: toPixel(sheet.frame, gap.from),
    b: toPixel(sheet.frame, gap.to),
  }));
  const centre = toPixel(sheet.frame, cutOut.centre);
  return (
    <g className="editor-gaps">
      {gaps.map(({ side, a, b, left_m }) => (
        <g key={side}>
          <path className="editor-centre" d={`M${px(centre.x)} ${px(centre.y)}L${px(a.x)} ${px(a.y)}`} />
          <path className="editor-gap" d={`M${px(a.x)} ${px(a.y)}L${px(b.x)} ${px(b.y)}`} />
          <path className="editor-arrow" d={arrowHead(a, b, 8) + arrowHead(b, a, 8)} />
          <GapFigure a={a} b={b} text={lengthWords(left_m, system)} size={sheet.size} />
        </g>
      ))}
    </g>
  );
}

/** On its line where it has room between the arrows, else beside the line. */
function GapFigure({
  a,
  b,
  text,
  size,
}: {
  readonly a: Pixel;
  readonly b: Pixel;
  readonly text: string;
  readonly size: number;
}) {
  const level = Math.abs(a.y - b.y) < Math.abs(a.x - b.x);
  const wide = textWidth(text, size) * 1.08;
  const room = level ? Math.abs(a.x - b.x) > wide + 22 : Math.abs(a.y - b.y) > size + 22;
  const at = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 + size * 0.35 };
  if (!room && level) at.y -= size * 0.95;
  if (!room && !level) at.x += wide / 2 + 7;
  return (
    <text className="drawing-figure" x={px(at.x)} y={px(at.y)} fontSize={size} textAnchor="middle">
      {text}
    </text>
  );
}
