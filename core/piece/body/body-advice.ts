/** Cautions and information about a body: lifting, overhangs, screws, and on request accessible heights. */
import { formatLength, formatWeight } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { outlinePath } from '../outline.ts';
import { pathLength_m } from '../path.ts';
import type { Piece } from '../piece.ts';
import { type BodyOptions, bodyOptions } from './body.ts';
import type { BodyWeight } from './body-weight.ts';

export interface AdviceOptions extends BodyOptions {
  /** 1 1/4 in (31.75 mm) when left out (common practice, no source). */
  readonly screwLength_m?: number;
  /** How far an edge reaches beyond what carries it. */
  readonly overhangs?: readonly { readonly edge: string; readonly overhang_m: number }[];
  /** Only when the user marks the piece as an accessible lavatory. */
  readonly accessible?: {
    /** Floor to the higher of rim and top. */
    readonly topHeight_m: number;
    /** Free width under it, when known. */
    readonly kneeWidth_m?: number;
  };
}

export interface Advice {
  readonly code: 'lift' | 'bracket' | 'screw' | 'ada.height' | 'ada.knee' | 'ada.width' | 'ada.pipes';
  readonly kind: 'caution' | 'information';
  readonly text: string;
  /** What it rests on. */
  readonly source: string;
}

/** The load constant of the revised NIOSH lifting equation (Waters and others 1993; from memory). */
export const ONE_PERSON_KG = 23;
const PRACTICE = 'Common practice, no source.';
const ADA = '2010 ADA Standards for Accessible Design; not required in private dwellings. Not legal advice.';
const OVERHANG_M = 0.25;
const OVERHANG_BODY_M = 0.038;
const BRACKET_SPACING_M = 0.6;
/** Board that must stay between the point of a screw and the face to be coated. */
const SCREW_COVER_M = 0.003;

/** What to say about the body, cautions first. Throws RangeError as `bodyParts` does, and for lengths that are not above 0. */
export function bodyAdvice(
  piece: Piece,
  weight: BodyWeight,
  system: System,
  options: AdviceOptions = {},
): Advice[] {
  const { boardThickness_m } = bodyOptions(options);
  const { screwLength_m = 0.03175, overhangs = [], accessible } = options;
  const length = (length_m: number) => formatLength(length_m, system);
  for (const [name, value] of Object.entries({ screwLength_m, ...accessible }))
    if (!(value > 0 && value < 10)) throw new RangeError(`${name} is ${value}; allowed: above 0 to 10 m`);
  const said: Advice[] = [];
  if (weight.high_kg > ONE_PERSON_KG) {
    const people = Math.max(2, Math.ceil(weight.high_kg / ONE_PERSON_KG));
    said.push({
      code: 'lift',
      kind: 'caution',
      text: `Up to ${formatWeight(weight.high_kg, system)}: lift it with ${people} people or a lifting aid, on edge.`,
      source: 'Load constant of the revised NIOSH lifting equation, 23 kg a person (from memory).',
    });
  }
  for (const { edge, overhang_m } of overhangs) {
    const spec = piece.edges[edge];
    if (spec === undefined || !(overhang_m >= 0 && overhang_m < 10))
      throw new RangeError(
        `overhang of ${overhang_m} m at ${edge}; allowed: 0 to 10 m at an edge of the piece`,
      );
    const allowed = OVERHANG_M * Math.min(1, spec.faceHeight_m / OVERHANG_BODY_M);
    if (overhang_m <= allowed) continue;
    const run = pathLength_m(outlinePath(piece.outline).filter((segment) => segment.edge === edge));
    const brackets = Math.max(2, Math.ceil(run / BRACKET_SPACING_M - 1e-9) + 1);
    said.push({
      code: 'bracket',
      kind: 'caution',
      text: `${edge} reaches out ${length(overhang_m)}, over ${length(allowed)}: ${brackets} brackets, no more than ${length(BRACKET_SPACING_M)} apart.`,
      source: `${PRACTICE} ${length(OVERHANG_M)} is for a body of ${length(OVERHANG_BODY_M)}; less in proportion for a thinner one. No promise of strength.`,
    });
  }
  const stacks = Object.values(piece.edges)
    .filter((spec) => spec.kind === 'finished' && spec.faceHeight_m > boardThickness_m + 0.0005)
    .map((spec) => spec.faceHeight_m);
  const stack = Math.min(...stacks);
  if (stacks.length > 0 && screwLength_m > stack - SCREW_COVER_M)
    said.push({
      code: 'screw',
      kind: 'caution',
      text: `A screw of ${length(screwLength_m)} driven from below comes within ${length(SCREW_COVER_M)} of the face or through it (${length(stack)} thick): use no longer than ${length(stack - SCREW_COVER_M)}.`,
      source: PRACTICE,
    });
  return accessible === undefined ? said : [...said, ...accessibility(piece, accessible, length)];
}

function accessibility(
  piece: Piece,
  accessible: NonNullable<AdviceOptions['accessible']>,
  length: (length_m: number) => string,
): Advice[] {
  const { topHeight_m, kneeWidth_m } = accessible;
  const tell = (code: Advice['code'], text: string, section: string): Advice => ({
    code,
    kind: 'information',
    text,
    source: `${section}, ${ADA}`,
  });
  const inches = (count: number) => count * 0.0254;
  const within = (ok: boolean) => (ok ? 'within' : 'outside');
  const fronts = Object.values(piece.edges).filter((spec) => spec.kind === 'finished');
  const apron = Math.max(piece.bodyThickness_m, ...fronts.map((spec) => spec.faceHeight_m));
  const clear = topHeight_m - apron;
  const said = [
    tell(
      'ada.height',
      `Top at ${length(topHeight_m)}: ${within(topHeight_m <= inches(34) + 1e-6)} the ${length(inches(34))} allowed.`,
      '606.3',
    ),
    tell(
      'ada.knee',
      `${length(Math.max(0, clear))} clear under the deepest edge: ${within(clear >= inches(27) - 1e-6)} the ${length(inches(27))} asked for, which must be kept ${length(inches(8))} deep, and ${length(inches(11))} deep at ${length(inches(9))} above the floor. The bowl must leave it free too.`,
      '306.3.3',
    ),
  ];
  if (kneeWidth_m !== undefined) {
    const ok = kneeWidth_m >= inches(30) - 1e-6;
    said.push(
      tell(
        'ada.width',
        `Knee space ${length(kneeWidth_m)} wide: ${within(ok)} the ${length(inches(30))} asked for.`,
        '306.3.5',
      ),
    );
  }
  said.push(tell('ada.pipes', 'Water and drain pipes under it are insulated or kept out of reach.', '606.5'));
  return said;
}
