/**
 * The files a piece is written to, read by programs that are not ours: ezdxf 0.18 (Debian python3-ezdxf) for DXF, librsvg 2.54
 * (Debian librsvg2-bin) for SVG. ezdxf finds no fault and the same entities, bulges and extents to 1e-9 of a unit; the
 * area librsvg fills agrees with the exact one to the pixels along the rim.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { afterAll, describe, expect, it } from 'vitest';
import { readDxf } from '#core/piece/files/read-dxf.ts';
import { writeDxf } from '#core/piece/files/write-dxf.ts';
import { writeSvg } from '#core/piece/files/write-svg.ts';
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { bounds, pathArea_m2, pathLength_m } from '#core/piece/path.ts';
import type { Piece } from '#core/piece/piece.ts';

const PIECE: Piece = {
  outline: { shape: 'rectangle', length_m: 1.0668, width_m: 0.5461, cornerRadius_m: 0.0254 },
  edges: {},
  bodyThickness_m: 0.019,
  cutOuts: [
    {
      shape: 'oval',
      name: 'bowl',
      centre: { x_m: 0.5, y_m: 0.25 },
      length_m: 0.3,
      width_m: 0.4,
      rotation_rad: 0.3,
      rim: 'wrapped',
    },
    { shape: 'round', name: 'tap é', centre: { x_m: 0.9, y_m: 0.4 }, diameter_m: 0.035, rim: 'dammed' },
    {
      shape: 'rectangle',
      name: 'drain',
      centre: { x_m: 0.2, y_m: 0.2 },
      length_m: 0.1,
      width_m: 0.15,
      cornerRadius_m: 0.02,
      rim: 'dammed',
    },
  ],
};

const READER = `
import sys, json, ezdxf
from ezdxf.math import bulge_to_arc
doc = ezdxf.readfile(sys.argv[1])
auditor = doc.audit()
msp = doc.modelspace()
def poly(e):
    if e.dxftype() == 'LWPOLYLINE':
        return [(p[0], p[1], p[4]) for p in e.get_points()], e.closed
    return [(v.dxf.location.x, v.dxf.location.y, v.dxf.get('bulge', 0)) for v in e.vertices], e.is_closed
out = []
for e in msp:
    d = dict(type=e.dxftype(), layer=e.dxf.layer)
    if d['type'] in ('LWPOLYLINE', 'POLYLINE'):
        d['points'], d['closed'] = poly(e)
    if d['type'] == 'CIRCLE':
        d['circle'] = [e.dxf.center.x, e.dxf.center.y, e.dxf.radius]
    if d['type'] == 'ELLIPSE':
        d['ellipse'] = [e.dxf.center.x, e.dxf.center.y, e.dxf.major_axis.magnitude, e.dxf.ratio]
    if d['type'] == 'TEXT':
        d['text'] = e.dxf.text
    out.append(d)
print(json.dumps(dict(version=doc.dxfversion, units=doc.header.get('$INSUNITS', 0), layers=[l.dxf.name for l in doc.layers],
  errors=[e.message for e in auditor.errors], fixes=[f.message for f in auditor.fixes], entities=out)))
`;

const WRITER = `
import sys, ezdxf
from ezdxf.math import rational_bspline_from_arc
doc = ezdxf.new('R2000')
doc.header['$INSUNITS'] = 4
msp = doc.modelspace()
msp.add_lwpolyline([(-500, -300), (500, -300), (500, 300), (-500, 300)], close=True)
# A circle of radius 100 as a rational spline.
msp.add_spline().apply_construction_tool(rational_bspline_from_arc(center=(0, 0), radius=100, start_angle=0, end_angle=360))
# Half an ellipse facing down, closed by a line: from (360, 0) through y below 0 to (240, 0).
msp.add_ellipse((300, 0), major_axis=(60, 0), ratio=0.5, start_param=0, end_param=3.141592653589793, dxfattribs={'extrusion': (0, 0, -1)})
msp.add_line((240, 0), (360, 0))
# An arc facing down: half a circle about (-300, 0), to the left of its axis mirrored to the right of the drawing's.
msp.add_arc((300, 0), 50, 90, 270, dxfattribs={'extrusion': (0, 0, -1)})
msp.add_line((-300, -50), (-300, 50))
doc.saveas(sys.argv[1])
`;

/** Debian's own Python sees Debian's packages; another one may come first on the path. */
const PYTHON = existsSync('/usr/bin/python3') ? '/usr/bin/python3' : 'python3';

/** Finds the two readers or installs them where that is possible; in CI they must be there. */
function readersThere(): boolean {
  const there = (): boolean =>
    spawnSync(PYTHON, ['-c', 'import ezdxf']).status === 0 &&
    spawnSync('rsvg-convert', ['--version']).status === 0;
  if (there()) return true;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    const quiet = { stdio: 'ignore' as const };
    spawnSync('apt-get', ['update'], quiet);
    spawnSync(
      'apt-get',
      ['install', '-y', '--no-install-recommends', 'python3-ezdxf', 'librsvg2-bin'],
      quiet,
    );
    if (there()) return true;
  }
  const needs =
    'The independent readers need python3-ezdxf and librsvg2-bin (Debian: apt-get install python3-ezdxf librsvg2-bin).';
  if (process.env.CI !== undefined && process.env.CI !== '') throw new Error(needs);
  console.warn(`SKIPPED: ${needs}`);
  return false;
}

const there = readersThere();
const folder = mkdtempSync(join(tmpdir(), 'pourwright-files-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Seen {
  readonly type: string;
  readonly layer: string;
  readonly points?: readonly (readonly [number, number, number])[];
  readonly closed?: boolean;
  readonly circle?: readonly number[];
  readonly ellipse?: readonly number[];
  readonly text?: string;
}

describe.skipIf(!there)('files read by independent programs', () => {
  for (const version of ['R12', 'R2000'] as const)
    for (const unit of ['mm', 'in'] as const)
      it(`ezdxf reads DXF ${version} in ${unit} without a fault`, { timeout: 60_000 }, () => {
        const file = join(folder, `${version}-${unit}.dxf`);
        writeFileSync(file, writeDxf(PIECE, { version, unit }));
        const read = JSON.parse(execFileSync(PYTHON, ['-c', READER, file], { encoding: 'utf8' }));
        expect(read.errors).toEqual([]);
        expect(read.fixes).toEqual([]);
        expect(read.version).toBe(version === 'R12' ? 'AC1009' : 'AC1015');
        if (version === 'R2000') expect(read.units).toBe(unit === 'mm' ? 4 : 1);
        expect(read.layers).toEqual(expect.arrayContaining(['OUTLINE', 'CUT-OUTS', 'CENTRE-LINES', 'EDGES']));
        const per = unit === 'mm' ? 1000 : 1 / 0.0254;
        const entities: Seen[] = read.entities;
        const outline = entities.filter((e) => e.layer === 'OUTLINE');
        expect(outline).toHaveLength(1);
        expect(outline[0]!.closed).toBe(true);
        const path = outlinePath(PIECE.outline);
        expect(outline[0]!.points).toHaveLength(path.length);
        path.forEach((s, i) => {
          const [x, y, bulge] = outline[0]!.points![i]!;
          expect(x).toBeCloseTo(s.from.x_m * per, 9);
          expect(y).toBeCloseTo(s.from.y_m * per, 9);
          expect(bulge).toBeCloseTo(s.bulge, 9);
        });
        const circle = entities.find((e) => e.circle !== undefined)!.circle!;
        [0.9, 0.4, 0.0175].forEach((v, i) => {
          expect(circle[i]).toBeCloseTo(v * per, 9);
        });
        const ellipse = entities.find((e) => e.ellipse !== undefined)?.ellipse;
        if (version === 'R2000')
          [0.5 * per, 0.25 * per, 0.2 * per, 0.75].forEach((v, i) => {
            expect(ellipse![i]).toBeCloseTo(v, 9);
          });
        else expect(ellipse).toBeUndefined();
        expect(entities.filter((e) => e.layer === 'CENTRE-LINES' && e.type === 'LINE')).toHaveLength(6);
        const texts = entities.filter((e) => e.type === 'TEXT').map((e) => e.text);
        expect(texts).toContain('front');
        expect(texts.some((t) => t!.startsWith('tap '))).toBe(true);
      });

  it('reads splines with weights, ellipses and arcs facing down, as ezdxf writes them', {
    timeout: 60_000,
  }, () => {
    const file = join(folder, 'curves.dxf');
    execFileSync(PYTHON, ['-c', WRITER, file]);
    const read = readDxf(readFileSync(file, 'utf8'));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(pathArea_m2(read.value.outline.path)).toBeCloseTo(0.6, 12);
    const areas = read.value.cutOuts.map((c) => pathArea_m2(c.path));
    const exact = [Math.PI * 0.01, (Math.PI * 0.05 ** 2) / 2, (Math.PI * 0.06 * 0.03) / 2];
    // Curves stray at most 0.005 mm, so areas at most that times the way round.
    exact.forEach((area, i) => {
      expect(Math.abs(areas[i]! - area)).toBeLessThan(5e-6 * pathLength_m(read.value.cutOuts[i]!.path));
    });
    const [circle, arc, half] = read.value.cutOuts.map((c) => bounds(c.path));
    expect(circle!.maxX_m).toBeCloseTo(0.1, 5);
    expect(arc!.minX_m).toBeCloseTo(-0.3, 9);
    expect(arc!.maxX_m).toBeCloseTo(-0.25, 9);
    expect(half!.minY_m).toBeCloseTo(-0.03, 5);
    expect(half!.maxY_m).toBeCloseTo(0, 5);
  });

  it('librsvg fills the area of the piece, true to scale', { timeout: 60_000 }, () => {
    // Only outline and cut-outs, filled: white on black for the outline, black again for the holes.
    const plain = writeSvg(PIECE)
      .replace(/ {2}<g id="(centre-lines|edges)"[\s\S]*?<\/g>\n/g, '')
      .replace(/fill="none" stroke="#222222" stroke-width="0.25"/, 'fill="#ffffff"')
      .replace(/fill="none" stroke="#b02a1a" stroke-width="0.25"/, 'fill="#000000"');
    const file = join(folder, 'piece.svg');
    const png = join(folder, 'piece.png');
    writeFileSync(file, plain);
    // 50.8 dots to the inch: two pixels a millimetre.
    const dpi = 50.8;
    execFileSync('rsvg-convert', ['-d', `${dpi}`, '-p', `${dpi}`, '-b', 'black', '-o', png, file]);
    const { width, height, whiteness } = readPng(readFileSync(png));
    expect(Math.abs(width - (1.0668 + 0.01) * 2000)).toBeLessThanOrEqual(1);
    expect(Math.abs(height - (0.5461 + 0.01) * 2000)).toBeLessThanOrEqual(1);
    const rims = PIECE.cutOuts.map(cutOutPath);
    const outline = outlinePath(PIECE.outline);
    // The shop's ovals are arcs within 0.1 mm of the ellipse in the file; shading is to 1/255 of a rim pixel or two.
    const oval = Math.PI * 0.15 * 0.2;
    const area = pathArea_m2(outline) - oval - pathArea_m2(rims[1]!) - pathArea_m2(rims[2]!);
    const rim = pathLength_m(outline) + rims.reduce((sum, r) => sum + pathLength_m(r), 0);
    expect(Math.abs(whiteness / 4e6 - area)).toBeLessThan(rim * 0.0005 * 0.05);
  });
});

/** Width, height and how many pixels' worth of white an 8-bit PNG without interlacing holds. */
function readPng(png: Buffer): { width: number; height: number; whiteness: number } {
  const width = png.readUInt32BE(16);
  const height = png.readUInt32BE(20);
  expect(png[24]).toBe(8);
  expect(png[28]).toBe(0);
  const channels = { 0: 1, 2: 3, 4: 2, 6: 4 }[png[25]!]!;
  const parts: Buffer[] = [];
  for (let at = 8; at < png.length; ) {
    const size = png.readUInt32BE(at);
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT') parts.push(png.subarray(at + 8, at + 8 + size));
    at += size + 12;
  }
  const raw = inflateSync(Buffer.concat(parts));
  const stride = width * channels;
  let above = new Uint8Array(stride);
  let sum = 0;
  for (let y = 0; y < height; y += 1) {
    const kind = raw[y * (stride + 1)]!;
    const row = new Uint8Array(raw.subarray(y * (stride + 1) + 1, (y + 1) * (stride + 1)));
    for (let i = 0; i < stride; i += 1) {
      const a = i >= channels ? row[i - channels]! : 0;
      const b = above[i]!;
      const c = i >= channels ? above[i - channels]! : 0;
      const p = a + b - c;
      const near = [a, b, c].reduce((best, v) => (Math.abs(p - v) < Math.abs(p - best) ? v : best));
      row[i] = row[i]! + [0, a, b, (a + b) >> 1, near][kind]!;
      if (i % channels === 0) sum += row[i]!;
    }
    above = row;
  }
  return { width, height, whiteness: sum / 255 };
}
