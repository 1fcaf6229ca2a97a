/** What can be put on the piece, how finely it is moved, and the way back. */
import type { System } from '#core/quantity/units.ts';
import { GRID_CHOICES, type GridChoice, gridWords } from './grid-choice.ts';
import type { UsualShape } from './holes.ts';

export interface Back {
  readonly undo: () => void;
  readonly redo: () => void;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
}

interface Props {
  readonly id: string;
  readonly system: System;
  readonly grid: GridChoice;
  readonly onGrid: (grid: GridChoice) => void;
  readonly back: Back;
  /** The drawing can be worked on: everything on it could be read. */
  readonly ready: boolean;
  readonly canTurn: boolean;
  readonly onTurn: () => void;
  readonly onCutOut: (shape: UsualShape) => void;
  readonly onTapHole: () => void;
  /** The drawing of a sink is asked for. */
  readonly template: boolean;
  readonly onTemplate: () => void;
}

export function EditorTools(props: Props) {
  const { id, system, grid, onGrid, back, ready, canTurn, onTurn, onCutOut, onTapHole } = props;
  const { template, onTemplate } = props;
  return (
    <div className="editor-tools">
      <fieldset className="editor-group">
        <legend>Add a cut-out</legend>
        <button type="button" className="small" disabled={!ready} onClick={() => onCutOut('rectangle')}>
          Rectangle
        </button>
        <button type="button" className="small" disabled={!ready} onClick={() => onCutOut('oval')}>
          Oval
        </button>
        <button type="button" className="small" disabled={!ready} onClick={() => onCutOut('round')}>
          Round
        </button>
        <button type="button" className="small" disabled={!ready} onClick={onTapHole}>
          Tap hole
        </button>
        <button
          type="button"
          className="small"
          disabled={!ready}
          aria-expanded={template}
          aria-controls={template ? `${id}-template` : undefined}
          onClick={onTemplate}
        >
          Sink template
        </button>
      </fieldset>
      {canTurn && (
        <fieldset className="editor-group">
          <legend>Shape</legend>
          <button type="button" className="small" disabled={!ready} onClick={onTurn}>
            Edit corners
          </button>
        </fieldset>
      )}
      <div className="editor-group field">
        <label className="field-label" htmlFor={`${id}-grid`}>
          Moves in steps of
        </label>
        <select
          id={`${id}-grid`}
          value={grid}
          onChange={(event) => onGrid(GRID_CHOICES.find((choice) => choice === event.target.value) ?? 'tape')}
        >
          {GRID_CHOICES.map((choice) => (
            <option key={choice} value={choice}>
              {gridWords(choice, system)}
            </option>
          ))}
        </select>
      </div>
      <fieldset className="editor-group">
        <legend>Last change</legend>
        <button type="button" className="small" disabled={back.undoLabel === null} onClick={back.undo}>
          Take back<span className="unseen">{back.undoLabel === null ? '' : `: ${back.undoLabel}`}</span>
        </button>
        <button type="button" className="small" disabled={back.redoLabel === null} onClick={back.redo}>
          Do again<span className="unseen">{back.redoLabel === null ? '' : `: ${back.redoLabel}`}</span>
        </button>
      </fieldset>
    </div>
  );
}
