/**
 * A coat plan for tests and for looking at the charts: a 42 in vanity, three cups of the regular resin at 73 F. Curves
 * are computed; steps and ranges are set by hand so that every kind of band appears.
 */
import type { CoatPlan, CupForecast, StageForecast, StageKey, Step, StepKind } from '#core/pour/plan.ts';
import { BOARDS } from '#core/resin/boards.ts';
import { REGULAR_50 } from '#core/resin/cards.ts';
import { cureCup } from '#core/resin/cup.ts';
import { cureFilm } from '#core/resin/film.ts';
import type { TimeRange } from '#core/resin/model.ts';

const MIN = 60;
const HOUR = 3600;
const DAY = 24 * HOUR;
const air = { time_s: [0], temperature_K: [296] };
const fresh = { conversion: 0, temperature_K: 297 };

export function range(low: number, mid: number, high: number, unit_s: number): TimeRange {
  return { low_s: low * unit_s, mid_s: mid * unit_s, high_s: high * unit_s };
}

function cup(number: number, colour: string, swatch: string, mixed: number, emptied: number): CupForecast {
  const warm = (low: number, mid: number, high: number): TimeRange =>
    range(mixed + low, mixed + mid, mixed + high, MIN);
  return {
    number,
    colour,
    swatch,
    mixed_s: mixed * MIN,
    emptied_s: emptied * MIN,
    warm: warm(9, 11, 14),
    pourNow: warm(11, 14, 18),
    danger: warm(15, 18, 23),
    gel: warm(20, 25, 34),
    peak_K: 425,
    history: cureCup({
      model: REGULAR_50.model,
      mass_kg: 0.9,
      air,
      start: fresh,
      start_s: 0,
      duration_s: 40 * MIN,
    }),
  };
}

interface StepFigures {
  readonly kind: StepKind;
  readonly label: string;
  readonly cup?: number;
  readonly person?: number;
  /** Minutes: planned from and to, window opens, closes 5, 50 and 95 %. */
  readonly at: readonly [number, number];
  readonly window: readonly [number, number, number, number];
  readonly limit: string;
}

function step({ kind, label, cup: number = 0, person = 1, at, window, limit }: StepFigures): Step {
  return {
    id: `${kind} ${number === 0 ? at[0] : number}`,
    kind,
    label,
    person,
    cup: number === 0 ? null : number,
    start_s: at[0] * MIN,
    end_s: at[1] * MIN,
    window: {
      opens_s: window[0] * MIN,
      closes_s: window[1] * MIN,
      closesMid_s: window[2] * MIN,
      closesHigh_s: window[3] * MIN,
      limit,
      basis: 'model',
    },
    slack_s: (window[1] - at[1]) * MIN,
    optional: kind === 'hands off' || kind === 'scrape drips',
    rule: '',
  };
}

const flows = 'film of cup 1 stops flowing';

const steps: readonly Step[] = [
  step({
    kind: 'mix',
    label: 'Mix cup 1',
    cup: 1,
    at: [0, 3.5],
    window: [0, 11, 14, 18],
    limit: 'cup 1 reaches 40 C',
  }),
  step({
    kind: 'pour',
    label: 'Pour cup 1',
    cup: 1,
    at: [4, 7],
    window: [3.5, 11, 14, 18],
    limit: 'cup 1 reaches 40 C',
  }),
  step({
    kind: 'mix',
    label: 'Mix cup 2',
    cup: 2,
    person: 2,
    at: [3, 6.5],
    window: [0, 14, 17, 21],
    limit: 'cup 2 reaches 40 C',
  }),
  step({
    kind: 'pour',
    label: 'Pour cup 2',
    cup: 2,
    at: [7, 10],
    window: [6.5, 14, 17, 21],
    limit: 'cup 2 reaches 40 C',
  }),
  step({
    kind: 'mix',
    label: 'Mix cup 3',
    cup: 3,
    person: 2,
    at: [6.5, 10],
    window: [0, 17.5, 20.5, 24.5],
    limit: 'cup 3 reaches 40 C',
  }),
  step({
    kind: 'pour',
    label: 'Pour cup 3',
    cup: 3,
    at: [10, 12.5],
    window: [10, 17.5, 20.5, 24.5],
    limit: 'cup 3 reaches 40 C',
  }),
  step({
    kind: 'meld',
    label: 'Meld the colours',
    at: [12.5, 16.5],
    window: [12.5, 24, 31, 40],
    limit: flows,
  }),
  step({ kind: 'wrap edges', label: 'Wrap edges', at: [18, 22], window: [16.5, 26, 32, 41], limit: flows }),
  step({
    kind: 'torch',
    label: 'Torch',
    at: [22, 23],
    window: [17, 28, 35, 44],
    limit: 'bubble marks no longer level',
  }),
  step({
    kind: 'scrape drips',
    label: 'Scrape drips',
    at: [40, 41],
    window: [32, 55, 66, 80],
    limit: 'drips set',
  }),
  step({
    kind: 'scrape drips',
    label: 'Scrape drips',
    at: [60, 61],
    window: [52, 90, 108, 130],
    limit: 'drips set',
  }),
  step({
    kind: 'scrape drips',
    label: 'Scrape drips',
    at: [80, 81],
    window: [72, 110, 128, 150],
    limit: 'drips set',
  }),
  step({
    kind: 'hands off',
    label: 'Hands off',
    at: [28, 165],
    window: [28, 165, 165, 165],
    limit: 'the film has gelled',
  }),
];

function stage(
  key: StageKey,
  label: string,
  at: TimeRange | null,
  basis: StageForecast['basis'] = 'model',
): StageForecast {
  return { key, label, criterion: `criterion of ${label.toLowerCase()}`, basis, at, rule: '' };
}

const stages: readonly StageForecast[] = [
  stage('working end', 'Working time ends', range(38, 50, 64, MIN)),
  stage('no more levelling', 'Stops levelling', range(70, 97, 128, MIN)),
  stage('gel', 'Gel', range(125, 172, 240, MIN)),
  stage('recoat opens', 'Next coat may go on', range(3, 4, 5.5, HOUR)),
  stage('recoat best from', 'Best from', range(4.5, 6, 8, HOUR)),
  stage('recoat best to', 'Best to', range(7, 10, 14, HOUR)),
  stage('recoat closes', 'Abrade from here', range(9, 14, 20, HOUR)),
  stage('dry hard', 'Dry hard', range(18, 25, 36, HOUR)),
  stage('sandable', 'Can be sanded', range(26, 36, 50, HOUR)),
  stage('handle', 'Can be handled', range(30, 44, 66, HOUR)),
  stage('in use', 'In use', range(3, 4.5, 6.5, DAY)),
  stage('full cure', 'Full cure', range(7, 7, 7, DAY), 'label figure'),
];

export function samplePlan(): CoatPlan {
  return {
    coatId: 'colour',
    quantity: { lines: [], volume_m3: 0.0024, mass_kg: 2.7 },
    cups: [],
    cupForecasts: [
      cup(1, 'ink blue', '#1d3557', 0, 7),
      cup(2, 'sea green', '#5b9a8b', 3, 10),
      cup(3, 'copper', '#b87333', 6.5, 12.5),
    ],
    steps,
    stages,
    film: cureFilm({
      model: REGULAR_50.model,
      thickness_m: 0.0025,
      board: BOARDS['mdf-18'],
      air,
      start: { conversion: 0.01, temperature_K: 299 },
      start_s: 0,
      duration_s: 6 * HOUR,
    }),
    filmStart_s: 4 * MIN,
    answers: {
      thetaTotal_per_Pa: 900,
      lastTouch: [],
      longestWave_m: 0.03,
      faceHolds_m: 3e-4,
      faceHoldsLow_m: 2e-4,
      faceHoldsHigh_m: 4e-4,
      taper_m: 0.01,
      peak_K: 303,
    },
    verdict: 'tight',
    slack_s: 240,
    slackStep: 'wrap edges 18',
    says: 'The pour fits, with 4 minutes to spare when the edges are wrapped.',
    waysOut: [],
    cautions: [],
  };
}
