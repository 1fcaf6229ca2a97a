import type { ReactNode } from 'react';

interface Props {
  readonly title: string;
  readonly error: unknown;
  readonly children?: ReactNode;
  readonly retry?: (() => void) | undefined;
}

/** Something went wrong: what, what is safe, what to do, and the details for whoever mends it. */
export function Trouble({ title, error, children, retry }: Props) {
  const message = error instanceof Error ? error.message : String(error);
  const details = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return (
    <section className="trouble" role="alert">
      <h2>{title}</h2>
      <p>{message}</p>
      {children}
      <p className="actions">
        {retry !== undefined && (
          <button type="button" className="primary" onClick={retry}>
            Try again
          </button>
        )}
        <button type="button" onClick={() => window.location.reload()}>
          Reload the page
        </button>
      </p>
      <details>
        <summary>Details</summary>
        <pre>{details}</pre>
      </details>
    </section>
  );
}
