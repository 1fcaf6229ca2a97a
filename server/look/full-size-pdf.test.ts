import { expect, it } from 'vitest';
import { panelsOf } from '#core/look/panels.ts';
import { VANITY } from '#core/look/render/any-look.ts';
import { cutOutPath, outlinePath } from '#core/piece/outline.ts';
import { pointInside } from '#core/piece/path.ts';
import type { Piece } from '#core/piece/piece.ts';
import { CHECK_BAR_M } from '../set-out/check-bar.ts';
import { POPPLER, pageTexts, pixelsOf } from '../set-out/rendered-page.ts';
import { fewestSheets } from '../set-out/template-pdf.ts';
import { anySheet } from './any-sheet.ts';
import { fullSizePdf } from './full-size-pdf.ts';

const SMALL: Piece = {
  ...VANITY,
  outline: { shape: 'rectangle', length_m: 0.34, width_m: 0.24 },
  cutOuts: [],
};

it.skipIf(!POPPLER)(
  'the look at true size stands on every sheet, in place, with bar, crosses and mark',
  { timeout: 180_000 },
  async () => {
    const sheet = anySheet({ paper: 'A4' });
    const laid = { ...sheet.pieces[0]!, piece: SMALL };
    const panels = panelsOf([laid], { film_m: 0.0013, faceFilm_m: 0 });
    const made = await fullSizePdf({ ...sheet, pieces: [laid], look: { ...sheet.look, panels, fogs: [] } });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    const { bytes, tiling } = made.value;
    const pages = pageTexts(bytes);
    expect(pages.length).toBe(tiling.tiles.length + 1);
    expect(tiling.tiles.length).toBeGreaterThan(1);
    const perInch = 75;
    const dot_m = 0.0254 / perInch;
    tiling.tiles.forEach((tile, i) => {
      for (const said of ['100 mm', `look ${sheet.mark}`, tile.label]) expect(pages[i + 1]).toContain(said);
      for (const mark of tile.marks) expect(pages[i + 1]).toContain(mark.name);
      const { wide, grey } = pixelsOf(bytes, i + 2, perInch);
      const darkness = (x_m: number, y_m: number): number => {
        const x = Math.floor((tiling.windowLeft_m + x_m - tile.window.minX_m) / dot_m);
        const y = Math.floor((tiling.windowTop_m + tile.window.maxY_m - y_m) / dot_m);
        return grey[y * wide + x]!;
      };
      // Dark film up to 2 mm inside the rim, paper 2 mm outside it, wherever the sheet shows it.
      const path = outlinePath(SMALL.outline);
      for (let k = 0; k < 40; k++) {
        const [x_m, y_m] = [(0.34 * (k + 0.5)) / 40, k % 2 === 0 ? 0.002 : -0.002];
        const { minX_m, maxX_m, minY_m, maxY_m } = tile.window;
        const near = tile.marks.some(({ at }) => Math.hypot(at.x_m - x_m, at.y_m - y_m) < 0.02);
        const seen =
          x_m > minX_m + 0.001 && x_m < maxX_m - 0.001 && y_m > minY_m + 0.001 && y_m < maxY_m - 0.001;
        if (!seen || near) continue;
        if (pointInside(path, { x_m, y_m }))
          expect([tile.label, k, darkness(x_m, y_m) < 200]).toEqual([tile.label, k, true]);
        else expect([tile.label, k, darkness(x_m, y_m) > 200]).toEqual([tile.label, k, true]);
      }
    });
    expect(CHECK_BAR_M).toBe(0.1);
  },
);

it('sheets for a picture are those for a template and those that lie all on the top, none in a hole', () => {
  const template = fewestSheets(VANITY, 'A4');
  const picture = fewestSheets(VANITY, 'A4', true);
  if (!template.ok || !picture.ok) throw new Error('no sheets');
  const path = outlinePath(VANITY.outline);
  const holes = VANITY.cutOuts.map(cutOutPath);
  for (const { window, bridge, parts } of picture.value.tiles) {
    const middle = { x_m: (window.minX_m + window.maxX_m) / 2, y_m: (window.minY_m + window.maxY_m) / 2 };
    const shows =
      parts.length > 0 || (pointInside(path, middle) && !holes.some((h) => pointInside(h, middle)));
    expect(bridge).toBe(!shows);
  }
  expect(picture.value.tiles.length).toBeGreaterThanOrEqual(template.value.tiles.length);
});
