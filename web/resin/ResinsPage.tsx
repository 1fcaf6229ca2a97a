import './resin.css';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { GENERIC_CARDS } from '#core/resin/cards.ts';
import { QUICK_DOCUMENT, REGULAR_DOCUMENT } from '#core/resin/generic-documents.ts';
import { resinsQuery } from '#web/api/resin-queries.ts';
import { PageTitle } from '#web/shell/PageTitle.tsx';
import { Trouble } from '#web/shell/Trouble.tsx';
import { NewCard, useMakeCard } from './NewCard.tsx';

const DOCUMENTS = [QUICK_DOCUMENT, REGULAR_DOCUMENT];

/** The resin cards: those of the shop, and the generic ones every shop starts with. */
export function ResinsPage() {
  const { data, error, refetch } = useQuery(resinsQuery);
  const [archived, setArchived] = useState(false);
  const { make, busy } = useMakeCard();
  const shown = (data ?? []).filter((each) => each.archived === archived);
  const inArchive = (data ?? []).filter((each) => each.archived).length;
  return (
    <div className="page">
      <PageTitle name="Resins">Resins</PageTitle>
      <section aria-labelledby="of-shop">
        <h2 id="of-shop">Cards of this shop</h2>
        {error !== null && data === undefined ? (
          <Trouble title="The cards could not be read" error={error} retry={() => void refetch()} />
        ) : data === undefined ? (
          <p className="waiting" role="status">
            Reading the cards …
          </p>
        ) : (
          <>
            <label className="tick-box">
              <input
                type="checkbox"
                checked={archived}
                onChange={(event) => setArchived(event.target.checked)}
              />
              <span>Archive ({inArchive})</span>
            </label>
            {shown.length === 0 ? (
              <p className="none">
                {archived ? 'Nothing is archived.' : 'None yet. Make one from a label below.'}
              </p>
            ) : (
              <table className="ledger resins">
                <thead>
                  <tr>
                    <th scope="col">Card</th>
                    <th scope="col">On the label</th>
                    <th scope="col">Seen in the shop</th>
                  </tr>
                </thead>
                <tbody>
                  {shown.map(({ id, document }) => (
                    <tr key={id}>
                      <th scope="row">
                        <Link to="/resins/$resinId" params={{ resinId: id }}>
                          {document.name}
                        </Link>
                        <span className="basis">{document.description}</span>
                      </th>
                      <td data-label="On the label">
                        {document.label.map(({ kind, value }) => `${kind} ${value}`).join('; ') ||
                          'no figures'}
                      </td>
                      <td data-label="Seen in the shop">
                        {seenText(document.observations.filter((seen) => !seen.withdrawn).length)}
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
          </>
        )}
      </section>
      <NewCard />
      <section aria-labelledby="generic">
        <h2 id="generic">Generic cards</h2>
        <p className="section-note">
          What labels of such resins commonly say (common practice, no source). They are there in every shop
          and stay as they are; copy one to change it.
        </p>
        <ul className="plain-list generic-cards">
          {GENERIC_CARDS.map((card, i) => (
            <li key={card.id}>
              <strong>{card.name}</strong>: {card.description}
              <span className="basis">
                {card.label.map(({ kind, text }) => `${kind} ${text}`).join('; ')}
              </span>
              <button
                type="button"
                className="small"
                disabled={busy}
                onClick={() => make({ ...DOCUMENTS[i]!, name: `${card.name}, ours` })}
              >
                Copy as a card of the shop<span className="unseen">: {card.name}</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}

const seenText = (count: number) =>
  count === 0 ? 'nothing yet' : count === 1 ? 'one observation' : `${count} observations`;
