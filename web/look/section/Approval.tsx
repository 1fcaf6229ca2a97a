import { useState } from 'react';
import type { CoatLook } from '#core/job/look-of-coat.ts';
import { approvalState, sampleWords } from './approval.ts';
import { Worded } from './Chosen.tsx';
import type { SeenLook } from './use-coat-look.ts';

/** Who approved the look, by which sample panel; and whether it is still the look that was approved. */
export function Approval({ seen, made }: { readonly seen: SeenLook; readonly made: CoatLook }) {
  const { look, hash } = made;
  const state = approvalState(look.approved, hash);
  const [by, setBy] = useState('');
  const [sample, setSample] = useState('');
  const approve = () => {
    seen.put('Approve the look', { ...look, approved: { hash, sample: sampleWords(by, sample) } });
    setBy('');
    setSample('');
  };
  return (
    <section className="look-approval" aria-label="Approval of the look">
      <h4>Approval</h4>
      <p className="look-approval-state" data-state={state} role="status">
        {state === 'none' && `Not approved yet. This is look ${hash}.`}
        {state === 'as it is' && (
          <>
            <strong>✓ Approved</strong> {look.approved!.sample} Look {hash}.
          </>
        )}
        {state === 'changed' && (
          <>
            <strong>△ Changed since it was approved.</strong> Approved was look {look.approved!.hash}{' '}
            {look.approved!.sample} This is look {hash}: have it approved anew, or undo the change.
          </>
        )}
      </p>
      {state !== 'as it is' && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            approve();
          }}
        >
          <div className="form form-tight">
            <Worded label="Approved by" value={by} onChange={setBy} />
            <Worded label="On sample panel" value={sample} onChange={setSample} />
          </div>
          <p className="actions">
            <button type="submit" className="primary" disabled={by.trim() === ''}>
              Approve this look
            </button>
            {by.trim() === '' && <span className="section-note">Say who approved it.</span>}
          </p>
        </form>
      )}
      {look.approved !== null && (
        <p className="actions">
          <button
            type="button"
            className="small"
            onClick={() => seen.put('Take the approval back', { ...look, approved: null })}
          >
            Take the approval back
          </button>
        </p>
      )}
    </section>
  );
}
