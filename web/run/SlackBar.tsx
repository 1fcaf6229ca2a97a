import type { Tone } from './screen-state.ts';
import { SLACK_WORDS, slackText } from './screen-words.ts';

interface Props {
  readonly slack_s: number | null;
  readonly tone: Tone;
  /** The step that has the least. */
  readonly step: string;
}

/** A full bar is so much to spare or more, s. */
const FULL_s = 600;

/** How much all that is still to do can wait, in words and as a bar. */
export function SlackBar({ slack_s, tone, step }: Props) {
  if (slack_s === null) return null;
  const share = Math.min(1, Math.max(0, slack_s / FULL_s));
  return (
    <section className="run-slack" aria-label="Time to spare" data-tone={tone}>
      <p>
        <strong>{SLACK_WORDS[tone]}:</strong> {slackText(slack_s)}
        {step !== '' && <span className="basis">The tightest: {step}</span>}
      </p>
      <svg viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
        <rect className="run-slack-all" width="100" height="6" />
        <rect className="run-slack-left" width={100 * share} height="6" />
      </svg>
    </section>
  );
}
