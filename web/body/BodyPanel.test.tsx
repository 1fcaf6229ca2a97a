import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { bodyParts } from '#core/piece/body/body-parts.ts';
import type { StockSheet } from '#core/piece/cutting/cutting.ts';
import { badAttributes } from '#web/charts/bad-attributes.ts';
import { SAMPLE_PIECES } from '#web/drawing/sample-pieces.ts';
import { BodyPanel, type BodyPanelProps } from './BodyPanel.tsx';
import { CuttingPanel } from './CuttingPanel.tsx';
import { cuttingForPaper } from './use-cutting.ts';

const INCH = 0.0254;
const mdf: StockSheet = { name: 'MDF 3/4 in', length_m: 97 * INCH, width_m: 49 * INCH };
function draw(props: Partial<BodyPanelProps> & { readonly stock?: readonly StockSheet[] } = {}): string {
  const { piece = SAMPLE_PIECES.vanity!, system = 'us', options = {}, stock = [mdf] } = props;
  const plan = cuttingForPaper({ parts: bodyParts(piece, options), stock, options: {} });
  return renderToStaticMarkup(
    <>
      <BodyPanel piece={piece} system={system} options={options} />
      <CuttingPanel plan={plan} system={system} />
    </>,
  );
}

describe('body panel', () => {
  it('lists the parts with sizes, counts and notes', () => {
    const markup = draw();
    for (const words of [
      'field',
      'front strip',
      'left strip',
      '42 3/8 in',
      'Mitre it where two strips meet.',
    ])
      expect(markup).toContain(words);
    expect(markup).not.toContain('bowl rim');
    expect(draw({ piece: { ...SAMPLE_PIECES.vanity!, bodyThickness_m: 1.5 * INCH } })).toContain('bowl rim');
    expect(markup).not.toContain('back strip');
  });

  it('draws every part on a sheet and numbers each cut in the drawing and the list', () => {
    const markup = draw();
    expect(markup).toContain('aria-label="Sheet 1: MDF 3/4 in, 97 in x 49 in. ');
    const drawn = markup.match(/class="cutting-cut"/g)!.length;
    const listed = /Cuts of sheet 1, in order.*?<tbody>(.*?)<\/tbody>/s
      .exec(markup)![1]!
      .match(/<tr>/g)!.length;
    expect(drawn).toBe(listed);
    expect(drawn).toBeGreaterThan(6);
    // On a phone the cells of a cut stand below each other, each with its word.
    for (const word of ['Cut', 'Take', 'Fence', 'Gives', 'Leaves'])
      expect(markup.split(`data-label="${word}"`)).toHaveLength(listed + 1);
    expect(markup).toContain('No plan from these sheets is cheaper.');
  });

  it('gives weight with its range, cautions and their grounds', () => {
    const markup = draw({ options: { resin_kg: 15, screwLength_m: 0.05 } });
    expect(markup).toMatch(/Weight about <strong>[\d.]+ lb<\/strong> \([\d.]+ lb to [\d.]+ lb\)/);
    expect(markup).toContain('Caution: </strong>Up to ');
    expect(markup).toContain('A screw of 1 15/16 in');
    expect(draw({ system: 'metric' })).toMatch(/Weight about <strong>[\d.]+ kg/);
  });

  it('says which part does not fit, and that there is nothing to cut from', () => {
    const markup = draw({ stock: [{ ...mdf, length_m: 0.5 }] });
    expect(markup).toContain('field fits into none of the sheets once they are trimmed.');
    expect(draw({ stock: [] })).toContain('There is no sheet to cut from.');
  });

  it.each(Object.keys(SAMPLE_PIECES))('draws %s without a broken attribute', (name) => {
    const wide: StockSheet = { name: 'wide board', length_m: 2.8, width_m: 2.07 };
    const markup = draw({ piece: SAMPLE_PIECES[name]!, stock: [mdf, wide] });
    expect(badAttributes(markup)).toEqual([]);
    expect(markup).toContain('Cuts of sheet 1, in order');
  });
});
