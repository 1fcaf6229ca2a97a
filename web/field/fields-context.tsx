import { createContext, useContext } from 'react';
import type { Problem } from '#core/quantity/problem.ts';
import type { System } from '#core/quantity/units.ts';
import type { Path } from '#web/draft/at-path.ts';

/** The document that the fields inside are places of. */
export interface Fields {
  readonly document: unknown;
  readonly system: System;
  readonly problems: ReadonlyMap<string, readonly Problem[]>;
  readonly warnings: ReadonlyMap<string, readonly Problem[]>;
  /** Changes one field; typing in it is one step of undo. */
  readonly set: (label: string, path: Path, value: unknown) => void;
}

const FieldsContext = createContext<Fields | null>(null);
export const FieldsProvider = FieldsContext.Provider;

export function useFields(): Fields {
  const fields = useContext(FieldsContext);
  if (fields === null) throw new Error('a field stands outside a document');
  return fields;
}
