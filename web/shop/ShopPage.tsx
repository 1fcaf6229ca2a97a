import { useQuery } from '@tanstack/react-query';
import { shopQuery, useShopChange } from '#web/api/queries.ts';
import type { Shop } from '#web/api/types.ts';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { Trouble } from '#web/shell/Trouble.tsx';
import { BodyDefaults } from './BodyDefaults.tsx';
import { KeptField } from './KeptField.tsx';
import { RatesTable } from './RatesTable.tsx';
import { PACE_ROWS, WOOD_ROWS } from './rate-rows.ts';
import { ShopSheets } from './ShopSheets.tsx';
import { SpreadsTable } from './SpreadsTable.tsx';
import { TimeZoneField } from './TimeZoneField.tsx';

/** What the shop is, and how fast it works. */
export function ShopPage() {
  const { data, error, refetch } = useQuery(shopQuery);
  return (
    <div className="page">
      <PageTitle name="Shop">Shop</PageTitle>
      {data !== undefined ? (
        <Settings shop={data} />
      ) : error !== null ? (
        <Trouble title="The shop could not be read" error={error} retry={() => void refetch()} />
      ) : (
        <p className="waiting" role="status">
          Reading the shop …
        </p>
      )}
    </div>
  );
}

function Settings({ shop }: { readonly shop: Shop }) {
  const { change, error } = useShopChange();
  return (
    <>
      {error !== null && (
        <p className="sheet-note stop" role="alert">
          Not saved: {error.message}
        </p>
      )}
      <section aria-labelledby="shop-is">
        <h2 id="shop-is">Name, units, money</h2>
        <div className="form">
          <KeptField
            id="shop-name"
            label="Name of the shop"
            value={shop.name}
            maxLength={200}
            keep={(name) => {
              change({ name });
              return null;
            }}
          />
          <div className="field">
            <label className="field-label" htmlFor="shop-system">
              Units shown
            </label>
            <select
              id="shop-system"
              value={shop.system}
              onChange={(event) => change({ system: event.target.value === 'metric' ? 'metric' : 'us' })}
            >
              <option value="us">US: inches, fl oz, °F</option>
              <option value="metric">metric: mm, mL, °C</option>
            </select>
            <span className="field-aside">Resin is weighed in grams either way.</span>
          </div>
          <KeptField
            id="shop-currency"
            label="Currency"
            value={shop.currency}
            maxLength={3}
            keep={(typed) => {
              const currency = typed.trim().toUpperCase();
              if (!/^[A-Z]{3}$/.test(currency))
                return {
                  path: 'currency',
                  code: 'currency.unreadable',
                  message: 'This is not a currency code.',
                  read: typed,
                  allowed: 'three letters, as USD, EUR, GBP',
                };
              change({ currency });
              return null;
            }}
          />
          <TimeZoneField zone={shop.timeZone} onChange={(timeZone) => change({ timeZone })} />
        </div>
      </section>
      <section aria-labelledby="shop-body">
        <h2 id="shop-body">How this shop builds and cuts bodies</h2>
        <p className="section-note">
          Where a job does not say otherwise. Common practice, no source, until you put in your own.
        </p>
        <BodyDefaults
          body={shop.body}
          system={shop.system}
          onChange={(figures) => change({ body: figures })}
        />
        <ShopSheets
          sheets={shop.body.sheets}
          system={shop.system}
          currency={shop.currency}
          onChange={(sheets) => change({ body: { ...shop.body, sheets } })}
        />
      </section>
      <section aria-labelledby="shop-rates">
        <h2 id="shop-rates">How fast this shop works</h2>
        <p className="section-note">
          Every plan rests on these. They are shop defaults (common practice, no source) until you put in your
          own; time yourself once and change them.
        </p>
        <RatesTable
          rows={PACE_ROWS}
          caption="Working speeds"
          rates={shop.rates}
          system={shop.system}
          onChange={(rates) => change({ rates })}
        />
      </section>
      <section aria-labelledby="shop-spreads">
        <h2 id="shop-spreads">How evenly this shop works</h2>
        <p className="section-note">
          No day goes as planned. The chance to finish a pour in time rests on these. They are shop defaults
          (common practice, no source) until you put in your own.
        </p>
        <SpreadsTable
          spreads={shop.spreads}
          system={shop.system}
          onChange={(spreads) => change({ spreads })}
        />
      </section>
      <section aria-labelledby="shop-wood">
        <h2 id="shop-wood">How much this shop leaves beside a cut-out</h2>
        <p className="section-note">
          A drawing says where less is left, and lets it be: these are the least this shop likes.
        </p>
        <RatesTable
          rows={WOOD_ROWS}
          caption="Least distances"
          rates={shop.rates}
          system={shop.system}
          onChange={(rates) => change({ rates })}
        />
      </section>
    </>
  );
}
