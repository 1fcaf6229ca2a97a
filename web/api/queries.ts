import { QueryClient, queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { newShopBody } from '#core/job/shop-body.ts';
import { DEFAULT_SPREADS } from '#core/pour/chance/spreads.ts';
import { SHOP_DEFAULTS } from '#core/pour/shop-rates.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { AnswerError } from './http.ts';
import { getJob, getShop, listJobs, putShop } from './jobs-api.ts';
import type { Shop, ShopSettings } from './types.ts';

export function makeQueryClient(): QueryClient {
  return new QueryClient({
    defaultOptions: {
      queries: {
        // The server is usually on the same bench; asking again soon is cheap, and what is shown stays while it does.
        staleTime: 5_000,
        networkMode: 'always',
        retry: (count, error) => !(error instanceof AnswerError) && count < 1,
        retryDelay: 800,
      },
      mutations: { networkMode: 'always' },
    },
  });
}

export const jobsQuery = queryOptions({ queryKey: ['jobs'], queryFn: listJobs });
export const jobQuery = (id: string) => queryOptions({ queryKey: ['job', id], queryFn: () => getJob(id) });
export const shopQuery = queryOptions({ queryKey: ['shop'], queryFn: getShop, staleTime: 60_000 });

/** What stands in while the shop's own settings are on their way. */
export const PLAIN_SHOP: Shop = {
  ...{ name: '', system: 'us', currency: 'USD', rates: SHOP_DEFAULTS, version: 0 },
  ...{ timeZone: '', spreads: DEFAULT_SPREADS },
  body: newShopBody(),
};

export function useShop(): Shop {
  return useQuery(shopQuery).data ?? PLAIN_SHOP;
}

/** The part changed here, on top of the shop as the server has it; changes made elsewhere meanwhile stay. */
async function saveShopPart(now: Shop, part: Partial<ShopSettings>): Promise<Shop> {
  let base = now;
  for (let tries = 0; tries < 3; tries++) {
    const { version, ...settings } = { ...base, ...part };
    const answer = await putShop(version, uuid7(), settings);
    if (answer.kind === 'saved') return { ...settings, version: answer.version };
    base = answer.current;
  }
  throw new AnswerError(409, 'The shop is being changed somewhere else at the same time. Try once more.');
}

/** Changes that are on screen and not on the server yet, in the order they were made. */
let pending: readonly Partial<ShopSettings>[] = [];

/** Changes the shop at once on screen, then on the server, one save after the other; goes back when the server refuses. */
export function useShopChange() {
  const client = useQueryClient();
  const show = (shop: Shop) =>
    client.setQueryData(shopQuery.queryKey, Object.assign({ ...shop }, ...pending) as Shop);
  const done = (part: Partial<ShopSettings>) => {
    pending = pending.filter((each) => each !== part);
  };
  const { mutate, error } = useMutation({
    scope: { id: 'shop' },
    mutationFn: async (part: Partial<ShopSettings>) =>
      saveShopPart(await client.ensureQueryData(shopQuery), part),
    onSuccess: (saved, part) => {
      done(part);
      show(saved);
    },
    onError: (_error, part) => {
      done(part);
      void client.invalidateQueries(shopQuery);
    },
  });
  const change = (part: Partial<ShopSettings>) => {
    pending = [...pending, part];
    void client.cancelQueries(shopQuery);
    const now = client.getQueryData(shopQuery.queryKey);
    if (now !== undefined) show(now);
    mutate(part);
  };
  return { change, error };
}
