import { type RefObject, useEffect, useRef } from 'react';

/** Escape anywhere in the box, or where nothing has the focus (a browser may give none to a button that is clicked). */
export function useEscape(onEscape: (() => void) | null, box: RefObject<HTMLElement | null>): void {
  const latest = useRef(onEscape);
  useEffect(() => {
    latest.current = onEscape;
  });
  const listens = onEscape !== null;
  useEffect(() => {
    if (!listens) return;
    const pressed = (event: KeyboardEvent): void => {
      const at = event.target;
      const here = at === document.body || (at instanceof Node && box.current?.contains(at));
      if (event.key !== 'Escape' || event.defaultPrevented || !here) return;
      event.preventDefault();
      latest.current?.();
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, [listens, box]);
}
