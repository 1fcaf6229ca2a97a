/** The PDFs read back by poppler: words, pages, and whether the paper shows what was asked at true scale. */
import { describe, expect, it } from 'vitest';
import { pointAlong } from '#core/piece/arc.ts';
import { edgeNames } from '#core/piece/outline.ts';
import type { CutOut, EdgeSpec, Outline, Piece } from '#core/piece/piece.ts';
import { FOOT_M, type Tile, type Tiling } from '#core/piece/set-out/template-tiles.ts';
import { CHECK_BAR_M } from './check-bar.ts';
import { type Pixels, POPPLER, pageTexts, pdfFacts, pixelsOf } from './rendered-page.ts';
import { setOutPdf, setOutsPdf } from './set-out-pdf.ts';
import { templatePdf } from './template-pdf.ts';

const PER_INCH = 300;
const PIXEL_M = 0.0254 / PER_INCH;
/** What was asked: true to 0.2 mm. */
const CLOSE_M = 0.0002;

const edge: EdgeSpec = {
  kind: 'finished',
  faceHeight_m: 0.0381,
  profile: { kind: 'round-over', radius_m: 0.0127 },
  undersideReturn_m: 0.01905,
};
const words = {
  title: 'Vanity for the hall',
  customer: 'Zoë Łaska',
  revision: { version: 3, hash: 'a1b2c3d4e5f6' },
  at: '2026-05-14T09:00:00.000Z',
};

function pieceOf(outline: Outline, cutOuts: readonly CutOut[] = []): Piece {
  return {
    outline,
    edges: Object.fromEntries(edgeNames(outline).map((name) => [name, edge])),
    cutOuts,
    bodyThickness_m: 0.0381,
  };
}

const bowl: CutOut = {
  name: 'bowl',
  shape: 'oval',
  length_m: 0.4064,
  width_m: 0.3302,
  centre: { x_m: 0.5334, y_m: 0.254 },
  rim: 'wrapped',
};
const vanity = pieceOf({ shape: 'rectangle', length_m: 1.0668, width_m: 0.5461, cornerRadius_m: 0.0127 }, [
  bowl,
]);

async function sheet(piece: Piece, paper: 'A4' | 'Letter', system: 'us' | 'metric', over = {}) {
  const made = await setOutPdf(piece, { ...words, paper, system, ...over });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

async function template(piece: Piece, paper: 'A4' | 'Letter') {
  const made = await templatePdf(piece, { ...words, paper });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/** Drawn in black: the outline and the bar; everything that only helps is grey. */
function black(pixels: Pixels, x_m: number, y_m: number): boolean {
  const [x, y] = [Math.floor(x_m / PIXEL_M), Math.floor(y_m / PIXEL_M)];
  return x >= 0 && y >= 0 && x < pixels.wide && y < pixels.high && pixels.grey[y * pixels.wide + x]! < 70;
}

/** Runs of black pixels along a row or a column of the page, as begin and end in m. */
function runs(pixels: Pixels, along: 'row' | 'column', at_m: number, from_m: number, to_m: number) {
  const found: { begin_m: number; end_m: number }[] = [];
  for (let i = Math.ceil(from_m / PIXEL_M); i < Math.floor(to_m / PIXEL_M); i += 1) {
    const p = (i + 0.5) * PIXEL_M;
    if (!(along === 'row' ? black(pixels, p, at_m) : black(pixels, at_m, p))) continue;
    const last = found.at(-1);
    if (last !== undefined && last.end_m > (i - 0.5) * PIXEL_M) last.end_m = (i + 1) * PIXEL_M;
    else found.push({ begin_m: i * PIXEL_M, end_m: (i + 1) * PIXEL_M });
  }
  return found;
}

function nearBlack(pixels: Pixels, x_m: number, y_m: number): boolean {
  for (let dx = -CLOSE_M; dx <= CLOSE_M; dx += PIXEL_M / 2)
    for (let dy = -CLOSE_M; dy <= CLOSE_M; dy += PIXEL_M / 2)
      if (Math.hypot(dx, dy) <= CLOSE_M && black(pixels, x_m + dx, y_m + dy)) return true;
  return false;
}

const onPage = (tiling: Tiling, tile: Tile) => (p: { x_m: number; y_m: number }) => ({
  x_m: tiling.windowLeft_m + p.x_m - tile.window.minX_m,
  y_m: tiling.windowTop_m + tile.window.maxY_m - p.y_m,
});

function barLength_m(pixels: Pixels, high_m: number, left_m: number): number {
  // The bar is the only black line across the foot; look for the row with the longest one.
  let longest = 0;
  for (let y_m = high_m - 0.0085 - FOOT_M; y_m < high_m - 0.0085; y_m += PIXEL_M)
    for (const run of runs(pixels, 'row', y_m, left_m, left_m + 0.13))
      longest = Math.max(longest, run.end_m - run.begin_m);
  return longest;
}

describe.skipIf(!POPPLER)('the set-out sheet', { timeout: 60_000 }, () => {
  it('shows where splashes stand, in the legend and with their sizes in a table', async () => {
    const splashes = [{ side: 'back', length_m: 1.0668, height_m: 0.1016, thickness_m: 0.01905 }] as const;
    const made = await setOutsPdf([{ name: '', piece: vanity, splashes }], {
      ...words,
      paper: 'Letter',
      system: 'us',
    });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const [drawing = '', ...tables] = pageTexts(made.value);
    expect(drawing).toContain('splash, stands on the top');
    const said = tables.join('\n');
    expect(said).toMatch(/backsplash\s+42 in\s+4 in/);
    expect(pageTexts(await sheet(vanity, 'Letter', 'us')).join('\n')).not.toContain('splash');
  });

  it('says title, customer, revision, date and every figure of the piece, in inches and millimetres', async () => {
    const pages = pageTexts(await sheet(vanity, 'Letter', 'us'));
    for (const page of pages) {
      expect(page).toContain('Vanity for the hall');
      expect(page).toContain('Zoë Łaska');
      expect(page).toContain('Version 3, a1b2c3d4e5f6, printed 2026-05-14');
      expect(page).toContain(`of ${pages.length}`);
    }
    expect(pages[0]).toContain('42 in');
    expect(pages[0]).toContain('21 1⁄2 in');
    const tables = pages.slice(1).join('\n');
    // The diagonal of 42 in by 21 1/2 in is 47.184 in: 47 6/32 by a tape, 1198.5 mm.
    for (const said of ['47 3⁄16 in', '1198.5 mm', '16 in × 13 in', 'round-over 1⁄2 in', '3⁄4 in', 'bowl'])
      expect(tables).toContain(said);
    expect(tables).toMatch(/1066\.8 mm/);
    // Nothing the typeface lacks.
    expect(pages.join('')).not.toMatch(/\?|\uFFFD/);
  });

  it('has pages of the paper asked for, lying across, with every font inside', async () => {
    const a4 = pdfFacts(await sheet(vanity, 'A4', 'metric'));
    expect(a4.width_pt).toBeCloseTo((297 / 25.4) * 72, 1);
    expect(a4.height_pt).toBeCloseTo((210 / 25.4) * 72, 1);
    expect(a4.pages).toBeGreaterThanOrEqual(2);
    const fonts = a4.fonts.split('\n').slice(2).filter(Boolean);
    expect(fonts.length).toBeGreaterThan(0);
    for (const font of fonts) expect(font).toMatch(/ yes yes yes /);
    const letter = pdfFacts(await sheet(vanity, 'Letter', 'us'));
    expect([letter.width_pt, letter.height_pt]).toEqual([792, 612]);
  });

  it('speaks metric alone in a metric shop', async () => {
    const text = pageTexts(await sheet(vanity, 'A4', 'metric')).join('');
    expect(text).toContain('1066.8 mm');
    expect(text).not.toMatch(/\d in\b/);
  });

  it('is the same file, byte for byte, for the same piece and words', async () => {
    const [a, b] = [await sheet(vanity, 'A4', 'us'), await sheet(vanity, 'A4', 'us')];
    expect(Buffer.compare(a, b)).toBe(0);
  });

  it('holds whatever was typed for a name: other scripts as they are, what no font has as a question mark', async () => {
    const title = `Столешница Κουζίνα 🪵 ${'long '.repeat(40)}`;
    const text = pageTexts(await sheet(vanity, 'A4', 'us', { title, customer: 'a\u0000b\ud800' })).join('');
    expect(text).toContain('Столешница Κουζίνα ?');
  });

  it('goes on over pages for a piece with many corners and cut-outs', async () => {
    const corners = Array.from({ length: 60 }, (_, i) => ({
      x_m: 2 + 1.9 * Math.cos((i * Math.PI) / 30),
      y_m: 2 + 1.9 * Math.sin((i * Math.PI) / 30),
    }));
    const holes = Array.from(
      { length: 12 },
      (_, i): CutOut => ({
        name: `grommet number ${i + 1} with a long name that has to be broken somewhere`,
        shape: 'round',
        diameter_m: 0.06,
        centre: { x_m: 1.2 + (i % 4) * 0.5, y_m: 1.4 + Math.floor(i / 4) * 0.5 },
        rim: 'dammed',
      }),
    );
    const pages = pageTexts(await sheet(pieceOf({ shape: 'polygon', corners }, holes), 'Letter', 'us'));
    expect(pages.length).toBeGreaterThan(4);
    expect(pages.join('')).toContain('grommet number 12');
    // The head of the table stands again on each page its rows run over to.
    expect(pages.filter((page) => page.includes('between edges')).length).toBeGreaterThan(1);
  });
});

describe.skipIf(!POPPLER)('the true-scale template', { timeout: 60_000 }, () => {
  it('has a map and then each sheet with its label, its crosses and the words about the bar', async () => {
    for (const paper of ['A4', 'Letter'] as const) {
      const { bytes, tiling } = await template(vanity, paper);
      const pages = pageTexts(bytes);
      expect(pages.length).toBe(tiling.tiles.length + 1);
      for (const page of pages) {
        expect(page).toContain('Print at 100 %');
        expect(page).toContain('100 mm');
      }
      tiling.tiles.forEach((tile, i) => {
        expect(pages[0]).toContain(tile.label);
        expect(pages[i + 1]).toContain(`Sheet ${i + 1} of ${tiling.tiles.length}`);
        expect(pages[i + 1]).toContain(tile.label);
        for (const mark of tile.marks) expect(pages[i + 1]).toContain(mark.name);
      });
      const facts = pdfFacts(bytes);
      const { width_m, height_m } = tiling.page;
      expect(facts.width_pt).toBeCloseTo((width_m / 0.0254) * 72, 1);
      expect(facts.height_pt).toBeCloseTo((height_m / 0.0254) * 72, 1);
    }
  });

  it('asks the viewer not to scale', async () => {
    const { bytes } = await template(vanity, 'A4');
    expect(Buffer.from(bytes).toString('latin1')).toContain('/PrintScaling /None');
  });

  it('has a bar of 100 mm on the map and on every sheet, measured in pixels', async () => {
    const { bytes, tiling } = await template(vanity, 'A4');
    const high_m = tiling.page.height_m;
    for (let page = 2; page <= tiling.tiles.length + 1; page += 1) {
      const long_m = barLength_m(pixelsOf(bytes, page, PER_INCH), high_m, tiling.margin_m - 0.002);
      expect(Math.abs(long_m - CHECK_BAR_M)).toBeLessThanOrEqual(CLOSE_M);
    }
    const map = pixelsOf(bytes, 1, PER_INCH);
    let longest = 0;
    for (let y_m = high_m - 0.03; y_m < high_m - 0.012; y_m += PIXEL_M)
      for (const run of runs(map, 'row', y_m, 0.005, 0.15))
        longest = Math.max(longest, run.end_m - run.begin_m);
    expect(Math.abs(longest - CHECK_BAR_M)).toBeLessThanOrEqual(CLOSE_M);
  });

  it('shows a piece that fits one sheet in its true size, both ways', async () => {
    const { bytes, tiling } = await template(
      pieceOf({ shape: 'rectangle', length_m: 0.22, width_m: 0.13 }),
      'A4',
    );
    expect(tiling.tiles.length).toBe(1);
    const pixels = pixelsOf(bytes, 2, PER_INCH);
    const middle = (run: { begin_m: number; end_m: number }): number => (run.begin_m + run.end_m) / 2;
    const to = onPage(tiling, tiling.tiles[0]!);
    // A quarter in from the corner, where no name and no label stands.
    const probe = to({ x_m: 0.22 * 0.8, y_m: 0.13 * 0.8 });
    const across = runs(pixels, 'row', probe.y_m, 0.01, 0.287);
    const up = runs(pixels, 'column', probe.x_m, 0.01, 0.18);
    expect([across.length, up.length]).toEqual([2, 2]);
    expect(Math.abs(middle(across[1]!) - middle(across[0]!) - 0.22)).toBeLessThanOrEqual(CLOSE_M);
    expect(Math.abs(middle(up[1]!) - middle(up[0]!) - 0.13)).toBeLessThanOrEqual(CLOSE_M);
  });

  it('has every part of outline and rim where it belongs, on every sheet, arcs too', async () => {
    const round = pieceOf({ shape: 'ellipse', length_m: 0.6, width_m: 0.4 }, [
      { ...bowl, length_m: 0.2, width_m: 0.15, centre: { x_m: 0.32, y_m: 0.2 }, rotation_rad: 0.4 },
    ]);
    const { bytes, tiling } = await template(round, 'Letter');
    let looked = 0;
    tiling.tiles.forEach((tile, i) => {
      const pixels = pixelsOf(bytes, i + 2, PER_INCH);
      const to = onPage(tiling, tile);
      for (const { segment } of tile.parts)
        for (const f of [0.1, 0.3, 0.5, 0.7, 0.9]) {
          const p = to(pointAlong(segment, f));
          expect([tile.label, nearBlack(pixels, p.x_m, p.y_m)]).toEqual([tile.label, true]);
          looked += 1;
        }
    });
    expect(looked).toBeGreaterThan(100);
  });
});
