/**
 * The drawing of a piece, worked on directly: tap an edge, a cut-out or a corner (or Tab to it and press Enter) and its sizes stand
 * below; drag it or press arrow keys to move it. Nothing here is kept but what is picked; every change is one of the document.
 */
import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import type { PieceDocument } from '#core/job/document.ts';
import { facings } from '#core/piece/facing.ts';
import type { PieceRules } from '#core/piece/piece-rules.ts';
import type { System } from '#core/quantity/units.ts';
import { type Path, setAt } from '#web/draft/at-path.ts';
import type { Acts, Focus, RowFocus } from '#web/drawing/focus.ts';
import { PieceDrawing } from '#web/drawing/PieceDrawing.tsx';
import type { Sheet } from '#web/drawing/sheet.ts';
import { FieldsProvider, useFields } from '#web/field/fields-context.tsx';
import { Guard } from '#web/shell/Guard.tsx';
import './editor.css';
import { CornerPanel } from './CornerPanel.tsx';
import { CutOutPanel } from './CutOutPanel.tsx';
import { canTurnIntoCorners, FEWEST_CORNERS, polygonOf, withOwnCorners, withoutCorner } from './corners.ts';
import { EdgePanel } from './EdgePanel.tsx';
import { CornerHandles, CutOutGaps } from './EditorInk.tsx';
import { type Back, EditorTools } from './EditorTools.tsx';
import { type GridChoice, gridOf, gridWords } from './grid-choice.ts';
import { withCutOut, withoutCutOut, withTapHole, withTemplate } from './holes.ts';
import { type Look, lookAt } from './look.ts';
import { type Movable, movedByKey, movedTo, nameOf, type Pick, placeOf, placeWords } from './moves.ts';
import { TemplatePanel } from './TemplatePanel.tsx';
import { isPlainKey, useDrag } from './use-drag.ts';

const NO_WARNINGS = new Map<string, never[]>();

export interface PieceEditorProps {
  readonly piece: PieceDocument;
  /** Where the piece stands in the document of the fields. */
  readonly base: Path;
  readonly system: System;
  /** The least this shop leaves beside a cut-out. */
  readonly rules: PieceRules;
  /** One step of undo, changes of one `place` in quick succession together; '' for a step of its own. */
  readonly change: (label: string, place: string, make: (piece: PieceDocument) => PieceDocument) => void;
  /** Adds a row for every edge that has none. */
  readonly describe: (piece: PieceDocument) => PieceDocument;
  readonly back: Back;
  /** The row of a table being looked at. */
  readonly highlight: RowFocus;
  readonly onHighlight: (row: RowFocus) => void;
}

export function PieceEditor(props: PieceEditorProps) {
  const { piece, base, system, rules, change, describe, back, highlight, onHighlight } = props;
  const id = useId();
  const fields = useFields();
  const [gridChoice, setGridChoice] = useState<GridChoice>('tape');
  const grid = gridOf(gridChoice, system);
  const [chosen, setChosen] = useState<Pick | null>(null);
  const [said, setSaid] = useState('');
  const [toPanel, setToPanel] = useState(0);
  const [template, setTemplate] = useState(false);
  const drawn = useRef<Sheet | null>(null);
  const figure = useRef<HTMLDivElement>(null);
  const panel = useRef<HTMLElement>(null);
  const status = useRef<HTMLParagraphElement>(null);

  const pick = (next: Pick | null): void => {
    if (chosen === null || next === null || mark(chosen) !== mark(next)) setSaid('');
    setChosen(next);
    onHighlight(
      next?.kind === 'edge' ? { edge: next.name } : next?.kind === 'cut-out' ? { cutOut: next.index } : null,
    );
  };
  const [there, setThere] = useState(false);
  const drag = useDrag({
    piece,
    grid,
    sheet: () => drawn.current,
    area: figure,
    there,
    onStart: pick,
    onEnd: (moved, to) => {
      change(`Move ${nameOf(piece, moved)}`, '', (p) => movedTo(p, moved, to, { ...grid, exact: true }));
      setSaid(`${nameOf(piece, moved)}: ${placeWords(to, system)}.`);
    },
  });
  const shown = drag.shown ?? piece;
  const look = useMemo(() => lookAt(shown, system, rules), [shown, system, rules]);
  // While a size is being typed it cannot always be read: the last drawing stays, but is not worked on.
  const last = useRef<Look | null>(null);
  if (look !== null) last.current = look;
  const seen = look ?? last.current;
  const ready = look !== null;
  useEffect(() => setThere(seen !== null), [seen]);
  const picked = chosen !== null && stands(piece, seen, chosen) ? chosen : null;

  useEffect(() => {
    if (toPanel > 0) panel.current?.querySelector<HTMLElement>('input, select')?.focus();
  }, [toPanel]);

  const gone = (words: string): void => {
    pick(null);
    setSaid(`${words} Take back brings it back.`);
    status.current?.focus();
  };
  const remove = (of: Movable): void => {
    const name = nameOf(piece, of);
    const corners = polygonOf(piece)?.corners.length ?? 0;
    if (of.kind === 'corner' && corners <= FEWEST_CORNERS) {
      setSaid('A piece has three corners or more.');
      return;
    }
    change(of.kind === 'corner' ? 'Remove corner' : 'Remove cut-out', '', (p) =>
      of.kind === 'corner' ? withoutCorner(p, of.index) : withoutCutOut(p, of.index),
    );
    gone(`${name} is gone.`);
  };
  const onKey = (of: Pick) => (event: KeyboardEvent<SVGElement>) => {
    if (!isPlainKey(event)) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      pick(of);
      setToPanel((n) => n + 1);
    } else if (event.key === 'Escape' && picked !== null) {
      event.preventDefault();
      pick(null);
    } else if (of.kind !== 'edge' && (event.key === 'Delete' || event.key === 'Backspace')) {
      event.preventDefault();
      remove(of);
    } else if (of.kind !== 'edge') {
      const next = movedByKey(piece, of, event.key, grid, event.shiftKey);
      if (next === null) return;
      event.preventDefault();
      pick(of);
      const place = placeOf(next, of);
      if (next === piece || place === null) {
        setSaid(`${nameOf(piece, of)} cannot go further that way: the piece could not be drawn.`);
        return;
      }
      change(
        `Move ${nameOf(piece, of)}`,
        `move.${of.kind}.${of.index}`,
        (p) => movedByKey(p, of, event.key, grid, event.shiftKey) ?? p,
      );
      setSaid(`${nameOf(piece, of)}: ${placeWords(place, system)}.`);
    }
  };
  const hint = `${id}-hint`;
  const actsOf = (of: Pick): Acts => {
    // A bowl takes up much of a phone: a finger moves it only once it is picked.
    const held = of.kind === 'corner' || (picked !== null && mark(picked) === mark(of));
    return {
      onKeyDown: onKey(of),
      ...(of.kind === 'edge' ? {} : drag.acts(of, held)),
      held: of.kind === 'cut-out' && held,
      described: hint,
    };
  };
  const pickOf = (focus: Focus): Pick =>
    focus.kind === 'cut-out'
      ? { kind: 'cut-out', index: focus.index ?? 0 }
      : { kind: 'edge', name: focus.name };

  if (seen === null)
    return (
      <p className="section-note">
        {piece.outline === null
          ? 'The drawing comes with the shape and its sizes.'
          : 'The drawing waits for sizes that can be read.'}
      </p>
    );
  const marked = focusOf(picked, seen);
  const edit = (label: string, make: (p: PieceDocument) => PieceDocument): void => change(label, '', make);
  const panelProps = { piece: shown, system, grid, change: edit, at: (...path: Path) => [...base, ...path] };
  const add = (label: string, make: (p: PieceDocument) => PieceDocument): void => {
    change(label, '', make);
    const index = piece.cutOuts.length;
    pick({ kind: 'cut-out', index });
    setSaid(`${make(piece).cutOuts[index]?.name ?? 'Cut-out'} added. Drag it, or type where it goes.`);
  };
  const dragged = drag.pick === null ? null : placeOf(shown, drag.pick);
  return (
    <div className="piece-editor" ref={figure}>
      <EditorTools
        id={id}
        system={system}
        grid={gridChoice}
        onGrid={setGridChoice}
        back={back}
        ready={ready}
        canTurn={canTurnIntoCorners(piece.outline)}
        onTurn={() => {
          change('Edit corners', '', (p) => describe(withOwnCorners(describe(p), grid)));
          pick({ kind: 'corner', index: 0 });
          setSaid('Every corner can be moved now. Edges keep how they are made.');
        }}
        onCutOut={(shape) => add('Add cut-out', (p) => withCutOut(p, seen.piece, shape, grid, rules))}
        onTapHole={() => add('Add tap hole', (p) => withTapHole(p, seen.piece, grid))}
        template={template}
        onTemplate={() => setTemplate(!template)}
      />
      {template && (
        <TemplatePanel
          id={id}
          system={system}
          onClose={() => setTemplate(false)}
          onDrawing={(drawing) => {
            const made = withTemplate(piece, seen.piece, drawing, grid, rules);
            if (!made.ok) return made.problems;
            const cutOut = made.value.cutOuts.at(-1)!;
            add('Add sink template', (p) => ({ ...p, cutOuts: [...p.cutOuts, cutOut] }));
            setTemplate(false);
            return [];
          }}
        />
      )}
      <Guard what="The drawing" of={seen.piece}>
        <PieceDrawing
          piece={seen.piece}
          system={system}
          splashes={seen.splashes}
          focus={marked}
          highlight={highlight}
          hold={drag.shown !== null}
          onFocus={(focus) => pick(pickOf(focus))}
          {...(ready ? { actOn: (focus: Focus) => actsOf(pickOf(focus)) } : {})}
          over={(sheet) => {
            drawn.current = sheet;
            if (!ready) return null;
            return (
              <>
                {picked?.kind === 'cut-out' && (
                  <CutOutGaps piece={seen.piece} index={picked.index} sheet={sheet} system={system} />
                )}
                <CornerHandles
                  document={shown}
                  sheet={sheet}
                  system={system}
                  picked={picked}
                  onPick={pick}
                  actOn={actsOf}
                />
              </>
            );
          }}
        />
      </Guard>
      {!ready && (
        <p className="section-note" role="status">
          The drawing shows the last sizes that could be read. It can be worked on again when the marked field
          is put right.
        </p>
      )}
      <p className="editor-said" role="status" tabIndex={-1} ref={status}>
        {drag.pick !== null && dragged !== null
          ? `${nameOf(piece, drag.pick)}: ${placeWords(dragged, system)}`
          : said}
      </p>
      {picked === null ? (
        <p className="section-note" id={hint}>
          Tap an edge, a cut-out{polygonOf(piece) === null ? '' : ' or a corner'} to see and change how it is
          made. Drag to move; with the keyboard, arrow keys go {gridWords(gridChoice, system)} a step
          {gridChoice === 'free' ? ' as fine as can be' : ''}, with Shift {system === 'us' ? '1 in' : '10 mm'}
          ; Enter opens its sizes, Delete takes it out.
        </p>
      ) : (
        <section
          className="editor-panel"
          aria-labelledby={`${id}-picked`}
          ref={panel}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            event.preventDefault();
            figure.current?.querySelector<SVGElement>(`[data-pick="${CSS.escape(mark(picked))}"]`)?.focus();
            pick(null);
          }}
        >
          <h3 id={`${id}-picked`}>{heading(piece, seen, picked)}</h3>
          <button type="button" className="small editor-done" onClick={() => pick(null)}>
            Done
          </button>
          <p className="unseen" id={hint}>
            Arrow keys move it, Enter opens its sizes, Escape leaves it.
          </p>
          <FieldsProvider
            value={{
              ...fields,
              document: drag.shown === null ? fields.document : setAt(fields.document, base, shown),
              warnings: picked.kind === 'cut-out' ? NO_WARNINGS : fields.warnings,
            }}
          >
            {picked.kind === 'corner' && <CornerPanel {...panelProps} index={picked.index} onGone={gone} />}
            {picked.kind === 'edge' && <EdgePanel {...panelProps} name={picked.name} describe={describe} />}
            {picked.kind === 'cut-out' && (
              <CutOutPanel {...panelProps} index={picked.index} look={look} onGone={gone} />
            )}
          </FieldsProvider>
        </section>
      )}
    </div>
  );
}

/** Is it still on the piece? An undo may have taken it away. */
function stands(piece: PieceDocument, look: Look | null, pick: Pick): boolean {
  if (pick.kind === 'cut-out') return pick.index < piece.cutOuts.length;
  if (pick.kind === 'corner') return pick.index < (polygonOf(piece)?.corners.length ?? 0);
  return look?.drawing.outline.some((segment) => segment.edge === pick.name) ?? false;
}

function focusOf(pick: Pick | null, look: Look): Focus | null {
  if (pick?.kind === 'edge') return { kind: 'edge', name: pick.name };
  const cutOut = pick?.kind === 'cut-out' ? look.piece.cutOuts[pick.index] : undefined;
  return cutOut === undefined || pick?.kind !== 'cut-out'
    ? null
    : { kind: 'cut-out', name: cutOut.name, index: pick.index };
}

function mark(pick: Pick): string {
  return pick.kind === 'edge' ? `edge ${pick.name}` : `${pick.kind} ${pick.index}`;
}

/** "Edge 3, back" where its name does not say the side. */
function heading(piece: PieceDocument, look: Look, pick: Pick): string {
  if (pick.kind !== 'edge') return nameOf(piece, pick);
  const looks = look.piece.edges[pick.name]?.countsAs ?? facings(look.piece.outline).get(pick.name);
  const name = `${pick.name.slice(0, 1).toUpperCase()}${pick.name.slice(1)}`;
  return `${name}${name.startsWith('Edge') ? '' : ' edge'}${looks === undefined ? '' : `, ${looks}`}`;
}
