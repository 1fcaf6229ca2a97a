import { useId, useState } from 'react';
import type { CoatLook } from '#core/job/look-of-coat.ts';
import {
  AppearanceDocument,
  DrawdownDocument,
  FlakeDocument,
  HIDINGS,
} from '#core/look/appearance-document.ts';
import { filmLight } from '#core/look/colourant.ts';
import { labOfLinear } from '#core/look/lab.ts';
import { judgeSample } from '#core/look/sample-verdict.ts';
import { hexOfLinear, type LinearRgb, linearOfHex } from '#core/look/srgb.ts';
import { formatPercent } from '#core/quantity/format.ts';
import { fixed } from '#core/quantity/rounding.ts';
import { QuantityField, SelectField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '#web/sheet/context.tsx';
import type { SeenLook } from './use-coat-look.ts';

const BODIES = [
  { value: 'as the colourant', label: 'as the colourant chosen' },
  { value: 'clear dye', label: 'dye: clear, only tints' },
  { value: 'paste', label: 'paste: hides' },
  { value: 'flake', label: 'mica or metallic: gleams' },
];
const HIDES = HIDINGS.map((value) => ({ value, label: `${value} in 1 mm` }));
const LIES = [
  { value: 'flat', label: 'flat, a narrow gleam' },
  { value: 'usual', label: 'as usual' },
  { value: 'tumbled', label: 'tumbled' },
];
const BLACK: LinearRgb = [0.04, 0.04, 0.04];
const WHITE: LinearRgb = [0.8, 0.8, 0.8];

/** How each colour of the coat looks: by eye or by a card, in this film, and a made sample beside it. */
export function ColourPanel({ seen, made }: { readonly seen: SeenLook; readonly made: CoatLook }) {
  const { set } = useSheet();
  const undercoat = useId();
  return (
    <div className="look-colours">
      <div className="field look-undercoat">
        <label className="field-label" htmlFor={undercoat}>
          Undercoat under the film, by eye
        </label>
        <input
          id={undercoat}
          type="color"
          className="swatch-input"
          value={made.look.undercoat}
          onChange={(event) =>
            set('Undercoat', ['coats', seen.index, 'look', 'undercoat'], event.target.value)
          }
        />
      </div>
      {made.known.map((_, at) => (
        <OneColour key={made.known[at]!.key} seen={seen} made={made} at={at} />
      ))}
    </div>
  );
}

function OneColour({
  seen,
  made,
  at,
}: {
  readonly seen: SeenLook;
  readonly made: CoatLook;
  readonly at: number;
}) {
  const { edit, speak } = useSheet();
  const { coat, index } = seen;
  const colour = coat.colours[at];
  const known = made.known[at]!;
  const shown = made.setting.colours[at]!;
  if (colour === undefined) return null;
  const base = ['coats', index, 'colours', at, 'appearance'];
  const appearance = colour.appearance;
  const change = (label: string, make: (was: AppearanceDocument) => AppearanceDocument | null) =>
    edit(label, '', (d) => ({
      ...d,
      coats: d.coats.map((c, i) =>
        i === index
          ? {
              ...c,
              colours: c.colours.map((other, j) =>
                j === at
                  ? { ...other, appearance: make(other.appearance ?? AppearanceDocument.parse({})) }
                  : other,
              ),
            }
          : c,
      ),
    }));
  const { colourant, load, contrast } = known;
  const film_m = made.setting.film_m;
  const over = (ground: LinearRgb) =>
    colourant === null ? ground : filmLight(colourant, { load, film_m, undercoat: ground });
  const patches: readonly (readonly [string, LinearRgb])[] = [
    ['over this undercoat', shown.light],
    ['on the faces', shown.faceLight ?? shown.light],
    ['over black', over(BLACK)],
    ['over white', over(WHITE)],
    ...(shown.flake === null ? [] : ([['at the gleam', shown.flake.gleam]] as const)),
  ];
  return (
    <section className="look-colour" aria-label={`How ${shown.name} looks`}>
      <h4>{shown.name}</h4>
      <ul className="plain-list look-patches">
        {patches.map(([where, light]) => (
          <li key={where}>
            <svg viewBox="0 0 40 24" aria-hidden="true">
              <rect width="40" height="24" fill={hexOfLinear(light)} className="share-part" />
            </svg>
            {where}
          </li>
        ))}
      </ul>
      <p className="section-note">
        In {speak.film(film_m)}
        {load > 0 && `, ${formatPercent(load, { decimals: 1 })} of ${colour.colourant}`}
        {contrast !== null &&
          `: contrast ratio ${fixed(contrast, 2)}${contrast >= 0.98 ? ', hides' : ', the undercoat shows through'}`}
        . {known.trust} Under clear without a tint of its own it looks the same.
      </p>
      {colourant !== null &&
        (appearance === null ? (
          <button type="button" className="small" onClick={() => change('Say how it looks', (was) => was)}>
            Say more about how {shown.name} looks
          </button>
        ) : (
          <>
            <div className="form form-tight">
              <SelectField
                label={`${shown.name}: to the light it is`}
                path={[...base, 'body']}
                options={BODIES}
              />
              {appearance.drawdown === null && colourant.body !== 'dye' && (
                <SelectField label={`${shown.name} hides`} path={[...base, 'hides']} options={HIDES} />
              )}
              {colourant.body === 'flake' && appearance.flake !== null && (
                <>
                  <HexField
                    label={`${shown.name}: colour at the gleam`}
                    path={[...base, 'flake', 'gleam']}
                    value={appearance.flake.gleam}
                  />
                  <QuantityField
                    label={`${shown.name}: size of a flake`}
                    path={[...base, 'flake', 'size']}
                    kind="words"
                  />
                  <SelectField
                    label={`${shown.name}: flakes lie`}
                    path={[...base, 'flake', 'lie']}
                    options={LIES}
                  />
                </>
              )}
            </div>
            {appearance.drawdown !== null && (
              <fieldset className="plain">
                <legend className="field-label">
                  Card, black and white, in one photograph without a reflection in it
                </legend>
                <div className="form form-tight">
                  <QuantityField
                    label={`${shown.name}: film on the card`}
                    path={[...base, 'drawdown', 'film']}
                    kind="film"
                  />
                  <QuantityField
                    label={`${shown.name}: colourant in it`}
                    path={[...base, 'drawdown', 'load']}
                    kind="percent"
                  />
                  <QuantityField
                    label={`${shown.name}: white of the card gives back`}
                    path={[...base, 'drawdown', 'whiteReflectance']}
                    kind="percent"
                    placeholder="80 %"
                  />
                  <HexField
                    label={`${shown.name}: bare black`}
                    path={[...base, 'drawdown', 'black']}
                    value={appearance.drawdown.black}
                  />
                  <HexField
                    label={`${shown.name}: bare white`}
                    path={[...base, 'drawdown', 'white']}
                    value={appearance.drawdown.white}
                  />
                  <HexField
                    label={`${shown.name}: film over black`}
                    path={[...base, 'drawdown', 'overBlack']}
                    value={appearance.drawdown.overBlack}
                  />
                  <HexField
                    label={`${shown.name}: film over white`}
                    path={[...base, 'drawdown', 'overWhite']}
                    value={appearance.drawdown.overWhite}
                  />
                </div>
              </fieldset>
            )}
            <p className="actions">
              <button
                type="button"
                className="small"
                onClick={() =>
                  change(appearance.drawdown === null ? 'Add a card' : 'Remove the card', (was) => ({
                    ...was,
                    drawdown:
                      was.drawdown === null
                        ? DrawdownDocument.parse({
                            film: '0.2 mm',
                            load: colour.load,
                            overBlack: hexOfLinear(over(BLACK)),
                            overWhite: hexOfLinear(over(WHITE)),
                          })
                        : null,
                  }))
                }
              >
                {appearance.drawdown === null
                  ? `Measured on a card: ${shown.name}`
                  : `Remove the card of ${shown.name}`}
              </button>
              {colourant.body === 'flake' && appearance.flake === null && (
                <button
                  type="button"
                  className="small"
                  onClick={() =>
                    change('Describe the flakes', (was) => ({ ...was, flake: FlakeDocument.parse({}) }))
                  }
                >
                  Describe the flakes of {shown.name}
                </button>
              )}
              <button
                type="button"
                className="small"
                onClick={() => change('Back to the picked colour', () => null)}
              >
                Back to the picked colour of {shown.name}
              </button>
            </p>
          </>
        ))}
      <SampleCheck name={shown.name} agreed={shown.light} />
    </section>
  );
}

function HexField({
  label,
  path,
  value,
}: {
  readonly label: string;
  readonly path: readonly (string | number)[];
  readonly value: string;
}) {
  const { set } = useSheet();
  const id = useId();
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="color"
        className="swatch-input"
        value={value}
        onChange={(event) => set(label, path, event.target.value)}
      />
    </div>
  );
}

const VERDICTS = {
  matches: '✓ Matches',
  near: '△ Near, and seen beside each other',
  differs: '✗ Another colour',
  'cannot tell': '? Cannot be told within the error of a photograph',
};

/** A made sample, picked from a photograph or measured, beside the agreed colour. */
function SampleCheck({ name, agreed }: { readonly name: string; readonly agreed: LinearRgb }) {
  const [sample, setSample] = useState<string | null>(null);
  const id = useId();
  const verdict = sample === null ? null : judgeSample(labOfLinear(agreed), labOfLinear(linearOfHex(sample)));
  return (
    <div className="look-sample">
      <label className="field-label" htmlFor={id}>
        Made sample of {name}
      </label>
      <input
        id={id}
        type="color"
        className="swatch-input"
        value={sample ?? hexOfLinear(agreed)}
        onChange={(event) => setSample(event.target.value)}
      />
      <span role="status">
        {verdict === null
          ? 'Pick its colour to hold it against the agreed one.'
          : `${VERDICTS[verdict.verdict]}: Delta E 2000 ${fixed(verdict.difference, 1)}${
              verdict.towards.length === 0 ? '' : `, ${verdict.towards.join(', ')}`
            }`}
      </span>
    </div>
  );
}
