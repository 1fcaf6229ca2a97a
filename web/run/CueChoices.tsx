import { CUE_LEADS_s, type CueLead, LEAD_WORDS } from './cues.ts';
import { hushVoice, readySound, sayAloud } from './speak-aloud.ts';
import type { CueChoice } from './use-cues.ts';

interface Props {
  readonly choice: CueChoice;
  readonly onChoice: (choice: CueChoice) => void;
}

/** How long ahead the voice speaks, and whether it speaks at all. */
export function CueChoices({ choice, onChoice }: Props) {
  return (
    <div className="run-cue-choices">
      <label htmlFor="cue-lead">Voice ahead</label>
      <select
        id="cue-lead"
        value={choice.lead_s ?? 'off'}
        onChange={({ target }) => {
          readySound();
          onChoice({
            ...choice,
            lead_s: target.value === 'off' ? null : (Number(target.value) as CueLead),
          });
        }}
      >
        {CUE_LEADS_s.map((lead_s) => (
          <option key={lead_s ?? 'off'} value={lead_s ?? 'off'}>
            {lead_s === null ? 'off' : LEAD_WORDS[lead_s]}
          </option>
        ))}
      </select>
      <button
        type="button"
        aria-pressed={choice.mute}
        onClick={() => {
          readySound();
          if (choice.mute) sayAloud('The voice is on.');
          else hushVoice();
          onChoice({ ...choice, mute: !choice.mute });
        }}
      >
        {choice.mute ? 'Muted' : 'Mute'}
      </button>
    </div>
  );
}
