/** How wide a drawing may be: the width of its box, followed as it changes, and the paper's width while printing. */
import { createContext, type RefObject, useContext, useLayoutEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';

/** Width of the text area of a portrait letter or A4 page at 96 px an inch, less the margins of the printed page. */
export const PRINT_WIDTH_PX = 700;

/** Around what is only ever printed: it is put up while the print event runs, too late to hear it. */
export const OnPaper = createContext(false);

/**
 * A ref for the box and its width in px: `initial` on the server and until measured, never under 280. Printing happens
 * without a resize, so the browser's own print events set the paper's width and put the old one back.
 */
export function useWidth<T extends HTMLElement>(
  initial: number,
): {
  readonly box: RefObject<T | null>;
  readonly width: number;
  readonly printing: boolean;
} {
  const paper = useContext(OnPaper);
  const box = useRef<T>(null);
  const [width, setWidth] = useState(paper ? PRINT_WIDTH_PX : initial);
  const [onPaper, setOnPaper] = useState(paper);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null || paper) return;
    let printing = false;
    const measure = (): void => {
      const now = element.getBoundingClientRect().width;
      if (!printing && now > 0) setWidth(Math.max(280, Math.round(now)));
    };
    const beforePrint = (): void => {
      printing = true;
      flushSync(() => {
        setOnPaper(true);
        setWidth(PRINT_WIDTH_PX);
      });
    };
    const afterPrint = (): void => {
      printing = false;
      setOnPaper(false);
      measure();
    };
    measure();
    const watcher = typeof ResizeObserver === 'undefined' ? null : new ResizeObserver(measure);
    watcher?.observe(element);
    addEventListener('beforeprint', beforePrint);
    addEventListener('afterprint', afterPrint);
    return () => {
      watcher?.disconnect();
      removeEventListener('beforeprint', beforePrint);
      removeEventListener('afterprint', afterPrint);
    };
  }, [paper]);
  return { box, width, printing: onPaper };
}
