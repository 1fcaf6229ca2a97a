/** Fits a drawing on a sheet of a given width: scale, margins for dimension lines and words, text sizes. */
import type { Dimension, Drawing, Leader } from '#core/piece/drawing.ts';
import { formatLength } from '#core/quantity/format.ts';
import type { System } from '#core/quantity/units.ts';
import { type Box, covered, textWidth } from '#web/charts/label-places.ts';
import { figureBox, type PlacedDimension, placeAlong, placeChains } from './chains.ts';
import { type ExtensionLine, extensionEnds, outsideOf } from './extension.ts';
import { type Frame, heldFrame, type Pixel, toPixel } from './frame.ts';

export interface PlacedLeader {
  readonly leader: Leader;
  readonly text: string;
  readonly tip: Pixel;
  readonly at: Pixel;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly frame: Frame;
  /** Text, px on the screen: it does not scale with the piece. */
  readonly size: number;
  readonly dimensions: readonly PlacedDimension[];
  readonly leaders: readonly PlacedLeader[];
  /** Said under the drawing. */
  readonly notes: readonly string[];
}

export interface SheetWishes {
  readonly system: System;
  /** Overall sizes only, no names: the drawing at a glance. */
  readonly small: boolean;
  readonly highest: number;
  /** Printed words may be smaller: 9 point. */
  readonly paper?: boolean;
  /** On a narrow sheet: the cut-out whose sizes are shown, null for none. Left out: all of them, as on a wide one. */
  readonly narrowTo?: string | null;
  /** While something is dragged: the sheet as it was when the drag began, whose scale and place stay under the finger. */
  readonly held?: Sheet | null;
}

/** Of each dimension what is drawn of its extension lines: all but what would run through a figure. */
export function extensionPieces({ dimensions, size }: Sheet): ExtensionLine[][] {
  const figures = dimensions.map((d) => figureBox(d, size)).filter((box) => box !== null);
  return dimensions.map((d) => extensionEnds(d).flatMap((line) => outsideOf(line, figures)));
}

interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const OVERALL: readonly string[] = ['length', 'width', 'return length', 'diameter'];

export function layoutSheet(drawing: Drawing, width: number, wishes: SheetWishes): Sheet {
  const { system, small, highest, paper = false, held = null, narrowTo } = wishes;
  const narrow = width < 560;
  const size = small || paper ? 12 : width >= 1300 ? 16 : width < 420 ? 12.5 : 14;
  const say = (d: Dimension): string =>
    `${d.label === 'cut-out diameter' || d.label === 'diameter' ? '⌀ ' : ''}${formatLength(d.value_m, system)}`;
  const wanted = drawing.dimensions.filter((d) => {
    if (small) return OVERALL.includes(d.label);
    const ofHole = d.label.startsWith('cut-out');
    return !narrow || narrowTo === undefined || !ofHole || d.of?.split(', ').includes(narrowTo ?? '');
  });
  // Radius notes cost width a narrow sheet does not have: there they stand in words under it.
  const notes =
    narrow && !small
      ? drawing.leaders
          .filter((l) => l.label !== 'edge length')
          .map((l) => `${upper(l.label)} ${radiusText(l, system)}`)
      : [];
  const style = { size, first: small ? size + 2 : 12 + size * 2.1, step: size * 1.9 };
  const onSheet = (l: Leader): boolean => !narrow || l.label === 'edge length';
  const b = drawing.bounds;
  const on = (frame: Frame, height: number): Sheet => {
    const along = placeAlong(wanted, frame, style, say);
    const dimensions = [...placeChains(wanted, frame, style, say, along), ...along];
    const leaders = small
      ? []
      : placeLeaders(drawing.leaders.filter(onSheet), frame, size, system, dimensions);
    return { width, height, frame, size, dimensions, leaders, notes };
  };
  if (held !== null && held.width === width) return on(heldFrame(held.frame, b), held.height);
  const wide_m = b.maxX_m - b.minX_m;
  const high_m = b.maxY_m - b.minY_m;
  const least = small ? 12 : style.first;
  let margins: Margins = { left: least, right: least, top: least, bottom: least };
  let sheet: Sheet | null = null;
  // Margins depend on what stands in them, which depends on the scale: a few rounds settle it.
  for (let round = 0; round < 4; round += 1) {
    const room = Math.max(60, width - margins.left - margins.right);
    const tall = Math.max(60, highest - margins.top - margins.bottom);
    const pxPerMetre = Math.min(room / wide_m, tall / high_m);
    const spare = Math.max(0, width - margins.left - margins.right - wide_m * pxPerMetre);
    const frame: Frame = { left: margins.left + spare / 2, top: margins.top, pxPerMetre, bounds: b };
    sheet = on(frame, margins.top + high_m * pxPerMetre + margins.bottom);
    margins = needed(sheet, frame, least);
  }
  return sheet!;
}

/** How far words and lines reach beyond the piece on each side, px. */
function needed(sheet: Sheet, frame: Frame, least: number): Margins {
  const { size } = sheet;
  const b = frame.bounds;
  const box = {
    left: frame.left,
    top: frame.top,
    right: frame.left + (b.maxX_m - b.minX_m) * frame.pxPerMetre,
    bottom: frame.top + (b.maxY_m - b.minY_m) * frame.pxPerMetre,
  };
  const margins = { left: least, right: least, top: least, bottom: least };
  const reach = (x: number, y: number): void => {
    margins.left = Math.max(margins.left, box.left - x + 4);
    margins.right = Math.max(margins.right, x - box.right + 4);
    margins.top = Math.max(margins.top, box.top - y + 4);
    margins.bottom = Math.max(margins.bottom, y - box.bottom + 4);
  };
  for (const d of sheet.dimensions) {
    const long = (textWidth(d.text, size) * 1.08) / 2;
    const turn = (d.turn * Math.PI) / 180;
    const x = Math.abs(Math.cos(turn)) * long + Math.abs(Math.sin(turn)) * size * 0.6;
    const y = Math.abs(Math.sin(turn)) * long + Math.abs(Math.cos(turn)) * size * 0.6;
    reach(d.at.x - x, d.at.y - y);
    reach(d.at.x + x, d.at.y + y);
    reach(d.from.x, d.from.y);
    reach(d.to.x, d.to.y);
  }
  for (const l of sheet.leaders) {
    const long = textWidth(l.text, size) * 1.08;
    const from = l.anchor === 'start' ? l.at.x : l.anchor === 'end' ? l.at.x - long : l.at.x - long / 2;
    reach(from, l.at.y - size);
    reach(from + long, l.at.y + size * 0.4);
  }
  return margins;
}

/** Notes one after the other, each moved out along its arrow until it covers no figure and no note before it. */
function placeLeaders(
  leaders: readonly Leader[],
  frame: Frame,
  size: number,
  system: System,
  dimensions: readonly PlacedDimension[],
): PlacedLeader[] {
  const taken = dimensions.map((d) => figureBox(d, size)).filter((box) => box !== null);
  return leaders.map((leader) => {
    const tries = Array.from({ length: MOST_TRIES }, (_, i) => placeLeader(leader, frame, size, system, i));
    const placed = tries.find((each) => covered(noteBox(each, size), taken) === 0) ?? tries[0]!;
    taken.push(noteBox(placed, size));
    return placed;
  });
}

const MOST_TRIES = 8;

function noteBox({ at, anchor, text }: PlacedLeader, size: number): Box {
  const long = textWidth(text, size) * 1.08;
  const left = anchor === 'start' ? at.x : anchor === 'end' ? at.x - long : at.x - long / 2;
  return { left, right: left + long, top: at.y - size / 2, bottom: at.y + size / 2 };
}

/** A note stands outside its corner; the length of a slanted edge with no room outside stands inside it. */
function placeLeader(leader: Leader, frame: Frame, size: number, system: System, out: number): PlacedLeader {
  const tip = toPixel(frame, leader.at);
  const drawn = toPixel(frame, leader.text);
  const far = Math.hypot(drawn.x - tip.x, drawn.y - tip.y) || 1;
  const ux = (drawn.x - tip.x) / far;
  const uy = (drawn.y - tip.y) / far;
  const length = leader.label === 'edge length';
  const away = size * ((length ? 1.3 : 2.4) + out * 1.2);
  return {
    leader,
    text: length ? formatLength(leader.value_m, system) : `R ${radiusText(leader, system)}`,
    tip,
    at: { x: tip.x + ux * away, y: tip.y + uy * away },
    anchor: ux > 0.3 ? 'start' : ux < -0.3 ? 'end' : 'middle',
  };
}

function radiusText(leader: Leader, system: System): string {
  return `${formatLength(leader.value_m, system)}${leader.count > 1 ? ` (${leader.count} corners)` : ''}`;
}

function upper(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
