import { bad, good, type Result } from '#core/quantity/problem.ts';
import { ResinCardDocument } from './card-document.ts';
import { DocumentReader, parseShape } from './document-reader.ts';
import type { LabelFigure } from './model.ts';
import { type Observation, readObservation } from './observations.ts';
import { type Label, readLabel } from './read-label.ts';

/** A card as read, not fitted yet. */
export interface CardRead {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly label: Label;
  /** The figures as typed, for the card. */
  readonly texts: readonly LabelFigure[];
  readonly observations: readonly Observation[];
}

/**
 * Reads a resin card document: shape, label, observations. Fast; `fitCard` then takes about 0.1 s. Never throws on what was
 * typed.
 */
export function readCard(input: unknown): Result<CardRead> {
  const shape = parseShape(ResinCardDocument, input, 'card');
  if (!shape.ok) return shape;
  const document = shape.value;
  const reader = new DocumentReader();
  const label = reader.take(
    readLabel({ mix: document.mix, label: document.label, colourantLimit: document.colourantLimit }),
  );
  const observations = document.observations.map((each, i) =>
    reader.take(readObservation(each, `observations.${i}`)),
  );
  const ids = new Set<string>();
  document.observations.forEach(({ id }, i) => {
    if (ids.has(id))
      reader.refuse(`observations.${i}.id`, 'observation.same-id', 'Two observations have one id.', id);
    ids.add(id);
  });
  if (label === undefined || reader.problems.length > 0) return bad(...reader.problems);
  return good(
    {
      id: document.id,
      name: document.name,
      description: document.description,
      label,
      texts: document.label.map(({ kind, value, film, mass, temperature }) => ({
        kind,
        text: [
          value.trim(),
          temperature.trim() === '' ? '' : `at ${temperature.trim()}`,
          film.trim() === '' ? '' : `in a ${film.trim()} film`,
          mass.trim() === '' ? '' : `in a cup of ${mass.trim()}`,
        ]
          .filter((part) => part !== '')
          .join(' '),
      })),
      observations: observations.filter((each) => each !== undefined),
    },
    reader.warnings,
  );
}
