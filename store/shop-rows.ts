/** The shop in SQL, the same statements for both databases. */
import type { Kysely, Selectable } from 'kysely';
import { isRowNumber } from './job-rows.ts';
import { newShop, Shop } from './shop.ts';
import type { ShopOutcome, ShopSave, StoredShop } from './store.ts';
import type { Tables } from './tables.ts';

type Db = Kysely<Tables>;

export async function getShop(db: Db): Promise<StoredShop | null> {
  const row = await db.selectFrom('shop').selectAll().orderBy('version', 'desc').limit(1).executeTakeFirst();
  return row === undefined ? null : { version: row.version, savedAt: row.saved_at, shop: read(row) };
}

/** Within a transaction that no other save of the shop runs beside. */
export async function saveShop(db: Db, save: ShopSave): Promise<ShopOutcome> {
  const earlier = await db
    .selectFrom('shop')
    .select(['version', 'saved_at'])
    .where('save_id', '=', save.saveId)
    .executeTakeFirst();
  if (earlier !== undefined) return { outcome: 'saved', version: earlier.version, savedAt: earlier.saved_at };
  const current = (await getShop(db)) ?? { version: 0, shop: newShop() };
  if (current.version !== save.baseVersion) {
    const base = isRowNumber(save.baseVersion)
      ? await db.selectFrom('shop').selectAll().where('version', '=', save.baseVersion).executeTakeFirst()
      : undefined;
    return {
      outcome: 'conflict',
      current: { version: current.version, document: current.shop },
      base: save.baseVersion === 0 ? newShop() : base === undefined ? null : read(base),
    };
  }
  const version = current.version + 1;
  const { name, system, currency, timeZone, rates, spreads, body } = save.shop;
  await db
    .insertInto('shop')
    .values({
      version,
      save_id: save.saveId,
      saved_at: save.at,
      name: name.replaceAll('\0', '').toWellFormed(),
      system,
      currency,
      rates: JSON.stringify(rates),
      body: JSON.stringify(body),
      time_zone: timeZone,
      spreads: JSON.stringify(spreads),
    })
    .execute();
  return { outcome: 'saved', version, savedAt: save.at };
}

function read(row: Selectable<Tables['shop']>): Shop {
  return Shop.parse({
    name: row.name,
    system: row.system,
    currency: row.currency,
    rates: JSON.parse(row.rates),
    body: JSON.parse(row.body),
    timeZone: row.time_zone,
    spreads: JSON.parse(row.spreads),
  });
}
