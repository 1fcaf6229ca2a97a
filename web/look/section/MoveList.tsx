import { useEffect, useRef } from 'react';
import type { LookDocument } from '#core/look/look-document.ts';
import { useSheet } from '#web/sheet/context.tsx';
import { keepMove, removeMove, replaceMove, shiftMove } from './edit-look.ts';
import { MOVE_NAMES, moveWords } from './look-words.ts';
import { MoveFields } from './MoveFields.tsx';

interface Props {
  readonly look: LookDocument;
  readonly colours: readonly { readonly value: string; readonly label: string }[];
  readonly edges: readonly string[];
  readonly found: string | null;
  readonly onFind: (id: string | null) => void;
  readonly put: (label: string, look: LookDocument) => void;
}

/** Every move in its order: kept or dropped, earlier or later, changed by figures, or taken out. */
export function MoveList({ look, colours, edges, found, onFind, put }: Props) {
  const { speak } = useSheet();
  const nameOf = (key: string) => colours.find(({ value }) => value === key)?.label ?? key;
  const open = useRef<HTMLLIElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another move found is what brings another row into view
  useEffect(() => open.current?.scrollIntoView({ block: 'nearest' }), [found]);
  if (look.moves.length === 0)
    return (
      <p className="section-note">Nothing is poured yet but the ground. Pour a puddle on the picture.</p>
    );
  return (
    <ol className="look-moves plain-list" aria-label="Moves in their order">
      {look.moves.map((move, at) => {
        const number = at + 1;
        const called = `move ${number}`;
        const isOpen = found === move.id;
        const swatch = move.kind === 'puddle' ? move.colour : null;
        return (
          <li key={move.id} data-dropped={!move.kept || undefined} ref={isOpen ? open : undefined}>
            <div className="look-move">
              <label className="tick-box">
                <input
                  type="checkbox"
                  checked={move.kept}
                  aria-label={`Keep ${called}`}
                  onChange={(event) =>
                    put(
                      event.target.checked ? `Keep ${called}` : `Drop ${called}`,
                      keepMove(look, move.id, event.target.checked),
                    )
                  }
                />
              </label>
              <button
                type="button"
                className="look-move-words"
                aria-expanded={isOpen}
                onClick={() => onFind(isOpen ? null : move.id)}
              >
                <span className="look-move-number">{number}</span> {moveWords(move, nameOf, speak)}
                {swatch !== null && !move.kept && ' (not poured)'}
                {swatch === null && !move.kept && ' (not done)'}
              </button>
              <span className="look-move-buttons">
                <button
                  type="button"
                  className="small"
                  aria-label={`${called} earlier`}
                  disabled={at === 0}
                  onClick={() => put(`Move ${number} earlier`, shiftMove(look, move.id, -1))}
                >
                  ↑
                </button>
                <button
                  type="button"
                  className="small"
                  aria-label={`${called} later`}
                  disabled={at === look.moves.length - 1}
                  onClick={() => put(`Move ${number} later`, shiftMove(look, move.id, 1))}
                >
                  ↓
                </button>
                <button
                  type="button"
                  className="small"
                  aria-label={`Remove ${called}`}
                  onClick={() => {
                    put(`Remove ${called}`, removeMove(look, move.id));
                    if (isOpen) onFind(null);
                  }}
                >
                  Remove
                </button>
              </span>
            </div>
            {isOpen && (
              <MoveFields
                move={move}
                colours={colours}
                edges={edges}
                onChange={(changed) =>
                  put(`Change ${MOVE_NAMES[move.kind].toLowerCase()}`, replaceMove(look, move.id, changed))
                }
              />
            )}
          </li>
        );
      })}
    </ol>
  );
}
