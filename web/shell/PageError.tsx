import type { ErrorComponentProps } from '@tanstack/react-router';
import { Trouble } from './Trouble.tsx';

export function PageError({ error, reset }: ErrorComponentProps) {
  return (
    <div className="page">
      <Trouble title="This screen stopped working" error={error} retry={reset}>
        <p>What you typed is kept on this device and comes back when the page is opened again.</p>
      </Trouble>
    </div>
  );
}
