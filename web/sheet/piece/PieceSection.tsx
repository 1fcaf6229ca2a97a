import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { problemsUnder, useSheet } from '../context.tsx';
import { Section } from '../Section.tsx';
import { pieceSummary } from '../summaries.ts';
import { CornerTable } from './CornerTable.tsx';
import { CutOutTable } from './CutOutTable.tsx';
import { EdgeTable } from './EdgeTable.tsx';
import { EditedPiece } from './EditedPiece.tsx';
import { OutlineForm } from './OutlineForm.tsx';
import { PieceDetails } from './PieceDetails.tsx';
import { SplashTable } from './SplashTable.tsx';

const boards = ['MDF', 'moisture-resistant MDF', 'plywood', 'solid wood'].map((board) => ({
  value: board,
  label: board,
}));

/** The piece as drawn and as measured, side by side. */
export function PieceSection() {
  const { document, forecast, speak, problems } = useSheet();
  const measures = forecast?.measures ?? null;
  const missing = (forecast?.missing ?? []).filter((m) => m.path.startsWith('piece')).map((m) => m.needs);
  return (
    <Section
      id="piece"
      name="Piece"
      summary={pieceSummary(document, forecast, speak)}
      needs={missing}
      problems={problemsUnder(problems, 'piece').length}
    >
      <div className="piece">
        <div className="piece-drawing">
          <EditedPiece />
        </div>
        <div className="piece-tables">
          <OutlineForm />
          <div className="form form-tight">
            <QuantityField label="Body thickness" path={['piece', 'bodyThickness']} kind="length" />
            <QuantityField label="Board under the film" path={['piece', 'boardThickness']} kind="length" />
            <SelectField label="Board" path={['piece', 'board']} options={boards} className="wide" />
          </div>
        </div>
        <div className="piece-lists">
          <CornerTable />
          <EdgeTable />
          <CutOutTable />
          <SplashTable />
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
                <dt>Body weighs about</dt>
                <dd>{speak.weight(measures.bodyMass_kg)}</dd>
              </div>
            </dl>
          )}
        </div>
      </div>
      <PieceDetails base={['piece']} />
    </Section>
  );
}
