import { useId, useState } from 'react';
import {
  DIRECTIONS,
  EDGE_PLACES,
  emptyLook,
  type LookBriefDocument,
  type LookDocument,
  MELDS,
  SYMMETRIES,
} from '#core/look/look-document.ts';
import { SHARE_TOLERANCE } from '#core/mix/colourant-limits.ts';
import { useCards } from '#web/api/resin-queries.ts';
import { ProblemText } from '#web/field/ProblemText.tsx';
import { useSheet } from '#web/sheet/context.tsx';
import { openSection } from '#web/sheet/Section.tsx';
import { Choices } from './Choices.tsx';
import { Chosen, Worded } from './Chosen.tsx';
import { keyed, typedShares } from './edit-look.ts';
import type { SeenLook } from './use-coat-look.ts';
import { useComposer } from './use-composer.ts';

/** The first and four more to choose from. */
const OFFERED = 5;
const MOST_SEED = 4_294_967_295;

type Symmetry = LookDocument['symmetry'];

const meldWords = { crisp: 'crisp, they part sharply', soft: 'soft', melded: 'melded into each other' };
const directionWords = {
  none: 'no direction',
  along: 'along the front',
  across: 'front to back',
  rising: 'rising to the right',
  falling: 'falling to the right',
};

/** A few words about the look; from them the first look and four more to choose from. */
export function Composing({ seen, onChosen }: { readonly seen: SeenLook; readonly onChosen?: () => void }) {
  const { document, system } = useSheet();
  const { ofShop } = useCards();
  const composer = useComposer();
  const { coat, index, made } = seen;
  const base = coat.look ?? emptyLook();
  const [brief, setBrief] = useState<LookBriefDocument>(base.brief);
  const [symmetry, setSymmetry] = useState<Symmetry>(base.symmetry);
  const [seed, setSeed] = useState(String(base.seed));
  const id = useId();
  const colours = keyed(coat.colours);
  const wanted = typedShares(colours);
  const names = colours.map(({ key, name }, i) => ({ value: key, label: name || `colour ${i + 1}` }));
  const seedNumber = /^\d+$/.test(seed.trim()) ? Number(seed) : Number.NaN;
  const seedWrong = !(seedNumber <= MOST_SEED);
  const change = (part: Partial<LookBriefDocument>) => setBrief((was) => ({ ...was, ...part }));

  const compose = (from: number) => {
    if (!wanted.ok || made === null) return;
    setSeed(String(from));
    // Only the colours in words of the brief; their keys stand in the document the worker is given.
    const keyedDocument = {
      ...document,
      coats: document.coats.map((c, at) => (at === index ? { ...c, colours } : c)),
    };
    composer.ask({
      document: keyedDocument,
      cards: ofShop,
      system,
      index,
      wanted: [...wanted.value],
      looks: Array.from({ length: OFFERED }, (_, at) => ({
        ...base,
        brief,
        symmetry,
        seed: (from + at) % (MOST_SEED + 1),
      })),
    });
  };

  if (coat.colours.length === 0)
    return (
      <p className="section-note">
        This coat is poured clear. Give it colours with their shares to design a look:{' '}
        <button type="button" className="linklike" onClick={() => openSection('coats')}>
          colours of the coat
        </button>
        .
      </p>
    );
  const sum = wanted.ok ? [...wanted.value.values()].reduce((a, b) => a + b, 0) : 0;
  return (
    <div className="look-brief">
      <p className="look-palette">
        {colours.map((colour, i) => (
          <span className="share-word" key={colour.key}>
            <svg className="dot" viewBox="0 0 10 10" aria-hidden="true">
              <rect width="10" height="10" fill={colour.swatch} className="share-part" />
            </svg>
            {names[i]!.label} {colour.share.trim() === '' ? '?' : colour.share}
          </span>
        ))}
        <button type="button" className="linklike" onClick={() => openSection('coats')}>
          Change the palette
        </button>
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (!seedWrong) compose(seedNumber);
        }}
      >
        <div className="form form-tight">
          <Worded
            label="Size of a patch"
            value={brief.blockSize}
            placeholder="a fifth of the depth"
            quantity="length"
            onChange={(blockSize) => change({ blockSize })}
          />
          <Chosen
            label="Colours part"
            value={brief.meld}
            options={MELDS.map((value) => ({ value, label: meldWords[value] }))}
            onChange={(meld) => change({ meld })}
          />
          <Chosen
            label="The pattern runs"
            value={brief.direction}
            options={DIRECTIONS.map((value) => ({ value, label: directionWords[value] }))}
            onChange={(direction) => change({ direction })}
          />
          <Chosen
            label="A colour gathers at the edge"
            value={brief.edge}
            options={EDGE_PLACES.map((value) => ({ value, label: value === 'none' ? 'no edge' : value }))}
            onChange={(edge) =>
              change({ edge, edgeColour: edge === 'none' ? '' : brief.edgeColour || names.at(-1)!.value })
            }
          />
          {brief.edge !== 'none' && (
            <Chosen
              label="Which colour"
              value={brief.edgeColour}
              options={names}
              onChange={(edgeColour) => change({ edgeColour })}
            />
          )}
          <Chosen
            label="The same on both sides"
            value={symmetry}
            options={SYMMETRIES.map((value) => ({ value, label: value === 'none' ? 'no' : value }))}
            onChange={setSymmetry}
          />
          <div className="field">
            <label className="field-label" htmlFor={`${id}-restless`}>
              Calm to restless
            </label>
            <input
              id={`${id}-restless`}
              type="range"
              min={0}
              max={1}
              step={0.05}
              value={brief.restless}
              aria-valuetext={`${Math.round(brief.restless * 100)} of 100 restless`}
              onChange={(event) => change({ restless: Number(event.target.value) })}
            />
            <span className="look-ends" aria-hidden="true">
              <span>calm</span>
              <span>restless</span>
            </span>
          </div>
          <Worded
            label="Seed"
            value={seed}
            onChange={setSeed}
            problem={
              seedWrong ? `Read: ${seed || 'nothing'}. Allowed: a whole number from 0 to ${MOST_SEED}.` : null
            }
          />
        </div>
        {!wanted.ok &&
          wanted.problems.map((problem) => (
            <p className="problem-block" key={problem.path}>
              <ProblemText problem={problem} />
            </p>
          ))}
        {wanted.ok && Math.abs(sum - 1) > SHARE_TOLERANCE && (
          <p className="section-note">
            The shares add up to {Math.round(sum * 1000) / 10} %; the look takes them as parts of their sum.
          </p>
        )}
        {base.locked.length > 0 && (
          <p className="section-note">Moves in locked areas stay as they are; all others are made anew.</p>
        )}
        <p className="actions">
          <button
            type="submit"
            className="primary"
            disabled={!wanted.ok || made === null || seedWrong || composer.working}
          >
            Compose
          </button>
          <button
            type="button"
            disabled={!wanted.ok || made === null || seedWrong || composer.working}
            onClick={() => compose((seedNumber + OFFERED) % (MOST_SEED + 1))}
          >
            Again with other seeds
          </button>
          <span role="status" className="section-note">
            {composer.working && `Composing … ${composer.choices.length} of ${OFFERED}`}
          </span>
        </p>
      </form>
      {composer.failed !== null && (
        <p className="problem-block" role="alert">
          {composer.failed} Compose again.
        </p>
      )}
      {composer.problems.map((problem) => (
        <p className="problem-block" role="alert" key={problem.path + problem.code}>
          <ProblemText problem={problem} />
        </p>
      ))}
      {made !== null && composer.choices.length > 0 && (
        <Choices
          choices={composer.choices}
          setting={made.setting}
          onChoose={(choice) => {
            seen.put(`Look of seed ${choice.look.seed}`, choice.look, SHARE_TOLERANCE);
            composer.clear();
            onChosen?.();
          }}
        />
      )}
    </div>
  );
}
