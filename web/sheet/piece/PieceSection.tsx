import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { problemsUnder, useSheet } from '../context.tsx';
import { Section } from '../Section.tsx';
import { pieceNeeds, pieceSummary } from '../summaries.ts';
import { CornerTable } from './CornerTable.tsx';
import { CutOutTable } from './CutOutTable.tsx';
import { useChosenPiece } from './chosen-piece.ts';
import { CutList } from './details/CutList.tsx';
import { EdgeTable } from './EdgeTable.tsx';
import { EditedPiece } from './EditedPiece.tsx';
import { OutlineForm } from './OutlineForm.tsx';
import { PieceChooser } from './PieceChooser.tsx';
import { PieceDetails } from './PieceDetails.tsx';
import { SplashTable } from './SplashTable.tsx';

const boards = ['MDF', 'moisture-resistant MDF', 'plywood', 'solid wood'].map((board) => ({
  value: board,
  label: board,
}));

/** The piece as drawn and as measured, side by side. */
export function PieceSection() {
  const { document, forecast, speak, problems } = useSheet();
  const choice = useChosenPiece();
  const { pieces, chosen, base } = choice;
  const measures = forecast?.pieces.find(({ id }) => id === chosen.id)?.measures ?? null;
  const missing = pieceNeeds(pieces, forecast?.missing ?? []);
  const wrong = pieces.reduce((sum, { path }) => sum + problemsUnder(problems, path).length, 0);
  return (
    <Section
      id="piece"
      name={pieces.length === 1 ? 'Piece' : 'Pieces'}
      summary={pieceSummary(document, forecast, speak)}
      needs={missing}
      problems={wrong}
    >
      <PieceChooser {...choice} />
      <div className="piece" key={chosen.id}>
        <div className="piece-drawing">
          <EditedPiece base={base} />
        </div>
        <div className="piece-tables">
          <OutlineForm base={base} />
          <div className="form form-tight">
            <QuantityField label="Body thickness" path={[...base, 'bodyThickness']} kind="length" />
            <QuantityField label="Board under the film" path={[...base, 'boardThickness']} kind="length" />
            <SelectField label="Board" path={[...base, 'board']} options={boards} className="wide" />
          </div>
        </div>
        <div className="piece-lists">
          <CornerTable base={base} />
          <EdgeTable base={base} />
          <CutOutTable base={base} />
          <SplashTable base={base} />
          {measures !== null && (
            <dl className="figures">
              <div>
                <dt>Top</dt>
                <dd>{speak.area(measures.topArea_m2)}</dd>
              </div>
              <div>
                <dt>Finished faces</dt>
                <dd>{speak.area(measures.finishedFaceArea_m2)}</dd>
              </div>
              <div>
                <dt>Underside returns</dt>
                <dd>{speak.area(measures.undersideReturnArea_m2)}</dd>
              </div>
              <div>
                <dt>Finished edges</dt>
                <dd>{speak.run(measures.finishedEdgeLength_m)}</dd>
              </div>
              <div>
                <dt>Longest diagonal</dt>
                <dd>{speak.length(measures.longestDiagonal_m)}</dd>
              </div>
              <div>
                <dt>A solid body would weigh</dt>
                <dd>{speak.weight(measures.bodyMass_kg)}</dd>
              </div>
            </dl>
          )}
        </div>
      </div>
      <PieceDetails key={`${chosen.id} details`} base={base} />
      {pieces.length > 1 && <CutList />}
    </Section>
  );
}
