import { useMemo } from 'react';

interface Props {
  /** IANA name; '': not chosen yet. */
  readonly zone: string;
  readonly onChange: (zone: string) => void;
}

export function browserZone(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** Where the shop's clocks stand; calendars need it, because a phone may be elsewhere and summer time comes and goes. */
export function TimeZoneField({ zone, onChange }: Props) {
  const here = browserZone();
  const zones = useMemo(
    () =>
      [...new Set([here, zone, ...Intl.supportedValuesOf('timeZone'), 'UTC'])].filter((each) => each !== ''),
    [here, zone],
  );
  return (
    <div className="field">
      <label className="field-label" htmlFor="shop-zone">
        Time zone
      </label>
      <select id="shop-zone" value={zone || here} onChange={(event) => onChange(event.target.value)}>
        {zones.map((each) => (
          <option key={each} value={each}>
            {each.replaceAll('_', ' ')}
          </option>
        ))}
      </select>
      <span className="field-aside">
        {zone === '' ? (
          <>
            Of this device, not kept yet.{' '}
            <button type="button" className="small" onClick={() => onChange(here)}>
              Keep it
            </button>
          </>
        ) : (
          'Calendars of the pours are written for it; it knows its summer time.'
        )}
      </span>
    </div>
  );
}
