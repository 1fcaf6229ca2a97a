import { createContext, type ReactNode, useContext } from 'react';
import type { JobDocument } from '#core/job/document.ts';
import type { JobForecast } from '#core/job/forecast.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import type { Path } from '#web/draft/at-path.ts';
import type { RowFocus } from '#web/drawing/focus.ts';
import { FieldsProvider } from '#web/field/fields-context.tsx';
import type { Speak } from '#web/units/speak.ts';

export interface Sheet {
  readonly jobId: string;
  readonly document: JobDocument;
  readonly forecast: JobForecast | null;
  /** A newer forecast is being computed. */
  readonly behind: boolean;
  /** Something typed is not with the server yet. */
  readonly unsaved: boolean;
  readonly system: System;
  readonly speak: Speak;
  readonly problems: ReadonlyMap<string, readonly Problem[]>;
  readonly warnings: ReadonlyMap<string, readonly Problem[]>;
  readonly edit: (label: string, place: string, make: (document: JobDocument) => JobDocument) => void;
  /** Changes one field; typing in it is one step of undo. */
  readonly set: (label: string, path: Path, value: unknown) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** What undo and redo would change; null where there is nothing. */
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /** The row in focus, for the drawing: an edge name or a cut-out's place. */
  readonly focus: RowFocus;
  readonly setFocus: (focus: RowFocus) => void;
}

export type { RowFocus };

const SheetContext = createContext<Sheet | null>(null);

/** The sheet around its sections, and for the fields in them. */
export function SheetProvider({ value, children }: { readonly value: Sheet; readonly children: ReactNode }) {
  return (
    <SheetContext.Provider value={value}>
      <FieldsProvider value={value}>{children}</FieldsProvider>
    </SheetContext.Provider>
  );
}

export function useSheet(): Sheet {
  const sheet = useContext(SheetContext);
  if (sheet === null) throw new Error('useSheet is used outside a sheet');
  return sheet;
}

/** Problems under a path: `coats.0` gathers `coats.0.film` and `coats.0.colours.1.share`. */
export function problemsUnder(problems: ReadonlyMap<string, readonly Problem[]>, path: string): Problem[] {
  const found: Problem[] = [];
  for (const [at, list] of problems) if (at === path || at.startsWith(`${path}.`)) found.push(...list);
  return found;
}

export function byPath(problems: readonly Problem[]): Map<string, Problem[]> {
  const map = new Map<string, Problem[]>();
  for (const problem of problems) map.set(problem.path, [...(map.get(problem.path) ?? []), problem]);
  return map;
}
