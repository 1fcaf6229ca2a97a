import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { OnPaper } from '#web/charts/use-width.ts';
import { WorkOrder } from './WorkOrder.tsx';

/** The work order is only built while a page is printed; the screen sheet is hidden then. */
export function PrintOrder() {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The browser takes its picture as soon as the handler returns, so the order has to stand by then.
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
  return (
    <OnPaper value={true}>
      <WorkOrder />
    </OnPaper>
  );
}
