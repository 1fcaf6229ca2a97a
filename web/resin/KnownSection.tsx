import { useCard } from './card-context.tsx';

/** What the card rests on, in plain sentences. */
export function KnownSection() {
  const { shown } = useCard();
  const knowledge = shown.fit?.knowledge;
  if (knowledge === undefined) return null;
  const parts = [
    { id: 'contradicts', name: 'Contradicts, or tells nothing', words: knowledge.doubtful },
    { id: 'known', name: 'Known from the label', words: knowledge.known },
    { id: 'learned', name: 'Learned in this shop', words: knowledge.learned },
    { id: 'assumed', name: 'Assumed, as such resins usually are', words: knowledge.assumed },
  ];
  return (
    <section aria-labelledby="rests-on">
      <h2 id="rests-on">What this rests on</h2>
      <div className="known">
        {parts.map(({ id, name, words }) => (
          <div key={id} className={`known-${id}`}>
            <h3>{name}</h3>
            {words.length === 0 ? (
              <p className="none">
                {id === 'learned' ? 'Nothing yet. A cup test below tells most.' : 'Nothing.'}
              </p>
            ) : (
              <ul>
                {words.map((each) => (
                  <li key={each}>{each.charAt(0).toUpperCase() + each.slice(1)}</li>
                ))}
              </ul>
            )}
          </div>
        ))}
      </div>
    </section>
  );
}
