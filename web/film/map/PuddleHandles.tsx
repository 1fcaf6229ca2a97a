/** The puddles as things to take hold of: drag them, or move them with the arrow keys. */
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { Bounds, Point } from '#core/piece/piece.ts';
import type { System } from '#core/quantity/units.ts';
import { type Frame, type Pixel, toPixel } from '#web/drawing/frame.ts';
import { sayPuddle } from './map-words.ts';
import type { CupPuddle } from './puddle-layout.ts';

interface Props {
  readonly puddles: readonly CupPuddle[];
  /** Where each handle stands, px: on its puddle or beside it. */
  readonly places: readonly Pixel[];
  readonly frame: Frame;
  readonly box: Bounds;
  readonly system: System;
  readonly onMove: (key: string, to: Point) => void;
}

/** A press of an arrow key, m; five times as far with shift. */
export const STEP_m = 0.01;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export function PuddleHandles({ puddles, places, frame, box, system, onMove }: Props) {
  const grip = useRef<{ key: string; dx: number; dy: number } | null>(null);
  const press = (puddle: CupPuddle) => (event: KeyboardEvent) => {
    const arrow = ARROWS[event.key];
    if (arrow === undefined) return;
    event.preventDefault();
    const by_m = STEP_m * (event.shiftKey ? 5 : 1);
    onMove(puddle.key, { x_m: puddle.x_m + arrow[0] * by_m, y_m: puddle.y_m + arrow[1] * by_m });
  };
  const take = (puddle: CupPuddle) => (event: PointerEvent<HTMLButtonElement>) => {
    const at = toPixel(frame, puddle);
    grip.current = { key: puddle.key, dx: event.clientX - at.x, dy: event.clientY - at.y };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const drag = (event: PointerEvent) => {
    const held = grip.current;
    if (held === null) return;
    onMove(held.key, {
      x_m: box.minX_m + (event.clientX - held.dx - frame.left) / frame.pxPerMetre,
      y_m: box.maxY_m - (event.clientY - held.dy - frame.top) / frame.pxPerMetre,
    });
  };
  const drop = (): void => {
    grip.current = null;
  };
  return puddles.map((puddle, i) => {
    const at = places[i]!;
    return (
      <button
        key={puddle.key}
        type="button"
        className="film-map-puddle"
        style={{ left: at.x, top: at.y, borderColor: puddle.swatch }}
        aria-label={`${sayPuddle(puddle, box, system)}. Arrow keys move it.`}
        onKeyDown={press(puddle)}
        onPointerDown={take(puddle)}
        onPointerMove={drag}
        onPointerUp={drop}
        onPointerCancel={drop}
      >
        {puddle.cup}
      </button>
    );
  });
}
