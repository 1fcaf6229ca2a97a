import type { CoatDocument, ColourDocument } from '#core/job/document.ts';
import { readPercent } from '#core/quantity/read.ts';
import { without } from '#web/draft/at-path.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { QuantityField, SelectField, TextField } from '#web/field/sheet-fields.tsx';
import { useSheet } from '../context.tsx';
import { SWATCHES } from './new-coat.ts';
import { ShareBar } from './ShareBar.tsx';

const colourants: readonly ColourDocument['colourant'][] = [
  'none',
  'pigment paste',
  'mica powder',
  'dry pigment',
  'liquid dye',
  'alcohol ink',
];
const options = colourants.map((value) => ({ value, label: value }));

/** The share a text comes to, or null. A single colour needs none. */
function shareOf(colour: ColourDocument, single: boolean): number | null {
  if (colour.share.trim() === '') return single ? 1 : null;
  const read = readPercent(colour.share);
  return read.ok ? read.value : null;
}

export function ColourTable({ coat, index }: { readonly coat: CoatDocument; readonly index: number }) {
  const { edit, set, problems, warnings } = useSheet();
  const name = coat.name || coat.kind;
  const put = (label: string, colours: readonly ColourDocument[]) =>
    edit(label, '', (d) => ({
      ...d,
      coats: d.coats.map((c, i) => (i === index ? { ...c, colours: [...colours] } : c)),
    }));
  const add = () =>
    put('Add colour', [
      ...coat.colours,
      {
        name: '',
        swatch: SWATCHES[coat.colours.length % SWATCHES.length]!,
        share: '',
        colourant: 'pigment paste',
        load: '3 %',
        key: '',
        appearance: null,
      },
    ]);
  const parts = coat.colours.map((colour) => ({
    name: colour.name || 'no name',
    swatch: colour.swatch,
    share: shareOf(colour, coat.colours.length === 1),
  }));
  const said = [
    ...(problems.get(`coats.${index}.colours`) ?? []),
    ...(warnings.get(`coats.${index}.colours`) ?? []),
  ];
  return (
    <div className="colours">
      {coat.colours.length === 0 ? (
        <p className="section-note">Poured clear, without colourant.</p>
      ) : (
        <>
          <ShareBar parts={parts} />
          <table className="rows">
            <caption className="unseen">Colours of {name}</caption>
            <thead>
              <tr>
                <th scope="col">Colour</th>
                <th scope="col">By eye</th>
                <th scope="col">Share</th>
                <th scope="col">Colourant</th>
                <th scope="col">Of the mix, by weight</th>
                <th scope="col">
                  <span className="unseen">Remove</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {coat.colours.map((colour, i) => {
                const called = colour.name || `colour ${i + 1}`;
                const at = (key: string) => ['coats', index, 'colours', i, key];
                return (
                  // biome-ignore lint/suspicious/noArrayIndexKey: colours have no name but their place
                  <tr key={i}>
                    <td data-label="Colour" className="wide-cell">
                      <TextField
                        hideLabel
                        label={`${name}, colour ${i + 1}: name`}
                        path={at('name')}
                        maxLength={80}
                      />
                    </td>
                    <td data-label="By eye">
                      <input
                        type="color"
                        className="swatch-input"
                        aria-label={`${called}: colour on the drawing, by eye`}
                        value={colour.swatch}
                        onChange={(event) => set('Swatch', at('swatch'), event.target.value)}
                      />
                    </td>
                    <td data-label="Share">
                      <QuantityField
                        hideLabel
                        label={`${called}: share of the coat`}
                        path={at('share')}
                        kind="percent"
                      />
                    </td>
                    <td data-label="Colourant">
                      <SelectField
                        hideLabel
                        label={`${called}: colourant`}
                        path={at('colourant')}
                        options={options}
                      />
                    </td>
                    <td data-label="Of the mix" data-empty={colour.colourant === 'none' || undefined}>
                      {colour.colourant !== 'none' && (
                        <QuantityField
                          hideLabel
                          label={`${called}: colourant by weight of the mix`}
                          path={at('load')}
                          kind="percent"
                        />
                      )}
                    </td>
                    <td>
                      <button
                        type="button"
                        className="small"
                        aria-label={`Remove ${called}`}
                        onClick={() => put('Remove colour', without(coat.colours, i))}
                      >
                        Remove
                      </button>
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </>
      )}
      {said.map((problem) => (
        <p className="problem-block" role="alert" key={problem.code}>
          <ProblemText problem={problem} />
        </p>
      ))}
      <p>
        <button type="button" className="small" onClick={add} disabled={coat.colours.length >= 40}>
          Add a colour
        </button>
      </p>
    </div>
  );
}
