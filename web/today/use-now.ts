import { useEffect, useState } from 'react';

/** The time, anew every half minute while the page is looked at. */
export function useNow(): number {
  const [now_ms, setNow] = useState(() => Date.now());
  useEffect(() => {
    const tick = () => setNow(Date.now());
    const timer = setInterval(tick, 30_000);
    document.addEventListener('visibilitychange', tick);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', tick);
    };
  }, []);
  return now_ms;
}
