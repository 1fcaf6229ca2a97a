import { useState } from 'react';
import type { CoatLook } from '#core/job/look-of-coat.ts';
import { colourKey } from '#core/job/look-of-coat.ts';
import type { Look } from '#core/look/look.ts';
import type { LookMoveDocument } from '#core/look/look-document.ts';
import { useSheet } from '#web/sheet/context.tsx';
import { drawnMove, type Spot, thinned } from './board-place.ts';
import { addMove, freeId } from './edit-look.ts';
import { LookBoard } from './LookBoard.tsx';
import { MOVE_NAMES } from './look-words.ts';
import { MoveFields } from './MoveFields.tsx';
import { MoveList } from './MoveList.tsx';
import { ShareTable } from './ShareTable.tsx';
import { firstTools, TOOL_NAMES, type Tool } from './tools.ts';
import type { SeenLook } from './use-coat-look.ts';

interface Props {
  readonly seen: SeenLook;
  readonly made: CoatLook;
  readonly look: Look;
}

/** Work by hand on the piece: a tool is taken up, used on the picture or by figures, and everything it did stands in the list. */
export function HandWork({ seen, made, look }: Props) {
  const { undo, redo, undoLabel, redoLabel } = useSheet();
  const { coat, put } = seen;
  const colours = coat.colours.map((colour, i) => ({
    value: colourKey(colour, i),
    label: colour.name || `colour ${i + 1}`,
  }));
  const first = colours[look.ground === 0 && colours.length > 1 ? 1 : 0]?.value ?? '1';
  const [tool, setTool] = useState<Tool>('look');
  const [held, setHeld] = useState(() => firstTools(first, made.whole_m3, look.middle));
  const [found, setFound] = useState<string | null>(null);
  const [unfolded, setUnfolded] = useState(false);
  const [said, setSaid] = useState('');
  const edges = [...new Set(made.setting.edges.map((edge) => edge.name))];
  const move = tool === 'look' || tool === 'lock' ? null : held[tool];
  const how = TOOL_NAMES.find((each) => each.tool === tool)!.how;

  const done = (made_: LookMoveDocument) => {
    const name = MOVE_NAMES[made_.kind];
    put(name, addMove(made.look, made_));
    setSaid(`${name}: move ${made.look.moves.length + 1}.`);
  };
  const onDrag = (drag: readonly Spot[], pixel_m: number) => {
    if (tool === 'lock') {
      const corners = thinned(drag, 3 * pixel_m, 40);
      if (corners.length < 3) {
        setSaid('Drag round an area to lock it.');
        return;
      }
      const id = freeId(made.look, 'lock');
      put('Lock an area', { ...made.look, locked: [...made.look.locked, { id, name: '', corners }] });
      setSaid('Area locked.');
      return;
    }
    if (move === null) return;
    const drawn = drawnMove(move, drag, pixel_m);
    if (drawn === null) setSaid(how);
    else done(drawn);
  };

  return (
    <div className="look-work">
      <div className="look-board">
        <fieldset className="plain look-tools">
          <legend className="unseen">Tool in the hand</legend>
          {TOOL_NAMES.map((each) => (
            <label key={each.tool} className="look-tool" data-selected={tool === each.tool || undefined}>
              <input
                type="radio"
                name={`tool-${coat.id}`}
                className="unseen"
                checked={tool === each.tool}
                onChange={() => {
                  setTool(each.tool);
                  setUnfolded(false);
                  setSaid('');
                }}
              />
              {each.name}
            </label>
          ))}
        </fieldset>
        <LookBoard
          look={look}
          document={made.look}
          label={`Look of ${coat.name || coat.kind}, seen from above, front edge below`}
          tool={tool}
          found={found}
          unfolded={unfolded}
          onDrag={onDrag}
          onFind={setFound}
        />
        <p className="actions look-board-foot">
          <button type="button" className="small" disabled={undoLabel === null} onClick={undo}>
            Undo{undoLabel === null ? '' : `: ${undoLabel}`}
          </button>
          <button type="button" className="small" disabled={redoLabel === null} onClick={redo}>
            Redo{redoLabel === null ? '' : `: ${redoLabel}`}
          </button>
          <label className="tick-box">
            <input
              type="checkbox"
              checked={unfolded}
              onChange={(event) => setUnfolded(event.target.checked)}
            />
            Faces unfolded
          </label>
          <span role="status" className="section-note">
            {said || how}
          </span>
        </p>
        {move !== null && (
          <section className="look-held" aria-label={`${MOVE_NAMES[move.kind]}: by figures`}>
            <MoveFields
              move={move}
              colours={colours}
              edges={edges}
              onChange={(changed) => setHeld((was) => ({ ...was, [changed.kind]: changed }))}
            />
            <p className="actions">
              <button type="button" onClick={() => done(move)}>
                {MOVE_NAMES[move.kind]} by these figures
              </button>
            </p>
          </section>
        )}
        {made.look.locked.length > 0 && (
          <ul className="plain-list look-locks" aria-label="Locked areas">
            {made.look.locked.map((area, at) => (
              <li key={area.id}>
                Locked area {at + 1}{' '}
                <button
                  type="button"
                  className="small"
                  onClick={() =>
                    put('Unlock an area', {
                      ...made.look,
                      locked: made.look.locked.filter(({ id }) => id !== area.id),
                    })
                  }
                >
                  Unlock area {at + 1}
                </button>
              </li>
            ))}
          </ul>
        )}
      </div>
      <div className="look-side">
        <ShareTable seen={seen} made={made} look={look} />
        <details className="look-list" open>
          <summary>Moves ({made.look.moves.length})</summary>
          <MoveList
            look={made.look}
            colours={colours}
            edges={edges}
            found={found}
            onFind={setFound}
            put={put}
          />
        </details>
      </div>
    </div>
  );
}
