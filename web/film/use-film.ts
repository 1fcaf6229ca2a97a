/** The film answers of one coat, worked out once for its chart and its film part, and only when one of them is opened. */
import { useMemo, useState } from 'react';
import type { CoatPour } from '#core/job/forecast.ts';
import type { PieceMeasures } from '#core/piece/piece.ts';
import type { CoatPlan } from '#core/pour/plan.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import { type OutlookState, useOutlook } from './use-outlook.ts';

export interface FilmOf {
  readonly plan: CoatPlan;
  readonly pour: CoatPour;
  readonly measures: PieceMeasures;
}

export interface CoatFilm {
  readonly state: OutlookState;
  /** Whether the film part is open. */
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  /** Film wanted on the faces as typed; null: nobody said. */
  readonly wanted: string | null;
  readonly onWanted: (text: string) => void;
  readonly wantedProblem: string | null;
  /** Distance between the marks of the maker's own tool as typed; empty: none. */
  readonly pitch: string;
  readonly onPitch: (text: string) => void;
  readonly pitchProblem: string | null;
}

/** @param of null: nothing is planned @param bandOpen a band of the chart asks */
export function useCoatFilm(of: FilmOf | null, system: System, bandOpen: boolean): CoatFilm {
  const [open, onOpen] = useState(false);
  const [wanted, onWanted] = useState<string | null>(null);
  const reads = readLength_m(wanted ?? '', { what: 'film wanted', min: 0.00001, max: 0.01 });
  const faceWanted_m = wanted !== null && reads.ok ? reads.value : undefined;
  const [pitch, onPitch] = useState('');
  const pitches = readLength_m(pitch, { what: 'distance between marks', min: 0.002, max: 0.5 });
  const toolPitch_m = pitch.trim() !== '' && pitches.ok ? pitches.value : undefined;
  const plan = of?.plan;
  const pour = of?.pour;
  const measures = of?.measures;
  const request = useMemo(() => {
    if (plan === undefined || pour === undefined || measures === undefined) return null;
    const { coat, board, air } = pour;
    return { coat, plan, measures, board, air, system, faceWanted_m, toolPitch_m };
  }, [plan, pour, measures, system, faceWanted_m, toolPitch_m]);
  const state = useOutlook(open || bandOpen ? request : null);
  const problem = (of: typeof reads) => (of.ok ? null : (of.problems[0]?.message ?? 'Not readable.'));
  return {
    state,
    open,
    onOpen,
    wanted,
    onWanted,
    wantedProblem: wanted === null ? null : problem(reads),
    pitch,
    onPitch,
    pitchProblem: pitch.trim() === '' ? null : problem(pitches),
  };
}
