/** From the chains of a file to the drawing: joined, checked, sorted into outline and cut-outs. */

import { good, type Problem, type Result } from '#core/quantity/problem.ts';
import { lengthText } from '../length-text.ts';
import { bounds, counterClockwise, distanceToPath_m, pathArea_m2, pointInside } from '../path.ts';
import type { Path } from '../piece.ts';
import type { Chain } from './chain.ts';
import type { DrawingUnit } from './drawing-unit.ts';
import {
  type ImportedDrawing,
  type ImportedLayer,
  type ImportedLoop,
  MOST_LOOPS,
  Refused,
  refuse,
} from './imported-drawing.ts';
import { type Gap, joinLoops, where } from './join-loops.ts';
import { firstCrossing } from './tangle.ts';

export interface Gathered {
  readonly format: 'dxf' | 'svg';
  readonly chains: readonly Chain[];
  readonly layers: readonly ImportedLayer[];
  readonly leftOut: Readonly<Record<string, number>>;
  readonly unit: DrawingUnit;
  readonly unitFrom: 'file' | 'person';
  readonly tolerance_m: number;
  readonly join_m: number;
  readonly warnings: readonly Problem[];
}

/** Throws Refused when the chains make no outline. */
export function assemble(file: Gathered): Result<ImportedDrawing> {
  if (file.chains.length === 0) noShape(file);
  const joined = joinLoops(file.chains, file.join_m);
  if (joined.open.length > 0) throw new Refused(...openProblems(joined.open, file.join_m));
  if (joined.loops.length === 0) noShape(file);
  if (joined.loops.length > MOST_LOOPS)
    refuse(
      'file.too-many-shapes',
      'The drawing has too many closed shapes.',
      `${joined.loops.length}`,
      `1 to ${MOST_LOOPS}`,
    );
  const warnings = [...file.warnings];
  const loops = unrepeated(joined.loops, warnings);
  refuseCrossings(loops);
  const bySize = loops
    .map((loop) => ({ path: counterClockwise(loop.path), layer: loop.layer, area: pathArea_m2(loop.path) }))
    .sort((a, b) => b.area - a.area);
  const outline = bySize[0]!;
  const inside = bySize.slice(1).filter((loop) => within(loop.path, outline.path));
  // A loop within a cut-out is an island: it would fall out with the waste.
  const cutOuts = inside.filter((loop, i) => !inside.slice(0, i).some((o) => within(loop.path, o.path)));
  const apart = bySize.length - 1 - inside.length;
  const islands = inside.length - cutOuts.length;
  if (apart > 0) warnings.push(warn('file.outside', `${shapes(apart)} outside the largest and left out.`));
  if (islands > 0) warnings.push(warn('file.island', `${shapes(islands)} within a cut-out and left out.`));
  if (joined.doubled > 0)
    warnings.push(warn('file.doubled', `${joined.doubled} lines were drawn twice; each is taken once.`));
  if (joined.count > 0)
    warnings.push(
      warn('file.joined', `${joined.count} gaps between ends were closed.`, lengthText(joined.largestGap_m)),
    );
  const loop = ({ path, layer }: ImportedLoop): ImportedLoop => ({ path, layer });
  return good(
    {
      format: file.format,
      unit: file.unit,
      unitFrom: file.unitFrom,
      outline: loop(outline),
      cutOuts: cutOuts.map(loop),
      bounds: bounds(outline.path),
      layers: file.layers,
      leftOut: file.leftOut,
      joined: { count: joined.count, largestGap_m: joined.largestGap_m },
      tolerance_m: file.tolerance_m,
    },
    warnings,
  );
}

function shapes(count: number): string {
  return count === 1 ? 'One shape lies' : `${count} shapes lie`;
}

function warn(code: string, message: string, read?: string): Problem {
  return { path: '', code, message, ...(read === undefined ? {} : { read }) };
}

function noShape(file: Gathered): never {
  const unused = file.layers.filter((l) => !l.used).map((l) => l.name);
  refuse(
    'file.no-shape',
    'There is no closed shape in this drawing.',
    unused.length > 0 ? `nothing but layers ${unused.slice(0, 5).join(', ')}` : undefined,
    'at least one closed outline of lines, arcs or curves',
  );
}

/** The worst gaps, at most five. */
function openProblems(open: readonly Gap[], join_m: number): Problem[] {
  const problems = open
    .filter((gap, i) => open.findIndex((o) => o.at === gap.at) === i)
    .slice(0, 5)
    .map((gap) => ({
      path: '',
      code: 'file.open-loop',
      message: `A line ends without meeting another, on layer "${gap.layer.slice(0, 60)}".`,
      read: `${where(gap.at)}${Number.isFinite(gap.gap_m) ? `, gap ${(gap.gap_m * 1000).toFixed(3)} mm to the nearest loose end` : ''}`,
      allowed: `gaps up to ${join_m * 1000} mm are closed`,
    }));
  return problems;
}

function unrepeated(loops: readonly ImportedLoop[], warnings: Problem[]): ImportedLoop[] {
  const seen = new Map<string, number>();
  const kept = loops.filter(({ path }) => {
    const box = bounds(path);
    const name = [box.minX_m, box.minY_m, box.maxX_m, box.maxY_m, pathArea_m2(path) * 1e3]
      .map((n) => Math.round(n * 1e6))
      .join();
    seen.set(name, (seen.get(name) ?? 0) + 1);
    return seen.get(name) === 1;
  });
  if (kept.length < loops.length)
    warnings.push(
      warn('file.doubled', `${loops.length - kept.length} shapes were drawn twice; each is taken once.`),
    );
  return kept;
}

function refuseCrossings(loops: readonly ImportedLoop[]): void {
  const flat = loops.find((loop) => !(pathArea_m2(loop.path) > 1e-8));
  const met = firstCrossing(loops.map((loop) => loop.path));
  if (met !== undefined)
    refuse(
      met.firstLoop === met.secondLoop ? 'file.crosses-itself' : 'file.shapes-cross',
      met.firstLoop === met.secondLoop
        ? 'A shape crosses or touches itself.'
        : 'Two shapes cross or touch each other.',
      where(met.at),
      'shapes that go round once and keep clear of one another',
    );
  if (flat !== undefined)
    refuse('file.no-area', 'A shape encloses no area.', where(flat.path[0]!.from), '0.01 mm2 or more');
}

/** Loops keep clear of one another, so one point tells. */
function within(inner: Path, outer: Path): boolean {
  const p = inner[0]!.from;
  return distanceToPath_m(outer, p) > 0 && pointInside(outer, p);
}
