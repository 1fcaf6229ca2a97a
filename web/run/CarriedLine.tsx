import type { Carried } from './run-session.ts';

const SAYS: Readonly<Record<Carried, readonly [mark: string, text: string]>> = {
  shared: ['✓', 'Kept here and with the shop'],
  sending: ['…', 'Kept here, on its way to the shop'],
  offline: ['○', 'Offline, kept here'],
  refused: ['!', 'Kept here; the shop’s server does not take it'],
};

/** Is what was done safe? */
export function CarriedLine({ carried, kept }: { readonly carried: Carried; readonly kept: boolean }) {
  const [mark, text] = kept
    ? SAYS[carried]
    : ['!', 'This browser keeps nothing: do not close or reload the page'];
  return (
    <p className="run-carried" role="status" data-tone={kept ? undefined : 'late'}>
      <span aria-hidden="true">{mark}</span> {text}
    </p>
  );
}
