import { type ReactNode, useEffect, useRef } from 'react';

let firstPage = true;

/** The heading of a screen. It takes the focus when the screen was reached by a link, so that it is read out. */
export function PageTitle({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${name} · Pourwright`;
  }, [name]);
  useEffect(() => {
    if (firstPage) firstPage = false;
    else heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {children}
    </h1>
  );
}
