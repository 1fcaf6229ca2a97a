import type { ReactNode } from 'react';
import type { Look } from '#core/look/look.ts';
import type { Drawing } from '#core/look/render/drawing.ts';
import { useWidth } from '#web/charts/use-width.ts';
import { LookCanvas, useLookDrawing } from '../LookCanvas.tsx';

export interface PictureSize {
  readonly width: number;
  readonly height: number;
  readonly drawing: Drawing;
}

interface Props {
  readonly look: Look;
  readonly label: string;
  /** CSS pixels; narrower work is drawn smaller. */
  readonly highest: number;
  readonly unfolded?: boolean;
  readonly gloss?: number;
  /** Laid over the picture. */
  readonly children?: (size: PictureSize) => ReactNode;
}

/** A look as wide as its place, and no higher than it should be. */
export function Picture({ look, label, highest, unfolded = false, gloss = 0, children }: Props) {
  const { box, width } = useWidth<HTMLDivElement>(320);
  const drawing = useLookDrawing(look, unfolded);
  const height = Math.max(48, Math.min(highest, Math.round((width * drawing.depth_m) / drawing.width_m)));
  return (
    <div className="look-picture" ref={box}>
      <LookCanvas look={look} width={width} height={height} label={label} unfolded={unfolded} gloss={gloss} />
      {children?.({ width, height, drawing })}
    </div>
  );
}
