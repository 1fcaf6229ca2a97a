import { useMemo } from 'react';
import type { SplashDocument } from '#core/job/document.ts';
import { Notes } from '#core/job/notes.ts';
import { readPiece } from '#core/job/read-piece.ts';
import { USUAL_SPLASH } from '#core/job/read-piece-splash.ts';
import { SPLASH_NAMES } from '#core/piece/splash-strips.ts';
import { type Path, without } from '#web/draft/at-path.ts';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';
import { FIRST_PIECE, usePiece } from './piece-handle.ts';

type Side = SplashDocument['side'];
const SIDES = (['back', 'left', 'right'] as const).map((side) => ({ side, name: SPLASH_NAMES[side] }));
const OPTIONS = SIDES.map(({ side }) => ({ value: side, label: side }));

const nameOf = (side: Side): string => SPLASH_NAMES[side];

/** Backsplash and side splashes: boards of their own, made and poured with the top. */
export function SplashTable({ base = FIRST_PIECE }: { readonly base?: Path }) {
  const { system, speak, problems } = useSheet();
  const { piece, place, at, change } = usePiece(base);
  const parts = useMemo(() => readPiece(piece, new Notes(system)).splashes, [piece, system]);
  const splashes = piece.splashes ?? [];
  if (piece.outline === null) return null;
  const rimmed = piece.outline.shape === 'round' || piece.outline.shape === 'ellipse';
  if (rimmed && splashes.length === 0) return null;
  const free = rimmed ? [] : SIDES.filter(({ side }) => !splashes.some((splash) => splash.side === side));
  const usual = `${speak.length(USUAL_SPLASH.height_m)} high, ${speak.length(USUAL_SPLASH.thickness_m)} thick`;
  return (
    <div className="table-block">
      {splashes.length === 0 ? (
        <h3>Splashes</h3>
      ) : (
        <table className="rows splashes">
          <caption>Splashes: boards of their own, poured with the top</caption>
          <thead>
            <tr>
              <th scope="col">Splash</th>
              <th scope="col">Stands on the</th>
              <th scope="col">Height</th>
              <th scope="col">Thickness</th>
              <th scope="col">Board to cut</th>
              <th scope="col">
                <span className="unseen">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {splashes.map((splash, i) => {
              const name = nameOf(splash.side);
              // Of two on one side the first is the one that is made.
              const first = splashes.findIndex((other) => other.side === splash.side) === i;
              const part = first ? parts.find((each) => each.side === splash.side) : undefined;
              const whole = problems.get(`${place}.splashes.${i}`) ?? [];
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: two may stand on one side while one is being changed
                <tr key={i}>
                  <th scope="row">
                    {name}
                    {whole.map((problem) => (
                      <span className="field-problem" role="alert" key={problem.code}>
                        {problem.message}
                      </span>
                    ))}
                  </th>
                  <td data-label="Stands on the">
                    <SelectField
                      hideLabel
                      label={`${name}: side`}
                      path={at('splashes', i, 'side')}
                      options={OPTIONS}
                    />
                  </td>
                  <td data-label="Height">
                    <QuantityField
                      hideLabel
                      label={`${name}: height`}
                      path={at('splashes', i, 'height')}
                      kind="length"
                      placeholder={speak.length(USUAL_SPLASH.height_m)}
                    />
                  </td>
                  <td data-label="Thickness">
                    <QuantityField
                      hideLabel
                      label={`${name}: thickness`}
                      path={at('splashes', i, 'thickness')}
                      kind="length"
                      placeholder={speak.length(USUAL_SPLASH.thickness_m)}
                    />
                  </td>
                  <td data-label="Board to cut" className="none">
                    {part === undefined
                      ? 'waits for sizes that can be read'
                      : `${speak.length(part.length_m)} x ${speak.length(part.height_m)}`}
                  </td>
                  <td>
                    <button
                      type="button"
                      className="small"
                      aria-label={`Remove ${name}`}
                      onClick={() =>
                        change(`Remove ${name}`, '', (p) => ({
                          ...p,
                          splashes: without(p.splashes ?? [], i),
                        }))
                      }
                    >
                      Remove
                    </button>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      {free.length > 0 && (
        <p className="actions">
          {free.map(({ side, name }) => (
            <button
              key={side}
              type="button"
              className="small"
              onClick={() =>
                change(`Add ${name}`, '', (p) => ({
                  ...p,
                  splashes: [...(p.splashes ?? []), { side, height: '', thickness: '' }],
                }))
              }
            >
              Add a {name}
            </button>
          ))}
          <span className="of">Not said otherwise: {usual} (common practice, no source).</span>
        </p>
      )}
    </div>
  );
}
