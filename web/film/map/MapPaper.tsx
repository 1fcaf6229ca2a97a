/** A drawn map on paper: pages of its own after the work order, built only while a page is printed. */
import type { ReactNode } from 'react';
import { createPortal } from 'react-dom';
import { usePrinting } from '#web/charts/use-printing.ts';
import { OnPaper } from '#web/charts/use-width.ts';

export function MapPaper({ children }: { readonly children: ReactNode }) {
  const printing = usePrinting();
  if (!printing) return null;
  return createPortal(
    <OnPaper value={true}>
      <section className="film-map-paper">{children}</section>
    </OnPaper>,
    document.body,
  );
}
