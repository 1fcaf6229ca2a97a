import { useEffect, useRef, useState } from 'react';
import { pourClock } from '#web/units/dates.ts';
import type { Speak } from '#web/units/speak.ts';
import { AfterScreen } from './AfterScreen.tsx';
import { CueChoices } from './CueChoices.tsx';
import { CupsStanding } from './CupsStanding.tsx';
import { HappenedSheet } from './HappenedSheet.tsx';
import { ReadingSheet } from './ReadingSheet.tsx';
import { Reminders } from './Reminders.tsx';
import { remindersOf } from './reminders.ts';
import type { RunSession, RunView } from './run-session.ts';
import type { KeptRun } from './run-shelf.ts';
import { SlackBar } from './SlackBar.tsx';
import { isOpen, screenState, type Whose } from './screen-state.ts';
import { leftWords } from './screen-words.ts';
import { readySound } from './speak-aloud.ts';
import { useCueChoice, useCues } from './use-cues.ts';
import { WhoseSteps } from './WhoseSteps.tsx';

interface Props {
  readonly kept: KeptRun;
  readonly session: RunSession;
  readonly view: RunView;
  readonly speak: Speak;
}

/** The pour under way: what to do now, how long it may take, and what comes next; readable from across the piece. */
export function PourScreen({ kept, session, view, speak }: Props) {
  const { plan } = kept.pour;
  const crew = Math.max(1, ...plan.steps.map(({ person }) => person));
  const [whose, setWhose] = useState<Whose>('all');
  const { forecast, failed } = view;
  const now_s = view.now_s ?? 0;
  const [sheet, setSheet] = useState<'happened' | 'reading' | null>(null);
  const [choice, setChoice] = useCueChoice();
  const written = useCues(forecast, now_s, whose, choice);
  const button = useRef<HTMLButtonElement>(null);
  const ready = forecast !== null;
  useEffect(() => {
    // the button that started the clock is gone: the keyboard goes on where it would be wanted
    if (ready && document.activeElement === document.body) button.current?.focus({ preventScroll: true });
  }, [ready]);
  if (forecast === null)
    return (
      <p role="status" className="waiting">
        {failed === null ? 'Computing the windows …' : `The windows could not be computed: ${failed}.`}
      </p>
    );
  if (view.state.finished_s !== null)
    return <AfterScreen kept={kept} session={session} view={view} forecast={forecast} speak={speak} />;
  const screen = screenState(forecast, now_s, whose);
  const { now, next, left_s, wait_s, tone } = screen;
  const undoable = view.state.undoable;
  const filmDown = forecast.steps.every(
    (each) => (each.step.kind !== 'pour' && each.step.kind !== 'mix') || !isOpen(each),
  );
  // one phone may have done all it has to do while others still work
  const over = screen.handsFree && (whose === 'all' || screenState(forecast, now_s, 'all').handsFree);
  const target = now ?? next;
  const figure = pourClock(Math.abs((now === null ? wait_s : left_s) ?? 0));
  return (
    <div className="run-pour">
      <p className="run-clock">
        <span className="unseen">On the clock of the pour </span>
        {pourClock(now_s)}
        {crew > 1 && <WhoseSteps crew={crew} whose={whose} onWhose={setWhose} />}
      </p>
      <section className="run-now" aria-label="Now" data-tone={tone}>
        {target === null ? (
          <h2>Nothing more to do: hands off</h2>
        ) : (
          <>
            <p className="run-word">{now === null ? 'Next' : 'Now'}</p>
            <h2>{target.step.label}</h2>
            {left_s !== null && (
              <p className="run-left">
                <span className="run-figure" data-long={figure.length > 5 || undefined}>
                  {figure}
                </span>
                <span className="run-unit">{now === null ? 'until it is due' : leftWords(left_s)}</span>
              </p>
            )}
            <p className="run-limit">
              Until {target.window.limit}
              {target.step.optional && '. May be left out'}
            </p>
          </>
        )}
      </section>
      <div className="run-buttons">
        {over ? (
          <button
            ref={button}
            type="button"
            className="primary run-done"
            onClick={() => void session.did({ kind: 'finished' })}
          >
            Finish the pour
          </button>
        ) : (
          <button
            ref={button}
            type="button"
            className="primary run-done"
            disabled={target === null}
            onClick={() => {
              readySound();
              if (target !== null) void session.did({ kind: 'done', step: target.step.id });
            }}
          >
            Done
          </button>
        )}
        <button
          type="button"
          disabled={target === null}
          onClick={() =>
            target !== null && void session.did({ kind: 'skipped', step: target.step.id, why: '' })
          }
        >
          Skip
        </button>
        <button type="button" disabled={undoable === null} onClick={() => void session.undo()}>
          Undo
        </button>
        <button type="button" onClick={() => setSheet('happened')}>
          Something happened
        </button>
        <button type="button" onClick={() => setSheet('reading')}>
          Reading
        </button>
      </div>
      <section className="run-next" aria-label="Next">
        {now !== null && next !== null && (
          <p>
            <span className="run-word">Next</span> {next.step.label}
            {next.start_s > now_s && <span className="run-when">, in {pourClock(next.start_s - now_s)}</span>}
          </p>
        )}
        {screen.beside.map(({ step }) => (
          <p key={step.id}>
            <span className="run-word">Person {step.person}</span> {step.label}
          </p>
        ))}
      </section>
      <SlackBar slack_s={screen.slack_s} tone={screen.slackTone} step={stepLabel(forecast.slackStep)} />
      <CupsStanding standing={screen.standing} speak={speak} />
      <div className="run-cues">
        <CueChoices choice={choice} onChoice={setChoice} />
        <p className="run-written" aria-live="polite">
          {written}
        </p>
      </div>
      {filmDown && (
        <Reminders
          list={remindersOf(forecast.film).filter(({ key }) => over || key !== 'hands off')}
          now_s={now_s}
          zero_ms={Date.now() - now_s * 1000}
          speak={speak}
        />
      )}
      {sheet === 'happened' && (
        <HappenedSheet
          kept={kept}
          session={session}
          forecast={forecast}
          now_s={now_s}
          speak={speak}
          onClose={() => setSheet(null)}
        />
      )}
      {sheet === 'reading' && (
        <ReadingSheet session={session} forecast={forecast} speak={speak} onClose={() => setSheet(null)} />
      )}
    </div>
  );

  function stepLabel(id: string | null): string {
    return plan.steps.find((step) => step.id === id)?.label ?? '';
  }
}
