import { useEffect, useState } from 'react';
import type { System } from '#core/quantity/units.ts';
import type { ResinCardDocument } from '#core/resin/card-document.ts';
import { workerPort } from '#web/worker/port.ts';
import { FitClient, type FitPort } from './fit-client.ts';
import type { Charts, Fit, Question, Reply } from './fit-messages.ts';

const port = (): FitPort =>
  workerPort<Question, Reply>(
    () => new Worker(new URL('./fit-worker.ts', import.meta.url), { type: 'module' }),
    'The fit could not be started.',
  );

let client: FitClient | null = null;

export function fitClient(): FitClient {
  client ??= new FitClient(port());
  return client;
}

export interface ShownFit {
  readonly fit: Fit | null;
  readonly charts: Charts | null;
  /** A newer one is being computed. */
  readonly behind: boolean;
  readonly failed: string | null;
}

/** A card is fitted when the typing pauses. */
const PAUSE_MS = 250;

/** The newest fit of a card that there is. `document` null: what is typed cannot be fitted; the last fit stays on screen. */
export function useFit(document: ResinCardDocument | null, system: System): ShownFit {
  const [shown, setShown] = useState<ShownFit>({ fit: null, charts: null, behind: true, failed: null });
  useEffect(() => {
    if (document === null) return;
    let over = false;
    setShown((now) => ({ ...now, behind: true }));
    const timer = setTimeout(async () => {
      try {
        const fit = await fitClient().ask('fit', { kind: 'fit', document, system });
        if (over || fit === null) return;
        setShown((now) => ({ ...now, fit, failed: null }));
        const charts = await fitClient().ask('charts', { kind: 'charts', document, system });
        if (over || charts === null) return;
        setShown((now) => ({ ...now, charts, behind: false }));
      } catch (error) {
        if (!over)
          setShown((now) => ({
            ...now,
            behind: false,
            failed: error instanceof Error ? error.message : String(error),
          }));
      }
    }, PAUSE_MS);
    return () => {
      over = true;
      clearTimeout(timer);
    };
  }, [document, system]);
  return shown;
}
