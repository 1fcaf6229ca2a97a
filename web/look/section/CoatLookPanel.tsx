import { ProblemText } from '#web/field/ProblemText.tsx';
import { Cautions } from '#web/sheet/Cautions.tsx';
import { openField } from '#web/sheet/Section.tsx';
import { Approval } from './Approval.tsx';
import { ColourPanel } from './ColourPanel.tsx';
import { Composing } from './Composing.tsx';
import { HandWork } from './HandWork.tsx';
import { LookSheets } from './LookSheets.tsx';
import { lookCautions } from './look-cautions.ts';
import { PhotoPanel } from './PhotoPanel.tsx';
import { useCoatLook } from './use-coat-look.ts';

/** The look of one coat. */
export function CoatLookPanel({ index, headed }: { readonly index: number; readonly headed: boolean }) {
  const seen = useCoatLook(index);
  const { coat, made, look, problems, warnings } = seen;
  const begun = coat.look !== null;
  return (
    <section className="per-coat look-coat" aria-label={`Look of ${coat.name || coat.kind}`}>
      {headed && <h3>{coat.name || coat.kind}</h3>}
      {problems.map((problem) => (
        <p className="problem-block" key={problem.path + problem.code}>
          <ProblemText problem={problem} />{' '}
          {!problem.path.includes('.look') && (
            <button type="button" className="linklike" onClick={() => openField(problem.path)}>
              Show the field
            </button>
          )}
        </p>
      ))}
      {warnings.map((warning) => (
        <p className="field-warning" key={warning.path + warning.code}>
          <ProblemText problem={warning} />
        </p>
      ))}
      {begun ? (
        <>
          {look !== null && made !== null && <HandWork seen={seen} made={made} look={look} />}
          <div className="look-after">
            {made !== null && <Approval seen={seen} made={made} />}
            <LookSheets coat={coat.id} />
          </div>
          {made !== null && coat.colours.length > 0 && (
            <>
              <details>
                <summary>How the colours look, and made samples</summary>
                <ColourPanel seen={seen} made={made} />
              </details>
              <details>
                <summary>Learn from a photo of a finished top</summary>
                <PhotoPanel seen={seen} made={made} />
              </details>
            </>
          )}
          <details className="look-again">
            <summary>Compose anew from the brief</summary>
            <Composing seen={seen} />
          </details>
        </>
      ) : (
        <>
          <p className="section-note">
            Say in a few words what it should be; a first look and four more come from it to choose from.
            Everything can be changed by hand afterwards.
          </p>
          <Composing seen={seen} />
        </>
      )}
      <Cautions cautions={lookCautions(coat.colours)} />
    </section>
  );
}
