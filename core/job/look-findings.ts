/** What is doubtful about the looks of a job: never a reason to refuse a document, always worth a line at the look. */
import { readLook } from '#core/look/read-look.ts';
import { SHARE_TOLERANCE } from '#core/mix/colourant-limits.ts';
import { pouredShares } from '#core/mix/look-shares.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { readPercent } from '#core/quantity/read.ts';
import { trimmed } from '#core/quantity/rounding.ts';
import type { System } from '#core/quantity/units.ts';
import type { JobDocument } from './document.ts';
import { coatLook } from './look-of-coat.ts';
import type { JobRead } from './read-job.ts';

const percent = (share: number) => `${trimmed(share * 100, 1)} %`;

/**
 * Looks that cannot be painted, puddles beside the work, drawdowns to doubt, and cups that do not hold what the puddles of their colour need.
 * Looks whose piece or film is not there yet say nothing. Never throws on a document of the right shape.
 */
export function lookFindings(
  document: JobDocument,
  read: Pick<JobRead, 'pieces'>,
  system?: System,
): Problem[] {
  return document.coats.flatMap((coat, index) => {
    // Documents from before there were looks hold none.
    if ((coat.look ?? null) === null) return [];
    const at = `coats.${index}`;
    const made = coatLook(document, read, index, undefined, system);
    if (!made.ok)
      return doubts(
        made.problems.filter(
          (problem) => problem.path.startsWith(`${at}.`) && !/\.(film|faceFilm)$/.test(problem.path),
        ),
      );
    const { look, setting, whole_m3 } = made.value;
    const painted = readLook(look, setting);
    const found = [
      ...made.warnings,
      ...(painted.ok ? painted.warnings : painted.problems).map((problem) => ({
        ...problem,
        path: `${at}.look.${problem.path}`,
      })),
    ];
    if (!painted.ok) return doubts(found);
    const keys = setting.colours.map((colour) => colour.key);
    const poured = pouredShares(look, keys, whole_m3);
    coat.colours.forEach((colour, place) => {
      const share = colour.share.trim() === '' ? null : readPercent(colour.share, { min: 0, max: 1 });
      const holds = poured.get(keys[place]!)!;
      if (share === null || !share.ok || Math.abs(share.value - holds) <= SHARE_TOLERANCE) return;
      found.push({
        path: `${at}.colours.${place}.share`,
        code: 'warning.look-cups',
        message: `The cups of ${colour.name || `colour ${place + 1}`} do not hold what its puddles in the look need.`,
        read: `${percent(share.value)} in the cups`,
        allowed: `${percent(holds)}, as poured in the look`,
      });
    });
    return doubts(found);
  });
}

function doubts(problems: readonly Problem[]): Problem[] {
  return problems.map((problem) =>
    problem.code.startsWith('warning') ? problem : { ...problem, code: `warning.${problem.code}` },
  );
}
