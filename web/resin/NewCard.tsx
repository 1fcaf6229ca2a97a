import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { CARD_FORMAT, ResinCardDocument, type ResinCardDocumentInput } from '#core/resin/card-document.ts';
import { readCard } from '#core/resin/read-card.ts';
import { useShop } from '#web/api/queries.ts';
import { resinsQuery } from '#web/api/resin-queries.ts';
import { createResin } from '#web/api/resins-api.ts';
import { setAt } from '#web/draft/at-path.ts';
import { uuid7 } from '#web/draft/uuid7.ts';
import { type Fields, FieldsProvider } from '#web/field/fields-context.tsx';
import { QuantityField, TextField } from '#web/field/sheet-fields.tsx';
import { byPath } from '#web/sheet/context.tsx';
import { toast } from '#web/shell/toasts.tsx';
import { cardIdOf } from './new-card.ts';

const MOST_OF_ONE_NAME = 20;

/** Makes a card on the server, under the first free address of its name, and opens it. */
export function useMakeCard() {
  const queries = useQueryClient();
  const navigate = useNavigate();
  const { mutate, isPending } = useMutation({
    mutationFn: async (input: ResinCardDocumentInput) => {
      for (let count = 1; count <= MOST_OF_ONE_NAME; count += 1) {
        const document = ResinCardDocument.parse({ ...input, id: cardIdOf(input.name, count) });
        if (await createResin(uuid7(), document)) return document.id;
      }
      throw new Error(`there are ${MOST_OF_ONE_NAME} cards of this name already`);
    },
    onSuccess: (id) => {
      void queries.invalidateQueries({ queryKey: resinsQuery.queryKey });
      void navigate({ to: '/resins/$resinId', params: { resinId: id } });
    },
    onError: (error) => toast(`The card was not made: ${error.message}`),
  });
  return { make: mutate, busy: isPending };
}

const EMPTY = { name: '', mix: { byVolume: '', byWeight: '' } };

/** A card begins with a name and the mix ratio; everything else is typed on its page. */
export function NewCard() {
  const { system } = useShop();
  const { make, busy } = useMakeCard();
  const [typed, setTyped] = useState(EMPTY);
  const [tried, setTried] = useState(false);
  const input: ResinCardDocumentInput = useMemo(
    () => ({ format: CARD_FORMAT, id: 'new', name: typed.name.trim(), mix: typed.mix }),
    [typed],
  );
  const fields = useMemo((): Fields => {
    const read = readCard({ ...input, name: input.name || 'x' });
    const found = read.ok ? [] : read.problems;
    const unnamed = {
      path: 'new.name',
      code: 'card.no-name',
      message: 'The card needs a name.',
      allowed: 'as on the tin',
    };
    const problems = [
      ...(input.name === '' && tried ? [unnamed] : []),
      ...found
        .filter((each) => tried || each.code !== 'label.no-ratio')
        .map((each) => ({ ...each, path: `new.${each.path}` })),
    ];
    return {
      document: { new: typed },
      system,
      problems: byPath(problems),
      warnings: new Map(),
      set: (_label, path, value) => setTyped((now) => setAt(now, path.slice(1), value)),
    };
  }, [input, typed, tried, system]);
  return (
    <FieldsProvider value={fields}>
      <form
        className="new-card"
        aria-labelledby="new-card"
        onSubmit={(event) => {
          event.preventDefault();
          setTried(true);
          if (input.name !== '' && readCard(input).ok) make(input);
        }}
      >
        <h2 id="new-card">New card from a label</h2>
        <div className="form form-tight">
          <TextField label="Name on the tin" path={['new', 'name']} maxLength={100} />
          <QuantityField
            label="A to B by volume"
            path={['new', 'mix', 'byVolume']}
            kind="words"
            placeholder="2:1"
          />
          <QuantityField
            label="A to B by weight"
            path={['new', 'mix', 'byWeight']}
            kind="words"
            placeholder="100:44"
          />
        </div>
        <button type="submit" className="primary" disabled={busy}>
          Make the card
        </button>
      </form>
    </FieldsProvider>
  );
}
