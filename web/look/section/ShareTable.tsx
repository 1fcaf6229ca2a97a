import { useEffect, useMemo, useState } from 'react';
import type { CoatLook } from '#core/job/look-of-coat.ts';
import type { Look } from '#core/look/look.ts';
import { lookShares, shareSamples } from '#core/look/look-shares.ts';
import { hexOfLinear } from '#core/look/srgb.ts';
import { pouredShares } from '#core/mix/look-shares.ts';
import { formatPercent } from '#core/quantity/format.ts';
import { sayProblem } from '#core/quantity/problem.ts';
import { readPercent } from '#core/quantity/read.ts';
import { useSheet } from '#web/sheet/context.tsx';
import { Worded } from './Chosen.tsx';
import { keysOf, withShare } from './edit-look.ts';
import type { SeenLook } from './use-coat-look.ts';

/** Painted shares are counted when the hand has stopped for this long. */
const PAUSE_ms = 250;

/** What there is of each colour: share, area, volume in the film, grams and cups; a share typed here moves puddles and cups. */
export function ShareTable({
  seen,
  made,
  look,
}: {
  readonly seen: SeenLook;
  readonly made: CoatLook;
  readonly look: Look;
}) {
  const { speak, forecast, behind } = useSheet();
  const { coat, put } = seen;
  const keys = keysOf(coat.colours);
  const poured = pouredShares(made.look, keys, made.whole_m3);
  const painted = usePaintedShares(look, made);
  const plan = forecast?.coats.find(({ id }) => id === coat.id)?.plan ?? null;
  return (
    <table className="ledger look-shares" data-behind={behind || undefined}>
      <caption>Colours: change a share and its puddles and cups follow</caption>
      <thead>
        <tr>
          <th scope="col">Colour</th>
          <th scope="col">Share</th>
          <th scope="col" className="number">
            In the picture
          </th>
          <th scope="col" className="number">
            In the film
          </th>
          <th scope="col" className="number">
            To mix
          </th>
        </tr>
      </thead>
      <tbody>
        {keys.map((key, at) => {
          const { name, light } = look.colours[at]!;
          const share = poured.get(key)!;
          const cups = plan?.cups.filter((cup) => cup.colour === name) ?? [];
          const mass_kg = cups.reduce((sum, cup) => sum + cup.mass_kg, 0);
          const volume_m3 = cups.reduce((sum, cup) => sum + cup.volume_m3, 0);
          return (
            <tr key={key}>
              <th scope="row">
                <svg className="dot" viewBox="0 0 10 10" aria-hidden="true">
                  <rect width="10" height="10" fill={hexOfLinear(light)} className="share-part" />
                </svg>{' '}
                {name}
                {at === look.ground && <span className="basis">the ground</span>}
              </th>
              <td data-label="Share">
                <ShareField
                  name={name}
                  share={share}
                  onChange={(wanted) => {
                    const changed = withShare(made.look, keys, key, wanted, made.whole_m3);
                    if (!changed.ok) return changed.problems.map(sayProblem).join(' ');
                    put(`Share of ${name}`, changed.value);
                    return null;
                  }}
                />
              </td>
              <td className="number" data-label="In the picture">
                {painted === null ? '…' : formatPercent(painted[at]!, { decimals: 1 })}
                <span className="basis">{speak.area((share * made.whole_m3) / look.film_m)}</span>
              </td>
              <td className="number" data-label="In the film">
                {speak.volume(share * made.whole_m3)}
              </td>
              <td className="number" data-label="To mix">
                {cups.length === 0 ? (
                  '–'
                ) : (
                  <>
                    {speak.mass(mass_kg)}
                    <span className="basis">
                      {speak.volume(volume_m3)}, {cups.length === 1 ? 'cup' : 'cups'}{' '}
                      {cups.map((cup) => cup.number).join(', ')}
                    </span>
                  </>
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">Together</th>
          <td data-label="Share">100 %</td>
          <td className="number" data-label="In the picture">
            {speak.area(look.area_m2)}
          </td>
          <td className="number" data-label="In the film">
            {speak.volume(made.whole_m3)}
          </td>
          <td className="number" data-label="To mix">
            {plan === null ? '–' : speak.mass(plan.quantity.mass_kg)}
            <span className="basis">
              {plan === null ? 'once the coat can be planned' : 'with run-off and spare'}
            </span>
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

function usePaintedShares(look: Look, made: CoatLook): Float64Array | null {
  const samples = useMemo(() => shareSamples(made.setting.panels), [made.setting.panels]);
  const [shares, setShares] = useState<Float64Array | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setShares(lookShares(look, samples)), PAUSE_ms);
    return () => clearTimeout(timer);
  }, [look, samples]);
  return shares?.length === look.colours.length ? shares : null;
}

interface FieldProps {
  readonly name: string;
  readonly share: number;
  /** Answers what is wrong with it, or null. */
  readonly onChange: (share: number) => string | null;
}

function ShareField({ name, share, onChange }: FieldProps) {
  const shown = formatPercent(share, { decimals: 1 });
  const [text, setText] = useState(shown);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    setText(shown);
    setProblem(null);
  }, [shown]);
  return (
    <Worded
      label={`Share of ${name}`}
      hideLabel
      value={text}
      problem={problem}
      onChange={setText}
      onDone={() => {
        if (text === shown) {
          setProblem(null);
          return;
        }
        const read = readPercent(text, { what: `share of ${name}`, min: 0.001, max: 1 });
        setProblem(read.ok ? onChange(read.value) : read.problems.map(sayProblem).join(' '));
      }}
    />
  );
}
