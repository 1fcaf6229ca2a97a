/** The stages of the film as the screen tells them: time, criterion in words, what it rests on, rule of thumb. */
import { formatDuration } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import type { CureHistory, ResinCard } from '#core/resin/model.ts';
import { type Criterion, filmCriterion } from './film-criterion.ts';
import type { StageTimes } from './film-times.ts';
import { labelRecoat, labelRecoatHere, sayLabelRecoat } from './label-recoat.ts';
import type { StageForecast, StageKey } from './plan.ts';
import { STAGE_RULES } from './rules.ts';

interface Told {
  readonly key: StageKey;
  readonly times: keyof StageTimes;
  readonly criterion: Criterion;
  readonly label: string;
  readonly basis: StageForecast['basis'];
  readonly rule: string;
}

const told: readonly Told[] = [
  {
    key: 'working end',
    times: 'workingEnd_s',
    criterion: 'workingEnd',
    label: 'Working time ends',
    basis: 'label figure',
    rule: STAGE_RULES.working,
  },
  {
    key: 'no more levelling',
    times: 'noMoreLevelling_s',
    criterion: 'noMoreLevelling',
    label: 'Stops levelling',
    basis: 'model',
    rule: STAGE_RULES.levelling,
  },
  { key: 'gel', times: 'gel_s', criterion: 'gel', label: 'Gel', basis: 'model', rule: STAGE_RULES.gel },
  {
    key: 'recoat opens',
    times: 'recoatOpens_s',
    criterion: 'recoatOpens',
    label: 'Next coat may go on',
    basis: 'model',
    rule: STAGE_RULES.recoat,
  },
  {
    key: 'recoat best from',
    times: 'recoatBestFrom_s',
    criterion: 'recoatBestFrom',
    label: 'Next coat best from',
    basis: 'model',
    rule: STAGE_RULES.recoat,
  },
  {
    key: 'recoat best to',
    times: 'recoatBestTo_s',
    criterion: 'recoatBestTo',
    label: 'Next coat best until',
    basis: 'model',
    rule: STAGE_RULES.recoat,
  },
  {
    key: 'recoat closes',
    times: 'recoatCloses_s',
    criterion: 'recoatCloses',
    label: 'Abrade before the next coat from here',
    basis: 'model',
    rule: STAGE_RULES.late,
  },
  {
    key: 'dry hard',
    times: 'dryHard_s',
    criterion: 'dryHard',
    label: 'Dry hard',
    basis: 'label figure',
    rule: STAGE_RULES.hard,
  },
  {
    key: 'sandable',
    times: 'sandable_s',
    criterion: 'sandable',
    label: 'Sands to dust',
    basis: 'model',
    rule: STAGE_RULES.sand,
  },
  {
    key: 'handle',
    times: 'handle_s',
    criterion: 'handle',
    label: 'Move, unmask',
    basis: 'model',
    rule: STAGE_RULES.use,
  },
  {
    key: 'in use',
    times: 'inUse_s',
    criterion: 'inUse',
    label: 'Light use',
    basis: 'shop default',
    rule: STAGE_RULES.use,
  },
  {
    key: 'full cure',
    times: 'fullCure_s',
    criterion: 'fullCure',
    label: 'Full cure',
    basis: 'shop default',
    rule: STAGE_RULES.use,
  },
];

export interface StagesTold {
  readonly stages: readonly StageForecast[];
  /** Said when the label's recoat figure and the film's own window disagree; null when they agree or there is no figure. */
  readonly disagreement: string | null;
}

/**
 * Stages on the plan's clock. Where the label gives a recoat time, the stage says when this film is as far as the label's film is
 * then; if that lies outside the window in which this film bonds by itself, both windows are told.
 */
export function stagesTold(
  card: ResinCard,
  times: StageTimes,
  film: CureHistory,
  filmStart_s: number,
  system: System,
): StagesTold {
  const label = labelRecoat(card);
  const here = label === null ? null : labelRecoatHere(card, label, film);
  let disagreement: string | null = null;
  let beside = '';
  if (label !== null) {
    const between =
      here === null
        ? 'later than 30 days'
        : here.to_s - here.from_s < 60
          ? formatDuration(here.from_s)
          : `${formatDuration(here.from_s)} to ${formatDuration(here.to_s)}`;
    const said = sayLabelRecoat(label, system);
    beside = `. The label says ${said}; this film is as far after ${between}`;
    const opens = times.recoatOpens_s;
    const closes = times.recoatCloses_s;
    if (opens !== null && closes !== null) {
      const closes_s = closes.mid_s - filmStart_s;
      const opens_s = opens.mid_s - filmStart_s;
      if (here === null || here.to_s > closes_s || here.from_s < opens_s)
        disagreement = `Two recoat windows: this film bonds by itself from ${formatDuration(opens_s)} to ${formatDuration(closes_s)}; the label's ${said} means ${between} here, ${here !== null && here.from_s < opens_s ? 'before it is firm enough: wait' : 'a dry-hard figure: then abrade first'}.`;
    }
  }
  const stages = told.map(
    ({ key, times: of, criterion, label: name, basis, rule }): StageForecast => ({
      key,
      label: name,
      criterion: `${filmCriterion(criterion, card.model, system)}${key === 'recoat opens' || key === 'dry hard' ? beside : ''}`,
      basis,
      at: times[of],
      rule,
    }),
  );
  return { stages, disagreement };
}
