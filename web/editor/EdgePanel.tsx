import type { PieceDocument } from '#core/job/document.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import type { Path } from '#web/draft/at-path.ts';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { KeptField } from '#web/shop/KeptField.tsx';
import { polygonOf, withCornerOn } from './corners.ts';
import { COUNTS_AS, KINDS, PROFILES, SIZE_WORD } from './edge-choices.ts';
import { sideOf } from './edge-names.ts';
import { type Grid, lengthWords } from './grid.ts';
import { lookAt } from './look.ts';
import { sideLength_m, withSideLength } from './side-length.ts';

interface Props {
  readonly piece: PieceDocument;
  readonly name: string;
  readonly at: (...path: Path) => Path;
  readonly system: System;
  readonly grid: Grid;
  readonly change: (label: string, make: (piece: PieceDocument) => PieceDocument) => void;
  /** Adds a row for every edge that has none. */
  readonly describe: (piece: PieceDocument) => PieceDocument;
}

export function EdgePanel({ piece, name, at, system, grid, change, describe }: Props) {
  const index = piece.edges.findIndex((edge) => edge.edge === name);
  const edge = piece.edges[index];
  const side = polygonOf(piece) === null ? null : sideOf(name);
  const long_m = sideLength_m(piece, name);
  const word = edge === undefined ? null : SIZE_WORD[edge.profile];
  const field = (key: string): Path => at('edges', index, key);
  return (
    <>
      <div className="form form-tight">
        {edge !== undefined && (
          <SelectField idFirst="e" label="Kind of edge" path={field('kind')} options={KINDS} />
        )}
        {long_m !== null && (
          <KeptField
            key={name}
            id={`e-${at('side', name).join('-').replaceAll(' ', '-')}`}
            label="Corner to corner"
            value={lengthWords(long_m, system)}
            maxLength={40}
            keep={(typed) => {
              const read = readLength_m(typed, { what: 'length of this side', min: 0.01, max: 10 });
              if (!read.ok) return read.problems[0] ?? null;
              if (lookAt(withSideLength(piece, name, typed, system), system) === null)
                return {
                  path: at('outline').join('.'),
                  code: 'side.length',
                  message: 'With a side this long the rest of the piece cannot be drawn.',
                  read: typed,
                  allowed: 'a length the other sides and the corner radii leave room for',
                };
              change(`Length of ${name}`, (p) => withSideLength(p, name, typed, system));
              return null;
            }}
          />
        )}
        {side !== null && (
          <QuantityField
            idFirst="e"
            label="Bow, outwards (minus: inwards)"
            path={at('outline', 'corners', side, 'bow')}
            kind="length"
            placeholder="straight"
          />
        )}
        {edge !== undefined && side !== null && (
          <SelectField idFirst="e" label="Counts as" path={field('countsAs')} options={COUNTS_AS} />
        )}
        {edge?.kind === 'finished' && (
          <>
            <QuantityField
              idFirst="e"
              label="Face height"
              path={field('faceHeight')}
              kind="length"
              placeholder="as the body"
            />
            <SelectField idFirst="e" label="Profile" path={field('profile')} options={PROFILES} />
            {word !== null && (
              <QuantityField
                idFirst="e"
                label={edge.profile === 'chiselled' ? 'Surface, factor 1.3 to 1.6' : `Arris: ${word}`}
                path={field('profileSize')}
                kind={edge.profile === 'chiselled' ? 'words' : 'length'}
                placeholder={edge.profile === 'square eased' ? '1/8 in' : word}
              />
            )}
            <QuantityField
              idFirst="e"
              label="Carried under"
              path={field('undersideReturn')}
              kind="length"
              placeholder="none"
            />
          </>
        )}
      </div>
      {edge !== undefined && edge.kind !== 'finished' && (
        <p className="section-note">
          {edge.kind === 'wall' ? 'Against a wall' : 'Joined to another piece'}: this edge is not coated.
        </p>
      )}
      <p className="actions">
        {edge === undefined && (
          <>
            <span>Not described yet: it counts as finished, as high as the body, eased 1/8 in.</span>
            <button type="button" className="small" onClick={() => change('Describe edges', describe)}>
              Describe it
            </button>
          </>
        )}
        {side !== null && (
          <button
            type="button"
            className="small"
            onClick={() => change('Add corner', (p) => withCornerOn(p, side, grid))}
          >
            Add a corner on this side
          </button>
        )}
      </p>
    </>
  );
}
