import { useShop } from '#web/api/queries.ts';
import { useSheet } from '#web/sheet/context.tsx';

interface Props {
  readonly coatId: string;
  readonly startsAt: string;
}

/** The steps and stages of a pour for the calendar of a phone, in the shop's time zone. */
export function CalendarLink({ coatId, startsAt }: Props) {
  const { jobId, unsaved } = useSheet();
  const { timeZone } = useShop();
  const zone = timeZone || Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (startsAt === '')
    return <p className="section-note">With a day and hour this pour can go into the calendar of a phone.</p>;
  if (unsaved)
    return <p className="section-note">The calendar of this pour is there as soon as the job is saved.</p>;
  const query = new URLSearchParams({ coat: coatId, zone });
  return (
    <p>
      <a className="touch-link" href={`/api/jobs/${jobId}/calendar.ics?${query}`} download>
        Calendar of this pour and its cure (.ics)
      </a>{' '}
      <span className="basis">
        times of {zone.replaceAll('_', ' ')}
        {timeZone === '' && ', the zone of this device: the shop has none yet'}
      </span>
    </p>
  );
}
