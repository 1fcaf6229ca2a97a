import { useId, useState } from 'react';
import { Button } from 'react-aria-components/Button';
import { type PaperWord, usualPaper } from '#core/piece/set-out/paper.ts';
import type { System } from '#core/quantity/units.ts';
import { getPdf, type PdfFile, type SheetKind } from './get-pdf.ts';
import { SetOutTrouble } from './SetOutTrouble.tsx';

interface Props {
  readonly jobId: string;
  readonly system: System;
  /** What was typed is not saved yet: the server would print an older state. */
  readonly unsaved?: boolean;
  /** The piece of several whose sheets these are; left out: the only one. */
  readonly piece?: { readonly id: string; readonly name: string };
}

type State =
  | { readonly is: 'ready' }
  | { readonly is: 'working'; readonly kind: SheetKind }
  | { readonly is: 'done'; readonly name: string }
  | { readonly is: 'failed'; readonly kind: SheetKind; readonly error: unknown };

const NAMES: Readonly<Record<SheetKind, string>> = {
  'set-out': 'Set-out sheet',
  template: 'True-scale template',
};

/** The two sheets for the shop, on the paper chosen; what is wrong is said here and nothing is lost. */
export function SetOutLinks({ jobId, system, unsaved = false, piece }: Props) {
  const [paper, setPaper] = useState<PaperWord>(usualPaper(system));
  const [state, setState] = useState<State>({ is: 'ready' });
  const hint = useId();
  const working = state.is === 'working';

  const fetchSheet = async (kind: SheetKind, all = false) => {
    setState({ is: 'working', kind });
    try {
      const file = await getPdf(jobId, kind, paper, system, all ? undefined : piece?.id);
      keep(file);
      setState({ is: 'done', name: file.name });
    } catch (error) {
      setState({ is: 'failed', kind, error });
    }
  };

  return (
    <section className="set-out-links" aria-label="Sheets for the shop">
      <label className="field">
        <span className="field-label">Paper</span>
        <select value={paper} onChange={(event) => setPaper(event.target.value === 'a4' ? 'a4' : 'letter')}>
          <option value="letter">Letter</option>
          <option value="a4">A4</option>
        </select>
      </label>
      <p className="actions">
        {(['set-out', 'template'] as const).map((kind) => (
          <Button
            key={kind}
            isDisabled={working || unsaved}
            aria-describedby={hint}
            onPress={() => void fetchSheet(kind)}
          >
            {NAMES[kind]} {piece !== undefined && `of ${piece.name} `}(PDF)
          </Button>
        ))}
        {piece !== undefined && (
          <Button
            isDisabled={working || unsaved}
            aria-describedby={hint}
            onPress={() => void fetchSheet('set-out', true)}
          >
            Set-out sheets of all pieces (PDF)
          </Button>
        )}
      </p>
      <p id={hint} className="hint">
        {unsaved
          ? 'Saving what you typed first; the sheets come from the saved job.'
          : 'Print both at 100 %, not fitted to the page. The template has a bar of 100 mm on every sheet to measure.'}
      </p>
      <p role="status" className="hint">
        {state.is === 'working' && `Drawing the ${NAMES[state.kind].toLowerCase()} …`}
        {state.is === 'done' && `${state.name} is in your downloads.`}
      </p>
      {state.is === 'failed' && (
        <SetOutTrouble
          what={NAMES[state.kind]}
          error={state.error}
          retry={() => void fetchSheet(state.kind)}
        />
      )}
    </section>
  );
}

function keep({ name, blob }: PdfFile): void {
  const url = URL.createObjectURL(blob);
  const link = window.document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
