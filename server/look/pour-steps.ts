/** A look in the words of who pours it: numbered steps with cup, amount, place and how far to pull. */
import type { LookMoveDocument } from '#core/look/look-document.ts';
import type { Place } from '#core/look/move.ts';
import { outlinePath } from '#core/piece/outline.ts';
import { bounds } from '#core/piece/path.ts';
import { formatMass, formatVolume } from '#core/quantity/format.ts';
import { sayLength } from '../set-out/say.ts';
import type { Cell } from '../set-out/table.ts';
import type { LookSheet } from './look-sheet.ts';

export interface PourStep {
  /** 0: what is spread all over first. */
  readonly number: number;
  readonly move: LookMoveDocument | null;
  /** What to do; cup and colour; how much; where; how far and with what. */
  readonly cells: readonly [Cell, Cell, Cell, Cell, Cell];
}

export function pourSteps(sheet: LookSheet): PourStep[] {
  const steps: PourStep[] = [];
  const ground = sheet.pours.filter(({ move }) => move === null);
  const groundKey = sheet.look.colours[sheet.look.ground]?.key ?? '';
  const groundShare = groundOnly(sheet);
  if (ground.length > 0 || groundShare > 1e-6)
    steps.push({
      number: 0,
      move: null,
      cells: [
        'Spread all over',
        from(sheet, ground, groundKey),
        amount(sheet, ground, groundShare * sheet.look.area_m2 * sheet.look.film_m),
        'whole top, and its edges',
        '',
      ],
    });
  for (const move of sheet.document.moves) {
    if (!move.kept) continue;
    const number = steps.filter((step) => step.move !== null).length + 1;
    steps.push({ number, move, cells: cellsOf(move, sheet) });
  }
  return steps;
}

/** Share of the film that is in no puddle. */
function groundOnly({ document, look }: LookSheet): number {
  const whole_m3 = look.area_m2 * look.film_m;
  const poured = document.moves.reduce(
    (sum, move) => sum + (move.kind === 'puddle' && move.kept ? move.volume_m3 : 0),
    0,
  );
  return Math.max(0, 1 - poured / whole_m3);
}

const STEP = { us: 0.0254 / 8, metric: 0.001 } as const;

function cellsOf(move: LookMoveDocument, sheet: LookSheet): PourStep['cells'] {
  const { system } = sheet;
  // By hand nobody works finer than an eighth of an inch; tools are named by their own size.
  const size = (m: number) => sayLength(Math.max(STEP[system], roundTo(m, STEP[system])), system);
  const tool = (m: number) => sayLength(system === 'us' ? roundTo(m, STEP.us / 2) : m, system);
  const mirrored =
    sheet.document.symmetry !== 'none' && move.kind !== 'fogged edge' && move.kind !== 'clear buffer';
  const named = (what: string): Cell => [
    what,
    ...(move.name.trim() === '' ? [] : [move.name.trim()]),
    ...(mirrored ? [`and mirrored: ${sheet.document.symmetry}`] : []),
  ];
  switch (move.kind) {
    case 'puddle': {
      const pours = sheet.pours.filter((pour) => pour.move === move.id);
      const ribbon = move.path.length > 1;
      return [
        named(ribbon ? 'Pour a ribbon' : 'Pour'),
        from(sheet, pours, move.colour),
        amount(sheet, pours, move.volume_m3),
        ribbon ? along(move.path, sheet) : where(move.path[0]!, sheet),
        ribbon ? `${size(lengthOf(move.path))} long` : '',
      ];
    }
    case 'stroke':
      return [
        named('Pull a tool'),
        '',
        '',
        along(move.path, sheet),
        [`pull ${size(lengthOf(move.path))}`, `tool ${tool(move.width_m)} wide, ${depthWords(move.depth)}`],
      ];
    case 'comb': {
      const what = move.teeth === 1 ? 'Draw a stick right across' : 'Draw a comb right across';
      return [
        named(what),
        '',
        '',
        [
          `through ${where(move.through, sheet)}`,
          heading(move.heading_rad + (move.pull_m < 0 ? Math.PI : 0)),
        ],
        [
          `film carried ${size(Math.abs(move.pull_m))}`,
          move.teeth === 1
            ? `stick ${tool(move.width_m)} wide`
            : `${move.teeth} teeth, ${tool(move.width_m)} wide, ${tool(move.pitch_m)} apart`,
        ],
      ];
    }
    case 'swirl':
      return [
        named('Turn a stick'),
        '',
        '',
        where(move.centre, sheet),
        [
          `${Math.abs((move.turn_rad * 180) / Math.PI).toFixed(0)}° ${move.turn_rad > 0 ? 'against the clock' : 'with the clock'}`,
          `felt ${size(move.reach_m)} round it`,
        ],
      ];
    case 'waver':
      return [
        named('Rock the board'),
        '',
        '',
        'whole top',
        `edges wander up to ${size(move.amplitude_m)}, waves ${size(move.wavelength_m)} long`,
      ];
    case 'tilt':
      return [
        named('Tilt, and level again'),
        '',
        '',
        heading(move.heading_rad),
        `${((move.draw - 1) * 100).toFixed(0)} % longer that way`,
      ];
    case 'fogged edge':
      return [
        named('Fog the edge'),
        `sprayed colour ${move.colour}`,
        `${(100 * move.strength).toFixed(0)} % at the edge`,
        move.edges.length === 0 ? 'every finished edge' : move.edges.join(', '),
        `${size(move.reach_m)} inwards`,
      ];
    case 'clear buffer':
      return [
        named('Spread clear'),
        'clear resin',
        formatVolume(move.film_m * sheet.look.area_m2, system),
        'whole top',
        '',
      ];
  }
}

/** Cups and colour. */
function from({ colours }: LookSheet, pours: LookSheet['pours'], key: string): Cell {
  const label = colours.find((colour) => colour.key === key)?.label ?? key;
  const cups = pours.map(({ cup }) => cup);
  if (cups.length === 0) return label;
  return [`${cups.length === 1 ? 'cup' : 'cups'} ${cups.join(' + ')}`, label];
}

/** What to pour by volume and on the scale; without cups what stays in the film. */
function amount({ cups, system }: LookSheet, pours: LookSheet['pours'], film_m3: number): Cell {
  if (pours.length === 0) return [formatVolume(film_m3, system), 'in the film'];
  const volume = pours.reduce((sum, { cup, mass_kg }) => {
    const of = cups.find((each) => each.number === cup);
    return sum + (of === undefined || of.mass_kg === 0 ? 0 : (mass_kg / of.mass_kg) * of.volume_m3);
  }, 0);
  const mass = pours.reduce((sum, { mass_kg }) => sum + mass_kg, 0);
  const parts =
    pours.length === 1
      ? []
      : [pours.map(({ cup, mass_kg }) => `cup ${cup}: ${formatMass(mass_kg)}`).join(', ')];
  return [formatVolume(volume, system), formatMass(mass), ...parts];
}

function corner({ pieces }: LookSheet) {
  const box = bounds(outlinePath(pieces[0]!.piece.outline));
  return { left_m: box.minX_m, front_m: box.minY_m };
}

/** A place as a tape finds it, from the left and the front of the first piece. */
function where([x, y]: Place, sheet: LookSheet): string {
  const { left_m, front_m } = corner(sheet);
  const coarse = (m: number) =>
    sayLength(roundTo(m, sheet.system === 'us' ? 0.0254 / 8 : 0.001), sheet.system);
  return `${coarse(x - left_m)} from left, ${coarse(y - front_m)} from front`;
}

function along(path: readonly Place[], sheet: LookSheet): Cell {
  const [first, last] = [path[0]!, path.at(-1)!];
  const by = path.length > 2 ? [`by ${path.length - 2} more ${path.length === 3 ? 'place' : 'places'}`] : [];
  return [`from ${where(first, sheet)}`, ...by, `to ${where(last, sheet)}`];
}

function roundTo(value: number, step: number): number {
  return Math.round(value / step) * step;
}

export function lengthOf(path: readonly Place[]): number {
  return path.slice(1).reduce((sum, p, i) => sum + Math.hypot(p[0] - path[i]![0], p[1] - path[i]![1]), 0);
}

/** "toward the back, 30° to the right". */
export function heading(rad: number): string {
  const turn = ((((rad * 180) / Math.PI) % 360) + 360) % 360;
  const sides = ['the right', 'the back', 'the left', 'the front'];
  const quarter = Math.round(turn / 90) % 4;
  const off = Math.round(turn - 90 * Math.round(turn / 90));
  const other = sides[(quarter + (off > 0 ? 1 : 3)) % 4]!;
  return `toward ${sides[quarter]!}${off === 0 ? '' : `, turned ${Math.abs(off)}° to ${other}`}`;
}

function depthWords(depth: number): string {
  if (depth > 0.85) return 'down to the board';
  if (depth > 0.5) return 'deep in the film';
  return depth > 0.2 ? 'half into the film' : 'just through the skin';
}
