import { inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { topDrawing } from '#core/look/render/drawing.ts';
import { fitInto } from '#core/look/render/grid.ts';
import { renderScene } from '#core/look/render/render.ts';
import { sceneOf } from '#core/look/render/scene.ts';
import { POPPLER, pageTexts, pdfFacts, pixelsOf } from '../set-out/rendered-page.ts';
import { anySheet } from './any-sheet.ts';
import { approvalPdf } from './approval-pdf.ts';
import { paintScene } from './paint.ts';
import { png } from './png.ts';
import { pourMapPdf } from './pour-map-pdf.ts';
import { heading, pourSteps } from './pour-steps.ts';

describe.skipIf(!POPPLER)('the picture to sign', { timeout: 120_000 }, () => {
  it('says which look of which job it is, its colours, what may differ, the sample panel and who signs', async () => {
    const bytes = await approvalPdf(anySheet());
    const text = pageTexts(bytes).join('\n');
    for (const said of [
      'Vanity for the hall',
      'Zoë Łaska',
      'Version 3, a1b2c3d4e5f6, printed 2026-05-14',
      'Look 0f1e2d3c4b5a',
      'Not approved yet.',
      'slate, pigment paste, 3 %',
      'bronze, mica powder, 4 %',
      'never twice the same',
      'Sample panel',
      'Customer, signature',
      'For the shop, signature',
      'basin',
      'in', // the scale bar
    ])
      expect(text).toContain(said);
    expect(pdfFacts(bytes)).toMatchObject({ pages: 1, width_pt: 792, height_pt: 612 });
    // The picture is there: the middle of the page is as dark as slate, not paper.
    const { wide, grey } = pixelsOf(bytes, 1, 40);
    const at = (x_in: number, y_in: number) => grey[Math.round(y_in * 40) * wide + Math.round(x_in * 40)]!;
    expect(at(8.4, 1.5)).toBeLessThan(70);
    expect(at(0.3, 4)).toBe(255);
  });

  it('tells a look that is as approved from one that was changed since', async () => {
    const sheet = anySheet();
    const approved = (hash: string) =>
      approvalPdf({
        ...sheet,
        paper: 'A4',
        system: 'metric',
        document: { ...sheet.document, approved: { hash, sample: 'Panel 7, window sill' } },
      });
    const same = pageTexts(await approved(sheet.mark)).join('');
    expect(same).toContain('Approved as it stands here.');
    expect(same).toContain('Panel 7, window sill');
    expect(pageTexts(await approved('ffff')).join('')).toContain('Changed since look ffff was approved');
  });
});

describe.skipIf(!POPPLER)('the pour map', { timeout: 120_000 }, () => {
  it('numbers what is done in its order, with cup, ounces, grams, place and pull', async () => {
    const sheet = anySheet();
    const bytes = await pourMapPdf(sheet);
    const pages = pageTexts(bytes);
    const text = pages.join('\n');
    for (const said of [
      'Spread all over',
      'whole top, and its edges',
      'Pour a ribbon',
      '7 7⁄8 in from left, 11 3⁄4 in from front',
      'pull 15 7⁄8 in',
      'Draw a comb right across',
      'against the clock',
      'Fog the edge',
      'cups 2 + 3',
      'under the window',
    ])
      expect(text).toContain(said);
    // A move that is not kept is nowhere: nine are.
    expect(pourSteps(sheet).map(({ number }) => number)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    // The first page has the numbers on the picture.
    for (const number of [1, 2, 3, 4, 5, 7, 8]) expect(pages[0]).toMatch(new RegExp(`\\b${number}\\b`));
  });

  it('pours every cup to its last gram', () => {
    const { cups, pours } = anySheet();
    for (const cup of cups) {
      const mass = pours
        .filter((pour) => pour.cup === cup.number)
        .reduce((sum, pour) => sum + pour.mass_kg, 0);
      expect(mass).toBeCloseTo(cup.mass_kg, 9);
    }
  });

  it('without cups says so, and gives what stays in the film', async () => {
    const text = pageTexts(await pourMapPdf(anySheet({ cups: [], pours: [], system: 'metric' }))).join('\n');
    expect(text).toContain('The cups are not worked out yet');
    expect(text).toContain('in the film');
    expect(text).toContain('200 mm from left, 300 mm from front');
  });

  it('of a look without a move is a sheet of what is spread all over', async () => {
    const text = pageTexts(await pourMapPdf(anySheet({ cups: [], pours: [] }, []))).join('\n');
    expect(text).toContain('Spread all over');
  });

  it('says headings by the sides of the piece', () => {
    expect(heading(0)).toBe('toward the right');
    expect(heading(Math.PI / 2)).toBe('toward the back');
    expect(heading(-Math.PI / 2)).toBe('toward the front');
    expect(heading(Math.PI / 6)).toBe('toward the right, turned 30° to the back');
    expect(heading(Math.PI - Math.PI / 9)).toBe('toward the left, turned 20° to the back');
    expect(heading(-Math.PI / 6)).toBe('toward the right, turned 30° to the front');
  });
});

describe('a picture file', () => {
  const { look } = anySheet();
  const drawing = topDrawing(look.panels);
  const scene = sceneOf({ look, drawing, sheet: fitInto(drawing, 300, 150) });

  it('rendered in threads is the picture rendered at once', async () => {
    expect(await paintScene(scene)).toEqual(renderScene(scene));
  });

  it('holds every pixel, as any reader of PNG unpacks it', () => {
    const pixels = renderScene(scene);
    const bytes = Buffer.from(png(pixels, 300, 150, { pixel_m: 0.004 }));
    expect(bytes.subarray(1, 4).toString()).toBe('PNG');
    let at = 8;
    const chunks = new Map<string, Buffer>();
    while (at < bytes.length) {
      const length = bytes.readUInt32BE(at);
      chunks.set(bytes.toString('latin1', at + 4, at + 8), bytes.subarray(at + 8, at + 8 + length));
      at += 12 + length;
    }
    expect([...chunks.keys()]).toEqual(['IHDR', 'sRGB', 'pHYs', 'IDAT', 'IEND']);
    expect(chunks.get('pHYs')!.readUInt32BE(0)).toBe(250);
    const lines = inflateSync(chunks.get('IDAT')!);
    const read = new Uint8ClampedArray(pixels.length);
    for (let row = 0; row < 150; row++) {
      const from = row * 1201 + 1;
      expect(lines[from - 1]).toBe(1);
      for (let i = 0; i < 1200; i++)
        read[1200 * row + i] = (lines[from + i]! + (i < 4 ? 0 : read[1200 * row + i - 4]!)) & 255;
    }
    expect(read).toEqual(pixels);
    expect(() => png(pixels, 299, 150)).toThrow(RangeError);
  });
});
