import type { BandsRequest } from '#core/pour/film-outlook-bands.ts';
import type { Row } from '#web/charts/forecast-rows.ts';
import type { OutlookState } from './use-outlook.ts';
import { Reasons, Why } from './Why.tsx';
import { flowWhys, planWhy } from './whys.ts';

interface Props {
  readonly row: Row;
  readonly request: BandsRequest;
  readonly film: OutlookState;
}

/** The reasons of one band: its window at once, what the flow adds as soon as it is worked out. */
export function BandReasons({ row, request, film }: Props) {
  const { system } = request;
  const own = planWhy(row.of, request);
  const { outlook, working, failed } = film;
  const more = outlook == null ? [] : flowWhys(row.of, outlook, request.plan);
  return (
    <div className="band-reasons" aria-busy={working}>
      {own !== undefined && <Reasons reasons={[own]} range="time" system={system} />}
      {failed !== null ? (
        <p className="problem-block" role="alert">
          What the film does meanwhile could not be worked out ({failed}). The plan is not affected.
        </p>
      ) : outlook === undefined ? (
        <p role="status">Working out what the film does meanwhile …</p>
      ) : outlook === null ? (
        <p className="says">The film is gelled as it lands: nothing of it flows any more.</p>
      ) : (
        more.map(({ title, reasons, range }, i) => (
          <Why key={title} title={title} open={i === 0} reasons={reasons} range={range} system={system} />
        ))
      )}
    </div>
  );
}
