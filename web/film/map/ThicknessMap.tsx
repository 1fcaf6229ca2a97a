/** How thick the film of a coat ends up, place by place, worked out on the piece itself. */
import './map.css';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { FilmMapRequest } from '#core/film/film-map.ts';
import type { Coat } from '#core/mix/coat.ts';
import type { Piece, PieceMeasures, Point } from '#core/piece/piece.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import type { System } from '#core/quantity/units.ts';
import { speaker } from '#web/units/speak.ts';
import { flowEnds_s, whenSpent_s } from './film-clock.ts';
import { MapChoices } from './MapChoices.tsx';
import { MapPaper } from './MapPaper.tsx';
import { MapPicture } from './MapPicture.tsx';
import { MapTable } from './MapTable.tsx';
import { FIRST_CHOICES, readChoices, sayChoices, type TypedChoices } from './map-choices.ts';
import { mapFrom_s, mapRequestOf } from './map-request.ts';
import { describeMap, sayEdges, sayLetGo } from './map-words.ts';
import { PuddleMover } from './PuddleMover.tsx';
import { type CupPuddle, layOutPuddles, onTop } from './puddle-layout.ts';
import { useMap } from './use-map.ts';

export interface ThicknessMapProps {
  readonly coat: Coat;
  readonly plan: CoatPlan;
  readonly piece: Piece;
  readonly measures: PieceMeasures;
  /** Of what is in the cups, above 0 to 1: the rest is poured on other pieces. */
  readonly share: number;
  readonly system: System;
}

/** Quiet after the last change before a map that is already on the page is worked out again, ms. */
const SETTLE_ms = 180;

export function ThicknessMap({ coat, plan, piece, measures, share, system }: ThicknessMapProps) {
  const { state, draw, cancel } = useMap();
  const [typed, setTyped] = useState<TypedChoices>(FIRST_CHOICES);
  const [moved, setMoved] = useState<Readonly<Record<string, Point>>>({});
  /** The puddle that was last asked to lie off the top. */
  const [refused, setRefused] = useState('');
  const inside = useMemo(() => onTop(piece), [piece]);
  const laid = useMemo(() => {
    const cups = plan.cups.map((cup) => ({ ...cup, volume_m3: cup.volume_m3 * share }));
    return layOutPuddles(piece, cups);
  }, [piece, plan.cups, share]);
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
  const read = useMemo(
    () => readChoices({ ...typed, start }, from_min, to_min),
    [typed, start, from_min, to_min],
  );
  const asked = useMemo((): FilmMapRequest | string | null => {
    if (!read.ok) return null;
    const { cell_m, slope, minute } = read.value;
    const moment_s = minute === null ? null : minute * 60;
    try {
      return mapRequestOf(coat, plan, piece, puddles, { cell_m, start, slope, moment_s });
    } catch (error) {
      return error instanceof Error ? error.message : String(error);
    }
  }, [coat, plan, piece, puddles, read, start]);
  const request = typeof asked === 'string' ? null : asked;
  const about = read.ok ? sayChoices(read.value) : '';

  // Once a map is on the page it follows every change; a cancel stops that until it is asked for again.
  const following = useRef(false);
  useEffect(() => {
    if (!following.current || request === null) return;
    const timer = setTimeout(() => draw(request, about), SETTLE_ms);
    return () => clearTimeout(timer);
  }, [request, about, draw]);
  const ask = (): void => {
    if (request === null) return;
    following.current = true;
    draw(request, about);
  };
  const stop = (): void => {
    following.current = false;
    cancel();
  };
  const move = (key: string, to: Point): void => {
    const on = inside(to);
    if (on) setMoved((now) => ({ ...now, [key]: to }));
    setRefused(on ? '' : key);
  };

  const speak = speaker(system);
  const working = state.phase === 'working';
  const behind = state.result !== null && state.of !== request;
  const failed = typeof asked === 'string' ? asked : state.phase === 'failed' ? state.message : '';
  const map = state.result;
  const from_s = (of: FilmMapRequest | null): number =>
    mapFrom_s(plan, of?.puddles === undefined ? 'even' : 'puddles');
  const table = map !== null && (
    <MapTable map={map} box={measures.bounds} system={system} about={state.about} />
  );
  const note = map !== null && (
    <p className="rules-note">
      {state.of?.puddles === undefined
        ? `An even film of ${speak.thickness(coat.film_m)} that lies when the last cup is spread, minute ${Math.ceil(from_s(state.of) / 60)} of the plan.`
        : `${share < 1 ? `This piece gets its share of every cup, ${Math.round(share * 100)} % by the size of its top` : 'Everything in the cups goes onto the top'}, each cup at the middle of its pouring; resin meant for the faces is among it.`}{' '}
      {sayEdges(coat, plan)} {sayLetGo(map.letGo, (theta) => whenSpent_s(plan, from_s(state.of), theta) / 60)}{' '}
      The film is as thick a liquid everywhere as that of the cup that stops flowing first. {map.columns} by{' '}
      {map.rows} cells of {Number((1000 * map.cellX_m).toFixed(2))} by{' '}
      {Number((1000 * map.cellY_m).toFixed(2))} mm, {map.steps} steps, {state.took_s.toFixed(2)} s.
    </p>
  );
  const picture = (
    <MapPicture
      piece={piece}
      system={system}
      map={map}
      puddles={start === 'puddles' ? puddles : []}
      onMove={move}
    />
  );
  return (
    <section className="film-map" aria-label={`Thickness map of ${coat.name}`} data-phase={state.phase}>
      <MapChoices
        typed={{ ...typed, start }}
        onChange={setTyped}
        problems={read.ok ? [] : read.problems}
        from_min={from_min}
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
      {map !== null && <p className="film-map-says">{describeMap(map, measures.bounds, system)}</p>}
      {picture}
      {start === 'puddles' && (
        <>
          <PuddleMover puddles={puddles} box={measures.bounds} system={system} onMove={move} />
          <p role="status" className="film-map-refused">
            {refused !== '' && `Puddle ${refused} stays where it is: the next place is not on the top.`}
          </p>
        </>
      )}
      {table}
      {note}
      {map !== null && (
        <MapPaper>
          <h2>Thickness map of {coat.name}</h2>
          <p>{describeMap(map, measures.bounds, system)}</p>
          {picture}
          {table}
          {note}
        </MapPaper>
      )}
    </section>
  );
}
