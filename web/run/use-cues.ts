import { useEffect, useMemo, useRef, useState } from 'react';
import type { RunForecast } from '#core/pour/run/forecast-run.ts';
import { type CueLead, cues, dueCues } from './cues.ts';
import type { Whose } from './screen-state.ts';
import { beep, sayAloud, shake } from './speak-aloud.ts';

export interface CueChoice {
  readonly lead_s: CueLead;
  readonly mute: boolean;
}

const KEY = 'pourwright.cues';

export function useCueChoice(): readonly [CueChoice, (choice: CueChoice) => void] {
  const [choice, setChoice] = useState<CueChoice>(() => {
    try {
      return { lead_s: 60, mute: false, ...JSON.parse(localStorage.getItem(KEY) ?? '{}') } as CueChoice;
    } catch {
      return { lead_s: 60, mute: false };
    }
  });
  const choose = (next: CueChoice) => {
    setChoice(next);
    try {
      localStorage.setItem(KEY, JSON.stringify(next));
    } catch {
      // Forgotten with the page.
    }
  };
  return [choice, choose];
}

/** What was said stands in writing so long. */
const WRITTEN_FOR_s = 30;

/** Gives each cue once when its moment comes, and answers the last one in writing. */
export function useCues(
  forecast: RunForecast | null,
  now_s: number,
  whose: Whose,
  choice: CueChoice,
): string {
  const given = useRef(new Set<string>());
  const [written, setWritten] = useState({ says: '', at_s: 0 });
  const list = useMemo(
    () => (forecast === null ? [] : cues(forecast, whose, choice.lead_s)),
    [forecast, whose, choice.lead_s],
  );
  useEffect(() => {
    const due = dueCues(list, now_s, given.current);
    if (due.length === 0) return;
    for (const { id, says } of due) {
      given.current.add(id);
      if (!choice.mute) sayAloud(says);
    }
    setWritten({ says: due.map(({ says }) => says).join(' '), at_s: now_s });
    if (due.some(({ urgent }) => urgent)) {
      if (!choice.mute) beep();
      shake();
    }
  }, [list, now_s, choice.mute]);
  return now_s - written.at_s < WRITTEN_FOR_s ? written.says : '';
}
