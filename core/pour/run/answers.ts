/** "Something happened" in the middle of a pour: how much time that leaves, and what to drop. Computed at once, said in plain sentences. */
import { filmOverSpot_m } from '#core/film/craters.ts';
import type { CupRecipe } from '#core/mix/coat.ts';
import { emptyTime_s, mixTime_s } from '#core/mix/durations.ts';
import { weighCups } from '#core/mix/split-cups.ts';
import {
  formatDuration,
  formatFilm,
  formatMass,
  formatPercent,
  formatTemperature,
} from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import type { CoatPlan } from '../plan.ts';
import type { PlanRequest } from '../plan-coat.ts';
import type { RunHappening } from './fold-run.ts';
import type { RunCup, RunForecast, RunStep } from './forecast-run.ts';

export interface RunAnswer {
  /** What to do first. */
  readonly head: string;
  readonly says: readonly string[];
  /** Time it leaves, s; null: nothing is waiting on it. Negative: too late. */
  readonly left_s: number | null;
  /** Steps to leave out, by id. */
  readonly drop: readonly string[];
  /** A cup to mix for what is missing; null: none, or no time for it. */
  readonly extraCup: CupRecipe | null;
}

export interface AnswerRequest {
  readonly request: PlanRequest;
  readonly plan: CoatPlan;
  readonly forecast: RunForecast;
  readonly happening: RunHappening;
}

/** Advancing angle on silicone or grease, degrees: 30 to 45, the worse one. Common practice, no source. */
const CRATER_ANGLE_deg = 45;
/** A film thinner by no more than this is taken as it is. Common practice, no source. */
const THINNER_IS_FINE = 0.08;

const SHEET = 'Gloves and glasses stay on; the safety data sheet of the resin decides.';

export function answerHappening(ask: AnswerRequest): RunAnswer {
  switch (ask.happening.what) {
    case 'cup hot':
      return cupHot(ask);
    case 'spill':
    case 'short of a colour':
      return short(ask, ask.happening.mass_kg);
    case 'crater':
      return crater(ask);
    case 'called away':
      return away(ask, ask.happening.away_s);
    default:
      return away(ask, null);
  }
}

const systemOf = ({ request }: AnswerRequest): System => request.system ?? 'us';
const open = (forecast: RunForecast): readonly RunStep[] =>
  forecast.steps.filter(({ state }) => state === 'in hand' || state === 'to do');
const lower = (label: string) => label.charAt(0).toLowerCase() + label.slice(1);
const workingEnd_s = ({ forecast }: AnswerRequest) => forecast.film.stages.workingEnd_s?.low_s ?? null;

function cupHot(ask: AnswerRequest): RunAnswer {
  const { forecast, happening } = ask;
  const standing = forecast.cups.filter(({ place }) => place === 'standing');
  const named =
    happening.cup === null ? undefined : forecast.cups.find(({ number }) => number === happening.cup);
  const cup = named ?? [...standing].sort((a, b) => pourNow(a) - pourNow(b))[0];
  if (cup === undefined || cup.place === 'not mixed')
    return plain('No cup stands mixed just now: nothing of this pour can run away.', ask);
  if (cup.place === 'empty')
    return {
      ...plain(
        `Cup ${cup.number} is empty by the plan. What is left in it may still get hot: set it outside on bare concrete.`,
        ask,
      ),
      says: [SHEET],
    };
  const left_s = pourNow(cup) - forecast.now_s;
  const danger_s = cup.danger === null ? null : cup.danger.low_s - forecast.now_s;
  const mass = formatMass(ask.plan.cups[cup.number - 1]!.mass_kg);
  const says = [
    cup.temperature_K === null
      ? ''
      : `By the model it is at ${formatTemperature(cup.temperature_K, systemOf(ask))} now.`,
    danger_s === null
      ? ''
      : danger_s > 0
        ? `It may run away in ${formatDuration(danger_s)}.`
        : 'It may run away any moment: it boils, smokes and burns.',
    `Poured out thin it cools by itself. If it cannot go on the piece, set it outside on bare concrete, away from people, without a lid; never into a bin. ${SHEET}`,
  ].filter((sentence) => sentence !== '');
  if (left_s > 0)
    return {
      head: `Pour cup ${cup.number} (${mass}) next, before anything else: out of the cup within ${formatDuration(left_s)}.`,
      says,
      left_s,
      drop: [],
      extraCup: null,
    };
  return {
    head: `Cup ${cup.number} is past its safe time by ${formatDuration(-left_s)}. Do not pour what is thick, stringy or smoking; set it outside.`,
    says: [...says, ...short(ask, ask.plan.cups[cup.number - 1]!.mass_kg, cup.number).says],
    left_s,
    drop: open(forecast)
      .filter(({ step }) => step.kind === 'pour' && step.cup === cup.number)
      .map(({ step }) => step.id),
    extraCup: short(ask, ask.plan.cups[cup.number - 1]!.mass_kg, cup.number).extraCup,
  };
}

const pourNow = (cup: RunCup) => cup.pourNow?.low_s ?? Number.MAX_VALUE;

/** Resin is missing: spilt, or a colour does not reach. Either the film is a little thinner, or another cup, if there is time for it. */
function short(ask: AnswerRequest, missing_kg: number | null, number = ask.happening.cup): RunAnswer {
  const { request, plan, forecast } = ask;
  const recipe = plan.cups.find((cup) => cup.number === number) ?? plan.cups[0]!;
  if (missing_kg === null || missing_kg === 0)
    return plain(
      'How much is missing? Weigh the wiped-up towel or guess in ounces or grams: the answer hangs on it.',
      ask,
    );
  const { coat, measures, rates } = request;
  const spare_kg = plan.quantity.lines
    .filter(({ key }) => key === 'allowance')
    .reduce((sum, { mass_kg }) => sum + mass_kg, 0);
  const density = coat.card.model.density_kg_m3;
  const top_kg = measures.topArea_m2 * coat.film_m * density;
  const thinner = Math.max(0, missing_kg - spare_kg) / top_kg;
  const system = systemOf(ask);
  if (missing_kg <= spare_kg)
    return {
      head: `Carry on: ${formatMass(missing_kg)} is within the spare of ${formatMass(spare_kg)} mixed for such things.`,
      says: [],
      left_s: forecast.slack_s,
      drop: [],
      extraCup: null,
    };
  const thin = `Without another cup the film is ${formatPercent(thinner)} thinner, ${formatFilm(coat.film_m * Math.max(0, 1 - thinner), system)} instead of ${formatFilm(coat.film_m, system)}`;
  const needed_kg = missing_kg - spare_kg;
  const tinted = recipe.colourant !== 'none';
  const lasts_s =
    mixTime_s(needed_kg, tinted, rates) +
    emptyTime_s(needed_kg, rates) +
    ((needed_kg / plan.quantity.mass_kg) * measures.topArea_m2) / rates.spread_m2_per_s;
  const ends_s = forecast.now_s + lasts_s;
  const closes_s = workingEnd_s(ask);
  const left_s = closes_s === null ? null : closes_s - ends_s;
  if (thinner <= THINNER_IS_FINE)
    return {
      head: `${thin}: spread on and let it level.`,
      says: [],
      left_s: forecast.slack_s,
      drop: [],
      extraCup: null,
    };
  if (left_s !== null && left_s < 0)
    return {
      head: `No time for another cup: it would be down ${formatDuration(-left_s)} after the film stops flowing.`,
      says: [
        `${thin}. Spread what there is evenly, shades of the neighbours into the gap, and make it up in the flood coat.`,
      ],
      left_s,
      drop: [],
      extraCup: null,
    };
  const [extraCup] = weighCups(
    [
      {
        colour: coat.colours.find(({ name }) => name === recipe.colour) ?? coat.colours[0]!,
        share: 1,
        cups: 1,
      },
    ],
    needed_kg,
    coat.card.mix,
    density,
    rates.scaleStep_kg,
  );
  return {
    head: `Mix another cup of ${recipe.colour}, ${formatMass(needed_kg)}: it takes ${formatDuration(lasts_s)}${left_s === null ? '' : ` and leaves ${formatDuration(left_s)}`}.`,
    says: [`${thin}.`, ...pressed(ask, lasts_s)],
    left_s,
    drop: droppable(ask, lasts_s),
    extraCup: extraCup ?? null,
  };
}

function crater(ask: AnswerRequest): RunAnswer {
  const { request, forecast, happening } = ask;
  const { film_m } = request.coat;
  const system = systemOf(ask);
  const closes_s = workingEnd_s(ask);
  const left_s = closes_s === null ? null : closes_s - forecast.now_s;
  if (happening.size_m === null || happening.size_m === 0)
    return plain(
      'How wide is it across? A spot as wide as the film is thick may close by itself, a wide one does not.',
      ask,
    );
  const needed_m = filmOverSpot_m(CRATER_ANGLE_deg, happening.size_m / 2);
  const closes = film_m >= needed_m;
  const head = closes
    ? `Push resin over it with a gloved finger: a film of ${formatFilm(film_m, system)} stays closed over a spot this wide.`
    : `This film does not close over it: it would take ${formatFilm(needed_m, system)}, and there are ${formatFilm(film_m, system)}.`;
  const says = [
    left_s === null || left_s > 0
      ? `Dab it dry, wipe with a clean lint-free cloth, push resin in${left_s === null ? '' : ` within ${formatDuration(left_s)}`}; after that leave it alone.`
      : 'The film no longer flows: leave it alone now. Sand, clean and fill it before the flood coat.',
    ...(closes
      ? []
      : [
          `A flood coat of ${formatFilm(needed_m, system)} or more over the cleaned, abraded spot closes it.`,
        ]),
    'Silicone, wax or grease on the board or glove makes craters: no torch helps against them, and no solvent near a flame.',
  ];
  return { head, says, left_s, drop: [], extraCup: null };
}

/** Away from the piece: how long is harmless, and what is late if it takes longer. */
function away(ask: AnswerRequest, away_s: number | null): RunAnswer {
  const { forecast } = ask;
  const left_s = forecast.slack_s;
  if (left_s === null) return plain('Nothing is waiting: everything of this pour is done.', ask);
  const weakest = forecast.steps.find(({ step }) => step.id === forecast.slackStep)!;
  const standing = forecast.cups.filter(({ place }) => place === 'standing');
  const cups = standing
    .map((cup) => ({ cup, left_s: pourNow(cup) - forecast.now_s }))
    .sort((a, b) => a.left_s - b.left_s)
    .filter((each) => each.left_s < 8 * 3600)
    .map(
      (each) =>
        `Cup ${each.cup.number} stands mixed and must be out ${each.left_s > 0 ? `within ${formatDuration(each.left_s)}` : 'now'}.`,
    );
  if (left_s < 0)
    return {
      head: `No time at all: "${lower(weakest.step.label)}" is ${formatDuration(-left_s)} late already.`,
      says: [...cups, ...pressed(ask, 0)],
      left_s,
      drop: droppable(ask, 0),
      extraCup: null,
    };
  if (away_s === null)
    return {
      head: `${formatDuration(left_s)} before anything is late; then "${lower(weakest.step.label)}" is.`,
      says: cups,
      left_s,
      drop: [],
      extraCup: null,
    };
  const fits = away_s <= left_s;
  return {
    head: fits
      ? `Go: ${formatDuration(away_s)} away leaves ${formatDuration(left_s - away_s)} to spare.`
      : `Not so long: ${formatDuration(away_s)} away makes "${lower(weakest.step.label)}" ${formatDuration(away_s - left_s)} late. ${formatDuration(left_s)} is all there is.`,
    says: [...cups, ...(fits ? [] : pressed(ask, away_s))],
    left_s: left_s - away_s,
    drop: fits ? [] : droppable(ask, away_s),
    extraCup: null,
  };
}

/** Steps that may be left out without harm and would fall into the time lost. */
function droppable({ forecast }: AnswerRequest, lost_s: number): readonly string[] {
  return open(forecast)
    .filter(({ step, slack_s }) => step.optional && step.kind !== 'hands off' && slack_s < lost_s + 600)
    .map(({ step }) => step.id);
}

/** What is late if so much time is lost. */
function pressed({ forecast }: AnswerRequest, lost_s: number): readonly string[] {
  const late = open(forecast).filter(({ step, slack_s }) => !step.optional && slack_s < lost_s);
  return late.length === 0
    ? []
    : [
        `Late then: ${late.map(({ step, slack_s }) => `${lower(step.label)} (${formatDuration(lost_s - slack_s)})`).join(', ')}.`,
      ];
}

function plain(head: string, { forecast }: AnswerRequest): RunAnswer {
  return { head, says: [], left_s: forecast.slack_s, drop: [], extraCup: null };
}
