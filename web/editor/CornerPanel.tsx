import type { PieceDocument } from '#core/job/document.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { Path } from '#web/draft/at-path.ts';
import { QuantityField } from '#web/field/sheet-fields.tsx';
import { FEWEST_CORNERS, polygonOf, withCornerOn, withoutCorner } from './corners.ts';
import type { Grid } from './grid.ts';

interface Props {
  readonly piece: PieceDocument;
  readonly index: number;
  readonly at: (...path: Path) => Path;
  readonly grid: Grid;
  readonly change: (label: string, make: (piece: PieceDocument) => PieceDocument) => void;
  readonly onGone: (said: string) => void;
}

export function CornerPanel({ piece, index, at, grid, change, onGone }: Props) {
  const corners = polygonOf(piece)?.corners ?? [];
  const next = (index + 1) % corners.length;
  const bowed = [corners[(index + corners.length - 1) % corners.length], corners[index]].some((corner) => {
    const bow = readLength_m(corner?.bow ?? '');
    return bow.ok && bow.value !== 0;
  });
  const field = (key: string): Path => at('outline', 'corners', index, key);
  const fewest = corners.length <= FEWEST_CORNERS;
  return (
    <>
      <div className="form form-tight">
        <QuantityField idFirst="e" label="From the left" path={field('x')} kind="length" />
        <QuantityField idFirst="e" label="From the front" path={field('y')} kind="length" />
        <QuantityField
          idFirst="e"
          label="Rounded to a radius of"
          path={field('radius')}
          kind="length"
          placeholder="sharp"
        />
      </div>
      {bowed && (
        <p className="section-note">
          A side that meets here is bowed: a corner at the end of a bowed side stays sharp.
        </p>
      )}
      <p className="actions">
        <button
          type="button"
          className="small"
          onClick={() => change('Add corner', (p) => withCornerOn(p, index, grid))}
        >
          Add a corner between {index + 1} and {next + 1}
        </button>
        <button
          type="button"
          className="small"
          disabled={fewest}
          onClick={() => {
            change('Remove corner', (p) => withoutCorner(p, index));
            onGone(`Corner ${index + 1} is gone.`);
          }}
        >
          Remove corner {index + 1}
        </button>
        {fewest && <span className="of">A piece has three corners or more.</span>}
      </p>
    </>
  );
}
