/**
 * Does the next coat land in the recoat window of this one? The window is told in ranges (5 to 95 %): only where even its
 * unlucky ends agree is the answer plain; in between the maker's glove decides, and the likelier side is said.
 */
import type { CoatPlan, StageKey } from '#core/pour/plan.ts';
import { formatDuration, formatRange } from '#core/quantity/format.ts';
import type { TimeRange } from '#core/resin/model.ts';
import { secondsBetween } from './local-time.ts';

export interface NextCoat {
  readonly verdict: 'too early' | 'bonds by itself' | 'abrade first' | 'uncertain';
  /** From the first cup of this coat to the first resin of the next on the board, s. */
  readonly after_s: number;
  /** Plain sentences: what was compared, and what to do. */
  readonly says: string;
}

/**
 * Judges the coat that follows against the plan of the one under it. `startsAt` are the local times at which their first cups are
 * mixed. null without a plan, without both times, or when this film never gets as far as to take a coat.
 *
 * Too early: the first resin lands before the window can open. Bonds by itself: it lands after the window surely opened, and the
 * last lands before it may close. Abrade first: the window surely closed, and the film most likely sands. All else: uncertain.
 */
export function judgeNextCoat(
  plan: CoatPlan | null,
  next: { readonly name: string; readonly plan: CoatPlan | null },
  startsAt: { readonly coat: string; readonly next: string },
): NextCoat | null {
  const gap_s = secondsBetween(startsAt.coat, startsAt.next);
  if (plan === null || gap_s === null) return null;
  const stage = (key: StageKey) => plan.stages.find((each) => each.key === key)?.at ?? null;
  const opens = stage('recoat opens');
  if (opens === null) return null;
  const closes = stage('recoat closes');
  const sandable = stage('sandable');

  const pours = next.plan?.steps.filter((step) => step.kind === 'pour') ?? [];
  const first_s = gap_s + Math.min(...(pours.length > 0 ? pours.map((step) => step.start_s) : [0]));
  const last_s = gap_s + Math.max(...(pours.length > 0 ? pours.map((step) => step.end_s) : [0]));
  const name = next.name === '' ? 'The next coat' : next.name;
  const answer = (verdict: NextCoat['verdict'], ...sentences: readonly string[]): NextCoat => ({
    verdict,
    after_s: first_s,
    says: sentences.join(' '),
  });

  if (gap_s <= 0)
    return answer('too early', `${name} starts before this coat does, or with it: check both starts.`);
  const lands = `${name} lands ${formatDuration(first_s)} after the first cup of this coat is mixed`;
  const opening = `This film takes a coat from ${hours(opens)}`;
  const closing =
    closes === null
      ? 'and it stays open as long as this forecast runs'
      : `and bonds by itself until ${hours(closes)}`;
  const window = `${opening} ${closing}.`;

  if (first_s < opens.low_s)
    return answer('too early', `${lands}: too early, it would stir this one. ${opening}: start later.`);
  if (first_s < opens.high_s && !(closes !== null && last_s > closes.mid_s)) {
    const touch = closes !== null && last_s > closes.low_s ? TOUCH_EITHER : TOUCH_EARLY;
    return first_s < opens.mid_s
      ? answer('uncertain', `${lands}: more likely too early than not. ${window}`, touch)
      : answer('uncertain', `${lands}: the window is more likely open than not. ${window}`, touch);
  }
  if (closes === null || last_s <= closes.low_s)
    return answer(
      'bonds by itself',
      `${lands}: inside its recoat window, it bonds by itself without sanding. ${window}`,
    );
  if (last_s <= closes.high_s)
    return last_s <= closes.mid_s
      ? answer('uncertain', `${lands}: more likely still in time to bond by itself. ${window}`, TOUCH_LATE)
      : answer('uncertain', `${lands}: more likely too late to bond by itself. ${window}`, TOUCH_LATE);
  if (sandable === null || first_s < sandable.mid_s)
    return answer(
      'uncertain',
      `${lands}: too late to bond by itself, and perhaps too early to sand.`,
      sandable === null
        ? 'This film does not get hard enough to sand within the forecast: warm the shop, or coat it earlier.'
        : `It sands to dust ${hours(sandable)} after its first cup is mixed: try the paper, and wait while it gums up. If in doubt, start earlier or later.`,
    );
  return answer(
    'abrade first',
    `${lands}: too late to bond by itself. Wash, dry, abrade evenly matt, wipe, then coat.`,
  );
}

const TOUCH_EARLY =
  'Test by touch: it must be tacky, print lightly and leave nothing on the glove; wait while it strings.';
/** Where the ranges overlap: a slow film may not have opened yet, a quick one may have closed. */
const TOUCH_EITHER =
  'Test by touch: while it strings, wait; while a glove still prints and comes off clean, it bonds; if in doubt, abrade first, as soon as it sands to dust.';
const TOUCH_LATE =
  'Test by touch: while a glove still prints, it bonds; if in doubt, abrade first, as soon as it sands to dust.';

const hours = (at: TimeRange) => formatRange(at.low_s, at.mid_s, at.high_s, 'duration', 'us');
