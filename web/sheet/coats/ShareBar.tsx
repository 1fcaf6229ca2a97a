import { formatPercent } from '#core/quantity/format.ts';

interface Part {
  readonly name: string;
  readonly swatch: string;
  /** null: not given. */
  readonly share: number | null;
}

/** The shares of a coat as one bar, with what is missing to the whole, or over it, drawn and said. */
export function ShareBar({ parts }: { readonly parts: readonly Part[] }) {
  const total = parts.reduce((sum, part) => sum + (part.share ?? 0), 0);
  const whole = Math.max(1, total);
  const rest = 1 - total;
  let x = 0;
  const said = parts
    .map((p) => `${p.name} ${p.share === null ? 'not given' : formatPercent(p.share)}`)
    .join(', ');
  const sum =
    Math.abs(rest) <= 0.0005
      ? 'together 100%'
      : rest > 0
        ? `${formatPercent(rest, { decimals: rest < 0.02 ? 1 : 0 })} still to be given`
        : `${formatPercent(-rest, { decimals: -rest < 0.02 ? 1 : 0 })} too much`;
  return (
    <figure className="share-bar">
      <svg viewBox="0 0 1000 40" preserveAspectRatio="none" role="img" aria-label={`${said}; ${sum}`}>
        <rect x="0" y="0" width="1000" height="40" className="share-empty" />
        {parts.map((part, i) => {
          const width = ((part.share ?? 0) / whole) * 1000;
          const from = x;
          x += width;
          return (
            <rect
              // biome-ignore lint/suspicious/noArrayIndexKey: the parts are drawn in their order
              key={i}
              x={from}
              y="0"
              width={width}
              height="40"
              fill={part.swatch}
              className="share-part"
            />
          );
        })}
        {total > 1 && <line x1={1000 / total} x2={1000 / total} y1="0" y2="40" className="share-limit" />}
      </svg>
      <figcaption data-wrong={Math.abs(rest) > 0.005 || undefined}>
        {parts.map((part, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the parts are drawn in their order
          <span key={i} className="share-word">
            <svg className="dot" viewBox="0 0 10 10" aria-hidden="true">
              <rect width="10" height="10" fill={part.swatch} className="share-part" />
            </svg>
            {part.name} {part.share === null ? '?' : formatPercent(part.share)}
          </span>
        ))}
        <strong>{sum}</strong>
      </figcaption>
    </figure>
  );
}
