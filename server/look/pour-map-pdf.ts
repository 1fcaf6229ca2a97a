/** The sheet for the wall: where each cup goes, in which order, how far to pull. */
import type { LookMoveDocument } from '#core/look/look-document.ts';
import type { Place } from '#core/look/move.ts';
import { topDrawing } from '#core/look/render/drawing.ts';
import { hexOfLinear } from '#core/look/srgb.ts';
import { formatMass, formatVolume } from '#core/quantity/format.ts';
import { BLACK, GREY, type Ink, openInk } from '../set-out/ink.ts';
import { head, MARGIN, titleOf } from '../set-out/sheet-head.ts';
import { type Flow, heading, paragraph, table } from '../set-out/table.ts';
import { boxCorners, firstClear, type Spot, type TextBox } from '../set-out/text-boxes.ts';
import type { LookSheet } from './look-sheet.ts';
import { drawOutlines, drawPicture, type Laid, lay, scaleBar } from './picture-box.ts';
import { type PourStep, pourSteps } from './pour-steps.ts';

const HEAD = 34;

export async function pourMapPdf(sheet: LookSheet): Promise<Uint8Array<ArrayBuffer>> {
  const { paper, at, look, system } = sheet;
  const ink = openInk({
    paper,
    orientation: 'landscape',
    title: `Pour map: ${titleOf(sheet)}`,
    subject: 'Pour map',
    at,
  });
  const steps = pourSteps(sheet);
  const drawing = topDrawing(look.panels);
  const top = MARGIN + HEAD;
  const bottom = ink.height - MARGIN;
  const laid = lay(drawing, { left: MARGIN, top, wide: ink.width - 2 * MARGIN, high: bottom - 40 - top });
  // Pale enough that numbers and arrows stand out, strong enough that the colours are told apart.
  await drawPicture(ink, laid, drawing, look, { pale: 0.55 });
  drawOutlines(ink, laid, drawing, sheet);
  const taken: Spot[][] = [];
  for (const { number, move } of steps) if (move !== null) mark(ink, laid, move, number, sheet, taken);
  const bar = scaleBar(ink, laid, MARGIN + 6, bottom - 18, system);
  ink.write(
    'Seen from above, front edge below. Numbers: the order. Filled: pour. Open with an arrow: pull from the dot to the tip.',
    MARGIN + bar + 34,
    bottom - 16,
    { size: 8.5 },
  );
  ink.write(`${sheet.coat}; look ${sheet.mark}`, MARGIN, bottom, { size: 8.5, weight: 600 });
  ink.page();
  const flow: Flow = { ink, left: MARGIN, right: ink.width - MARGIN, top, bottom, y: top - 10 };
  writeSteps(flow, steps);
  writeCups(flow, sheet, steps);
  ink.eachPage((index, count) => head(ink, 'Pour map', sheet, index, count));
  return ink.end();
}

function writeSteps(flow: Flow, steps: readonly PourStep[]): void {
  heading(flow, 'In this order');
  if (steps.length === 0) {
    paragraph(flow, 'Nothing is poured yet: the look has no colour and no move.');
    return;
  }
  table(
    flow,
    [
      { head: 'No.', share: 0.7, align: 'right' },
      { head: 'Do', share: 2.4 },
      { head: 'From', share: 2.2 },
      { head: 'Amount', share: 1.8, align: 'right' },
      { head: 'Where', share: 4 },
      { head: 'How far, with what', share: 3 },
    ],
    steps.map(({ number, cells }) => [number === 0 ? 'first' : String(number), ...cells]),
  );
}

function writeCups(flow: Flow, sheet: LookSheet, steps: readonly PourStep[]): void {
  const { cups, pours, system } = sheet;
  heading(flow, 'Cups');
  if (cups.length === 0) {
    paragraph(
      flow,
      'The cups are not worked out yet: the coat still needs something (its section of the job says what). Amounts above are what stays in the film, without run-off, what clings to the cup, and spare.',
    );
    return;
  }
  const numberOf = (id: string | null) => steps.find(({ move }) => (move?.id ?? null) === id)?.number ?? 0;
  table(
    flow,
    [
      { head: 'Cup', share: 0.7, align: 'right' },
      { head: 'Colour', share: 3 },
      { head: 'Volume', share: 1.5, align: 'right' },
      { head: 'On the scale', share: 1.5, align: 'right' },
      { head: 'Part A, part B, colourant', share: 3 },
      { head: 'Goes to', share: 4 },
    ],
    cups.map((cup) => [
      String(cup.number),
      cup.colour,
      formatVolume(cup.volume_m3, system),
      formatMass(cup.mass_kg),
      `${formatMass(cup.partA_kg)}, ${formatMass(cup.partB_kg)}, ${cup.tint_kg > 0 ? formatMass(cup.tint_kg) : 'none'}`,
      pours
        .filter((pour) => pour.cup === cup.number)
        .map((pour) => {
          const number = numberOf(pour.move);
          return `${number === 0 ? 'all over' : `no. ${number}`}: ${formatMass(pour.mass_kg)}`;
        })
        .join('; ') || 'spare',
    ]),
  );
  paragraph(
    flow,
    'Volumes and masses are of mixed resin with its colourant, with this cup\u2019s part of run-off and spare. Pigment loads over the limit of the resin are not poured: the mix section of the job says how much it bears.',
    { size: 8, colour: GREY },
  );
}

const WHITE = '#ffffff';

function mark(
  ink: Ink,
  laid: Laid,
  move: LookMoveDocument,
  number: number,
  sheet: LookSheet,
  taken: Spot[][],
): void {
  const at = ([x, y]: Place): Spot => laid.at(x, y);
  switch (move.kind) {
    case 'puddle': {
      const light = sheet.look.colours.find(({ key }) => key === move.colour)?.light ?? [1, 1, 1];
      way(ink, move.path.map(at), false, hexOfLinear(light));
      disc(ink, at(move.path[0]!), number, taken, hexOfLinear(light), light[1] > 0.18 ? BLACK : WHITE);
      return;
    }
    case 'stroke':
      way(ink, move.path.map(at), true, BLACK);
      disc(ink, at(move.path[0]!), number, taken, WHITE, BLACK);
      return;
    case 'comb': {
      const { heading_rad, pull_m, through, teeth, pitch_m } = move;
      const [c, s] = [Math.cos(heading_rad), Math.sin(heading_rad)];
      const half = Math.max(Math.abs(pull_m), 0.08) * Math.sign(pull_m || 1);
      for (let tooth = 0; tooth < teeth; tooth++) {
        const off = (tooth - (teeth - 1) / 2) * pitch_m;
        const base: Place = [through[0] - s * off, through[1] + c * off];
        const ends = [-half, half].map((l): Place => [base[0] + l * c, base[1] + l * s]);
        way(ink, ends.map(at), true, BLACK);
      }
      disc(ink, at(through), number, taken, WHITE, BLACK);
      return;
    }
    case 'swirl': {
      const reach = Math.max(12, move.reach_m * laid.scale);
      const centre = at(move.centre);
      const turn = Math.sign(move.turn_rad || 1) * 1.5 * Math.PI;
      const ring = Array.from({ length: 25 }, (_, i): Spot => {
        const angle = (turn * i) / 24;
        return { x: centre.x + reach * Math.cos(angle), y: centre.y - reach * Math.sin(angle) };
      });
      way(ink, ring, true, BLACK);
      disc(ink, centre, number, taken, WHITE, BLACK);
      return;
    }
    case 'tilt': {
      const centre = at(move.centre);
      const [dx, dy] = [40 * Math.cos(move.heading_rad), -40 * Math.sin(move.heading_rad)];
      way(ink, [centre, { x: centre.x + dx, y: centre.y + dy }], true, BLACK);
      disc(ink, centre, number, taken, WHITE, BLACK);
      return;
    }
    default:
    // Rocking, fog and clear are all over: the table has them.
  }
}

/** A line with a halo of paper, that shows on any colour; with a dot at its start and an arrow at its end, or neither. */
function way(ink: Ink, path: readonly Spot[], arrow: boolean, colour: string): void {
  if (path.length < 2) return;
  const { doc } = ink;
  for (const [width, tone] of [
    [arrow ? 4 : 7, WHITE],
    [arrow ? 1.4 : 4.5, colour],
  ] as const) {
    doc.moveTo(path[0]!.x, path[0]!.y);
    for (const { x, y } of path.slice(1)) doc.lineTo(x, y);
    doc.lineWidth(width).lineCap('round').lineJoin('round').undash().strokeColor(tone).stroke();
  }
  if (!arrow) return;
  const [tip, before] = [path.at(-1)!, path.at(-2)!];
  const angle = Math.atan2(tip.y - before.y, tip.x - before.x);
  const side = (turn: number): [number, number] => [
    tip.x - 9 * Math.cos(angle + turn),
    tip.y - 9 * Math.sin(angle + turn),
  ];
  doc.polygon([tip.x, tip.y], side(0.4), side(-0.4)).lineWidth(1).fillAndStroke(colour, WHITE);
}

const RADIUS = 9;

/** A number where it belongs, or beside it with a leader when another stands there. */
function disc(ink: Ink, at: Spot, number: number, taken: Spot[][], fill: string, text: string): void {
  const size = 2 * RADIUS;
  const box = (dx: number, dy: number): TextBox => ({
    x: at.x + dx,
    y: at.y + dy,
    wide: size,
    high: size,
    turn_deg: 0,
  });
  const ring = [1.2, 2.3, 3.4].flatMap((far) =>
    Array.from({ length: 8 }, (_, i) => {
      const angle = (i * Math.PI) / 4;
      return box(far * size * Math.cos(angle), far * size * Math.sin(angle));
    }),
  );
  const place = firstClear([box(0, 0), ...ring], taken);
  taken.push(boxCorners(place));
  const { doc } = ink;
  if (place.x !== at.x || place.y !== at.y) {
    doc.moveTo(at.x, at.y).lineTo(place.x, place.y).lineWidth(2.4).undash().strokeColor(WHITE).stroke();
    doc.moveTo(at.x, at.y).lineTo(place.x, place.y).lineWidth(0.8).strokeColor(BLACK).stroke();
    doc.circle(at.x, at.y, 2).fill(BLACK);
  }
  doc.circle(place.x, place.y, RADIUS + 1.4).fill(WHITE);
  doc.circle(place.x, place.y, RADIUS).lineWidth(0.9).fillAndStroke(fill, BLACK);
  const style = { size: number > 99 ? 8 : 10, weight: 600, colour: text, align: 'middle' } as const;
  ink.write(String(number), place.x, place.y + 3.5, style);
}
