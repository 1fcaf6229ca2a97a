/** What the answers about a film come to, as one sentence each. Pure. */
import type { BubbleAnswer } from '#core/film/bubble-answers.ts';
import type { DripAnswers } from '#core/film/drip-answers.ts';
import type { EdgesLeftOut } from '#core/pour/film-outlook-left-out.ts';
import type { ResinSide } from '#core/pour/film-outlook-resins.ts';
import type { System } from '#core/quantity/units.ts';
import { minutesSpan, minutesWithUnit } from '#web/charts/time-text.ts';
import { speaker } from '#web/units/speak.ts';
import { fineText, perRunText } from './reason-words.ts';

/** Sizes of bubbles closer than this are called the same: far inside what the viscosity moves them. */
const SAME = 0.03;

/** The first case is this film; the others against it, each in its own words. Empty without others. */
export function bubblesSentence(cases: readonly BubbleAnswer[], system: System): string {
  const [own, ...others] = cases;
  if (own === undefined || others.length === 0) return '';
  let same = false;
  const told = others.map(({ label, smallest_m: { value } }) => {
    const share = value / own.smallest_m.value - 1;
    const size = fineText(value, system);
    const name = label.charAt(0).toLowerCase() + label.slice(1);
    if (Math.abs(share) < SAME) {
      same = true;
      return `${name}, no difference`;
    }
    return share < 0
      ? `${name}, smaller ones get out too (from ${size})`
      : `${name}, more of them stay (out from ${size} only)`;
  });
  // Thickness always shows; only warmth can cancel out.
  const why = same ? ' Warm resin is thinner but gels sooner, cold resin the other way round.' : '';
  return `Against this film (bubbles from ${fineText(own.smallest_m.value, system)} get out): ${told.join('; ')}.${why}`;
}

/** Why a flood coat is a regular resin, from both in this film; the other way round where the figures say so. */
export function resinsSentence(resins: readonly ResinSide[], system: System): string {
  const speak = speaker(system);
  const [quick, regular] = resins;
  if (quick === undefined || regular === undefined) return '';
  const wave = (side: ResinSide) => side.levelling?.longestWave_m;
  const longer = wave(regular);
  if (longer === undefined)
    return 'Neither resin flows any more once this film is down: spread it faster, or pour less at a time.';
  const name = (side: ResinSide) => `the ${side.name.toLowerCase()}`;
  if (wave(quick) === undefined)
    return `By the time this film is down ${name(quick)} has no flow left and keeps every mark; ${name(regular)} still levels waves up to ${speak.length(longer)}. That is why a flood coat is a regular resin.`;
  const shorter = wave(quick)!;
  if (!(longer > shorter))
    return `In this film ${name(quick)} levels waves up to ${speak.length(shorter)}, no shorter than ${name(regular)}: here the regular resin is no better.`;
  const times = regular.thetaLeft_per_Pa / quick.thetaLeft_per_Pa;
  const more = times >= 1.5 ? `${Math.round(times * 2) / 2} times as much flow` : 'more flow';
  return `Once this film is down ${name(regular)} has ${more} left: it levels waves up to ${speak.length(longer)}, ${name(quick)} only up to ${speak.length(shorter)}. That is why a flood coat is a regular resin.`;
}

/** Pitch, when they show, when to scrape, the last useful scrape, what they hold and what falls. */
export function dripsSentences(drips: DripAnswers, system: System): string {
  const speak = speaker(system);
  const { pitch_m, show_s, scrapeFirst_s, scrapeLast_s, stored_m2, falls_m2 } = drips;
  const hold = `They hold ${perRunText(stored_m2, system)} of edge; ${perRunText(falls_m2, system)} falls to the floor.`;
  if (show_s === undefined)
    return `Drips would stand ${speak.length(pitch_m)} apart but do not show before gel: nothing to scrape. ${hold}`;
  const scrape =
    scrapeFirst_s === undefined || scrapeLast_s === undefined
      ? ''
      : ` Scrape once ${minutesSpan(scrapeFirst_s, scrapeLast_s)}; the last useful scrape is at ${minutesWithUnit(scrapeLast_s)}, later the place no longer closes.`;
  return `Drips ${speak.length(pitch_m)} apart show from ${minutesWithUnit(show_s)}.${scrape} ${hold}`;
}

/** The edges that no film is worked over, and why; empty when all are. */
export function leftOutSentence({ dammed, rims, walls, seams }: EdgesLeftOut): string {
  const groups: readonly (readonly [readonly string[], string])[] = [
    [dammed, 'dammed for this coat'],
    [rims, 'dammed rim'],
    [walls, 'at the wall'],
    [seams, 'at the seam'],
  ];
  const told = groups.flatMap(([names, why]) => (names.length === 0 ? [] : [`${names.join(', ')} (${why})`]));
  return told.length === 0
    ? ''
    : `No film is worked over ${told.join('; ')}: nothing runs over there and nothing stays on a face.`;
}
