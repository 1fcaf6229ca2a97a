import { without } from '#web/draft/at-path.ts';
import { QuantityField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';

/** The air and the board on the day of the pour: everything about time follows from them. */
export function RoomForm() {
  const { document, edit, forecast, speak, problems } = useSheet();
  const readings = document.room.readings;
  const room = forecast?.room ?? null;
  const set = (label: string, next: typeof readings) =>
    edit(label, '', (d) => ({ ...d, room: { ...d.room, readings: next } }));
  return (
    <fieldset className="plain">
      <legend>The room on the day</legend>
      <div className="form form-tight">
        <QuantityField label="Air" path={['room', 'air']} kind="temperature" />
        <QuantityField label="Humidity" path={['room', 'humidity']} kind="percent" />
        <QuantityField label="Board" path={['room', 'board']} kind="temperature" placeholder="as the air" />
      </div>
      {room !== null && (
        <p className="room-verdict" data-verdict={room.verdict}>
          <strong>
            {room.verdict === 'not known'
              ? 'Blush not judged'
              : { go: 'Fit to pour', caution: 'Pour with care', stop: 'Do not pour' }[room.verdict]}
          </strong>
          {room.dewPoint_K !== null &&
            `: dew point ${speak.temperature(room.dewPoint_K)}, board ${speak.temperature(room.board_K)}`}
          {room.verdict === 'not known' && ': the humidity is not given'}.
          {room.reasons.length > 0 && <> {room.reasons.join(' ')}</>}
        </p>
      )}
      {readings.length > 0 && (
        <table className="rows readings">
          <caption>How the air goes on from the first pour</caption>
          <thead>
            <tr>
              <th scope="col">After</th>
              <th scope="col">Air</th>
              <th scope="col">
                <span className="unseen">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {readings.map((_, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: readings have no name but their place
              <tr key={i}>
                <td data-label="After">
                  <QuantityField
                    hideLabel
                    label={`Reading ${i + 1}: hours from the first pour`}
                    path={['room', 'readings', i, 'at']}
                    kind="duration"
                  />
                </td>
                <td data-label="Air">
                  <QuantityField
                    hideLabel
                    label={`Reading ${i + 1}: air`}
                    path={['room', 'readings', i, 'air']}
                    kind="temperature"
                  />
                </td>
                <td>
                  <button
                    type="button"
                    className="small"
                    aria-label={`Remove reading ${i + 1}`}
                    onClick={() => set('Remove reading', without(readings, i))}
                  >
                    Remove
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p>
        <button
          type="button"
          className="small"
          onClick={() => set('Add reading', [...readings, { at: '', air: '' }])}
        >
          {readings.length === 0 ? 'The air will change: add a reading or a forecast' : 'Add a reading'}
        </button>
      </p>
      {problems.get('room')?.map((problem) => (
        <p className="field-problem" key={problem.code}>
          {problem.message}
        </p>
      ))}
    </fieldset>
  );
}
