/** What is to be remembered once the film is down and hands are off it. Pure. The rules are common practice, no source; the times are of this film. */
import type { FilmTimes } from '#core/pour/film-times.ts';

export interface Reminder {
  readonly key: 'hands off' | 'airflow' | 'tape' | 'next coat' | 'move';
  readonly label: string;
  readonly says: string;
  /** On the run's clock; null: at once. */
  readonly from_s: number | null;
  /** null: no end. */
  readonly to_s: number | null;
}

/**
 * Each by the careful end of its stage: what must wait, waits for the slow resin, what must not be late, is over with the fast one.
 */
export function remindersOf({ stages }: FilmTimes): readonly Reminder[] {
  const list: Reminder[] = [];
  const { gel_s, recoatOpens_s, recoatCloses_s, dryHard_s, handle_s } = stages;
  list.push({
    key: 'hands off',
    label: 'Hands off',
    says: 'Nothing touches the film, nobody leans on the bench; airflow stays off, doors shut.',
    from_s: null,
    to_s: gel_s?.high_s ?? null,
  });
  if (gel_s !== null) {
    list.push({
      key: 'airflow',
      label: 'Airflow on again',
      says: 'The film has gelled: dust no longer sinks in, moving air no longer ripples it.',
      from_s: gel_s.high_s,
      to_s: null,
    });
    list.push({
      key: 'tape',
      label: 'Pull the tape',
      says: 'While the film is firm and not yet hard; later it chips, and is scored along the tape first.',
      from_s: gel_s.high_s,
      to_s: dryHard_s === null ? null : Math.max(gel_s.high_s, dryHard_s.low_s),
    });
  }
  if (recoatOpens_s !== null)
    list.push({
      key: 'next coat',
      label: 'The next coat may go on',
      says: 'It bonds by itself until the window closes; from then on abrade first.',
      from_s: recoatOpens_s.high_s,
      to_s: recoatCloses_s?.low_s ?? null,
    });
  if (handle_s !== null)
    list.push({
      key: 'move',
      label: 'Move the piece',
      says: 'Carried on edge, nothing set down on the film.',
      from_s: handle_s.high_s,
      to_s: null,
    });
  return list;
}
