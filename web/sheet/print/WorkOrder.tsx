import type { CoatDocument } from '#core/job/document.ts';
import { piecesOf } from '#core/job/pieces.ts';
import { useShop } from '#web/api/queries.ts';
import { useCards } from '#web/api/resin-queries.ts';
import type { ChanceOf } from '#web/chance/chance-messages.ts';
import { chanceSays } from '#web/chance/chance-words.ts';
import { chanceForPaper } from '#web/chance/use-chance.ts';
import { ForecastChart } from '#web/charts/ForecastChart.tsx';
import { LookPrinted } from '#web/look/section/LookPrinted.tsx';
import { Guard } from '#web/shell/Guard.tsx';
import { dayAndClock, dayText } from '#web/units/dates.ts';
import { Cautions } from '../Cautions.tsx';
import { useSheet } from '../context.tsx';
import { CupTable } from '../mix/CupTable.tsx';
import { NextCoatLine } from '../NextCoatLine.tsx';
import { Drawing } from '../piece/Drawing.tsx';
import { RunSheet } from '../RunSheet.tsx';
import { StageTable } from '../StageTable.tsx';
import { coatedNames, onePieceSummary, type PlannedCoat, plans, togetherSummary } from '../summaries.ts';
import { Verdict } from '../Verdict.tsx';
import { BodyOrder } from './BodyOrder.tsx';
import { CutListOrder } from './CutListOrder.tsx';
import { RulesOfThumb } from './RulesOfThumb.tsx';

const FIRST_BASE = ['piece'] as const;

/** The shop's work order on paper: what is agreed, the drawing, and for each coat cups, steps to tick, chart and cautions. */
export function WorkOrder() {
  const { document, forecast, speak } = useSheet();
  const shop = useShop();
  const { agreed, customer } = document;
  const pieces = piecesOf(document);
  const room = forecast?.room ?? null;
  return (
    <div className="work-order">
      <header className="wo-head">
        <div>
          <p className="wo-shop">{shop.name}</p>
          <p className="wo-title">{document.title || 'Job without a title'}</p>
        </div>
        <dl>
          <dt>Customer</dt>
          <dd>{customer.name || '–'}</dd>
          <dt>Promised</dt>
          <dd>{agreed.handOver === '' ? '–' : dayText(agreed.handOver, speak.system)}</dd>
          <dt>Stage</dt>
          <dd>{agreed.stage}</dd>
          <dt>Printed</dt>
          <dd>{dayAndClock(Date.now(), speak.system)}</dd>
        </dl>
      </header>
      {(agreed.look !== '' || agreed.notes !== '') && (
        <section>
          <h2>Agreed</h2>
          {agreed.look !== '' && <p>{agreed.look}</p>}
          {agreed.notes !== '' && <p>{agreed.notes}</p>}
        </section>
      )}
      <section>
        <h2>{pieces.length === 1 ? 'Piece' : 'Pieces'}</h2>
        {pieces.map((place) => (
          <div className="wo-piece" key={place.id}>
            {pieces.length > 1 && <h3>{place.name}</h3>}
            <p>
              {onePieceSummary(place, forecast, speak)}. Body {place.document.bodyThickness || '–'},{' '}
              {place.document.board}.
            </p>
            <Drawing id={place.id} />
          </div>
        ))}
        {pieces.length > 1 && <p>{togetherSummary(forecast, speak)}</p>}
      </section>
      {room !== null && (
        <section>
          <h2>Room</h2>
          <p>
            Air {speak.temperature(room.air_K)}, board {speak.temperature(room.board_K)}
            {room.humidity !== null && `, humidity ${speak.percent(room.humidity)}`}
            {room.dewPoint_K !== null && `, dew point ${speak.temperature(room.dewPoint_K)}`}. Read before the
            pour: air ______ board ______ humidity ______
          </p>
        </section>
      )}
      <section>
        <Cautions cautions={forecast?.cautions ?? []} title="Always" />
      </section>
      {pieces.map((place, i) => (
        <BodyOrder
          key={place.id}
          base={i === 0 ? FIRST_BASE : ['otherPieces', i - 1]}
          name={pieces.length === 1 ? 'Body' : `Body of ${place.name}`}
          withCuts={pieces.length === 1}
        />
      ))}
      {pieces.length > 1 && <CutListOrder />}
      {plans(forecast).map((planned) => (
        <CoatOrder
          key={planned.id}
          planned={planned}
          coat={document.coats.find((coat) => coat.id === planned.id)}
          system={speak.system}
        />
      ))}
      <RulesOfThumb plans={plans(forecast).map(({ plan }) => plan)} />
      <section className="wo-record">
        <h2>Record</h2>
        {document.record !== '' && <p>{document.record}</p>}
        <p className="wo-lines" />
      </section>
      <p className="wo-foot">
        Computed by model version {forecast?.modelVersion ?? '–'}. Ranges are 5 to 95 %. The product's own
        safety data sheet and label stand above this order.
      </p>
    </div>
  );
}

interface Props {
  readonly planned: PlannedCoat;
  readonly coat: CoatDocument | undefined;
  readonly system: 'us' | 'metric';
}

function CoatOrder({ planned, coat, system }: Props) {
  const { name, plan, nextCoat } = planned;
  const { forecast, speak } = useSheet();
  const shop = useShop();
  const request = forecast?.coats.find(({ id }) => id === planned.id)?.request ?? null;
  const startsAt = coat?.startsAt ?? '';
  const pieceNames = coatedNames(forecast, planned.id);
  const card = useCards().all.find((known) => known.id === coat?.resin);
  return (
    <section className="wo-coat">
      <h2>
        {name} <Verdict verdict={plan.verdict} />
        {request !== null && <ChanceLine of={{ request, plan, spreads: shop.spreads }} />}
      </h2>
      <p>
        {pieceNames !== '' && `On ${pieceNames}: `}
        {coat?.film} of {card?.name ?? coat?.resin}, {coat?.edges} edges; {speak.mass(plan.quantity.mass_kg)}{' '}
        ({speak.volume(plan.quantity.volume_m3)}) in {plan.cups.length}{' '}
        {plan.cups.length === 1 ? 'cup' : 'cups'}. {plan.says}
      </p>
      {coat !== undefined && coat.look !== null && <LookPrinted coat={coat.id} />}
      <CupTable plan={plan} />
      <RunSheet name="Steps" plan={plan} startsAt={startsAt} system={system} ticks />
      <Cautions cautions={plan.cautions} />
      <StageTable plan={plan} clockStart={startsAt} brief />
      <NextCoatLine next={nextCoat} />
      <Guard what="The chart" of={plan}>
        <ForecastChart plan={plan} system={system} {...(startsAt === '' ? {} : { clockStart: startsAt })} />
      </Guard>
    </section>
  );
}

/** Beside the verdict: a line of its own would cost a page. */
function ChanceLine({ of }: { readonly of: ChanceOf }) {
  return <span className="wo-chance">Chance to finish in time: {chanceSays(chanceForPaper(of))}</span>;
}
