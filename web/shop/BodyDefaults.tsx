import { BODY_DEFAULTS, BODY_LIMITS, type BodyFigure, type ShopBody } from '#core/job/shop-body.ts';
import { lengthToType } from '#core/quantity/length-to-type.ts';
import { readLength_m } from '#core/quantity/read.ts';
import type { System } from '#core/quantity/units.ts';
import { KeptField } from './KeptField.tsx';

const FIGURES: readonly { readonly key: BodyFigure; readonly label: string }[] = [
  { key: 'boardThickness_m', label: 'Board, when a job does not say' },
  { key: 'stripWidth_m', label: 'Width of build-up strips' },
  { key: 'oversize_m', label: 'Oversize, each side of the field' },
  { key: 'longest_m', label: 'Longest part in one piece' },
  { key: 'screwLength_m', label: 'Screws from below' },
  { key: 'kerf_m', label: 'Saw cut (kerf)' },
  { key: 'trim_m', label: 'Trim, each side of a sheet' },
  { key: 'keepLength_m', label: 'Offcuts kept from: length' },
  { key: 'keepWidth_m', label: 'Offcuts kept from: width' },
];

interface Props {
  readonly body: ShopBody;
  readonly system: System;
  readonly onChange: (body: ShopBody) => void;
}

/** How bodies are built and cut in this shop, where a job does not say otherwise. */
export function BodyDefaults({ body, system, onChange }: Props) {
  const own = FIGURES.filter(({ key }) => body[key] !== BODY_DEFAULTS[key]).length;
  return (
    <>
      <div className="form">
        {FIGURES.map(({ key, label }) => (
          <KeptField
            key={key}
            id={`body-${key}`}
            label={label}
            value={lengthToType(body[key], system)}
            maxLength={40}
            keep={(typed) => {
              const [min, max] = BODY_LIMITS[key];
              const read = readLength_m(typed, { path: `body.${key}`, what: label, min, max, system });
              if (!read.ok) return read.problems[0] ?? null;
              onChange({ ...body, [key]: read.value });
              return null;
            }}
          />
        ))}
      </div>
      <p>
        <button type="button" disabled={own === 0} onClick={() => onChange({ ...body, ...BODY_DEFAULTS })}>
          Reset these to the shop defaults
        </button>
      </p>
    </>
  );
}
