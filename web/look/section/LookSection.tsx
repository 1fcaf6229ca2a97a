import { useSheet } from '#web/sheet/context.tsx';
import { listed, Section } from '#web/sheet/Section.tsx';
import { CoatLookPanel } from './CoatLookPanel.tsx';
import './look-section.css';

/** The look of each colour coat: composed, worked on by hand, weighed out and approved. */
export function LookSection() {
  const { document } = useSheet();
  const coats = document.coats
    .map((coat, index) => ({ coat, index }))
    .filter(({ coat }) => coat.kind === 'colour coat' || coat.look !== null);
  const begun = coats.filter(({ coat }) => coat.look !== null);
  const summary = begun
    .map(({ coat }) => {
      const puddles = coat.look!.moves.filter((move) => move.kind === 'puddle' && move.kept).length;
      const state = coat.look!.approved === null ? 'not approved yet' : 'approved once';
      return `${coat.name || coat.kind}: ${puddles} ${puddles === 1 ? 'puddle' : 'puddles'}, ${state}`;
    })
    .join('; ');
  const open = coats.filter(({ coat }) => coat.look === null);
  const needs =
    coats.length === 0 ? ['a colour coat'] : open.map(({ coat }) => `a look for ${coat.name || coat.kind}`);
  return (
    <Section id="look" name="Look" summary={summary} needs={needs}>
      {coats.length === 0 && (
        <p className="section-note">
          A look is poured in a colour coat. Add one under Coats; {listed(['its colours', 'its film'])} say
          how much there is to pour.
        </p>
      )}
      {coats.map(({ coat, index }) => (
        <CoatLookPanel key={coat.id} index={index} headed={coats.length > 1} />
      ))}
    </Section>
  );
}
