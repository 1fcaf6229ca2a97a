import { pourClock } from '#web/units/dates.ts';
import type { Speak } from '#web/units/speak.ts';
import type { StandingCup } from './screen-state.ts';

interface Props {
  readonly standing: readonly StandingCup[];
  readonly speak: Speak;
}

/** Every cup that stands mixed: how warm it is by the model, and until when it must be out. */
export function CupsStanding({ standing, speak }: Props) {
  if (standing.length === 0) return null;
  return (
    <section className="run-cups" aria-label="Cups standing">
      {standing.map(({ cup, left_s, tone }) => (
        <p key={cup.number} data-tone={tone}>
          <span className="run-cup-name">
            <svg className="dot" viewBox="0 0 10 10" aria-hidden="true">
              <circle cx="5" cy="5" r="4.5" fill={cup.swatch} stroke="currentColor" strokeWidth="0.5" />
            </svg>
            Cup {cup.number} {cup.colour}
          </span>
          <span className="run-cup-left">
            {left_s === null
              ? 'may stand'
              : left_s < 0
                ? `past its time by ${pourClock(-left_s)}`
                : `${pourClock(left_s)} to pour it`}
          </span>
          {cup.temperature_K !== null && (
            <span className="run-cup-warm">about {speak.temperature(cup.temperature_K)}</span>
          )}
        </p>
      ))}
    </section>
  );
}
