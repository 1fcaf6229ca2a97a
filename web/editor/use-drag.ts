/**
 * Dragging what is picked on the drawing. The finger holds the element (pointer capture), the document changes once, when it is let
 * go: until then the moved piece is only shown.
 */
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef, useState } from 'react';
import type { PieceDocument } from '#core/job/document.ts';
import type { Point } from '#core/piece/piece.ts';
import type { Sheet } from '#web/drawing/sheet.ts';
import type { Grid } from './grid.ts';
import { type Movable, movedTo, placeOf } from './moves.ts';

/** A pointer that went less far only tapped, px. */
const TAP_PX = 4;

interface Drag {
  readonly pick: Movable;
  readonly pointer: number;
  /** Where it stood, and where the finger came down. */
  readonly place: Point;
  readonly from: { readonly x: number; readonly y: number };
  readonly perPx_m: number;
  readonly piece: PieceDocument;
  readonly moved: boolean;
  /** A finger on it does not scroll the page. */
  readonly keeps: boolean;
}

interface Wishes {
  readonly piece: PieceDocument;
  readonly grid: Grid;
  readonly sheet: () => Sheet | null;
  /** The drawing, and whether it is there. */
  readonly area: RefObject<HTMLElement | null>;
  readonly there: boolean;
  readonly onStart: (pick: Movable) => void;
  readonly onEnd: (pick: Movable, to: Point) => void;
}

export interface Dragging {
  /** The piece as it would be if it were let go now; null while nothing is dragged. */
  readonly shown: PieceDocument | null;
  readonly pick: Movable | null;
  /** `keeps`: a finger on it moves it; else it scrolls the page, and only a tap or a mouse counts. */
  readonly acts: (
    pick: Movable,
    keeps: boolean,
  ) => {
    readonly onPointerDown: (event: PointerEvent<SVGElement>) => void;
    readonly onPointerMove: (event: PointerEvent<SVGElement>) => void;
    readonly onPointerUp: (event: PointerEvent<SVGElement>) => void;
    readonly onPointerCancel: (event: PointerEvent<SVGElement>) => void;
  };
}

export function useDrag({ piece, grid, sheet, area, there, onStart, onEnd }: Wishes): Dragging {
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

  // Browsers take `touch-action` of a part of a drawing differently; a move that is prevented scrolls in none of them.
  useEffect(() => {
    const element = there ? area.current : null;
    const keep = (event: TouchEvent): void => {
      if (now.current?.keeps === true && event.cancelable) event.preventDefault();
    };
    element?.addEventListener('touchmove', keep, { passive: false });
    return () => element?.removeEventListener('touchmove', keep);
  }, [area, there]);

  const acts = (pick: Movable, keeps: boolean) => ({
    onPointerDown: (event: PointerEvent<SVGElement>): void => {
      const place = placeOf(piece, pick);
      const perPx_m = metresPerPx(event.currentTarget, sheet());
      if (event.button !== 0 || place === null || perPx_m === null || now.current !== null) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      const from = { x: event.clientX, y: event.clientY };
      set({ pick, pointer: event.pointerId, place, from, perPx_m, piece, moved: false, keeps });
    },
    onPointerMove: (event: PointerEvent<SVGElement>): void => {
      const held = now.current;
      if (held === null || held.pointer !== event.pointerId) return;
      // By how far the finger went: what moves the page meanwhile, a line that comes in above, moves nothing on the piece.
      const [right, down] = [event.clientX - held.from.x, event.clientY - held.from.y];
      if (!held.moved && Math.hypot(right, down) < TAP_PX) return;
      if (!held.moved) onStart(held.pick);
      const to = {
        x_m: held.place.x_m + right * held.perPx_m,
        y_m: held.place.y_m - down * held.perPx_m,
      };
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

/** What a pixel on the screen is on the piece. The drawing may be shown smaller than it was laid out. */
function metresPerPx(element: SVGElement, sheet: Sheet | null): number | null {
  const shown = element.ownerSVGElement?.getBoundingClientRect().width ?? 0;
  return sheet === null || !(shown > 0) ? null : sheet.width / shown / sheet.frame.pxPerMetre;
}

/** Keys with a control key are for the sheet: undo, copy. */
export function isPlainKey(event: KeyboardEvent): boolean {
  return !event.ctrlKey && !event.metaKey && !event.altKey;
}
