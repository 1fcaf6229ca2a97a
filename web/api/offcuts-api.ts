/** Offcuts on the shelf: everything the app asks the server about them. */
import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useMemo } from 'react';
import { type Offcut, type OffcutMovement, offcutsOnShelf } from '#core/shelf/offcuts.ts';
import { api, refusal } from './http.ts';

export interface KeptMovement {
  readonly number: number;
  readonly at: string;
  readonly movement: OffcutMovement;
}

async function listMovements(): Promise<readonly KeptMovement[]> {
  const response = await api['offcut-movements'].$get();
  if (!response.ok) throw await refusal(response);
  return (await response.json()).movements;
}

/** Repeating it with the same id is harmless. Throws AnswerError when it cannot follow what happened before. */
async function sendMovement(movement: OffcutMovement): Promise<void> {
  const response = await api['offcut-movements'].$post({ json: { movement } });
  if (!response.ok) throw await refusal(response);
}

export const movementsQuery = queryOptions({ queryKey: ['offcut-movements'], queryFn: listMovements });

export interface OffcutShelf {
  /** False while it is on its way, or cannot be read. */
  readonly known: boolean;
  readonly movements: readonly KeptMovement[];
  readonly shelf: readonly Offcut[];
}

const NONE: readonly KeptMovement[] = [];

export function useOffcutShelf(): OffcutShelf {
  const { data } = useQuery(movementsQuery);
  return useMemo(
    () => ({
      known: data !== undefined,
      movements: data ?? NONE,
      shelf: offcutsOnShelf((data ?? NONE).map(({ movement }) => movement)),
    }),
    [data],
  );
}

/** Moves offcuts on the server, then reads the shelf again, whether it went through or not. */
export function useMoveOffcuts() {
  const client = useQueryClient();
  return useMutation({
    mutationFn: sendMovement,
    onSettled: () => client.invalidateQueries(movementsQuery),
  });
}
