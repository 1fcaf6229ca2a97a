/**
 * Dragging what is picked on the drawing. The finger holds the element (pointer capture), the document changes once, when it is let
 * go: until then the moved piece is only shown.
 */
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import type { PieceDocument } from '#core/job/document.ts';
import type { Point } from '#core/piece/piece.ts';
import { type Frame, fromPixel } from '#web/drawing/frame.ts';
import type { Sheet } from '#web/drawing/sheet.ts';
import type { Grid } from './grid.ts';
import { type Movable, movedTo, placeOf } from './moves.ts';

/** A pointer that went less far only tapped, px. */
const TAP_PX = 4;

interface Drag {
  readonly pick: Movable;
  readonly pointer: number;
  readonly frame: Frame;
  /** From the finger to the middle of what it holds. */
  readonly off: Point;
  readonly from: { readonly x: number; readonly y: number };
  readonly piece: PieceDocument;
  readonly moved: boolean;
}

interface Wishes {
  readonly piece: PieceDocument;
  readonly grid: Grid;
  readonly sheet: () => Sheet | null;
  readonly onStart: (pick: Movable) => void;
  readonly onEnd: (pick: Movable, to: Point) => void;
}

export interface Dragging {
  /** The piece as it would be if it were let go now; null while nothing is dragged. */
  readonly shown: PieceDocument | null;
  readonly pick: Movable | null;
  readonly acts: (pick: Movable) => {
    readonly onPointerDown: (event: PointerEvent<SVGElement>) => void;
    readonly onPointerMove: (event: PointerEvent<SVGElement>) => void;
    readonly onPointerUp: (event: PointerEvent<SVGElement>) => void;
    readonly onPointerCancel: (event: PointerEvent<SVGElement>) => void;
  };
}

export function useDrag({ piece, grid, sheet, onStart, onEnd }: Wishes): Dragging {
  const [drag, setDrag] = useState<Drag | null>(null);
  // Pointer events come faster than React draws: the newest state is kept beside it.
  const now = useRef<Drag | null>(null);
  const set = (next: Drag | null): void => {
    now.current = next;
    setDrag(next);
  };
  useEffect(() => {
    if (drag === null) return;
    const stop = (event: globalThis.KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      now.current = null;
      setDrag(null);
    };
    window.addEventListener('keydown', stop);
    return () => window.removeEventListener('keydown', stop);
  }, [drag]);

  const acts = (pick: Movable) => ({
    onPointerDown: (event: PointerEvent<SVGElement>): void => {
      const on = sheet();
      const place = placeOf(piece, pick);
      if (event.button !== 0 || on === null || place === null || now.current !== null) return;
      const at = pointUnder(event, on.frame, on.width);
      if (at === null) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      set({
        pick,
        pointer: event.pointerId,
        frame: on.frame,
        off: { x_m: place.x_m - at.x_m, y_m: place.y_m - at.y_m },
        from: { x: event.clientX, y: event.clientY },
        piece,
        moved: false,
      });
    },
    onPointerMove: (event: PointerEvent<SVGElement>): void => {
      const held = now.current;
      const on = sheet();
      if (held === null || held.pointer !== event.pointerId || on === null) return;
      if (!held.moved && Math.hypot(event.clientX - held.from.x, event.clientY - held.from.y) < TAP_PX)
        return;
      const at = pointUnder(event, held.frame, on.width);
      if (at === null) return;
      if (!held.moved) onStart(held.pick);
      const to = { x_m: at.x_m + held.off.x_m, y_m: at.y_m + held.off.y_m };
      set({ ...held, moved: true, piece: movedTo(held.piece, held.pick, to, grid) });
    },
    onPointerUp: (event: PointerEvent<SVGElement>): void => {
      const held = now.current;
      if (held === null || held.pointer !== event.pointerId) return;
      const place = placeOf(held.piece, held.pick);
      set(null);
      if (held.moved && place !== null) onEnd(held.pick, place);
    },
    onPointerCancel: (event: PointerEvent<SVGElement>): void => {
      if (now.current?.pointer === event.pointerId) set(null);
    },
  });
  const live = drag?.moved === true ? drag : null;
  return { shown: live?.piece ?? null, pick: live?.pick ?? null, acts };
}

/** The place on the piece under a pointer. The drawing may be shown smaller than it was laid out. */
function pointUnder(event: PointerEvent<SVGElement>, frame: Frame, width: number): Point | null {
  const svg = event.currentTarget.ownerSVGElement;
  if (svg === null) return null;
  const box = svg.getBoundingClientRect();
  if (!(box.width > 0)) return null;
  const scale = width / box.width;
  return fromPixel(frame, { x: (event.clientX - box.left) * scale, y: (event.clientY - box.top) * scale });
}

/** Keys with a control key are for the sheet: undo, copy. */
export function isPlainKey(event: KeyboardEvent): boolean {
  return !event.ctrlKey && !event.metaKey && !event.altKey;
}
