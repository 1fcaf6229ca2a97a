/** What was read from a drawing file: the picture, its size, its layers. */
import type { ImportedDrawing } from '#core/piece/files/imported-drawing.ts';
import { formatLength } from '#core/quantity/format-length.ts';
import type { System } from '#core/quantity/units.ts';
import { type Frame, pathOf } from '#web/drawing/frame.ts';

const WIDE = 480;
const HIGH = 320;
const MARGIN = 8;

export function DrawingPreview({
  drawing,
  system,
}: {
  readonly drawing: ImportedDrawing;
  readonly system: System;
}) {
  const { bounds, outline, cutOuts } = drawing;
  const long = bounds.maxX_m - bounds.minX_m;
  const wide = bounds.maxY_m - bounds.minY_m;
  const pxPerMetre = Math.min((WIDE - 2 * MARGIN) / long, (HIGH - 2 * MARGIN) / wide);
  const frame: Frame = { left: MARGIN, top: MARGIN, pxPerMetre, bounds };
  const size = `${formatLength(long, system)} by ${formatLength(wide, system)}`;
  const holes = cutOuts.length === 1 ? '1 cut-out' : `${cutOuts.length} cut-outs`;
  const used = drawing.layers.filter((l) => l.used);
  const unused = drawing.layers.filter((l) => !l.used);
  return (
    <figure className="import-preview">
      <svg
        viewBox={`0 0 ${long * pxPerMetre + 2 * MARGIN} ${wide * pxPerMetre + 2 * MARGIN}`}
        width={WIDE}
        role="img"
        aria-label={`Drawing read: ${size}, ${holes}`}
      >
        <path className="drawing-edge drawing-finished" d={pathOf(frame, outline.path, true)} />
        {cutOuts.map((c, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two cut-outs may be equal in every respect
          <path key={i} className="drawing-edge drawing-dammed" d={pathOf(frame, c.path, true)} />
        ))}
      </svg>
      <figcaption>
        {size}, {holes}; read in {drawing.unit}, as{' '}
        {drawing.unitFrom === 'file' ? 'the file says' : 'you said'}.
        {used.length > 0 && <> Layers read: {used.map((l) => l.name || 'unnamed').join(', ')}.</>}
        {unused.length > 0 && <> Left out: {unused.map((l) => l.name).join(', ')}.</>}
      </figcaption>
    </figure>
  );
}
