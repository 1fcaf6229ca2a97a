/** Cautions stand where the act is planned, with a mark and a word, never by colour alone. */
export function Cautions({
  cautions,
  title = 'Mind',
}: {
  readonly cautions: readonly string[];
  readonly title?: string;
}) {
  if (cautions.length === 0) return null;
  return (
    <div className="cautions">
      <h4>
        <svg viewBox="0 0 20 18" aria-hidden="true">
          <path
            d="M10 1 19 17H1z"
            fill="none"
            stroke="currentColor"
            strokeWidth="1.8"
            strokeLinejoin="round"
          />
          <path d="M10 6.5v5M10 13.4v1.6" stroke="currentColor" strokeWidth="1.8" />
        </svg>
        {title}
      </h4>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </div>
  );
}
