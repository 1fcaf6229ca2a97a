/** Tells the other pages of this browser what was done on this one. */
import type { PageLine, PageNews } from './run-session.ts';

export function pageLine(run: string, hear: (news: PageNews) => void): PageLine {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => {}, close: () => {} };
  const channel = new BroadcastChannel(`pourwright-run-${run}`);
  channel.onmessage = (event: MessageEvent<PageNews>) => hear(event.data);
  return { tell: (news) => channel.postMessage(news), close: () => channel.close() };
}
