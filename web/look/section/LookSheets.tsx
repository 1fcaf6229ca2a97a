import { useId, useState } from 'react';
import { type PaperWord, usualPaper } from '#core/piece/set-out/paper.ts';
import type { PdfFile } from '#web/set-out/get-pdf.ts';
import { SetOutTrouble } from '#web/set-out/SetOutTrouble.tsx';
import { useSheet } from '#web/sheet/context.tsx';
import { Chosen } from './Chosen.tsx';
import { getLookFile, LOOK_FILES, type LookFile } from './get-look-file.ts';

const NAMES: Readonly<Record<LookFile, string>> = {
  approval: 'Picture to approve (PDF)',
  'pour map': 'Pour map for the wall (PDF)',
  'full size': 'Full-size print (PDF)',
  picture: 'Picture (PNG)',
};

const PAPERS = [
  { value: 'letter', label: 'Letter' },
  { value: 'a4', label: 'A4' },
] as const;

type State =
  | { readonly is: 'ready' }
  | { readonly is: 'working'; readonly file: LookFile }
  | { readonly is: 'done'; readonly name: string }
  | { readonly is: 'failed'; readonly file: LookFile; readonly error: unknown };

/** The look on paper and as a picture, from the saved job. */
export function LookSheets({ coat }: { readonly coat: string }) {
  const { jobId, system, unsaved } = useSheet();
  const [paper, setPaper] = useState<PaperWord>(usualPaper(system));
  const [state, setState] = useState<State>({ is: 'ready' });
  const hint = useId();
  const fetchFile = async (file: LookFile) => {
    setState({ is: 'working', file });
    try {
      const made = await getLookFile(file, { jobId, coat, paper, system });
      keep(made);
      setState({ is: 'done', name: made.name });
    } catch (error) {
      setState({ is: 'failed', file, error });
    }
  };
  return (
    <section className="look-sheets" aria-label="Sheets of the look">
      <h4>On paper</h4>
      <div className="form form-tight">
        <Chosen<PaperWord> label="Paper of the look" value={paper} options={PAPERS} onChange={setPaper} />
      </div>
      <p className="actions">
        {LOOK_FILES.map((file) => (
          <button
            type="button"
            key={file}
            disabled={state.is === 'working' || unsaved}
            aria-describedby={hint}
            onClick={() => void fetchFile(file)}
          >
            {NAMES[file]}
          </button>
        ))}
      </p>
      <p id={hint} className="section-note">
        {unsaved
          ? 'Saving what was changed first; the sheets come from the saved job.'
          : 'Print the full-size sheets at 100 %, not fitted to the page: each has a bar of 100 mm to measure.'}
      </p>
      <p role="status" className="section-note">
        {state.is === 'working' && `Drawing: ${NAMES[state.file]} …`}
        {state.is === 'done' && `${state.name} is in your downloads.`}
      </p>
      {state.is === 'failed' && (
        <SetOutTrouble
          what={NAMES[state.file]}
          error={state.error}
          retry={() => void fetchFile(state.file)}
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
