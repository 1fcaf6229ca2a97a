/** Everything about the film of one coat, folded until it is asked for. */
import './film.css';
import { useId } from 'react';
import type { CoatPour } from '#core/job/forecast.ts';
import type { Piece, PieceMeasures } from '#core/piece/piece.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { System } from '#core/quantity/units.ts';
import { Guard } from '#web/shell/Guard.tsx';
import { speaker } from '#web/units/speak.ts';
import { BenchSection, typedSmall } from './BenchSection.tsx';
import { CellSection } from './CellSection.tsx';
import { EdgeSection } from './EdgeSection.tsx';
import { BubbleSection, PuddleSection, ResinTable } from './FilmAnswers.tsx';
import { FilmField } from './FilmField.tsx';
import { leftOutSentence } from './film-sentences.ts';
import { ThicknessMap } from './map/ThicknessMap.tsx';
import type { CoatFilm } from './use-film.ts';

export interface FilmPartProps {
  readonly name: string;
  readonly plan: CoatPlan;
  readonly pour: CoatPour;
  readonly piece: Piece;
  readonly measures: PieceMeasures;
  /** Of what is in the cups, above 0 to 1: the rest is poured on other pieces. */
  readonly share: number;
  readonly system: System;
  readonly film: CoatFilm;
}

export function FilmPart(props: FilmPartProps) {
  const { open, onOpen } = props.film;
  const id = useId();
  const speak = speaker(props.system);
  const { longestWave_m } = props.plan.answers;
  return (
    <div className="film-part" data-open={open || undefined}>
      <h4>
        <button type="button" aria-expanded={open} aria-controls={id} onClick={() => onOpen(!open)}>
          <span className="film-name">Film</span>
          <span className="film-summary">
            waves up to {speak.length(longestWave_m)} level; edges, drips, puddles, bubbles, bench, thickness
            map
            <span className="unseen"> of {props.name}</span>
          </span>
        </button>
      </h4>
      <div id={id} hidden={!open}>
        {open && <OpenFilm {...props} />}
      </div>
    </div>
  );
}

function OpenFilm({ plan, pour, piece, measures, share, system, film }: FilmPartProps) {
  const { coat } = pour;
  const { outlook, working, failed } = film.state;
  const speak = speaker(system);
  if (failed !== null)
    return (
      <p className="problem-block" role="alert">
        The film could not be worked out ({failed}). The plan is not affected.
      </p>
    );
  if (outlook === undefined) return <p role="status">Working out the film …</p>;
  if (outlook === null)
    return <p className="says">The film is gelled as it lands: nothing of it flows any more.</p>;
  return (
    <div className="film-body" aria-busy={working}>
      {outlook.edges.length > 0 && (
        <>
          <FilmField
            label="Film wanted on the faces in the end"
            value={film.wanted ?? typedSmall(outlook.faceWanted_m, system)}
            onChange={film.onWanted}
            problem={film.wantedProblem}
          />
          {outlook.edges.map((edge) => (
            <EdgeSection key={edge.names.join()} edge={edge} wanted_m={outlook.faceWanted_m} speak={speak} />
          ))}
        </>
      )}
      <p className="film-left-out">{leftOutSentence(outlook.leftOut)}</p>
      <ResinTable outlook={outlook} speak={speak} film={film} />
      <CellSection outlook={outlook} speak={speak} />
      <div className="film-columns">
        <PuddleSection outlook={outlook} speak={speak} />
        <BubbleSection outlook={outlook} speak={speak} />
        <BenchSection key={system} coat={coat} outlook={outlook} speak={speak} />
      </div>
      <section className="film-answer" aria-label="Thickness map">
        <h5>Thickness over the piece</h5>
        <Guard what="The thickness map" of={plan}>
          <ThicknessMap
            coat={coat}
            plan={plan}
            piece={piece}
            measures={measures}
            share={share}
            system={system}
          />
        </Guard>
      </section>
    </div>
  );
}
