import type { Path } from '#web/draft/at-path.ts';
import { BodyPart } from './details/BodyPart.tsx';
import { FilesPart } from './details/FilesPart.tsx';
import { FitPart } from './details/FitPart.tsx';
import { MeasuredPart } from './details/MeasuredPart.tsx';
import { SetOutPart } from './details/SetOutPart.tsx';

/** What belongs to a piece beside its drawing and tables, each folded to a line. `base`: where the piece stands in the job. */
export function PieceDetails({ base }: { readonly base: Path }) {
  const id = base.join('-');
  return (
    <div className="folds">
      <MeasuredPart base={base} id={`${id}-survey`} />
      <FitPart base={base} id={`${id}-fit`} />
      <BodyPart base={base} id={`${id}-build`} />
      <FilesPart base={base} id={`${id}-files`} />
      <SetOutPart base={base} id={`${id}-set-out`} />
    </div>
  );
}
