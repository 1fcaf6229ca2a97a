import { DEFAULT_TOLERANCE } from '#core/numeric/rosenbrock.ts';
import { BOARDS } from '#core/resin/boards.ts';
import { QUICK_20, REGULAR_50 } from '#core/resin/cards.ts';
import { horieTime, kamalConversion, nthOrderConversion } from '#core/resin/closed-forms.ts';
import { nusseltVertical } from '#core/resin/convection.ts';
import { cureCup } from '#core/resin/cup.ts';
import { cureFilm } from '#core/resin/film.ts';
import { gelPoint, partsPerHundred } from '#core/resin/gel-point.ts';
import { adiabaticRise, heatFromRatio } from '#core/resin/heat-of-reaction.ts';
import { firstTime, readState } from '#core/resin/history.ts';
import { tgAtBalance } from '#core/resin/mix-error.ts';
import type { ResinModel } from '#core/resin/model.ts';
import { filmStages } from '#core/resin/stages.ts';
import { type Row, row } from './row.ts';

const T0 = 297.15;
const AIR = { time_s: [0], temperature_K: [T0] };
const regular: ResinModel = { ...REGULAR_50.model, heat_J_kg: 300_000 };
const liquid: ResinModel = { ...regular, vitrificationOffset_K: 1e5 };

const cup = (model: ResinModel, loss_W_K: number, duration_s: number) =>
  cureCup({
    model,
    mass_kg: 0.1,
    air: AIR,
    start: { conversion: 0, temperature_K: T0 },
    start_s: 0,
    duration_s,
    tolerance: DEFAULT_TOLERANCE,
    loss_W_K,
  });

const film = (model: ResinModel, thickness_m: number) =>
  cureFilm({
    model,
    thickness_m,
    board: BOARDS['mdf-18'],
    air: AIR,
    start: { conversion: 0, temperature_K: T0 },
    start_s: 0,
    duration_s: 72 * 3600,
  });

export function resinRows(): readonly Row[] {
  const closed = 'Rate laws of Kamal and Sourour 1976, Horie et al. 1970, integrated exactly';
  const gel = 'Stockmayer 1952; Macosko and Miller 1976';
  const own = 'Another program, relative tolerance 1e-10, same equations';
  const table = 'Stage table by another program (films on 18 mm MDF, 24 C)';
  const still = cup({ ...liquid, heat_J_kg: 0 }, 0, 36_000);
  const frozen = cup({ ...regular, heat_J_kg: 0 }, 0, 168 * 3600);
  const adiabatic = cup(liquid, 0, 2000);
  const lossy = cup(liquid, 0.1, 4000);
  const quickFilm = film(QUICK_20.model, 0.0025);
  const regularFilm = film(REGULAR_50.model, 0.0025);
  const quickStages = filmStages(quickFilm, QUICK_20.model, AIR);
  const regularStages = filmStages(regularFilm, REGULAR_50.model, AIR);
  const minutes = (time_s: number | null) => (time_s ?? Number.NaN) / 60;
  return [
    row(
      closed,
      'n-th order, n 1.5, k 1e-3 /s, 1800 s: conversion',
      '',
      0.7229917,
      nthOrderConversion(1e-3, 1.5, 1800),
      5e-8,
    ),
    row(closed, 'm = n = 1, 7200 s: conversion', '', 0.48241978, kamalConversion(2e-5, 4e-4, 7200), 5e-9),
    row(closed, 'balance 1, time to 0.577', 's', 10_933.2792, horieTime(2e-5, 4e-4, 0.577, 1), 5e-5),
    row(closed, 'balance 0.9, time to 0.8', 's', 26_602.5344, horieTime(2e-5, 4e-4, 0.8, 0.9), 5e-5),
    row(gel, 'two- with four-functional: gel conversion', '', 0.5774, gelPoint(2, 4, 1) ?? Number.NaN, 5e-5),
    row(gel, '10 eq-% one-functional diluent', '', 0.6086, gelPoint(1.9, 4, 1) ?? Number.NaN, 5e-5),
    row(
      'Technical TETA hardener on EEW 187 (Polimeros, abstract)',
      'hardener',
      'phr',
      14.7,
      partsPerHundred(27.5, 187),
      0.05,
    ),
    row(
      'EEW 195, 103 kJ per epoxide equivalent',
      'heat at 100:50 by weight',
      'J/g',
      352,
      heatFromRatio(0.5) / 1000,
      0.5,
    ),
    row(
      'Heat over heat capacity',
      'adiabatic rise, 300 kJ/kg over 1900 J/kg/K',
      'K',
      158,
      adiabaticRise(300_000, 1900),
      0.5,
    ),
    row(
      'Incropera and DeWitt, worked example',
      'vertical plate, Ra 1.813e9: Nusselt',
      '',
      147,
      nusseltVertical(1.813e9, 0.69),
      0.5,
    ),
    row(
      own,
      'R1 isothermal 24 C, 3600 s: conversion',
      '',
      0.24008029,
      readState(still, 3600, liquid).conversion,
      2e-5,
    ),
    row(
      own,
      'R1 isothermal 24 C, 36 000 s: conversion',
      '',
      0.80686708,
      readState(still, 36_000, liquid).conversion,
      2e-5,
    ),
    row(
      own,
      'R2 with vitrification, 24 h: conversion',
      '',
      0.89210028,
      readState(frozen, 86_400, regular).conversion,
      2e-5,
    ),
    row(
      own,
      'R2 with vitrification, 168 h: conversion',
      '',
      0.9261742,
      readState(frozen, 604_800, regular).conversion,
      2e-5,
    ),
    row(
      own,
      'R3 adiabatic, time to 50 C',
      's',
      1055.62,
      firstTime(adiabatic, (_a, T) => T, 323.15) ?? Number.NaN,
      0.05,
    ),
    row(
      own,
      'R3 adiabatic, time to 100 C',
      's',
      1368.32,
      firstTime(adiabatic, (_a, T) => T, 373.15) ?? Number.NaN,
      0.05,
    ),
    row(own, 'R4 lossy 100 g, peak', 'C', 137.159, Math.max(...lossy.temperature_K) - 273.15, 0.1),
    row(table, 'quick, working time', 'min', 20, minutes(quickStages.workingEnd_s), 0.5),
    row(table, 'quick, gel', 'min', 41, minutes(quickStages.gel_s), 0.7),
    row(table, 'quick, film 2.5 mm peak', 'C', 38, quickStages.peak_K - 273.15, 0.6),
    row(table, 'regular, working time', 'min', 52, minutes(regularStages.workingEnd_s), 0.5),
    row(table, 'regular, viscosity ten times', 'min', 97, minutes(regularStages.noMoreLevelling_s), 0.7),
    row(table, 'regular, gel', 'min', 175, minutes(regularStages.gel_s), 2.7),
    row(
      'DiBenedetto with Tg -36 and 57 C',
      'mix 10 % short of hardener: Tg',
      'C',
      38,
      tgAtBalance(regular, 0.9) - 273.15,
      0.5,
    ),
  ];
}
