/** A look on its piece, as large as it is given room: outline and cut-outs true, faces unfolded if asked. */
import { useEffect, useMemo, useRef, useState } from 'react';
import type { Look } from '#core/look/look.ts';
import { type Drawing, topDrawing, unfoldedDrawing } from '#core/look/render/drawing.ts';
import { fitInto } from '#core/look/render/grid.ts';
import { frameOf, sceneIn, veilOf } from '#core/look/render/scene.ts';
import { type DrawnBy, type PictureDrawer, pictureDrawer } from './picture-drawer.ts';
import './look-canvas.css';

interface Props {
  readonly look: Look;
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** What the picture shows, for those who do not see it. */
  readonly label: string;
  /** Faces and splashes folded flat round the top. */
  readonly unfolded?: boolean;
  /** Mirrored light, 0 (as colours are agreed) to 1. */
  readonly gloss?: number;
  /** The picture stands in full. */
  readonly onReady?: (by: DrawnBy) => void;
  /** Draw in workers even where there is a graphics card. */
  readonly processorOnly?: boolean;
}

/** More dots than this bring the eye nothing and the phone heat. */
const MOST_DENSE = 2;

/** The drawing a LookCanvas of these sizes shows, and where: for what is laid over it. */
export function useLookDrawing(look: Look, unfolded: boolean): Drawing {
  return useMemo(
    () => (unfolded ? unfoldedDrawing(look.panels) : topDrawing(look.panels)),
    [look.panels, unfolded],
  );
}

export function LookCanvas({
  look,
  width,
  height,
  label,
  unfolded = false,
  gloss = 0,
  onReady,
  processorOnly = false,
}: Props) {
  const host = useRef<HTMLDivElement>(null);
  const drawer = useRef<PictureDrawer | null>(null);
  const ready = useRef(onReady);
  ready.current = onReady;
  const [failed, setFailed] = useState<string | null>(null);
  const [by, setBy] = useState<DrawnBy | null>(null);
  const drawing = useLookDrawing(look, unfolded);
  const dense = Math.min(MOST_DENSE, globalThis.devicePixelRatio ?? 1);
  const columns = Math.max(1, Math.round(width * dense));
  const rows = Math.max(1, Math.round(height * dense));
  const frame = useMemo(() => frameOf(drawing, fitInto(drawing, columns, rows)), [drawing, columns, rows]);
  // A look read anew has its fogs anew, mostly the same ones.
  const fogs = JSON.stringify(look.fogs);
  const veil = useMemo(() => veilOf(JSON.parse(fogs) as typeof look.fogs, frame), [fogs, frame]);

  useEffect(() => {
    if (host.current === null) return;
    const made = pictureDrawer(host.current, {
      processorOnly,
      onReady: (drawnBy) => {
        setBy(drawnBy);
        setFailed(null);
        ready.current?.(drawnBy);
      },
      onFailed: setFailed,
    });
    drawer.current = made;
    return () => {
      drawer.current = null;
      made.close();
    };
  }, [processorOnly]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another drawer has to be shown the scene too.
  useEffect(() => {
    try {
      drawer.current?.show(sceneIn(frame, look, veil, gloss));
    } catch (error) {
      setFailed(error instanceof Error ? error.message : String(error));
    }
  }, [look, frame, veil, gloss, processorOnly]);

  return (
    <div className="look-canvas" style={{ width, height }} role="img" aria-label={label} data-drawn-by={by}>
      <div className="look-canvas-host" ref={host} />
      {failed !== null && <p className="look-canvas-failed">The picture cannot be drawn: {failed}</p>}
    </div>
  );
}
