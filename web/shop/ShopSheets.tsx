import { useEffect, useMemo, useState } from 'react';
import { Notes } from '#core/job/notes.ts';
import { readSheet } from '#core/job/read-sheet.ts';
import type { ShopBody, ShopSheet } from '#core/job/shop-body.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import { SheetTable } from '#web/body/SheetTable.tsx';
import { setAt, without } from '#web/draft/at-path.ts';
import { FieldsProvider } from '#web/field/fields-context.tsx';

interface Props {
  readonly sheets: ShopBody['sheets'];
  readonly system: System;
  readonly currency: string;
  readonly onChange: (sheets: ShopBody['sheets']) => void;
}

const KEEP_AFTER_MS = 900;
const NEW: ShopSheet = { name: '', board: 'MDF', length: '', width: '', thickness: '', price: '', count: '' };

/** The sheets the shop buys. What is typed is kept after a pause, and only while all of it can be read. */
export function ShopSheets({ sheets, system, currency, onChange }: Props) {
  const [typed, setTyped] = useState<ShopBody['sheets'] | null>(null);
  const shown = typed ?? sheets;
  const problems = useMemo(() => {
    const notes = new Notes(system);
    for (const [i, sheet] of shown.entries()) readSheet(sheet, `sheets.${i}`, notes);
    const map = new Map<string, Problem[]>();
    for (const problem of notes.problems) map.set(problem.path, [...(map.get(problem.path) ?? []), problem]);
    return map;
  }, [shown, system]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new onChange is no new text
  useEffect(() => {
    if (typed === null || problems.size > 0) return;
    const timer = setTimeout(() => {
      onChange(typed);
      setTyped(null);
    }, KEEP_AFTER_MS);
    return () => clearTimeout(timer);
  }, [typed, problems]);
  return (
    <FieldsProvider
      value={{
        document: { sheets: shown },
        system,
        problems,
        warnings: new Map(),
        set: (_label, path, value) => setTyped(setAt({ sheets: shown }, path, value).sheets),
      }}
    >
      <SheetTable
        caption="Sheets the shop buys"
        count={shown.length}
        at={['sheets']}
        currency={currency}
        withBoard
        onAdd={() => setTyped([...shown, NEW])}
        onRemove={(i) => setTyped(without(shown, i))}
      />
      {problems.size > 0 && (
        <p className="section-note" role="status">
          Not kept yet: an entry cannot be read.
        </p>
      )}
    </FieldsProvider>
  );
}
