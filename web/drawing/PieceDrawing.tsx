/**
 * A piece as a shop drawing: outline with true arcs, edges by kind, cut-outs with their centres, dimension lines. Words keep
 * their size on the screen whatever the size of the piece.
 */
import { type ReactNode, useMemo, useRef } from 'react';
import { dimensionedDrawing } from '#core/piece/drawing.ts';
import type { Piece } from '#core/piece/piece.ts';
import { type StandingSplash, splashStrips } from '#core/piece/splash-strips.ts';
import { sayProblem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { useWidth } from '#web/charts/use-width.ts';
import './drawing.css';
import { DimensionLines, ExtensionLines } from './DimensionLines.tsx';
import { DrawingLegend } from './DrawingLegend.tsx';
import { DrawnCutOuts } from './DrawnCutOuts.tsx';
import { DrawnEdges } from './DrawnEdges.tsx';
import { DrawnSplashes } from './DrawnSplashes.tsx';
import { describePiece, edgesDrawn } from './describe.ts';
import { type ActOn, type Focus, focusOfRow, type RowFocus } from './focus.ts';
import { pathOf, px } from './frame.ts';
import { layoutSheet, type Sheet } from './sheet.ts';

export interface PieceDrawingProps {
  readonly piece: Piece;
  readonly system: System;
  /** Boards that stand on it along its sides. */
  readonly splashes?: readonly StandingSplash[];
  /** What to mark, by name. */
  readonly focus?: Focus | null;
  /** The same, as the row of a table; `focus` goes before it. */
  readonly highlight?: RowFocus;
  /** Makes edges and cut-outs reachable by key, pointer and finger; called when one is chosen (click, Enter, space), not on Tab. */
  readonly onFocus?: (focus: Focus) => void;
  readonly title?: string;
  /** At a glance: overall sizes only, no names, no legend. */
  readonly small?: boolean;
  /** With `onFocus`: what edges and cut-outs answer to beside it. */
  readonly actOn?: ActOn;
  /** Drawn last, in the sheet's own pixels. */
  readonly over?: (sheet: Sheet) => ReactNode;
  /** Keeps scale and place as they were before: something is being dragged. */
  readonly hold?: boolean;
}

const NO_SPLASHES: readonly StandingSplash[] = [];

export function PieceDrawing({
  piece,
  system,
  splashes = NO_SPLASHES,
  focus,
  highlight = null,
  onFocus,
  title = 'Drawing of the piece',
  small = false,
  actOn,
  over,
  hold = false,
}: PieceDrawingProps) {
  const { box, width, printing } = useWidth<HTMLElement>(small ? 320 : 760);
  const last = useRef<Sheet | null>(null);
  const result = useMemo(() => dimensionedDrawing(piece), [piece]);
  if (!result.ok)
    return (
      <figure className="piece-drawing" ref={box}>
        <p>{title}: there is nothing to draw yet.</p>
        <ul>
          {result.problems.map((problem) => (
            <li key={`${problem.path} ${problem.code}`}>{sayProblem(problem)}</li>
          ))}
        </ul>
      </figure>
    );
  const drawing = result.value;
  const marked = focus ?? focusOfRow(highlight, piece);
  const highest = small ? 260 : printing ? 460 : Math.min(760, Math.max(340, width * 0.95));
  const sheet = layoutSheet(drawing, width, {
    system,
    small,
    highest,
    paper: printing,
    // Worked on on a narrow screen, sizes of cut-outs that are not looked at leave room for the piece.
    ...(over === undefined || printing ? {} : { narrowTo: marked?.kind === 'cut-out' ? marked.name : null }),
    held: hold ? last.current : null,
  });
  last.current = sheet;
  const edges = edgesDrawn(piece, drawing);
  const strips = splashStrips(piece.outline, splashes);
  const body = pathOf(sheet.frame, drawing.outline, true);
  const shared = { system, names: !small, focus: marked, onFocus, actOn };
  return (
    <figure className={small ? 'piece-drawing piece-drawing-small' : 'piece-drawing'} ref={box}>
      <svg
        role={onFocus === undefined ? 'img' : 'group'}
        aria-label={`${title}. ${describePiece(piece, drawing, system, strips)}`}
        viewBox={`0 0 ${px(sheet.width)} ${px(sheet.height)}`}
        width={px(sheet.width)}
        height={px(sheet.height)}
      >
        <path className="drawing-body" d={body} />
        {marked?.kind === 'outline' && <path className="drawing-focus" d={body} />}
        <ExtensionLines sheet={sheet} />
        <DrawnSplashes
          strips={strips}
          sheet={sheet}
          system={system}
          names={!small}
          holes={drawing.cutOuts.map((c) => c.segments)}
        />
        <DrawnEdges edges={edges} sheet={sheet} {...shared} />
        <DrawnCutOuts piece={piece} drawing={drawing} sheet={sheet} {...shared} />
        <DimensionLines sheet={sheet} />
        {over?.(sheet)}
      </svg>
      {sheet.notes.length > 0 && <p className="drawing-notes">{sheet.notes.join('. ')}.</p>}
      {!small && <DrawingLegend drawing={drawing} splashes={strips} system={system} />}
    </figure>
  );
}
