import { queryOptions, useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import type { ResinCard } from '#core/resin/model.ts';
import { getResin, listFittedResins, listResins } from './resins-api.ts';

export const resinsQuery = queryOptions({ queryKey: ['resins'], queryFn: listResins });
export const resinQuery = (id: string) =>
  queryOptions({ queryKey: ['resin', id], queryFn: () => getResin(id) });
export const fittedQuery = queryOptions({
  queryKey: ['fitted-resins'],
  queryFn: listFittedResins,
  staleTime: 30_000,
});

export interface Cards {
  /** Generic cards and those of the shop, archived ones too: what a coat's resin is looked up in. */
  readonly all: readonly ResinCard[];
  /** Of the shop alone: what a forecast is given. The same list until one of them changes. */
  readonly ofShop: readonly ResinCard[];
  /** What a coat may be changed to. */
  readonly offered: readonly ResinCard[];
  /** False while the shop's own cards are still on their way: then an unknown id says nothing. */
  readonly known: boolean;
}

/** Every resin card a job can use. */
export function useCards(): Cards {
  const { data } = useQuery(fittedQuery);
  return useMemo(() => {
    const ofShop = (data ?? []).map(({ card }) => card);
    const open = (data ?? []).filter((each) => !each.archived).map(({ card }) => card);
    return {
      all: [...GENERIC_CARDS, ...ofShop],
      ofShop,
      offered: [...GENERIC_CARDS, ...open],
      known: data !== undefined,
    };
  }, [data]);
}
