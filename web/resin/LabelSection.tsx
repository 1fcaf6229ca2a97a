import { FIGURE_KINDS } from '#core/resin/card-document.ts';
import type { MixRatio } from '#core/resin/model.ts';
import { useFields } from '#web/field/fields-context.tsx';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { QuantityField } from '#web/field/sheet-fields.tsx';
import { useCard } from './card-context.tsx';
import { FigureRow } from './FigureRow.tsx';

/** What is printed on the label: everything is optional but the mix ratio; what is not said widens the ranges. */
export function LabelSection() {
  const { document, edit, read } = useCard();
  const { problems } = useFields();
  const add = (kind: (typeof FIGURE_KINDS)[number]) =>
    edit(`Add ${kind}`, '', (d) => ({
      ...d,
      label: [...d.label, { kind, value: '', mass: '', film: '', temperature: '', end: 'unknown' as const }],
    }));
  return (
    <section aria-labelledby="label-title">
      <h2 id="label-title">The label</h2>
      <p className="section-note">
        Type what is printed, with its unit: 40 min, 4 to 6 h, 75 F, 100 g, 900 cP. What the label does not
        say stays empty; it makes the ranges wider and is never guessed silently.
      </p>
      <h3>Mix ratio, A to B</h3>
      <div className="form form-tight">
        <QuantityField label="By volume" path={['mix', 'byVolume']} kind="words" placeholder="2:1" />
        <QuantityField label="By weight" path={['mix', 'byWeight']} kind="words" placeholder="100:44" />
        <QuantityField
          label="Density of part A"
          path={['mix', 'densityA']}
          kind="words"
          placeholder="1.13 g/mL"
        />
        <QuantityField
          label="Density of part B"
          path={['mix', 'densityB']}
          kind="words"
          placeholder="1.00 g/mL"
        />
        <QuantityField
          label="Epoxy equivalent of A"
          path={['mix', 'epoxyEquivalent']}
          kind="words"
          placeholder="not said"
        />
        <QuantityField
          label="Most colourant, by weight"
          path={['colourantLimit']}
          kind="percent"
          placeholder="5 % taken"
        />
      </div>
      {read !== null && <p className="ratio-read">{sayRatio(read.label.mix)}</p>}
      <h3>Figures</h3>
      {document.label.length === 0 && (
        <p className="none">
          No figures yet: the forecast is that of any such resin. Add what the label says.
        </p>
      )}
      {document.label.map((figure, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: figures have no id; the fields are tied to their place
        <FigureRow key={i} figure={figure} index={i} />
      ))}
      {(problems.get('label') ?? []).map((problem) => (
        <p className="problem-block" role="alert" key={problem.code}>
          <ProblemText problem={problem} />
        </p>
      ))}
      <div className="add-row">
        <span id="add-figure">Add</span>
        {FIGURE_KINDS.map((kind) => (
          <button
            type="button"
            className="small"
            key={kind}
            disabled={document.label.length >= 30}
            onClick={() => add(kind)}
          >
            {kind}
          </button>
        ))}
      </div>
    </section>
  );
}

/** Both ratios as they are used, whichever was typed. */
function sayRatio(mix: MixRatio): string {
  const byWeight = (mix.volumeB * mix.densityB_kg_m3) / (mix.volumeA * mix.densityA_kg_m3);
  const byVolume = mix.volumeB / mix.volumeA;
  const parts = (b: number) => `100 : ${(100 * b).toFixed(1).replace(/\.0$/, '')}`;
  const density = (value: number) => (value / 1000).toFixed(2);
  return (
    `Used: ${parts(byVolume)} by volume, ${parts(byWeight)} by weight, with densities of ` +
    `${density(mix.densityA_kg_m3)} and ${density(mix.densityB_kg_m3)} g/mL.`
  );
}
