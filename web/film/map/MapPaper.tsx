/** A drawn map on paper: pages of its own after the work order, built only while a page is printed. */
import { type ReactNode, useEffect, useState } from 'react';
import { createPortal, flushSync } from 'react-dom';
import { OnPaper } from '#web/charts/use-width.ts';

export function MapPaper({ children }: { readonly children: ReactNode }) {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The browser takes its picture as soon as the handler returns, so the page has to stand by then.
    const before = () => flushSync(() => setPrinting(true));
    const after = () => setPrinting(false);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
  if (!printing) return null;
  return createPortal(
    <OnPaper value={true}>
      <section className="film-map-paper">{children}</section>
    </OnPaper>,
    document.body,
  );
}
