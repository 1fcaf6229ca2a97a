import type { Chance } from '#core/pour/chance/chance.ts';
import { slackSays, spareOrShort } from './chance-words.ts';

/** The slack of the pours on one line: from the bad day to the good one, the middle marked, "in time" to the right of nought. */
export function SlackStrip({ slack }: { readonly slack: Chance['slack'] }) {
  const { low_s, mid_s, high_s } = slack;
  const span_s = Math.max(high_s, 0) - Math.min(low_s, 0) || 1;
  const from_s = Math.min(low_s, 0) - 0.06 * span_s;
  const place = (time_s: number) => `${(100 * (time_s - from_s)) / (1.12 * span_s)}%`;
  return (
    <div className="slack-strip">
      <svg role="img" aria-label={slackSays(slack)} height="40">
        <rect className="slack-late" x="0" y="8" width={place(0)} height="24" />
        <line className="slack-axis" x1="0" x2="100%" y1="20" y2="20" />
        <line className="slack-range" x1={place(low_s)} x2={place(high_s)} y1="20" y2="20" />
        {[low_s, high_s].map((time_s) => (
          <line key={time_s} className="slack-end" x1={place(time_s)} x2={place(time_s)} y1="13" y2="27" />
        ))}
        <circle className="slack-mid" cx={place(mid_s)} cy="20" r="6" />
        <line className="slack-nought" x1={place(0)} x2={place(0)} y1="2" y2="38" />
      </svg>
      <dl>
        <div>
          <dt>5 in 100 do worse</dt>
          <dd>{spareOrShort(low_s)}</dd>
        </div>
        <div>
          <dt>the middle</dt>
          <dd>{spareOrShort(mid_s)}</dd>
        </div>
        <div>
          <dt>5 in 100 do better</dt>
          <dd>{spareOrShort(high_s)}</dd>
        </div>
      </dl>
      <p className="basis">Left of the upright line: late. Right of it: time to spare.</p>
    </div>
  );
}
