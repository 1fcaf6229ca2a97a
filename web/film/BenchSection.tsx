/** A level reading, a contaminated spot, a divot: typed here, answered at every key. Not kept with the job. */
import { useState } from 'react';
import type { Coat } from '#core/mix/coat.ts';
import type { FilmOutlook } from '#core/pour/film-outlook.ts';
import {
  DEFAULT_ANGLE_deg,
  DEFAULT_DIVOT_m,
  DEFAULT_SLOPE,
  DEFAULT_SPOT_m,
  surfaceOutlook,
} from '#core/pour/film-outlook-surface.ts';
import { readLength_m } from '#core/quantity/read.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import { fromSI, type System } from '#core/quantity/units.ts';
import type { Speak } from '#web/units/speak.ts';
import { FilmField } from './FilmField.tsx';
import { fineText, rangeText } from './reason-words.ts';
import { Why } from './Why.tsx';

interface Props {
  readonly coat: Coat;
  readonly outlook: FilmOutlook;
  readonly speak: Speak;
}

/** What a level is laid along: 4 ft, or a metre. */
const RUN: Readonly<Record<System, { readonly text: string; readonly m: number }>> = {
  us: { text: '4 ft', m: 1.2192 },
  metric: { text: '1 m', m: 1 },
};

/** A small length as it is typed in the system. */
export function typedSmall(length_m: number, system: System): string {
  return system === 'us' ? `${trimmed(fromSI(length_m, 'in'), 3)} in` : `${trimmed(length_m * 1000, 3)} mm`;
}

export function BenchSection({ coat, outlook, speak }: Props) {
  const { system } = speak;
  const run = RUN[system];
  const [fall, setFall] = useState('');
  const [spot, setSpot] = useState(() => typedSmall(2 * DEFAULT_SPOT_m, system));
  const [divot, setDivot] = useState(() => typedSmall(DEFAULT_DIVOT_m, system));
  const [angle, setAngle] = useState(String(DEFAULT_ANGLE_deg));
  const unread = fall.trim() === '';
  const falls = readLength_m(unread ? '0 mm' : fall, { what: 'fall', min: 0, max: 0.05 * run.m });
  const spots = readLength_m(spot, { what: 'spot', min: 0, max: 0.2 });
  const divots = readLength_m(divot, { what: 'divot', min: 0, max: 0.02 });
  const degrees = /^\s*\d+(\.\d+)?\s*°?\s*$/.test(angle) ? Number.parseFloat(angle) : Number.NaN;
  const turned = degrees >= 0 && degrees <= 90;
  const { tilt, flood } = surfaceOutlook({
    film_m: coat.film_m,
    theta_per_Pa: outlook.thetaTotal_per_Pa,
    length_m: outlook.length_m,
    liquid: coat.card.model,
    slope: falls.ok && !unread ? falls.value / run.m : undefined,
    spotRadius_m: spots.ok ? spots.value / 2 : undefined,
    divotDepth_m: divots.ok ? divots.value : undefined,
    advancingAngle_deg: turned ? degrees : undefined,
  });
  return (
    <>
      <section className="film-answer" aria-label="Bench level">
        <h5>Bench level</h5>
        <FilmField
          label={`Bench falls, over ${run.text} (read on a level)`}
          value={fall}
          onChange={setFall}
          problem={falls.ok ? null : (falls.problems[0]?.message ?? 'Not readable.')}
        />
        <p role="status">
          {!falls.ok
            ? 'No answer until the fall can be read.'
            : tilt.assumed
              ? `No level reading. At ${typedSmall(DEFAULT_SLOPE * run.m, system)} over ${run.text} the low end would get ${rangeText(tilt.difference_m, 'film', system)} more than the high end, along ${speak.length(outlook.length_m)}.`
              : `Along ${speak.length(outlook.length_m)} the low end gets ${rangeText(tilt.difference_m, 'film', system)} more than the high end: ${tilt.matters ? 'level the bench' : 'level enough'}.`}
          {tilt.levelTo !== undefined &&
            ` It begins to matter at ${typedSmall(tilt.levelTo * run.m, system)} over ${run.text}.`}
        </p>
        <Why what="bench level" reasons={tilt.reasons} range="film" system={system} />
      </section>
      <section className="film-answer" aria-label="Craters and a second flood">
        <h5>Craters, divots and a second flood</h5>
        <div className="form form-tight">
          <FilmField
            label="Worst spot, across"
            value={spot}
            onChange={setSpot}
            problem={spots.ok ? null : (spots.problems[0]?.message ?? 'Not readable.')}
          />
          <FilmField
            label="Its angle, degrees (30 to 45 on silicone)"
            value={angle}
            onChange={setAngle}
            problem={turned ? null : 'Allowed: 0 to 90 degrees.'}
          />
          <FilmField
            label="Deepest divot"
            value={divot}
            onChange={setDivot}
            problem={divots.ok ? null : (divots.problems[0]?.message ?? 'Not readable.')}
          />
        </div>
        <p role="status">
          {!(spots.ok && divots.ok && turned)
            ? 'No answer until all three can be read.'
            : `${flood.closes ? 'The film closes over such a spot if it is pushed over it' : 'The film draws back from such a spot'}: it takes ${fineText(flood.filmToClose_m, system)}, and ${fineText(flood.alwaysSafe_m, system)} closes over any size. Over the divot the surface sinks ${fineText(flood.sink_m, system)} as the resin shrinks. ${flood.secondFlood ? 'Plan a second flood.' : 'One flood is enough.'}`}
        </p>
        <Why what="craters and divots" reasons={flood.reasons} range="film" system={system} />
      </section>
    </>
  );
}
