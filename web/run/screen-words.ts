/** The words beside the figures of the pour screen: a colour never says it alone. Pure. */
import { formatDuration } from '#core/quantity/format.ts';
import type { Tone } from './screen-state.ts';

export function leftWords(left_s: number): string {
  return left_s < 0 ? 'past its time' : 'left for it';
}

export const SLACK_WORDS: Readonly<Record<Tone, string>> = {
  plenty: 'On time',
  soon: 'Little to spare',
  short: 'Hurry',
  late: 'Late',
};

export function slackText(slack_s: number): string {
  return slack_s < 0 ? `${formatDuration(-slack_s)} late` : `${formatDuration(slack_s)} to spare`;
}
