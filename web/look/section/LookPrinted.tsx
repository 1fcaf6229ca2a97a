import { useLayoutEffect, useRef } from 'react';
import { topDrawing } from '#core/look/render/drawing.ts';
import { fitInto } from '#core/look/render/grid.ts';
import { renderScene } from '#core/look/render/render.ts';
import { sceneOf } from '#core/look/render/scene.ts';
import { useSheet } from '#web/sheet/context.tsx';
import { approvalState } from './approval.ts';
import { useCoatLook } from './use-coat-look.ts';
import './look-section.css';

/** Enough for a hand's breadth on paper; the page waits while it is drawn. */
const COLUMNS = 480;
const MOST_ROWS = 360;

/** The look of a coat on the work order, drawn at once: paper does not wait for workers. */
export function LookPrinted({ coat }: { readonly coat: string }) {
  const { document } = useSheet();
  const index = document.coats.findIndex(({ id }) => id === coat);
  return index < 0 ? null : <Printed index={index} />;
}

function Printed({ index }: { readonly index: number }) {
  const { look, made, coat } = useCoatLook(index);
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context === null || context === undefined || look === null) return;
    const drawing = topDrawing(look.panels);
    const rows = Math.min(MOST_ROWS, Math.max(1, Math.round((COLUMNS * drawing.depth_m) / drawing.width_m)));
    const scene = sceneOf({ look, drawing, sheet: fitInto(drawing, COLUMNS, rows) });
    context.canvas.width = COLUMNS;
    context.canvas.height = rows;
    context.putImageData(new ImageData(renderScene(scene), COLUMNS, rows), 0, 0);
  }, [look]);
  if (look === null || made === null) return <p>The look of this coat cannot be drawn as it stands.</p>;
  const state = approvalState(made.look.approved, made.hash);
  return (
    <figure className="look-printed">
      <canvas ref={canvas} aria-label={`Look of ${coat.name || coat.kind}`} />
      <figcaption>
        Look {made.hash}
        {state === 'none' && ', not approved yet'}
        {state === 'as it is' && `, approved ${made.look.approved!.sample}`}
        {state === 'changed' && `; look ${made.look.approved!.hash} was approved: changed since`}
      </figcaption>
    </figure>
  );
}
