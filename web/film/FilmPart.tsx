/** Everything about the film of one coat, folded until it is asked for. */
import './film.css';
import { useId, useMemo, useState } from 'react';
import type { CoatPour } from '#core/job/forecast.ts';
import type { Piece, PieceMeasures } from '#core/piece/piece.ts';
import type { FilmOutlook } from '#core/pour/film-outlook.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import { Guard } from '#web/shell/Guard.tsx';
import { speaker } from '#web/units/speak.ts';
import { BenchSection, typedSmall } from './BenchSection.tsx';
import { EdgeSection } from './EdgeSection.tsx';
import { BubbleSection, CellSection, PuddleSection, ResinTable } from './FilmAnswers.tsx';
import { FilmField } from './FilmField.tsx';
import { ThicknessMap } from './map/ThicknessMap.tsx';
import { useOutlook } from './use-outlook.ts';
import { Reasons } from './Why.tsx';
import { bandWhys } from './whys.ts';

export interface FilmPartProps {
  readonly name: string;
  readonly plan: CoatPlan;
  readonly pour: CoatPour;
  readonly piece: Piece;
  readonly measures: PieceMeasures;
  readonly system: System;
}

export function FilmPart(props: FilmPartProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const speak = speaker(props.system);
  const { longestWave_m } = props.plan.answers;
  return (
    <div className="film-part" data-open={open || undefined}>
      <h4>
        <button type="button" aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>
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

function OpenFilm({ plan, pour, piece, measures, system }: FilmPartProps) {
  const { coat, board, air } = pour;
  const [wanted, setWanted] = useState<string | null>(null);
  const reads = readLength_m(wanted ?? '', { what: 'film wanted', min: 0.00001, max: 0.01 });
  const faceWanted_m = wanted !== null && reads.ok ? reads.value : undefined;
  const request = useMemo(
    () => ({ coat, plan, measures, board, air, system, faceWanted_m }),
    [coat, plan, measures, board, air, system, faceWanted_m],
  );
  const { outlook, working, failed } = useOutlook(request);
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
      <BandButtons outlook={outlook} system={system} />
      {outlook.edges.length === 0 ? (
        <p>Every edge is dammed: nothing runs over, nothing stays on a face.</p>
      ) : (
        <>
          <FilmField
            label="Film wanted on the faces in the end"
            value={wanted ?? typedSmall(outlook.faceWanted_m, system)}
            onChange={setWanted}
            problem={wanted === null || reads.ok ? null : (reads.problems[0]?.message ?? 'Not readable.')}
          />
          {outlook.edges.map((edge) => (
            <EdgeSection key={edge.names.join()} edge={edge} wanted_m={outlook.faceWanted_m} speak={speak} />
          ))}
        </>
      )}
      <ResinTable outlook={outlook} speak={speak} />
      <div className="film-columns">
        <PuddleSection outlook={outlook} speak={speak} />
        <CellSection outlook={outlook} speak={speak} />
        <BubbleSection outlook={outlook} speak={speak} />
        <BenchSection key={system} coat={coat} outlook={outlook} speak={speak} />
      </div>
      <section className="film-answer" aria-label="Thickness map">
        <h5>Thickness over the piece</h5>
        <Guard what="The thickness map" of={plan}>
          <ThicknessMap coat={coat} plan={plan} piece={piece} measures={measures} system={system} />
        </Guard>
      </section>
    </div>
  );
}

/** The bands of the chart above, each with its reasons. */
function BandButtons({ outlook, system }: { readonly outlook: FilmOutlook; readonly system: System }) {
  const [chosen, setChosen] = useState<string | null>(null);
  const id = useId();
  const bands = bandWhys(outlook);
  const shown = bands.find(({ band }) => band === chosen);
  return (
    <section className="film-answer" aria-label="Why the chart says so">
      <p className="film-bands">
        <span>Why:</span>
        {bands.map(({ band }) => (
          <button
            type="button"
            className="small"
            key={band}
            aria-expanded={band === chosen}
            aria-controls={id}
            onClick={() => setChosen(band === chosen ? null : band)}
          >
            {band}
          </button>
        ))}
      </p>
      <div id={id} hidden={shown === undefined}>
        {shown?.groups.map(({ range, reasons }) => (
          <Reasons key={reasons[0]?.says} reasons={reasons} range={range} system={system} />
        ))}
      </div>
    </section>
  );
}
