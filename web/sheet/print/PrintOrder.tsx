import { usePrinting } from '#web/charts/use-printing.ts';
import { OnPaper } from '#web/charts/use-width.ts';
import { WorkOrder } from './WorkOrder.tsx';

/** The work order is only built while a page is printed; the screen sheet is hidden then. */
export function PrintOrder() {
  const printing = usePrinting();
  if (!printing) return null;
  return (
    <OnPaper value={true}>
      <WorkOrder />
    </OnPaper>
  );
}
