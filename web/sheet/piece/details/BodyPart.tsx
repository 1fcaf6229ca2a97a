import { bodyWeight } from '#core/piece/body/body-weight.ts';
import { formatWeight } from '#core/quantity/format.ts';
import { standingCuts } from '#core/shelf/offcuts.ts';
import { useOffcutShelf } from '#web/api/offcuts-api.ts';
import { useShop } from '#web/api/queries.ts';
import { BodyPanel } from '#web/body/BodyPanel.tsx';
import { CuttingPanel, sheetWords } from '#web/body/CuttingPanel.tsx';
import { useCutting } from '#web/body/use-cutting.ts';
import type { Path } from '#web/draft/at-path.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { Guard } from '#web/shell/Guard.tsx';
import { problemsUnder, useSheet } from '../../context.tsx';
import { counted } from '../../summaries.ts';
import { BuildForm } from './BuildForm.tsx';
import { CutAsPlanned } from './CutAsPlanned.tsx';
import { CuttingForm } from './CuttingForm.tsx';
import { Fold } from './Fold.tsx';
import { togetherKey } from './together.ts';
import { pieceKey, useBodyAt } from './use-body-at.ts';
import { usePieceAt } from './use-piece-at.ts';

/** The body under the top: parts, weight, what to mind, and how to cut it from the sheets and offcuts there are. */
export function BodyPart({ base, id }: { readonly base: Path; readonly id: string }) {
  const { jobId, document: job, system, problems } = useSheet();
  const { currency } = useShop();
  const { document, read } = usePieceAt(base);
  const { movements } = useOffcutShelf();
  const body = useBodyAt(base);
  const found = body?.ok ? body.value : null;
  const cutting = useCutting(found?.request ?? null);
  const together =
    found === null || job.otherPieces.length === 0
      ? undefined
      : standingCuts(
          movements.map(({ movement }) => movement),
          jobId,
          togetherKey(document.board, found.work.boardThickness_m),
        ).at(-1);
  const place = [...base, 'body'].join('.');
  const count =
    found === null ? 0 : [...found.parts, ...found.others].reduce((sum, part) => sum + part.count, 0);
  return (
    <Fold
      id={id}
      name="Body"
      problems={problemsUnder(problems, place).length}
      summary={
        found === null
          ? 'Parts, weight and cuts come with the shape and all sizes of the piece.'
          : [
              counted(count, 'part'),
              `about ${formatWeight(bodyWeight(found.piece, found.work.options).total_kg, system)}`,
              cutting.plan?.ok ? sheetWords(cutting.plan.value) : '',
            ]
              .filter((words) => words !== '')
              .join(', ')
      }
    >
      <BuildForm base={base} />
      {found === null && (
        <p className="section-note">
          {read.body.sound
            ? 'The parts list, the weight and the cuts come when the shape and all sizes of the piece are there.'
            : 'The parts wait for an entry that cannot be read.'}
        </p>
      )}
      {body !== null && !body.ok && (
        <ul className="body-problems">
          {body.problems.map((problem) => (
            <li key={problem.code}>
              <ProblemText problem={problem} />
            </li>
          ))}
        </ul>
      )}
      {found !== null && (
        <Guard what="The parts list" of={found}>
          {found.work.needsTopHeight && (
            <p className="section-note">
              Type the height of the top above to check knee clearance and height.
            </p>
          )}
          <BodyPanel piece={found.piece} system={system} options={found.work.options} />
          {found.others.length > 0 && (
            <p>
              Of another board, and not in the cuts below: {found.others.map(({ name }) => name).join(', ')}.
            </p>
          )}
        </Guard>
      )}
      <h4 className="fold-title">Cutting</h4>
      <CuttingForm base={base} work={found?.work ?? null} />
      {found !== null && found.request !== null && (
        <Guard what="The cutting plan" of={found}>
          <p role="status" className="section-note">
            {cutting.working && 'Planning the cuts …'}
            {cutting.failed !== null && `The cuts could not be planned: ${cutting.failed}`}
          </p>
          {cutting.plan !== null && (
            <>
              {cutting.plan.ok && (
                <CutAsPlanned
                  piece={pieceKey(job, base)}
                  of={{ ...found.work, board: document.board }}
                  plan={cutting.plan.value}
                  {...(together === undefined
                    ? {}
                    : {
                        against:
                          'Its parts were cut together with those of other pieces; see the cut list of the job.',
                      })}
                />
              )}
              <CuttingPanel
                plan={cutting.plan}
                system={system}
                {...(found.work.priced ? { currency } : {})}
              />
            </>
          )}
        </Guard>
      )}
    </Fold>
  );
}
