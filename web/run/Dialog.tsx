import { type ReactNode, useId, useLayoutEffect, useRef } from 'react';

interface Props {
  readonly title: string;
  /** null: it must be answered. */
  readonly onClose: (() => void) | null;
  readonly children: ReactNode;
}

/** A sheet over the screen, the browser's own: focus stays in it and goes back after it. */
export function Dialog({ title, onClose, children }: Props) {
  const place = useRef<HTMLDialogElement>(null);
  const id = useId();
  // before the sheet leaves the page, or the focus would not find its way back
  useLayoutEffect(() => {
    const dialog = place.current;
    if (dialog === null || dialog.open) return;
    dialog.showModal();
    return () => dialog.close();
  }, []);
  return (
    <dialog
      ref={place}
      className="run-dialog"
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose?.();
      }}
    >
      <div className="run-dialog-head">
        <h2 id={id}>{title}</h2>
        {onClose !== null && (
          <button type="button" onClick={onClose}>
            Close
          </button>
        )}
      </div>
      {children}
    </dialog>
  );
}
