/** How thick the film of a coat ends up, place by place, worked out on the piece itself. */
import './map.css';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { FilmMapRequest } from '#core/film/film-map.ts';
import type { Coat } from '#core/mix/coat.ts';
import type { Piece, PieceMeasures, Point } from '#core/piece/piece.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { System } from '#core/quantity/units.ts';
import { speaker } from '#web/units/speak.ts';
import { flowEnds_s } from './film-clock.ts';
import { FIRST_CHOICES, MapChoices, readNumber, readTilt, type TypedChoices } from './MapChoices.tsx';
import { MapPicture } from './MapPicture.tsx';
import { MapTable } from './MapTable.tsx';
import { mapFrom_s, mapRequestOf } from './map-request.ts';
import { type CupPuddle, layOutPuddles, onTop } from './puddle-layout.ts';
import { useMap } from './use-map.ts';

export interface ThicknessMapProps {
  readonly coat: Coat;
  readonly plan: CoatPlan;
  readonly piece: Piece;
  readonly measures: PieceMeasures;
  readonly system: System;
}

/** Quiet after the last change before a map that is already on the page is worked out again, ms. */
const SETTLE_ms = 180;

export function ThicknessMap({ coat, plan, piece, measures, system }: ThicknessMapProps) {
  const { state, draw, cancel } = useMap();
  const [typed, setTyped] = useState<TypedChoices>(FIRST_CHOICES);
  const [moved, setMoved] = useState<Readonly<Record<string, Point>>>({});
  const inside = useMemo(() => onTop(piece), [piece]);
  const laid = useMemo(() => layOutPuddles(piece, plan.cups), [piece, plan.cups]);
  const puddles = useMemo<readonly CupPuddle[]>(
    () =>
      laid.map((puddle) => {
        const to = moved[puddle.key];
        return to === undefined || !inside(to) ? puddle : { ...puddle, ...to };
      }),
    [laid, moved, inside],
  );
  const start = puddles.length === 0 ? 'even' : typed.start;
  const from_min = Math.ceil(mapFrom_s(plan, start) / 60);
  const to_min = Math.max(from_min, Math.floor(flowEnds_s(plan) / 60));
  const asked = useMemo((): FilmMapRequest | string | null => {
    const x = readTilt(typed.tiltX);
    const y = readTilt(typed.tiltY);
    const minute = typed.moment === 'gel' ? null : readNumber(typed.minute, from_min, to_min);
    if (x === undefined || y === undefined || minute === undefined) return null;
    const moment_s = minute === null ? null : minute * 60;
    try {
      return mapRequestOf(coat, plan, piece, puddles, { cell: typed.cell, start, slope: { x, y }, moment_s });
    } catch (error) {
      return error instanceof Error ? error.message : String(error);
    }
  }, [coat, plan, piece, puddles, typed, start, from_min, to_min]);
  const request = typeof asked === 'string' ? null : asked;

  // Once a map is on the page it follows every change; a cancel stops that until it is asked for again.
  const following = useRef(false);
  useEffect(() => {
    if (!following.current || request === null) return;
    const timer = setTimeout(() => draw(request), SETTLE_ms);
    return () => clearTimeout(timer);
  }, [request, draw]);
  const ask = (): void => {
    if (request === null) return;
    following.current = true;
    draw(request);
  };
  const stop = (): void => {
    following.current = false;
    cancel();
  };
  const move = (key: string, to: Point): void => {
    if (inside(to)) setMoved((now) => ({ ...now, [key]: to }));
  };

  const speak = speaker(system);
  const working = state.phase === 'working';
  const behind = state.result !== null && state.of !== request;
  const failed = typeof asked === 'string' ? asked : state.phase === 'failed' ? state.message : '';
  const moment = typed.moment === 'gel' ? 'at gel' : `at minute ${typed.minute}`;
  return (
    <section className="film-map" aria-label={`Thickness map of ${coat.name}`} data-phase={state.phase}>
      <MapChoices
        typed={{ ...typed, start }}
        onChange={setTyped}
        from_min={from_min}
        to_min={to_min}
        hasPuddles={laid.length > 0}
      />
      <div className="film-map-actions">
        {working ? (
          <button type="button" onClick={stop}>
            Cancel
          </button>
        ) : (
          <button type="button" onClick={ask} disabled={request === null}>
            Draw the thickness map
          </button>
        )}
        {Object.keys(moved).length > 0 && start === 'puddles' && (
          <button type="button" onClick={() => setMoved({})}>
            Puddles back to their places
          </button>
        )}
        {working && <progress aria-label="Working the map out" max={1} value={state.share} />}
        <span role="status">
          {state.phase === 'cancelled' && 'Cancelled. Nothing below has changed.'}
          {state.phase === 'done' && !behind && 'The map is drawn.'}
          {behind && !working && state.phase !== 'cancelled' && 'Something changed since this map was drawn.'}
        </span>
      </div>
      {failed !== '' && (
        <p className="problem-block" role="alert">
          The map could not be worked out: {failed}
        </p>
      )}
      <MapPicture
        piece={piece}
        system={system}
        map={state.result}
        puddles={start === 'puddles' ? puddles : []}
        onMove={move}
      />
      {state.result !== null && (
        <>
          <MapTable map={state.result} box={measures.bounds} system={system} moment={moment} />
          <p className="rules-note">
            {start === 'even'
              ? `An even film of ${speak.thickness(coat.film_m)} that lies when the edges are done, minute ${from_min} of the plan.`
              : 'Everything in the cups goes onto the top, each cup at the middle of its pouring; resin meant for the faces is among it.'}{' '}
            The film is as thick a liquid everywhere as that of the cup that stops flowing first.{' '}
            {state.result.columns} by {state.result.rows} cells, {state.result.steps} steps,{' '}
            {state.took_s.toFixed(2)} s.
          </p>
        </>
      )}
    </section>
  );
}
