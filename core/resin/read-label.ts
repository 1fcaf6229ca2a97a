import { bad, type Result } from '#core/quantity/problem.ts';
import { readPercent } from '#core/quantity/read.ts';
import { LabelDocument } from './card-document.ts';
import { DocumentReader, parseShape } from './document-reader.ts';
import { type Figure, middleOf, UNSAID } from './label.ts';
import { sayFigure } from './label-terms.ts';
import type { MixRatio } from './model.ts';
import { readFigure } from './read-figure.ts';
import { readMix } from './read-mix.ts';

/** A label as data, SI. */
export interface Label {
  readonly mix: MixRatio;
  /** Of part A, when its data sheet says. */
  readonly epoxyEquivalent_g_eq?: number | undefined;
  readonly figures: readonly Figure[];
  /** Share of the mix by mass; undefined: not said. */
  readonly colourantLimit?: number | undefined;
}

/**
 * Reads a label document: its shape, each figure, and what figures say together (a recoat time before the end of working
 * time, a window that closes before it opens, a full cure before the recoat, a warmer shop that is slower). Never throws on
 * what was typed. Paths of problems are those of the document: `label.2.value`, `mix.byVolume`.
 */
export function readLabel(input: unknown): Result<Label> {
  const shape = parseShape(LabelDocument, input, 'label');
  if (!shape.ok) return shape;
  const document = shape.value;
  const reader = new DocumentReader();
  const mix = reader.take(readMix(document.mix));
  const colourantLimit = reader.maybe(document.colourantLimit, (text) =>
    readPercent(text, { path: 'colourantLimit', what: 'most colourant', unit: '%', min: 0, max: 0.3 }),
  );
  const figures = document.label.map((figure, i) => reader.take(readFigure(figure, `label.${i}`)));
  checkTogether(figures, document, reader);
  if (mix === undefined || reader.problems.length > 0) return bad(...reader.problems);
  return reader.answer({
    mix: mix.ratio,
    ...(mix.epoxyEquivalent_g_eq === undefined ? {} : { epoxyEquivalent_g_eq: mix.epoxyEquivalent_g_eq }),
    figures: figures.filter((figure) => figure !== undefined),
    ...(colourantLimit === undefined ? {} : { colourantLimit }),
  });
}

/** Kinds in the order they come about on one film. */
const ORDER: readonly (readonly [Figure['kind'], Figure['kind'], string])[] = [
  ['working time', 'recoat opens', 'label.recoat-before-working'],
  ['working time', 'recoat closes', 'label.recoat-before-working'],
  ['working time', 'dry hard', 'label.hard-before-working'],
  ['working time', 'handle', 'label.hard-before-working'],
  ['recoat opens', 'recoat closes', 'label.closes-before-opens'],
  ['recoat opens', 'full cure', 'label.full-cure-first'],
  ['dry hard', 'full cure', 'label.full-cure-first'],
  ['handle', 'full cure', 'label.full-cure-first'],
];

/** Kelvin within which two figures are taken as measured at one temperature. */
const SAME_K = 1.5;

function checkTogether(
  figures: readonly (Figure | undefined)[],
  document: LabelDocument,
  reader: DocumentReader,
): void {
  const at = (figure: Figure) => figure.temperature_K ?? UNSAID.temperature_K;
  const typed = (i: number) => document.label[i]!.value;
  figures.forEach((later, j) => {
    if (later === undefined) return;
    figures.forEach((first, i) => {
      if (first === undefined || i === j) return;
      const same = Math.abs(at(first) - at(later)) < SAME_K;
      for (const [earlyKind, lateKind, code] of ORDER) {
        if (first.kind !== earlyKind || later.kind !== lateKind || !same) continue;
        if (later.high > first.low && middleOf(later) > middleOf(first)) continue;
        reader.refuse(
          `label.${j}.value`,
          code,
          `${capital(sayFigure(later))} is not after ${sayFigure(first)}.`,
          typed(j),
          `later than ${typed(i)}`,
        );
      }
      const warmer = first.kind === later.kind && at(later) > at(first) + SAME_K;
      const alike = first.film_m === later.film_m && first.mass_kg === later.mass_kg;
      const timed = later.kind !== 'viscosity' && later.kind !== 'largest film';
      if (warmer && alike && timed && middleOf(later) >= middleOf(first)) {
        reader.doubt(
          `label.${j}.value`,
          'label.warmer-slower',
          `${capital(sayFigure(later))} in the warm and ${sayFigure(first)} in the cool: such a resin is faster when warm.`,
          typed(j),
        );
      }
    });
  });
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
